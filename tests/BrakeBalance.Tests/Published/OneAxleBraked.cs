using BrakeBalance.Balance;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// One axle braked to its limit: a = μ g x/(l − μ h) with the front brakes, μ g (l − x)/(l + μ h) with the rear ones, x from the
/// centre of gravity to the rear axle. Source: examination key with derivation, "Theory of Machines" (careerride.com, 4417). The exercises'
/// inputs were
/// read at the addresses named; their answers are recomputed (one posted answer to the first is wrong).
/// </summary>
[Source("Examination key \"Theory of Machines\" and exercises", Reading.Read)]
public class OneAxleBraked
{
    /// <summary>jiskha.com 1442241645: L = 2.5 m, h = 0.6 m, x = 1.15 m, 45 km/h, μ = 0.5; g = 9.81 m/s².</summary>
    [Theory]
    [InlineData(Axle.Front, 2.3649, 33.04)]
    [InlineData(Axle.Rear, 2.5640, 30.47)]
    public void Car_from_45_km_h_with_one_axle_not_braked(Axle notBraked, double deceleration, double distance)
    {
        LockUp lockUp = TestCars.FixedShare(0.5, 2.5, 2.5 - 1.15, 0.6).WithoutCircuit(notBraked).Model().FirstLockUp(0.5)!;
        Assert.NotEqual(notBraked, lockUp.First);
        double found = lockUp.At.BrakingRate * 9.81;
        Assert.Equal(deceleration, found, 0.00005);
        Assert.Equal(distance, 12.5 * 12.5 / (2 * found), 0.005);
    }

    [Fact]
    public void Car_from_45_km_h_with_all_wheels_at_their_limit()
    {
        double deceleration = TestCars.FixedShare(0.5, 2.5, 2.5 - 1.15, 0.6).Model().GreatestRate(0.5) * 9.81;
        Assert.Equal(4.905, deceleration, 0.0005);
        Assert.Equal(15.93, 12.5 * 12.5 / (2 * deceleration), 0.005);
    }

    /// <summary>
    /// askfilo.com 3334343737303238: wheelbase 120 in, x = 60 in, h = 36 in, f = 0.80, front brakes only, 60 mph; g = 32.2 ft/s².
    /// </summary>
    [Fact]
    public void Front_brakes_alone_stop_from_60_mph_at_0_52632_g_in_228_5_feet()
    {
        double rate = TestCars.FixedShare(0.5, 3.048, 1.524, 0.9144).WithoutCircuit(Axle.Rear).Model().FirstLockUp(0.80)!.At.BrakingRate;
        Assert.Equal(0.52632, rate, 0.000005);
        Assert.Equal(228.5, 88.0 * 88.0 / (2 * 32.2 * rate), 0.05);
    }

    /// <summary>
    /// examveda.com 198737: L = 4 m, h = 0.8 m, centre of gravity 1.2 m from the rear axle, μ = 0.8, front brakes only. The printed 2.4
    /// m/s² (g = 10)
    /// leaves load transfer out, which is the limit of a car without height; with load transfer it is 2.803 m/s² (recomputed, g = 9.81).
    /// </summary>
    [Fact]
    public void Front_brakes_alone_with_and_without_load_transfer()
    {
        double RateAt(double height) =>
            TestCars.FixedShare(0.5, 4, 2.8, height).WithoutCircuit(Axle.Rear).Model().FirstLockUp(0.8)!.At.BrakingRate;
        Assert.Equal(2.4, RateAt(1e-6) * 10, 0.05);
        Assert.Equal(2.803, RateAt(0.8) * 9.81, 0.0005);
    }

    /// <summary>
    /// First step of a load-transfer iteration (excerpt only, source unnamed): 3200 lbf of 6300 on the front axle, which brakes alone, f
    /// = 0.79:
    /// 2528 lbf, 0.401 g. That step leaves load transfer out, like a car without height.
    /// </summary>
    [Source("Excerpt of an unnamed text on load transfer", Reading.SecondHand)]
    [Fact]
    public void Static_first_step_of_the_iteration_is_0_401_g()
    {
        LockUp lockUp = TestCars.FixedShare(0.5, 3, 3 * 3100.0 / 6300, 1e-6, 6300).WithoutCircuit(Axle.Rear).Model().FirstLockUp(0.79)!;
        Assert.Equal(2528, lockUp.At.BrakingForces.Front.Newtons, 0.5);
        Assert.Equal(0.401, lockUp.At.BrakingRate, 0.0005);
    }
}
