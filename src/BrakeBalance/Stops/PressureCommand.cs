namespace BrakeBalance.Stops;

/// <summary>Closed form of the pressure build-up towards one target, in SI numbers.</summary>
internal readonly struct PressureCommand
{
    private readonly double _target;
    private readonly double _rate;
    private readonly double _lag;
    private readonly double _reachedAtRampEnd;

    public PressureCommand(PressureBuildUp buildUp, double targetPascals)
    {
        _target = targetPascals;
        _rate = buildUp.RampRate.PascalsPerSecond;
        _lag = buildUp.AssistLag.Seconds;
        RampStart = buildUp.DeadTime.Seconds;
        RampEnd = RampStart + targetPascals / _rate;
        _reachedAtRampEnd = Ramp(RampEnd - RampStart);
    }

    /// <summary>Time of the kink at which pressure starts to rise.</summary>
    public double RampStart { get; }

    /// <summary>Time of the kink at which the foot stops asking for more.</summary>
    public double RampEnd { get; }

    /// <summary>Gauge pressure in pascals.</summary>
    public double At(double seconds)
    {
        if (seconds <= RampStart)
        {
            return 0;
        }

        if (seconds <= RampEnd)
        {
            return Ramp(seconds - RampStart);
        }

        return _lag > 0 ? _target - (_target - _reachedAtRampEnd) * Math.Exp(-(seconds - RampEnd) / _lag) : _target;
    }

    private double Ramp(double elapsed) => _rate * (_lag > 0 ? elapsed - _lag * (1 - Math.Exp(-elapsed / _lag)) : elapsed);
}
