namespace BrakeBalance.Stops;

/// <summary>Closed form of the pressure while the foot asks for more or less at a steady rate and then holds, in SI numbers.</summary>
internal readonly struct PressureCommand
{
    private readonly double _startPressure;
    private readonly double _startAsked;
    private readonly double _target;
    private readonly double _rate;
    private readonly double _lag;
    private readonly double _reachedAtRampEnd;
    private readonly double _peak = double.PositiveInfinity;

    /// <summary>From no pressure to the target.</summary>
    public PressureCommand(PressureBuildUp buildUp, double targetPascals)
        : this(
            buildUp.DeadTime.Seconds, 0, 0, buildUp.RampRate.PascalsPerSecond, targetPascals,
                targetPascals / buildUp.RampRate.PascalsPerSecond,
            buildUp.AssistLag.Seconds)
    {
    }

    private PressureCommand(double start, double pressure, double asked, double rate, double target, double duration, double lag)
    {
        _startPressure = pressure;
        _startAsked = asked;
        _target = target;
        _rate = rate;
        _lag = lag;
        RampStart = start;
        RampEnd = start + duration;
        _reachedAtRampEnd = Ramp(duration);
        if (rate < 0 && pressure < asked && lag > 0)
        {
            // The assist still follows the foot upwards for a moment after the foot has begun to ease.
            _peak = start + lag * Math.Log(1 + (asked - pressure) / (-rate * lag));
        }
    }

    /// <summary>Time of the kink at which pressure starts to change.</summary>
    public double RampStart { get; }

    /// <summary>Time of the kink at which the foot stops asking for more or less.</summary>
    public double RampEnd { get; }

    /// <summary>The next time after this one at which the pressure bends or peaks; infinite when there is none.</summary>
    public double NextKink(double seconds) =>
        seconds < RampStart ? RampStart
        : seconds < _peak && _peak < RampEnd ? _peak
        : seconds < RampEnd ? RampEnd : double.PositiveInfinity;

    /// <summary>Gauge pressure in pascals.</summary>
    public double At(double seconds)
    {
        if (seconds <= RampStart)
        {
            return _startPressure;
        }

        if (seconds <= RampEnd)
        {
            return Ramp(seconds - RampStart);
        }

        return _lag > 0 ? _target - (_target - _reachedAtRampEnd) * Math.Exp(-(seconds - RampEnd) / _lag) : _target;
    }

    /// <summary>From a time on the foot asks for less and less, down to nothing.</summary>
    /// <param name="seconds">That time.</param>
    /// <param name="rate">Fall per second of the pressure that the foot asks for; above zero.</param>
    public PressureCommand Eased(double seconds, double rate)
    {
        double asked = Asked(seconds);
        return new PressureCommand(seconds, At(seconds), asked, -rate, 0, asked / rate, _lag);
    }

    /// <summary>From a time on the foot stays where it is.</summary>
    public PressureCommand Held(double seconds)
    {
        double asked = Asked(seconds);
        return new PressureCommand(seconds, At(seconds), asked, 0, asked, 0, _lag);
    }

    private double Asked(double seconds) => seconds >= RampEnd ? _target : _startAsked + _rate * Math.Max(0, seconds - RampStart);

    private double Ramp(double elapsed)
    {
        if (_lag <= 0)
        {
            return _startAsked + _rate * elapsed;
        }

        double left = Math.Exp(-elapsed / _lag);
        return _startAsked + _rate * (elapsed - _lag * (1 - left)) + (_startPressure - _startAsked) * left;
    }
}
