using BrakeBalance.Vehicles;

namespace BrakeBalance.Measurements;

/// <summary>Relative standard deviations of what is hardest to know of a car.</summary>
/// <remarks>
/// Defaults are common practice: a pad's friction is known to a tenth at best, a home measurement of the height to 25 mm.
/// </remarks>
public sealed record ParameterSpread
{
    /// <summary>Of the front friction [–]; 0 to 0.5.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 0.5.</exception>
    public double FrontFriction { get; init => field = Require.Between(value, 0, 0.5); } = 0.10;

    /// <summary>Of the rear friction [–]; 0 to 0.5.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 0.5.</exception>
    public double RearFriction { get; init => field = Require.Between(value, 0, 0.5); } = 0.10;

    /// <summary>Of the height of the centre of gravity [–]; 0 to 0.3.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 0.3.</exception>
    public double CentreOfGravityHeight { get; init => field = Require.Between(value, 0, 0.3); } = 0.05;

    /// <summary>The spread that a car's conditions give its friction, and its file the height of the centre of gravity.</summary>
    /// <param name="car">The car.</param>
    /// <returns>Standard deviations of even distributions over them.</returns>
    public static ParameterSpread Under(Vehicle car)
    {
        ArgumentNullException.ThrowIfNull(car);
        PerAxle<double> deviation = car.Conditions.FrictionSpread.Select(spread => spread / Math.Sqrt(3));
        return From(car) with { FrontFriction = deviation.Front, RearFriction = deviation.Rear };
    }

    /// <summary>The spread that the ranges of a vehicle file say; where they say nothing, the usual one.</summary>
    /// <param name="car">The car with its ranges.</param>
    /// <returns>Standard deviations of even distributions over the ranges.</returns>
    public static ParameterSpread From(Vehicle car)
    {
        var spread = new ParameterSpread();
        IReadOnlyList<ValueRange> ranges = car.Uncertainty?.Ranges ?? [];
        double? Of(string path) =>
            ranges.FirstOrDefault(range => range.Path.EndsWith(path, StringComparison.Ordinal)) is { } range
                ? Math.Min(0.5, range.RelativeHalfWidth / Math.Sqrt(3)) : null;
        return spread with
        {
            FrontFriction = Of("front.brake.friction") ?? spread.FrontFriction,
            RearFriction = Of("rear.brake.friction") ?? spread.RearFriction,
            CentreOfGravityHeight = Math.Min(0.3, Of("centreOfGravityHeight") ?? spread.CentreOfGravityHeight),
        };
    }
}
