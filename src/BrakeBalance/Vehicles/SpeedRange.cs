using BrakeBalance.Answers;

namespace BrakeBalance.Vehicles;

/// <summary>The speeds at which a setting has to hold: lift and drag change which axle locks first.</summary>
public sealed record SpeedRange
{
    private static readonly Speed Usual = Speed.FromKilometersPerHour(130);

    /// <summary>Lowest speed; not negative; standstill unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Speed Lowest { get; init => field = Require.NotNegative(value); } = Speed.Zero;

    /// <summary>Highest speed; null for the car's maximum speed, or 130 km/h when that is unknown.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Speed? Highest { get; init => field = value is { } given ? Require.NotNegative(given) : null; }

    /// <summary>A range of one speed.</summary>
    /// <param name="speed">The speed; not negative.</param>
    public static SpeedRange Only(Speed speed) => new() { Lowest = speed, Highest = speed };

    /// <summary>
    /// Speeds of the range to try with a car, its ends among them, evenly apart in the square of the speed, with which lift and drag go.
    /// </summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="count">How many; at least 2.</param>
    /// <returns>
    /// The speeds, rising; the lowest alone when they make no difference: for a car without aerodynamics, or a range without width.
    /// </returns>
    public IReadOnlyList<Speed> Of(Vehicle vehicle, int count)
    {
        double low = Lowest.MetersPerSecond;
        double high = Math.Max(low, (Highest ?? vehicle.Dynamics?.MaximumSpeed ?? Usual).MetersPerSecond);
        return vehicle.Aerodynamics is null || high == low
            ? [Lowest]
            : [.. Enumerable.Range(0, count).Select(i => low * low + (high * high - low * low) * i / (count - 1))
                .Select(square => Speed.FromMetersPerSecond(Math.Sqrt(square)))];
    }

    /// <summary>A speed in words, such as "standstill" or "130 km/h".</summary>
    internal static string Words(Speed speed, UnitSystem units) => speed <= Speed.Zero ? "standstill" : Measure.Speed.Text(speed, units);
}
