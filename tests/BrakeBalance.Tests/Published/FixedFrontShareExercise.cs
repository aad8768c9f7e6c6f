using BrakeBalance.Balance;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// Exercise (askfilo.com 3239393533393637, inputs read, answer without numbers): which fixed front share lets the front lock first,
/// light and laden?
/// L = 2.7 m, μ = 0.9, rolling resistance 0.01; light 1500 kg, centre of gravity 1.0 m behind the front axle and 0.45 m high; laden 2200
/// kg,
/// 1.25 m and 0.50 m. Recomputed from K = (l_r + h (μ + f))/L, the form of Mannering and Washburn: 0.781296 light, 0.705556 laden.
/// </summary>
[Source("Exercise on a fixed front share, light and laden", Reading.Read)]
public class FixedFrontShareExercise
{
    [Theory]
    [InlineData(1500, 1.0, 0.45, 0.781296)]
    [InlineData(2200, 1.25, 0.50, 0.705556)]
    public void The_order_changes_at_that_share(double kilograms, double frontAxleToCg, double height, double share)
    {
        Axle? First(double frontShare) =>
            TestCars.FixedShare(frontShare, 2.7, frontAxleToCg, height, kilograms * 9.81, rolling: 0.01).Model().FirstLockUp(0.9)!.First;

        Assert.Equal(Axle.Front, First(share + 0.001));
        Assert.Equal(Axle.Rear, First(share - 0.001));
        Assert.Null(First(share));
    }

    [Theory]
    [InlineData(1500, 1.0, 0.45, 11496.8, 3218.2, 13243.5)]
    [InlineData(2200, 1.25, 0.50, 15227.3, 6354.7, 19423.8)]
    public void Axle_loads_and_greatest_braking_force(double kilograms, double frontAxleToCg, double height, double front, double rear,
        double braking)
    {
        BalanceModel model = TestCars.FixedShare(0.7, 2.7, frontAxleToCg, height, kilograms * 9.81, rolling: 0.01).Model();
        double rate = model.GreatestRate(0.9);
        Assert.Equal(0.91, rate, 1e-9);
        Assert.Equal(front, model.NormalReactions(rate).Front.Newtons, 0.05);
        Assert.Equal(rear, model.NormalReactions(rate).Rear.Newtons, 0.05);
        Assert.Equal(braking, (model.IdealForces(rate).Front + model.IdealForces(rate).Rear).Newtons, 0.05);
    }
}
