using BrakeBalance.Balance;
using BrakeBalance.Stops;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// Yu Zhisheng, Automobile Theory, exercise 4.3, a truck with two circuits: front share 0.38, L = 3.950 m; empty 4080 kg, a = 2.100 m, h
/// = 0.845 m;
/// laden 9290 kg, a = 2.950 m, h = 1.170 m; adhesion 0.80, 30 km/h, delays of 0.02 s and 0.02 s, g = 9.8 m/s². Inputs and answers read
/// in a course
/// report, not in the book; the report has no answers for the empty truck with a circuit lost: those are recomputed.
/// </summary>
[Source("Yu, Automobile Theory, exercise 4.3, course report", Reading.SecondHand)]
public sealed class YuExercise4_3Truck
{
    private const double Adhesion = 0.80;
    private static readonly Vehicle Empty = TestCars.FixedShare(0.38, 3.950, 2.100, 0.845, 4080 * 9.8);
    private static readonly Vehicle Laden = TestCars.FixedShare(0.38, 3.950, 2.950, 1.170, 9290 * 9.8);

    [Fact]
    public void Synchronous_adhesion_laden_is_0_428() =>
        Assert.Equal(0.428, Assert.Single(Laden.Model().IdealCrossings()).BrakingRate, 0.0005);

    // Printed −0.413: there is none on any road, and the rear axle locks first everywhere.
    [Fact]
    public void Empty_truck_has_no_synchronous_adhesion()
    {
        Assert.Equal(-0.413, ((3.950 * 0.38) - (3.950 - 2.100)) / 0.845, 0.0005);
        Assert.Empty(Empty.Model().IdealCrossings());
        Assert.All([0.1, 0.4, 0.8], adhesion => Assert.Equal(Axle.Rear, Empty.Model().FirstLockUp(adhesion)!.First));
    }

    [Theory]
    [InlineData(true, null, 0.8715, 6.83, 5.33)]
    [InlineData(false, null, 0.6720, 5.27, 6.84)]
    [InlineData(true, Axle.Front, 0.6038, 4.73, 7.59)]
    [InlineData(true, Axle.Rear, 0.3318, 2.60, 13.60)]
    [InlineData(false, Axle.Front, 0.4540, 3.56, 10.01)] // recomputed
    [InlineData(false, Axle.Rear, 0.5651, 4.43, 8.09)] // recomputed
    public void Efficiency_deceleration_and_distance(bool laden, Axle? lost, double efficiency, double deceleration, double metres)
    {
        Vehicle truck = laden ? Laden : Empty;
        LockUp lockUp = (lost is { } axle ? truck.WithoutCircuit(axle) : truck).Model().FirstLockUp(Adhesion)!;
        Assert.Equal(efficiency, lockUp.Efficiency, 0.00005);
        double reached = lockUp.At.BrakingRate * 9.8;
        Assert.Equal(deceleration, reached, 0.005);
        Length distance = StopDistance.WithDelay(
            Speed.FromKilometersPerHour(30), Duration.FromSeconds(0.02 + (0.02 / 2)), Acceleration.FromMetersPerSecondSquared(reached));
        Assert.Equal(metres, distance.Meters, 0.005);
    }
}
