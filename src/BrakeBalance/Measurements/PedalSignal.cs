namespace BrakeBalance.Measurements;

/// <summary>What a log says of the pedal: a pressure, the pedal itself or its switch.</summary>
internal sealed class PedalSignal
{
    private const int Fewest = 10;
    private readonly double[] _time, _level;
    private readonly double _rest, _highest;
    private readonly bool _isSwitch;

    private PedalSignal(string name, double[] time, double[] level)
    {
        (Name, _time, _level) = (name, time, level);
        double[] sorted = [.. level.Order()];
        (_rest, _highest) = (sorted[sorted.Length / 10], sorted[^1]);
        _isSwitch = !sorted.Distinct().Skip(3).Any();
    }

    /// <summary>What it is, in words.</summary>
    public string Name { get; }

    /// <summary>Whether it is a line pressure.</summary>
    public bool IsPressure => Name.EndsWith("pressure", StringComparison.Ordinal);

    /// <summary>The signal that tells most: pressure tells more than the pedal, and the pedal more than its switch.</summary>
    public static PedalSignal? Of(TimedSamples log)
    {
        return By("front pressure", s => s.FrontPressure?.Bars) ?? By("rear pressure", s => s.RearPressure?.Bars)
            ?? By("pedal", s => s.Pedal) ?? By("brake switch", s => s.BrakeOn is { } on ? on ? 1 : 0 : null);

        PedalSignal? By(string name, Func<MotionSample, double?> of) =>
            log.Of(of) is { Time.Length: >= Fewest } points ? new PedalSignal(name, points.Time, points.Value) : null;
    }

    /// <summary>The signal from one time in seconds up to another.</summary>
    public (double[] Time, double[] Level) Between(double from, double to)
    {
        Range within = TimedSamples.FirstFrom(_time, from)..TimedSamples.FirstFrom(_time, to);
        return (_time[within], _level[within]);
    }

    /// <summary>When the signal leaves its rest, in seconds; null when it does not.</summary>
    /// <param name="start">Where the slope changes; a satellite's speed may come late, so the search begins well before it.</param>
    public (double At, double Sd)? Pressed(double start)
    {
        (double[] time, double[] level) = Between(start - 2.2, start + 0.8);
        if (time.Length < 4)
        {
            return null;
        }

        double rise = level.Max() - _rest;
        int high = Array.FindIndex(level, l => l > _rest + 0.4 * rise);
        if (rise < 0.25 * (_highest - _rest) || high <= 0)
        {
            return null;
        }

        if (_isSwitch)
        {
            return ((time[high - 1] + time[high]) / 2, (time[high] - time[high - 1]) / Math.Sqrt(12));
        }

        // A pressure or a pedal rises as the deceleration does, so the same fit tells when it leaves its rest.
        double[] pull = [.. level.Select(l => 8 * (_rest - l) / rise)];
        (int from, int to) = (Array.FindIndex(time, t => t > time[high] - 1), Array.FindLastIndex(time, t => t < time[high] + 0.5));
        return OnsetFit.Of(time, pull, pull, from, Math.Max(high, to), time[high - 1], 0.08)?.Start;
    }
}
