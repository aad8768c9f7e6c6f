using UnitsNet;

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

    /// <summary>Time of the first lock of each axle, or null for an axle that never locked.</summary>
    public required PerAxle<Duration?> LockTimes { get; init; }

    /// <summary>Time at which the car stood across its direction of travel, or null when it never did.</summary>
    public required Duration? SidewaysAt { get; init; }

    /// <summary>Heading at standstill against the first direction of travel, leftwards positive; not wrapped.</summary>
    public required Angle FinalHeading { get; init; }

    /// <summary>Greatest angle between the car's axis and its velocity, without sign.</summary>
    public required Angle GreatestSideslip { get; init; }

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
}
