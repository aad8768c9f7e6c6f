namespace BrakeBalance.Measurements;

/// <summary>A stop found in a time series. What is called <c>…Within</c> is half of a 90 % interval.</summary>
/// <param name="Start">When braking began, on the clock of the speed or acceleration.</param>
/// <param name="End">When the car stood, or braking ended.</param>
/// <param name="InitialSpeed">Speed when braking began.</param>
/// <param name="InitialSpeedWithin">Uncertainty of <see cref="InitialSpeed"/>.</param>
/// <param name="Peak">Highest deceleration over three tenths of a second, or over two samples of a log slower than that; positive.</param>
/// <param name="PeakWithin">Uncertainty of <see cref="Peak"/>.</param>
/// <param name="Distance">
/// Distance from the change of slope to the end: from where the lines of coasting and of braking meet, in the middle of the rise.
/// </param>
/// <param name="DistanceWithin">Uncertainty of <see cref="Distance"/>.</param>
/// <param name="DistanceFromPedal">
/// Distance from the press of the pedal to the end; half of the rise longer than <see cref="Distance"/>.
/// </param>
/// <param name="DistanceFromPedalWithin">
/// Uncertainty of <see cref="DistanceFromPedal"/>; wide where the log does not show how long the rise took.
/// </param>
/// <param name="RiseTime">From the beginning of braking until the deceleration no longer rises.</param>
/// <param name="RiseTimeWithin">Uncertainty of <see cref="RiseTime"/>.</param>
/// <param name="FoundBy">What the beginning was found by: pressure, pedal, brake switch, or change of slope.</param>
/// <param name="IsTrusted">Whether the numbers can be relied on within their uncertainty; if not, <see cref="Cautions"/> says why.</param>
/// <param name="Cautions">What a reader should know about this stop, in words.</param>
/// <param name="Deceleration">
/// Mean fully developed deceleration, positive; null when the stop does not reach from 80 % to 10 % of the initial speed.
/// </param>
/// <param name="DecelerationWithin">Uncertainty of <see cref="Deceleration"/>.</param>
/// <param name="FrontPressure">
/// Mean front line pressure, gauge, from 80 % to 10 % of the initial speed (to the end when the stop has no such part); null when not
/// logged.
/// </param>
/// <param name="RearPressure">The same of the rear line; null when not logged.</param>
/// <param name="Locked">Which axle locked first by the wheel speeds; null when they do not tell.</param>
/// <param name="FrontLockedAt">When a wheel of the front axle locked; null when none did.</param>
/// <param name="RearLockedAt">When a wheel of the rear axle locked; null when none did.</param>
/// <param name="FrontSlip">Middle slip of the front wheels from 80 % to 30 % of the initial speed [–]; null when not logged.</param>
/// <param name="RearSlip">Middle slip of the rear wheels from 80 % to 30 % of the initial speed [–]; null when not logged.</param>
/// <param name="LockPressure">Front line pressure, gauge, as the first wheel locked; null when none did or it is not logged.</param>
/// <param name="Offset">What was removed from the instrument's reading, along the car; null when the speed was used.</param>
public sealed record MeasuredStop(
    Duration Start, Duration End, Speed InitialSpeed, Speed InitialSpeedWithin, Acceleration Peak, Acceleration PeakWithin,
    Length Distance, Length DistanceWithin, Length DistanceFromPedal, Length DistanceFromPedalWithin, Duration RiseTime,
    Duration RiseTimeWithin, string FoundBy, bool IsTrusted, IReadOnlyList<string> Cautions, Acceleration? Deceleration = null,
    Acceleration? DecelerationWithin = null, Pressure? FrontPressure = null, Pressure? RearPressure = null, FirstLock? Locked = null,
    Duration? FrontLockedAt = null, Duration? RearLockedAt = null, double? FrontSlip = null, double? RearSlip = null,
    Pressure? LockPressure = null, Acceleration? Offset = null)
{
    /// <summary>
    /// Whether the distance can be relied on to 3 %: the stop is trusted, and the distance's own uncertainty is no wider.
    /// </summary>
    public bool IsDistanceTrusted => IsTrusted && DistanceWithin <= SharpDistance * Distance;

    internal const double SharpDistance = 0.03;
}
