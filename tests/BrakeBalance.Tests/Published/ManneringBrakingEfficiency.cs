using BrakeBalance.Stops;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// Exercises after Mannering and Washburn, Principles of Highway Engineering and Traffic Analysis, ch. 2: braking efficiency η from a
/// measured
/// distance, s = γ (v₁² − v₂²)/(2 g (η μ + f ± sin θ)), γ = 1.04. Inputs and answers read on answer sites, not in the book.
/// </summary>
[Source("Mannering and Washburn, ch. 2, exercises on answer sites", Reading.SecondHand)]
public sealed class ManneringBrakingEfficiency
{
    // Half a unit of the printed efficiency is 0.06 % (0.0005·0.80/0.695) or 0.09 % (0.0005·0.90/0.515) of the distance; 32.2 ft/s² for
    // g another 0.08 %.
    [Theory]
    [InlineData(60, 0, 0.80, 0.018, 0, 0.846, 180)]
    [InlineData(90, 45, 0.90, 0.016735, -0.03, 0.587, 410)]
    public void Distance_of_the_printed_efficiency(
        double from, double to, double adhesion, double rolling, double grade, double efficiency, double feet)
    {
        Length distance = StopDistance.Braking(
            Speed.FromMilesPerHour(from), Speed.FromMilesPerHour(to), (efficiency * adhesion) + rolling + grade, 1.04);
        Assert.Equal(feet, distance.Feet, 0.0018 * feet);
    }

    [Theory]
    [InlineData(60, 0, 0.80, 0.018, 0, 0.846, 180)]
    [InlineData(90, 45, 0.90, 0.016735, -0.03, 0.587, 410)]
    public void Speed_left_after_the_measured_distance(
        double from, double to, double adhesion, double rolling, double grade, double efficiency, double feet)
    {
        // A hair less efficient and the car has not yet stopped: half a unit below, the speed left is at or above the printed one.
        Speed? left = StopDistance.After(
            Speed.FromMilesPerHour(from), Length.FromFeet(feet), ((efficiency - 0.0015) * adhesion) + rolling + grade, 1.04);
        Assert.True(left!.Value.MilesPerHour >= to);
        Speed? beyond = StopDistance.After(
            Speed.FromMilesPerHour(from), Length.FromFeet(feet), ((efficiency + 0.0015) * adhesion) + rolling + grade, 1.04);
        Assert.True(beyond is null || beyond.Value.MilesPerHour <= to);
    }
}
