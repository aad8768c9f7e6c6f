namespace BrakeBalance.Stops;

/// <summary>Outcome of a straight stop.</summary>
public sealed record StopResult
{
    /// <summary>Name of the car.</summary>
    public required string Car { get; init; }

    /// <summary>Name of the driver model.</summary>
    public required string Driver { get; init; }

    /// <summary>Speed at which the foot touched the pedal.</summary>
    public required Speed InitialSpeed { get; init; }

    /// <summary>Distance from first touch of the pedal to standstill.</summary>
    public required Length Distance { get; init; }

    /// <summary>Time from first touch of the pedal to standstill.</summary>
    public required Duration Duration { get; init; }

    /// <summary>Pressure that the foot held, at the master cylinder, gauge.</summary>
    public required Pressure HeldPressure { get; init; }

    /// <summary>First lock of each axle, or null for an axle that never locked above walking pace.</summary>
    public required PerAxle<LockEvent?> Locks { get; init; }

    /// <summary>When each axle that had locked turned again for the first time; null for an axle that never locked or stayed
    /// locked.</summary>
    public PerAxle<ReleaseEvent?> Releases { get; init; }

    /// <summary>What bounds the deceleration: the road when an axle reached its adhesion, else what ended the rise of pressure.</summary>
    public StopBound Bound { get; init; }

    /// <summary>Where the energy went.</summary>
    public required StopEnergy Energy { get; init; }

    /// <summary>Mean fully developed deceleration, between 0.8 and 0.1 of the initial speed.</summary>
    /// <remarks>Source: 71/320/EEC Annex II 1.1.2 (read) and UN R13-H Annex 3 (from memory): d_m = (v_b² − v_e²)/(2 (s_e −
    /// s_b)).</remarks>
    public required Acceleration MeanFullyDevelopedDeceleration { get; init; }

    /// <summary>Accepted steps of the integrator.</summary>
    public required int Steps { get; init; }

    /// <summary>The stop over time, in order; empty when no trace was asked for.</summary>
    public required IReadOnlyList<StopSample> Trace { get; init; }

    /// <summary>The axle that locked first, or null when none did.</summary>
    public Axle? FirstLock => (Locks.Front, Locks.Rear) switch
    {
        (null, null) => null,
        ({ }, null) => Axle.Front,
        (null, { }) => Axle.Rear,
        var (front, rear) => front.Time <= rear.Time ? Axle.Front : Axle.Rear,
    };

    /// <summary>Initial speed squared over twice the distance: what a constant deceleration would have been.</summary>
    public Acceleration MeanDeceleration =>
        Acceleration.FromMetersPerSecondSquared(InitialSpeed.MetersPerSecond * InitialSpeed.MetersPerSecond / (2 * Distance.Meters));
}
