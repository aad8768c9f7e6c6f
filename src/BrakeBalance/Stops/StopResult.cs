namespace BrakeBalance.Stops;

/// <summary>Outcome of a straight stop.</summary>
/// <param name="Car">Name of the car.</param>
/// <param name="Driver">Name of the driver model.</param>
/// <param name="InitialSpeed">Speed at which the foot touched the pedal.</param>
/// <param name="Distance">Distance from first touch of the pedal to standstill.</param>
/// <param name="Duration">Time from first touch of the pedal to standstill.</param>
/// <param name="HeldPressure">Pressure that the foot held, at the master cylinder, gauge.</param>
/// <param name="Locks">First lock of each axle, or null for an axle that never locked above walking pace.</param>
/// <param name="Releases">
/// When each axle that had locked turned again for the first time; null for an axle that never locked or stayed locked.
/// </param>
/// <param name="Bound">
/// What bounds the deceleration: the road when an axle reached its adhesion, else what ended the rise of pressure.
/// </param>
/// <param name="Energy">Where the energy went.</param>
/// <param name="MeanFullyDevelopedDeceleration">
/// Mean fully developed deceleration, between 0.8 and 0.1 of the initial speed. Source: 71/320/EEC Annex II 1.1.2 (read) and UN R13-H Annex
/// 3 (from memory): d_m = (v_b² − v_e²)/(2 (s_e − s_b)).
/// </param>
/// <param name="Trace">The stop over time, in order; empty when no trace was asked for.</param>
public sealed record StopResult(
    BrakedCar Car, string Driver, Speed InitialSpeed, Length Distance, Duration Duration, Pressure HeldPressure, PerAxle<LockEvent?> Locks,
    PerAxle<ReleaseEvent?> Releases, StopBound Bound, StopEnergy Energy, Acceleration MeanFullyDevelopedDeceleration,
    IReadOnlyList<StopSample> Trace)
{
    /// <summary>The axle that locked first, or null when none did.</summary>
    public Axle? FirstLock => (Locks.Front, Locks.Rear) switch
    {
        (null, null) => null,
        ({ }, null) => Axle.Front,
        (null, { }) => Axle.Rear,
        var (front, rear) => front.Time <= rear.Time ? Axle.Front : Axle.Rear,
    };
}
