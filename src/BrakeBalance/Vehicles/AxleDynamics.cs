using BrakeBalance.Tyres;

namespace BrakeBalance.Vehicles;

/// <summary>Wheels, tyres and brakes of one axle as the course of a stop needs them; every value may be unknown.</summary>
/// <remarks>Where a value is null the stop takes a typical one and says so.</remarks>
public sealed record AxleDynamics
{
    /// <summary>Moment of inertia of one wheel with tyre and disc or drum about its axis; null when unknown.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public MassMomentOfInertia? WheelInertia { get; init => field = value is { } given ? Require.Positive(given) : null; }

    /// <summary>Distance between the tyres' centre planes; null when unknown.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Length? Track { get; init => field = value is { } given ? Require.Positive(given) : null; }

    /// <summary>(Stronger − weaker)/stronger of the two brakes of the axle, positive when the right one is the stronger [–]; −0.95
    /// to 0.95, 0 when left out.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside −0.95 to 0.95.</exception>
    public double BrakeImbalance { get; init => field = Require.Between(value, -0.95, 0.95); }

    /// <summary>
    /// Shape of the tyre's slip curve; null when unknown. Its height comes from the surface and the tyre's adhesion factor.
    /// </summary>
    public SlipCurve? SlipCurve { get; init; }

    /// <summary>Lateral over longitudinal slip stiffness of the rolling tyre [–]; null when unknown.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.01 to 1.</exception>
    public double? LateralStiffnessRatio { get; init => field = value is { } given ? Require.Between(given, 0.01, 1) : null; }

    /// <summary>Heat capacity and cooling of one wheel's brake; null when unknown.</summary>
    public BrakeThermalData? Heat { get; init; }
}
