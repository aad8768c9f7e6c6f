namespace BrakeBalance.Measurements;

/// <summary>The stops found in a time series, and what was noticed on the way.</summary>
/// <param name="Stops">The stops in order of time.</param>
/// <param name="SampleRate">Samples a second, from the median interval.</param>
/// <param name="Remarks">What was noticed, in words: gaps, mounting, slow sampling.</param>
public sealed record StopSearch(IReadOnlyList<MeasuredStop> Stops, Frequency SampleRate, IReadOnlyList<string> Remarks);
