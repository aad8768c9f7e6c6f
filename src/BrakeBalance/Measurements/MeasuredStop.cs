namespace BrakeBalance.Measurements;

/// <summary>A stop found in a time series. What is called <c>…Within</c> is half of a 90 % interval.</summary>
public sealed record MeasuredStop
{
    /// <summary>When braking began, on the clock of the speed or acceleration.</summary>
    public required Duration Start { get; init; }

    /// <summary>When the car stood, or braking ended.</summary>
    public required Duration End { get; init; }

    /// <summary>Speed when braking began.</summary>
    public required Speed InitialSpeed { get; init; }

    /// <summary>Uncertainty of <see cref="InitialSpeed"/>.</summary>
    public required Speed InitialSpeedWithin { get; init; }

    /// <summary>
    /// Mean fully developed deceleration, positive; null when the stop does not reach from 80 % to 10 % of the initial speed.
    /// </summary>
    public Acceleration? Deceleration { get; init; }

    /// <summary>Uncertainty of <see cref="Deceleration"/>.</summary>
    public Acceleration? DecelerationWithin { get; init; }

    /// <summary>Highest deceleration over three tenths of a second, or over two samples of a log slower than that; positive.</summary>
    public required Acceleration Peak { get; init; }

    /// <summary>Uncertainty of <see cref="Peak"/>.</summary>
    public required Acceleration PeakWithin { get; init; }

    /// <summary>
    /// Distance from the change of slope to the end: from where the lines of coasting and of braking meet, in the middle of the rise.
    /// </summary>
    public required Length Distance { get; init; }

    /// <summary>Uncertainty of <see cref="Distance"/>.</summary>
    public required Length DistanceWithin { get; init; }

    /// <summary>Distance from the press of the pedal to the end; half of the rise longer than <see cref="Distance"/>.</summary>
    public required Length DistanceFromPedal { get; init; }

    /// <summary>Uncertainty of <see cref="DistanceFromPedal"/>; wide where the log does not show how long the rise took.</summary>
    public required Length DistanceFromPedalWithin { get; init; }

    /// <summary>From the beginning of braking until the deceleration no longer rises.</summary>
    public required Duration RiseTime { get; init; }

    /// <summary>Uncertainty of <see cref="RiseTime"/>.</summary>
    public required Duration RiseTimeWithin { get; init; }

    /// <summary>What the beginning was found by: pressure, pedal, brake switch, or change of slope.</summary>
    public required string FoundBy { get; init; }

    /// <summary>
    /// Mean front line pressure, gauge, from 80 % to 10 % of the initial speed (to the end when the stop has no such part); null when not
    /// logged.
    /// </summary>
    public Pressure? FrontPressure { get; init; }

    /// <summary>The same of the rear line; null when not logged.</summary>
    public Pressure? RearPressure { get; init; }

    /// <summary>Which axle locked first by the wheel speeds; null when they do not tell.</summary>
    public FirstLock? Locked { get; init; }

    /// <summary>When a wheel of the front axle locked; null when none did.</summary>
    public Duration? FrontLockedAt { get; init; }

    /// <summary>When a wheel of the rear axle locked; null when none did.</summary>
    public Duration? RearLockedAt { get; init; }

    /// <summary>Middle slip of the front wheels from 80 % to 30 % of the initial speed [–]; null when not logged.</summary>
    public double? FrontSlip { get; init; }

    /// <summary>Middle slip of the rear wheels from 80 % to 30 % of the initial speed [–]; null when not logged.</summary>
    public double? RearSlip { get; init; }

    /// <summary>Front line pressure, gauge, as the first wheel locked; null when none did or it is not logged.</summary>
    public Pressure? LockPressure { get; init; }

    /// <summary>What was removed from the instrument's reading, along the car; null when the speed was used.</summary>
    public Acceleration? Offset { get; init; }

    /// <summary>Whether the numbers can be relied on within their uncertainty; if not, <see cref="Cautions"/> says why.</summary>
    public required bool IsTrusted { get; init; }

    /// <summary>
    /// Whether the distance can be relied on to 3 %: the stop is trusted, and the distance's own uncertainty is no wider.
    /// </summary>
    public bool IsDistanceTrusted => IsTrusted && DistanceWithin <= SharpDistance * Distance;

    internal const double SharpDistance = 0.03;

    /// <summary>What a reader should know about this stop, in words.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
}
