namespace BrakeBalance.Stops;

/// <summary>Outcome of a stop with freedom to yaw.</summary>
public sealed record YawResult
{
    /// <summary>Name of the car.</summary>
    public required string Car { get; init; }

    /// <summary>Distance along the path from first touch of the pedal to standstill.</summary>
    public required Length Distance { get; init; }

    /// <summary>Time from first touch of the pedal to standstill.</summary>
    public required Duration Duration { get; init; }

    /// <summary>Time at which both wheels of each axle first stood, or null for an axle that never locked.</summary>
    /// <remarks>Source: an axle locks with its second wheel, 49 CFR 571.135 S7.2 (read).</remarks>
    public required PerAxle<Duration?> LockTimes { get; init; }

    /// <summary>Time at which the car stood square to its path, the velocity of that moment, or null when it never did.</summary>
    public required Duration? SidewaysAt { get; init; }

    /// <summary>Time at which the car stood square to the road, its first direction of travel, or null when it never did.</summary>
    public required Duration? SquareToRoadAt { get; init; }

    /// <summary>Heading at standstill against the first direction of travel, leftwards positive; not wrapped.</summary>
    public required Angle FinalHeading { get; init; }

    /// <summary>Greatest angle between the car's axis and its velocity, without sign.</summary>
    public required Angle GreatestSideslip { get; init; }

    /// <summary>Greatest heading against the first direction of travel, without sign.</summary>
    public required Angle GreatestHeading { get; init; }

    /// <summary>Greatest distance of a wheel's centre from the line on which the car began, without sign: half a track on a straight
    /// stop.</summary>
    public required Length WidestWheel { get; init; }

    /// <summary>Greatest moment about the vertical axis of unequal brake forces left and right, leftwards positive: what the steering has
    /// to answer.</summary>
    public required Torque GreatestBrakingMoment { get; init; }

    /// <summary>Way across the first direction of travel at standstill, leftwards positive.</summary>
    public required Length LateralOffset { get; init; }

    /// <summary>Part of the kinetic energy that the sums leave unexplained [–]; a measure of numerical error.</summary>
    public required double EnergyImbalance { get; init; }

    /// <summary>Accepted steps of the integrator.</summary>
    public required int Steps { get; init; }

    /// <summary>The stop over time, in order; empty when no trace was asked for.</summary>
    public required IReadOnlyList<YawSample> Trace { get; init; }

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
