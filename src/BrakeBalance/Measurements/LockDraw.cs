namespace BrakeBalance.Measurements;

/// <summary>One draw of everything that decides which axle locks first, in SI units; the first lock-up for any setting then costs a few multiplications.</summary>
/// <remarks>
/// <para>Front: T₁ = k₁ (F + τ (T₁ + T₂ + X)); rear: T₂ = k₂ (R − τ (T₁ + T₂ + X)), with τ = h/E, X rolling resistance and drag, and T_i linear in the
/// pressure on either side of the knee. Each is one linear equation for the pressure, for the valve open and for the valve closing.</para>
/// <para>The adhesion of load-sensitive tyres is taken at the loads where both axles would lock together.</para>
/// </remarks>
internal readonly struct LockDraw
{
    private readonly double _g1, _g2, _p1, _p2, _e1, _e2, _x, _limit;
    private readonly double _frontStatic, _tau, _k1, _k2, _rearStatic;

    /// <summary>Prepares a draw.</summary>
    public LockDraw(double frontStatic, double rearStatic, double tau, double external, double frontAdhesion, double rearAdhesion, double frontGain, double rearGain, double frontThreshold, double rearThreshold, double frontEngine, double rearEngine)
    {
        (_frontStatic, _rearStatic, _tau, _x) = (frontStatic, rearStatic, tau, external);
        (_k1, _k2, _g1, _g2, _p1, _p2, _e1, _e2) = (frontAdhesion, rearAdhesion, frontGain, rearGain, frontThreshold, rearThreshold, frontEngine, rearEngine);
        // Both at the limit: S = k₁ (F + τ (S + X)) + k₂ (R − τ (S + X)).
        double spread = tau * (frontAdhesion - rearAdhesion);
        _limit = (frontAdhesion * frontStatic + rearAdhesion * rearStatic + spread * external) / (1 - spread);
    }

    /// <summary>Braking force of both axles at their limits together.</summary>
    public double LimitNewtons => _limit;

    /// <summary>Line pressure at the rear brakes that makes both axles lock together, less what the front line would deliver through an open valve.</summary>
    public (double FrontPascals, double RearPascals) Together()
    {
        double front = _k1 * (_frontStatic + _tau * (_limit + _x)), rear = _limit - front;
        return (_p1 + (front - _e1) / _g1, _p2 + (rear - _e2) / _g2);
    }

    /// <summary>First lock-up for a knee, slope and ratio of master pressures.</summary>
    /// <param name="knee">Knee in pascals; infinite for no valve.</param>
    /// <param name="slope">Slope above the knee [–].</param>
    /// <param name="ratio">Rear over front master pressure [–].</param>
    /// <param name="maximum">Highest master pressure, in pascals.</param>
    /// <returns>Whether the rear locks first, the braking force of both axles over what their limits allow [–], and the front pressure then.</returns>
    public (bool RearFirst, double Efficiency, double Pascals) First(double knee, double slope, double ratio, double maximum)
    {
        double front = Front(ratio, 0), rear = Rear(ratio, 0);
        if (ratio * front > knee)
        {
            front = Front(ratio * slope, knee * (1 - slope));
            front = knee * (1 - slope) + ratio * slope * front < _p2 ? FrontAlone() : front;
        }

        if (ratio * rear > knee)
        {
            rear = Rear(ratio * slope, knee * (1 - slope));
        }

        double at = Math.Min(Math.Min(front, rear), maximum);
        double line = ratio * at <= knee ? ratio * at : knee * (1 - slope) + slope * ratio * at;
        double force = _g1 * Math.Max(0, at - _p1) + _e1 + _g2 * Math.Max(0, line - _p2) + _e2;
        return (rear < front && rear <= maximum, Math.Min(1, force / _limit), at);
    }

    /// <summary>First lock-up with a hold-off valve in the front line, which passes a steeper line between its two pressures.</summary>
    /// <param name="opening">Master pressure at which it opens, in pascals.</param>
    /// <param name="blend">Master pressure from which it passes all, in pascals; 0 for no such valve.</param>
    /// <param name="knee">As for <see cref="First(double, double, double, double)"/>.</param>
    /// <param name="slope">As for <see cref="First(double, double, double, double)"/>.</param>
    /// <param name="ratio">As for <see cref="First(double, double, double, double)"/>.</param>
    /// <param name="maximum">As for <see cref="First(double, double, double, double)"/>.</param>
    public (bool RearFirst, double Efficiency, double Pascals) First(double opening, double blend, double knee, double slope, double ratio, double maximum)
    {
        (bool RearFirst, double Efficiency, double Pascals) above = First(knee, slope, ratio, maximum);
        if (above.Pascals >= blend)
        {
            return above;
        }

        // Between the two pressures the front line carries m (p − p_open), so gain and threshold change and the equations stay.
        double m = blend / (blend - opening);
        return new LockDraw(this, _g1 * m, opening + _p1 / m).First(knee, slope, ratio, Math.Min(maximum, blend));
    }

    private LockDraw(in LockDraw of, double frontGain, double frontThreshold)
    {
        this = of;
        (_g1, _p1) = (frontGain, frontThreshold);
    }

    /// <summary>Front pressure at which the front axle locks while the rear line carries gradient · p + constant.</summary>
    private double Front(double gradient, double constant)
    {
        double share = _k1 * _tau;
        double top = _k1 * _frontStatic + share * (_x + _e2 + _g2 * (constant - _p2)) + (1 - share) * (_g1 * _p1 - _e1);
        double bottom = (1 - share) * _g1 - share * _g2 * gradient;
        return bottom > 0 ? Math.Max(0, top / bottom) : double.PositiveInfinity;
    }

    private double FrontAlone()
    {
        double share = _k1 * _tau;
        return share < 1 ? Math.Max(0, (_k1 * _frontStatic + share * (_x + _e2) + (1 - share) * (_g1 * _p1 - _e1)) / ((1 - share) * _g1)) : double.PositiveInfinity;
    }

    private double Rear(double gradient, double constant)
    {
        double share = _k2 * _tau;
        double top = _k2 * (_rearStatic - _tau * _x) - (1 + share) * (_g2 * (constant - _p2) + _e2) + share * (_g1 * _p1 - _e1);
        double bottom = (1 + share) * _g2 * gradient + share * _g1;
        return bottom > 0 ? Math.Max(0, top / bottom) : double.PositiveInfinity;
    }
}
