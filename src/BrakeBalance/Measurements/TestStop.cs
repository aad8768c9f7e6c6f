namespace BrakeBalance.Measurements;

/// <summary>One test stop as it was written down.</summary>
public sealed record TestStop
{
    /// <summary>Line of the log the stop came from, from 1; 0 when it came from elsewhere.</summary>
    public int Line { get; init; }

    /// <summary>Speed at which the pedal was applied; null when not recorded.</summary>
    public Speed? InitialSpeed { get; init; }

    /// <summary>Force on the pedal; null when not recorded.</summary>
    public Force? PedalForce { get; init; }

    /// <summary>Highest front line pressure of the stop, gauge; null when not recorded.</summary>
    public Pressure? FrontPressure { get; init; }

    /// <summary>Highest rear line pressure of the stop, gauge; null when not recorded.</summary>
    public Pressure? RearPressure { get; init; }

    /// <summary>Front line pressure at the moment the first axle locked, gauge; null when not recorded or nothing locked.</summary>
    public Pressure? LockPressure { get; init; }

    /// <summary>Mean fully developed deceleration, positive; null when not recorded.</summary>
    public Acceleration? Deceleration { get; init; }

    /// <summary>Which axle locked first; null when nobody watched.</summary>
    public FirstLock? Locked { get; init; }

    /// <summary>Name of the surface; null when not recorded.</summary>
    public string? Surface { get; init; }

    /// <summary>Name of the load case, as in the vehicle file; null when not recorded.</summary>
    public string? LoadCase { get; init; }

    /// <summary>Disc or drum temperature at the start of the stop; null when not recorded.</summary>
    public Temperature? InitialTemperature { get; init; }

    /// <summary>Turns of the valve's adjuster, counted from fully out; null when not recorded.</summary>
    public double? Turns { get; init; }
}
