using BrakeBalance.Hydraulics;

namespace BrakeBalance.Balance;

/// <summary>What the car still does in one case of failure.</summary>
/// <param name="Case">The case.</param>
/// <param name="LoadCase">The load case's name.</param>
/// <param name="PedalForceForRate">Pedal force for the deceleration asked for; null when that rate cannot be had.</param>
/// <param name="WhyNot">Why the rate asked for cannot be had, in words; null when it can.</param>
/// <param name="RateAtForce">Deceleration at the pedal force asked for, on the road asked for [–]; zero when nothing brakes.</param>
/// <param name="Bound">What bounds that rate.</param>
/// <param name="ForceUsed">Pedal force at which that rate is reached; the force asked for, or less when an axle locks before.</param>
/// <param name="MasterPressure">Front master-cylinder pressure at that moment, gauge.</param>
/// <param name="LinePressures">Line pressures at that moment, gauge.</param>
/// <param name="FirstToLock">The axle that would lock first when the pressure rises on; null when both lock together or none does.</param>
/// <param name="LockUpRate">Deceleration at that lock-up [–]; null when no axle locks.</param>
/// <param name="Efficiency">Braking efficiency at that lock-up [–], of the wheels that are still braked; null when no axle locks.</param>
/// <param name="Distance">Distance of a stop at that rate; null when nothing brakes.</param>
/// <param name="Travel">The pedal's travel at that moment; null when the volumes are not known.</param>
/// <param name="Notices">What the reader should be told in words.</param>
public sealed record FailureOutcome(
    FailureCase Case, string LoadCase, Force? PedalForceForRate, string? WhyNot, double RateAtForce, RateBound Bound, Force ForceUsed,
    Pressure MasterPressure, PerAxle<Pressure> LinePressures, Axle? FirstToLock, double? LockUpRate, double? Efficiency,
    StoppingDistance? Distance, PedalTravel? Travel, IReadOnlyList<string> Notices);

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
