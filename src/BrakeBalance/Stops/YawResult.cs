namespace BrakeBalance.Stops;

/// <summary>Outcome of a stop with freedom to yaw.</summary>
/// <param name="Car">Name of the car.</param>
/// <param name="Distance">Distance along the path from first touch of the pedal to standstill.</param>
/// <param name="Duration">Time from first touch of the pedal to standstill.</param>
/// <param name="LockTimes">
/// Time at which both wheels of each axle first stood, or null for an axle that never locked. Source: an axle locks with its second wheel,
/// 49 CFR 571.135 S7.2 (read).
/// </param>
/// <param name="SidewaysAt">Time at which the car stood square to its path, the velocity of that moment, or null when it never did.</param>
/// <param name="SquareToRoadAt">
/// Time at which the car stood square to the road, its first direction of travel, or null when it never did.
/// </param>
/// <param name="FinalHeading">Heading at standstill against the first direction of travel, leftwards positive; not wrapped.</param>
/// <param name="GreatestSideslip">Greatest angle between the car's axis and its velocity, without sign.</param>
/// <param name="GreatestHeading">Greatest heading against the first direction of travel, without sign.</param>
/// <param name="WidestWheel">
/// Greatest distance of a wheel's centre from the line on which the car began, without sign: half a track on a straight stop.
/// </param>
/// <param name="GreatestBrakingMoment">
/// Greatest moment about the vertical axis of unequal brake forces left and right, leftwards positive: what the steering has to answer.
/// </param>
/// <param name="LateralOffset">Way across the first direction of travel at standstill, leftwards positive.</param>
/// <param name="EnergyImbalance">Part of the kinetic energy that the sums leave unexplained [–]; a measure of numerical error.</param>
/// <param name="Trace">The stop over time, in order; empty when no trace was asked for.</param>
public sealed record YawResult(
    BrakedCar Car, Length Distance, Duration Duration, PerAxle<Duration?> LockTimes, Duration? SidewaysAt, Duration? SquareToRoadAt,
    Angle FinalHeading, Angle GreatestSideslip, Angle GreatestHeading, Length WidestWheel, Torque GreatestBrakingMoment,
    Length LateralOffset, double EnergyImbalance, IReadOnlyList<YawSample> Trace)
{
    /// <summary>True when the car turned past square to its path, so that the rear leads.</summary>
    public bool SwapsEnds => SidewaysAt is not null;

    /// <summary>Width of the lane in which a stop has to end.</summary>
    /// <remarks>Source: 49 CFR 571.135 S6.2 (read): 3.5 m.</remarks>
    public static Length LaneWidth { get; } = Length.FromMeters(3.5);

    /// <summary>Yaw angle that a stop must not exceed.</summary>
    /// <remarks>Source: 49 CFR 571.135 S6.5.4.2 (read): 15 degrees either way.</remarks>
    public static Angle YawLimit { get; } = Angle.FromDegrees(15);

    /// <summary>Whether every wheel stayed inside a lane of <see cref="LaneWidth"/> in whose middle the car began.</summary>
    public bool StaysInLane => WidestWheel <= LaneWidth / 2;

    /// <summary>Whether the heading stayed within <see cref="YawLimit"/>.</summary>
    public bool StaysWithinYawLimit => GreatestHeading <= YawLimit;
}
