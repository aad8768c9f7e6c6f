namespace BrakeBalance.Stops;

/// <summary>What pushes a braking car off its straight line.</summary>
public sealed record YawDisturbance
{
    /// <summary>
    /// Slope of the road across the direction of travel, positive when the road falls away to the left; within 10 degrees.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The slope is steeper than 10 degrees.</exception>
    public Angle CrossSlope { get; init => field = Require.Within(value, 10); } = Angle.Zero;

    /// <summary>Adhesion on the right less that on the left, divided by their mean [–]; −1.9 to 1.9.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside −1.9 to 1.9.</exception>
    public double AdhesionImbalance { get; init => field = Require.Between(value, -1.9, 1.9); }

    /// <summary>Steer angle of the front wheels, held through the stop, leftwards positive; within 20 degrees.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The angle is more than 20 degrees.</exception>
    public Angle Steer { get; init => field = Require.Within(value, 20); } = Angle.Zero;

    /// <summary>Yaw rate when the foot touches the pedal, leftwards positive.</summary>
    public RotationalSpeed InitialYawRate { get; init; } = RotationalSpeed.Zero;

    /// <summary>A road crown of two percent.</summary>
    /// <remarks>Source: common practice, 1.5 to 2.5 % on paved roads.</remarks>
    public static YawDisturbance Crown { get; } = new() { CrossSlope = Angle.FromRadians(Math.Atan(0.02)) };

    /// <summary>A road with one adhesion under the left wheels and another under the right ones.</summary>
    /// <param name="left">Adhesion on the left [–]; above zero.</param>
    /// <param name="right">Adhesion on the right [–]; above zero.</param>
    /// <returns>The disturbance for a car on the mean of both.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is not above zero, or one is more than 39 times the other.</exception>
    public static YawDisturbance Split(double left, double right) =>
        new() { AdhesionImbalance = 2 * (Require.Positive(right) - Require.Positive(left)) / (left + right) };
}
