namespace BrakeBalance.Measurements;

/// <summary>What the gauges say at one position of the valve's adjuster.</summary>
public sealed record AdjusterPosition
{
    /// <summary>Turns from fully out; null when the log does not give them.</summary>
    public double? Turns { get; init; }

    /// <summary>Fit of the readings with pressure rising; null with fewer than four such readings.</summary>
    public ValveFit? Apply { get; init; }

    /// <summary>Fit of the readings with pressure falling; null with fewer than four such readings.</summary>
    public ValveFit? Release { get; init; }

    /// <summary>
    /// How much higher the rear line stands on release than on application at the same front line pressure, mean above the knee; null
    /// when not both were read.
    /// </summary>
    public Pressure? Hysteresis { get; init; }
}
