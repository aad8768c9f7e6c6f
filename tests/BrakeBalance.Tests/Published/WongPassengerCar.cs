using BrakeBalance.Balance;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// Wong, Theory of Ground Vehicles, passenger car with a fixed distribution and rolling resistance: W = 21.24 kN, L = 2.87 m, l₁ = 1.27
/// m, h = 0.508 m, front share 0.60, rolling resistance 0.02. Inputs and order of lock-up from memory; the four-digit rates are recomputed
/// from (a/g)_f = (μ l₂/L + K f)/(K − μ h/L) and (a/g)_r = (μ l₁/L + (1 − K) f)/(1 − K + μ h/L).
/// </summary>
[Source("Wong, Theory of Ground Vehicles", Reading.FromMemory)]
public class WongPassengerCar
{
    private const double WeightNewtons = 21_240;

    private static readonly Vehicle Car = TestCars.FixedShare(0.60, 2.87, 1.27, 0.508, WeightNewtons, rolling: 0.02);

    [Theory]
    [InlineData(0.8, 0.9991)]
    [InlineData(0.2, 0.2187)]
    public void Front_axle_is_at_its_limit_at(double adhesion, double rate)
    {
        BalancePoint at = Car.Model().AtRate(rate)!;
        Force limit = Car.Model().FrontForceAtLimit(adhesion, at.BrakingForces.Rear)!.Value;
        Assert.Equal(0, (at.BrakingForces.Front - limit).Newtons / WeightNewtons, 0.00005);
    }

    [Theory]
    [InlineData(0.8, 0.6684)]
    [InlineData(0.2, 0.2216)]
    public void Rear_axle_is_at_its_limit_at(double adhesion, double rate)
    {
        BalancePoint at = Car.Model().AtRate(rate)!;
        Force limit = Car.Model().RearForceAtLimit(adhesion, at.BrakingForces.Front);
        Assert.Equal(0, (at.BrakingForces.Rear - limit).Newtons / WeightNewtons, 0.00005);
    }

    [Theory]
    [InlineData(0.8, Axle.Rear, 0.6684)]
    [InlineData(0.2, Axle.Front, 0.2187)]
    public void First_to_lock(double adhesion, Axle first, double rate)
    {
        LockUp lockUp = Car.Model().FirstLockUp(adhesion)!;
        Assert.Equal(first, lockUp.First);
        Assert.Equal(rate, lockUp.At.BrakingRate, 0.00005);
    }

    [Theory]
    [InlineData(0.8, 0.9729, 0.6536)]
    [InlineData(0.2, 0.1975, 0.2033)]
    public void Without_rolling_resistance_the_closed_forms_give(double adhesion, double front, double rear)
    {
        var closed = new FixedRatio { StaticRearShare = 1.27 / 2.87, RearForceShare = 0.4, RelativeHeight = 0.508 / 2.87 };
        Assert.Equal(front, closed.FrontLockRate(adhesion)!.Value, 0.00005);
        Assert.Equal(rear, closed.RearLockRate(adhesion), 0.00005);
        Assert.Equal(Math.Min(front, rear), (Car with { RollingResistanceCoefficient = 0 }).Model()
            .FirstLockUp(adhesion)!.At.BrakingRate, 0.00005);
    }

    [Fact]
    public void Without_rolling_resistance_the_order_changes_at_0_2402() =>
        Assert.Equal(0.2402, Assert.Single((Car with { RollingResistanceCoefficient = 0 }).Model().IdealCrossings()).BrakingRate, 0.00005);

    [Fact]
    public void Best_front_share_on_0_8_is_0_7026()
    {
        PerAxle<Force> ideal = Car.Model().IdealForces(0.82);
        Assert.Equal(0.7026, ideal.Front / (ideal.Front + ideal.Rear), 0.00005);
    }

    // a/g over μ is 1.09 on ice: rolling resistance is not the brakes' doing and must stay out of the efficiency.
    [Fact]
    public void On_a_slippery_road_the_rate_exceeds_adhesion_but_the_efficiency_stays_below_one()
    {
        LockUp lockUp = Car.Model().FirstLockUp(0.2)!;
        Assert.Equal(1.09, lockUp.At.BrakingRate / 0.2, 0.005);
        Assert.InRange(lockUp.Efficiency, 0.98, 1);
    }
}
