using UnitsNet;

namespace BrakeBalance.Stops;

/// <summary>What pushes a braking car off its straight line.</summary>
public sealed record YawDisturbance
{
    /// <summary>Slope of the road across the direction of travel, positive when the road falls away to the left; within 10 degrees.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The slope is steeper than 10 degrees.</exception>
    public Angle CrossSlope { get; init => field = Within(value, 10, nameof(CrossSlope)); } = Angle.Zero;

    /// <summary>Adhesion on the right less that on the left, divided by their mean [–]; −1.9 to 1.9.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside −1.9 to 1.9.</exception>
    public double AdhesionImbalance { get; init => field = Require.Between(value, -1.9, 1.9); }

    /// <summary>Steer angle of the front wheels, held through the stop, leftwards positive; within 20 degrees.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The angle is more than 20 degrees.</exception>
    public Angle Steer { get; init => field = Within(value, 20, nameof(Steer)); } = Angle.Zero;

    /// <summary>Yaw rate when the foot touches the pedal, leftwards positive.</summary>
    public RotationalSpeed InitialYawRate { get; init; } = RotationalSpeed.Zero;

    /// <summary>A road crown of two percent.</summary>
    /// <remarks>Source: common practice, 1.5 to 2.5 % on paved roads.</remarks>
    public static YawDisturbance Crown { get; } = new() { CrossSlope = Angle.FromRadians(Math.Atan(0.02)) };

    private static Angle Within(Angle value, double degrees, string name) => Math.Abs(value.Degrees) <= degrees
        ? value
        : throw new ArgumentOutOfRangeException(name, value.Degrees, FormattableString.Invariant($"Must lie between {-degrees} and {degrees} degrees."));
}
