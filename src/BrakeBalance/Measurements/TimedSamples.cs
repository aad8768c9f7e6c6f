namespace BrakeBalance.Measurements;

/// <summary>Samples by time; a stop concerns only those around it, or a long log would cost its square.</summary>
internal sealed class TimedSamples(IReadOnlyList<MotionSample> samples)
{
    private readonly double[] _time = [.. samples.Select(s => s.Time.Seconds)];

    /// <summary>Whether something else than a wheel knows the speed.</summary>
    public bool KnowsSpeed { get; } = samples.Any(s => s.Speed is not null && !s.SpeedIsOfWheel);

    /// <summary>The samples from one time in seconds up to another.</summary>
    public IEnumerable<MotionSample> Between(double from, double to) =>
        Enumerable.Range(FirstFrom(_time, from), Math.Max(0, FirstFrom(_time, to) - FirstFrom(_time, from))).Select(i => samples[i]);

    /// <summary>Times and values of the samples that have one.</summary>
    public (double[] Time, double[] Value) Of(Func<MotionSample, double?> value)
    {
        int[] at = [.. Enumerable.Range(0, samples.Count).Where(i => value(samples[i]) is not null)];
        return ([.. at.Select(i => _time[i])], [.. at.Select(i => value(samples[i])!.Value)]);
    }

    /// <summary>Place of the first of rising times that is not before another; their count when all are.</summary>
    public static int FirstFrom(double[] time, double from)
    {
        int i = Array.BinarySearch(time, from);
        return i < 0 ? ~i : i;
    }
}
