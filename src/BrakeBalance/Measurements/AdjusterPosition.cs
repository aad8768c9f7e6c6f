namespace BrakeBalance.Measurements;

/// <summary>What the gauges say at one position of the valve's adjuster.</summary>
public sealed record AdjusterPosition
{
    /// <summary>Turns from fully out; null when the log does not give them.</summary>
    public double? Turns { get; init; }

    /// <summary>Fit of the readings with pressure rising; null with fewer than four such readings.</summary>
    public ValveFit? Apply { get; init; }

    /// <summary>
    /// The branch of falling pressure: the rising one with the hysteresis that all positions share, or its own fit where nothing was read
    /// with pressure rising; null with fewer than four such readings.
    /// </summary>
    public ValveFit? Release { get; init; }
}
