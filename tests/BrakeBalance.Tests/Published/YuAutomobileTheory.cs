using BrakeBalance.Balance;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// Yu Zhisheng, Automobile Theory, example 4.5: a car with a fixed distribution, and the same car with a circuit lost.
/// L = 2.7 m, a = 1.45 m, b = 1.25 m, h = 0.63 m, front share 0.65, adhesion 0.7.
/// Inputs and printed answers seen in a posted answer sheet (haowendang.cn), not in the book itself.
/// </summary>
[Source("Yu, Automobile Theory, example 4.5, posted answer sheet", Reading.SecondHand)]
public class YuAutomobileTheory
{
    private const double Adhesion = 0.7;

    private static readonly Vehicle Car = TestCars.FixedShare(0.65, 2.7, 1.45, 0.63);

    [Fact]
    public void Synchronous_adhesion_is_0_8() =>
        Assert.Equal(0.8, Assert.Single(Car.Model().IdealCrossings()).BrakingRate, 0.05);

    [Fact]
    public void Front_axle_locks_first_with_an_efficiency_of_0_951()
    {
        LockUp lockUp = Car.Model().FirstLockUp(Adhesion)!;
        Assert.Equal(Axle.Front, lockUp.First);
        Assert.Equal(0.951, lockUp.Efficiency, 0.0005);
    }

    // The sheet takes g = 9.8 m/s².
    [Fact]
    public void Greatest_deceleration_is_6_53() => Assert.Equal(6.53, Car.Model().FirstLockUp(Adhesion)!.At.BrakingRate * 9.8, 0.005);

    [Theory]
    [InlineData(Axle.Front, Axle.Rear, 0.46, 0.32)]
    [InlineData(Axle.Rear, Axle.Front, 0.55, 0.39)]
    public void With_an_axle_circuit_lost_the_other_axle_brakes_alone(Axle lost, Axle locks, double efficiency, double rate)
    {
        LockUp lockUp = Car.WithoutCircuit(lost).Model().FirstLockUp(Adhesion)!;
        Assert.Equal(locks, lockUp.First);
        Assert.Equal(efficiency, lockUp.Efficiency, 0.005);
        Assert.Equal(rate, lockUp.At.BrakingRate, 0.005);
    }

    // For diagonal and half-axle splits the sheet prints E = 0.95 and half the whole car's rate, 0.33 g.
    [Fact]
    public void With_half_of_each_axle_lost_the_sheet_halves_the_whole_rate()
    {
        LockUp whole = Car.Model().FirstLockUp(Adhesion)!;
        Assert.Equal(0.95, whole.Efficiency, 0.005);
        Assert.Equal(0.33, whole.At.BrakingRate / 2, 0.005);
    }

    // Differs from source: with half the braking less load moves forward, so the one front wheel left locks earlier. Statics of one
    // wheel, recomputed:
    // z = (φ/2) b/(β L − (φ/2) h) = 0.2851, not 0.333.
    [Fact]
    public void With_half_of_each_axle_lost_less_load_moves_forward_than_the_sheet_assumes()
    {
        Vehicle half = Car with { Tyres = Car.Tyres.Select(tyre => tyre with { AdhesionFactor = 0.5 }) };
        Assert.Equal(0.2851, half.Model().FirstLockUp(Adhesion)!.At.BrakingRate, 0.00005);
    }
}

/// <summary>
/// A truck with its front circuit lost, from a university question bank: a = 2.1 m, b = 1.85 m, h = 0.85 m, adhesion 0.8.
/// The statement and "rear locks first" were read; the printed numbers are missing from the text, so those here are recomputed. The
/// book's own table
/// has h = 0.845 m (see <see cref="YuExercise4_3Truck"/>); the question bank rounds it.
/// </summary>
[Source("Yu, Automobile Theory, exercise 4.3, question bank", Reading.SecondHand)]
public class TruckWithFrontCircuitLost
{
    [Fact]
    public void Rear_axle_locks_first_at_0_3629()
    {
        LockUp lockUp = TestCars.FixedShare(0.5, 3.95, 2.1, 0.85).WithoutCircuit(Axle.Front).Model().FirstLockUp(0.8)!;
        Assert.Equal(Axle.Rear, lockUp.First);
        Assert.Equal(0.3629, lockUp.At.BrakingRate, 0.00005);
        Assert.Equal(0.4536, lockUp.Efficiency, 0.00005);
    }
}
