namespace BrakeBalance.Measurements;

/// <summary>What the gauges say at one position of the valve's adjuster.</summary>
/// <param name="Turns">Turns from fully out; null when the log does not give them.</param>
/// <param name="Apply">Fit of the readings with pressure rising; null with fewer than four such readings.</param>
/// <param name="Release">
/// The branch of falling pressure: the rising one with the hysteresis that all positions share, or its own fit where nothing was read with
/// pressure rising; null with fewer than four such readings.
/// </param>
public sealed record AdjusterPosition(double? Turns, ValveFit? Apply, ValveFit? Release);
