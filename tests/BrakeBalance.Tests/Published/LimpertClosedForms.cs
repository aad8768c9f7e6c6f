using BrakeBalance.Balance;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// Limpert, Brake Design and Safety, closed forms for a fixed distribution (from memory; no printed numbers were found):
/// z_crit = (Ψ − Φ)/χ, E_f = (1 − Ψ)/(1 − Φ − k χ), E_r = Ψ/(Φ + k χ). The general solver has to agree with them
/// everywhere.
/// </summary>
[Source("Limpert, Brake Design and Safety", Reading.FromMemory)]
public class LimpertClosedForms
{
    public static TheoryData<double, double, double> Grid()
    {
        var grid = new TheoryData<double, double, double>();
        foreach (double rearLoad in new[] { 0.3, 0.4, 0.45, 0.5, 0.6, 0.7 })
        {
            foreach (double rearForce in new[] { 0.05, 0.2, 0.3, 0.4, 0.55, 0.7 })
            {
                foreach (double height in new[] { 0.1, 0.2, 0.3 })
                {
                    grid.Add(rearLoad, rearForce, height);
                }
            }
        }

        return grid;
    }

    [Theory]
    [MemberData(nameof(Grid))]
    public void Solver_agrees_with_the_closed_forms(double rearLoad, double rearForce, double height)
    {
        var closed = new FixedRatio { StaticRearShare = rearLoad, RearForceShare = rearForce, RelativeHeight = height };
        BalanceModel model = TestCars.FixedShare(1 - rearForce, 2.5, 2.5 * rearLoad, 2.5 * height).Model();
        foreach (double adhesion in new[] { 0.05, 0.2, 0.4, 0.6, 0.8, 1.0, 1.3 })
        {
            double expected = closed.FirstLockRate(adhesion);
            LockUp? lockUp = model.FirstLockUp(adhesion);
            if (expected > 2.5)
            {
                Assert.Null(lockUp);
                continue;
            }

            Assert.Equal(expected, lockUp!.At.BrakingRate, 1e-9);
            Assert.Equal(closed.Efficiency(adhesion), lockUp.Efficiency, 1e-9);
            double front = closed.FrontLockRate(adhesion) ?? double.PositiveInfinity;
            if (Math.Abs(front - closed.RearLockRate(adhesion)) > 0.01)
            {
                Assert.Equal(front < closed.RearLockRate(adhesion) ? Axle.Front : Axle.Rear, lockUp.First);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Grid))]
    public void Critical_rate_is_where_installed_and_ideal_curve_cross(double rearLoad, double rearForce, double height)
    {
        double? critical = new FixedRatio { StaticRearShare = rearLoad, RearForceShare = rearForce, RelativeHeight = height }.CriticalRate;
        BalanceModel model = TestCars.FixedShare(1 - rearForce, 2.5, 2.5 * rearLoad, 2.5 * height).Model();
        if (critical is > 0.02 and < 2.4)
        {
            Assert.Equal(critical.Value, Assert.Single(model.IdealCrossings()).BrakingRate, 1e-6);
        }
        else if (critical is null or > 2.6)
        {
            Assert.Empty(model.IdealCrossings());
        }
    }

    [Fact]
    public void With_more_rear_force_than_rear_load_the_rear_leads_at_every_rate()
    {
        var closed = new FixedRatio { StaticRearShare = 0.40, RearForceShare = 0.45, RelativeHeight = 0.2 };
        Assert.Null(closed.CriticalRate);
        BalanceModel model = TestCars.FixedShare(0.55, 2.5, 1.0, 0.5).Model();
        Assert.Empty(model.IdealCrossings());
        Assert.All(new[] { 0.05, 0.2, 0.5, 0.8, 1.2 }, adhesion => Assert.Equal(Axle.Rear, model.FirstLockUp(adhesion)!.First));
        Assert.Equal(0.1, model.FirstRearLedRate(0.1, 0.8)!.Value, 1e-6);
    }

    [Fact]
    public void A_front_axle_whose_load_grows_faster_than_its_demand_never_locks()
    {
        var closed = new FixedRatio { StaticRearShare = 0.5, RearForceShare = 0.7, RelativeHeight = 0.3 };
        Assert.Null(closed.FrontLockRate(1.1));
        Assert.Equal(Axle.Rear, TestCars.FixedShare(0.3, 2.5, 1.25, 0.75).Model().FirstLockUp(1.1)!.First);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-0.5)]
    [InlineData(double.NaN)]
    public void An_impossible_adhesion_is_refused(double adhesion)
    {
        var closed = new FixedRatio { StaticRearShare = 0.5, RearForceShare = 0.3, RelativeHeight = 0.2 };
        Assert.Equal("adhesion", Assert.Throws<ArgumentOutOfRangeException>(() => closed.FrontLockRate(adhesion)).ParamName);
        Assert.Equal("adhesion", Assert.Throws<ArgumentOutOfRangeException>(() => closed.RearLockRate(adhesion)).ParamName);
        Assert.Equal("adhesion", Assert.Throws<ArgumentOutOfRangeException>(() => closed.Efficiency(adhesion)).ParamName);
    }
}
