using BrakeBalance.Tyres;

namespace BrakeBalance.Stops;

/// <summary>What a stop needs to know of one axle: two equal wheels, their tyres and their brakes.</summary>
public sealed record BrakedAxle
{
    /// <summary>Distance from the road to the wheel centre; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length LoadedRadius { get; init => field = Require.Positive(value); }

    /// <summary>Slip curve of one tyre on the road of the stop.</summary>
    public required SlipCurve Tyre { get; init; }

    /// <summary>Braking torque of both brakes of the axle against line pressure.</summary>
    public required TorqueCurve Brakes { get; init; }

    /// <summary>Moment of inertia about the wheel axis of both wheels, tyres and rotors together; above zero.</summary>
    /// <remarks>Source: common practice, about 1 kg·m² a wheel of a car.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public MassMomentOfInertia WheelInertia { get; init => field = Require.Positive(value); } =
        MassMomentOfInertia.FromKilogramSquareMeters(2);

    /// <summary>Torque on both wheels together from a closed throttle; not negative, zero with the clutch down.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Torque EngineBrakingTorque { get; init => field = Require.NotNegative(value); } = Torque.Zero;

    /// <summary>Lateral over longitudinal slip stiffness of a rolling tyre [–]; 0.01 to 1.</summary>
    /// <remarks>Source: common practice, 0.4 to 0.7.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.01 to 1.</exception>
    public double LateralSlipWeight { get; init => field = Require.Between(value, 0.01, 1); } = 0.5;

    /// <summary>Distance between the tyres' centre planes; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Length Track { get; init => field = Require.Positive(value); } = Length.FromMeters(1.45);

    /// <summary>(Stronger − weaker)/stronger of the two brakes of the axle, positive when the right one is the stronger [–]; −0.95
    /// to 0.95; the sum stays that of <see cref="Brakes"/>.</summary>
    /// <remarks>Source: definition of the inspection manual for cars of the United Kingdom, 1.2.1 (read); only a stop that may yaw looks at
    /// it.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside −0.95 to 0.95.</exception>
    public double BrakeImbalance { get; init => field = Require.Between(value, -0.95, 0.95); }
}
