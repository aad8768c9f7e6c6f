namespace BrakeBalance.Measurements;

/// <summary>Front and rear line pressure read at the same moment.</summary>
public sealed record GaugePair
{
    /// <summary>Line of the log the pair came from, from 1; 0 when it came from elsewhere.</summary>
    public int Line { get; init; }

    /// <summary>Turns of the valve's adjuster, counted from fully out; null when not recorded.</summary>
    public double? Turns { get; init; }

    /// <summary>Front line pressure, gauge; not negative.</summary>
    public required Pressure Front { get; init => field = Require.NotNegative(value); }

    /// <summary>Rear line pressure, gauge; not negative.</summary>
    public required Pressure Rear { get; init => field = Require.NotNegative(value); }

    /// <summary>When it was read, on any clock; null when not recorded. Holds need it.</summary>
    public Duration? Time { get; init; }

    /// <summary>Whether the pedal was going down, coming up or held; null when not recorded.</summary>
    public PressurePhase? Phase { get; init; }
}
