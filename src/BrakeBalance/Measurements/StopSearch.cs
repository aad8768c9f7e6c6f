namespace BrakeBalance.Measurements;

/// <summary>The stops found in a time series, and what was noticed on the way.</summary>
public sealed record StopSearch
{
    /// <summary>The stops in order of time.</summary>
    public required IReadOnlyList<MeasuredStop> Stops { get; init; }

    /// <summary>Samples a second, from the median interval.</summary>
    public required Frequency SampleRate { get; init; }

    /// <summary>What was noticed, in words: gaps, mounting, slow sampling.</summary>
    public required IReadOnlyList<string> Remarks { get; init; }
}
