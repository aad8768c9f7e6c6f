using BrakeBalance.Hydraulics;

namespace BrakeBalance.Balance;

/// <summary>What the car still does in one case of failure.</summary>
public sealed record FailureOutcome
{
    /// <summary>The case.</summary>
    public required FailureCase Case { get; init; }

    /// <summary>The load case's name.</summary>
    public required string LoadCase { get; init; }

    /// <summary>Pedal force for the deceleration asked for; null when that rate cannot be had.</summary>
    public required Force? PedalForceForRate { get; init; }

    /// <summary>Why the rate asked for cannot be had, in words; null when it can.</summary>
    public required string? WhyNot { get; init; }

    /// <summary>Deceleration at the pedal force asked for, on the road asked for [–]; zero when nothing brakes.</summary>
    public required double RateAtForce { get; init; }

    /// <summary>What bounds that rate.</summary>
    public required RateBound Bound { get; init; }

    /// <summary>Pedal force at which that rate is reached; the force asked for, or less when an axle locks before.</summary>
    public required Force ForceUsed { get; init; }

    /// <summary>Front master-cylinder pressure at that moment, gauge.</summary>
    public required Pressure MasterPressure { get; init; }

    /// <summary>Line pressures at that moment, gauge.</summary>
    public required PerAxle<Pressure> LinePressures { get; init; }

    /// <summary>The axle that would lock first when the pressure rises on; null when both lock together or none does.</summary>
    public required Axle? FirstToLock { get; init; }

    /// <summary>Deceleration at that lock-up [–]; null when no axle locks.</summary>
    public required double? LockUpRate { get; init; }

    /// <summary>Braking efficiency at that lock-up [–], of the wheels that are still braked; null when no axle locks.</summary>
    public required double? Efficiency { get; init; }

    /// <summary>Distance of a stop at that rate; null when nothing brakes.</summary>
    public required StoppingDistance? Distance { get; init; }

    /// <summary>The pedal's travel at that moment; null when the volumes are not known.</summary>
    public required PedalTravel? Travel { get; init; }

    /// <summary>What the reader should be told in words.</summary>
    public required IReadOnlyList<string> Notices { get; init; }
}

/// <summary>What bounds the deceleration of a stop.</summary>
public enum RateBound
{
    /// <summary>The driver's foot.</summary>
    Foot,

    /// <summary>The road: an axle is about to lock.</summary>
    Road,

    /// <summary>The pedal or the master cylinder is at its end.</summary>
    Travel,

    /// <summary>Nothing is left that brakes.</summary>
    Nothing,
}
