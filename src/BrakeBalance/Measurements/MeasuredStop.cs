namespace BrakeBalance.Measurements;

/// <summary>A stop found in a time series.</summary>
public sealed record MeasuredStop
{
    /// <summary>When braking began, on the log's clock.</summary>
    public required Duration Start { get; init; }

    /// <summary>When the car stood, or braking ended.</summary>
    public required Duration End { get; init; }

    /// <summary>Speed when braking began.</summary>
    public required Speed InitialSpeed { get; init; }

    /// <summary>
    /// Mean fully developed deceleration, positive; null when the stop does not reach from 80 % to 10 % of the initial speed.
    /// </summary>
    public Acceleration? Deceleration { get; init; }

    /// <summary>Highest deceleration over three tenths of a second, positive.</summary>
    public required Acceleration Peak { get; init; }

    /// <summary>Distance from the beginning of braking to its end.</summary>
    public required Length Distance { get; init; }

    /// <summary>Highest front line pressure, gauge; null when not logged.</summary>
    public Pressure? FrontPressure { get; init; }

    /// <summary>Highest rear line pressure, gauge; null when not logged.</summary>
    public Pressure? RearPressure { get; init; }

    /// <summary>What was removed from the instrument's reading, along the car; null when the speed was used.</summary>
    public Acceleration? Offset { get; init; }

    /// <summary>What a reader should know about this stop, in words.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
}
