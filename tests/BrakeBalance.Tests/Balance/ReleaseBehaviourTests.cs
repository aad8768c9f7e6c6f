using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Balance;

public class ReleaseBehaviourTests
{
    private const double Share = 0.75;

    private static Pressure Bar(double bars) => Pressure.FromBars(bars);

    private static Vehicle Car(double hysteresis, double knee = 25, double slope = 0.35) =>
        TestCars.With(120, 80, 2.6, 1.2, 0.55, 12_000)
            .WithRearValves(new ProportioningValve { Knee = Bar(knee), Slope = slope, Hysteresis = Bar(hysteresis) });

    // By hand: 12 kN, P₂ = 12·1.2/2.6 = 5.538 kN, h/E = 0.55/2.6, k = 0.8, sliding 0.6. Both slide at z = 0.6: N₂ = 5538.5 −
    // 0.6·12000·0.21154 = 4015.4 N,
    // N₁ = 7984.6 N. The front turns again at 0.6·7984.6/120 = 39.92 bar. Then it rolls and brakes with 120 p; the rear holds 0.6 N₂
    // with N₂ = (5538.5 − 0.21154·120 p)/(1 + 0.6·0.21154). Its line must fall to 0.6 N₂/80.
    [Theory]
    [InlineData(0)]
    [InlineData(4)]
    public void The_pressures_of_release_are_those_worked_out_by_hand(double hysteresis)
    {
        var behaviour = ReleaseBehaviour.Of(Car(hysteresis).Model(), Bar(150), 0.8, Share);
        Assert.Equal(0.6 * (12_000 - 4015.4) / 120, behaviour.FreeAt.Front!.Value.Bars, 0.001);

        double p = behaviour.FreeAt.Rear!.Value.Bars;
        bool frontRolls = p < behaviour.FreeAt.Front.Value.Bars;
        double rearLoad = frontRolls ? (5538.46 - 0.55 / 2.6 * 120 * p) / (1 + 0.6 * 0.55 / 2.6) : 4015.4;
        double line = 0.6 * rearLoad / 80;
        double released = Math.Min(Math.Min(p, 25 + 0.35 * (p - 25) + hysteresis), 25 + 0.35 * 125);
        Assert.Equal(line, released, 0.002);
    }

    [Fact]
    public void Locks_are_the_first_lock_up_of_the_balance_and_a_later_one_of_the_other_axle()
    {
        BalanceModel model = Car(0, knee: 15, slope: 0.2).Model();
        LockUp first = model.FirstLockUp(0.8)!;
        var behaviour = ReleaseBehaviour.Of(model, Bar(150), 0.8, Share);
        Assert.Equal(Axle.Front, first.First);
        Assert.Equal(first.At.MasterPressure.Bars, behaviour.LocksAt.Front!.Value.Bars, 1e-6);

        // The front slides with 0.6 N₁ while the rear rolls with 80 p₂ and locks at 0.8 N₂: N₂ = (P₂ − 0.21154·0.6 (12000 −
        // N₂))/… solved for N₂.
        double c = 0.55 / 2.6;
        double rearLoad = (5538.46 - c * 0.6 * 12_000) / (1 - c * 0.6 + c * 0.8);
        double line = 0.8 * rearLoad / 80;
        Assert.Equal(15 + (line - 15) / 0.2, behaviour.LocksAt.Rear!.Value.Bars, 0.01);
        Assert.Null(ReleaseBehaviour.Of(model, behaviour.LocksAt.Rear.Value * 0.99, 0.8, Share).LocksAt.Rear);
        Assert.True(ReleaseBehaviour.Of(model, behaviour.LocksAt.Rear.Value * 0.99, 0.8, Share).RearIsFreeWithFront);
    }

    [Fact]
    public void Hysteresis_moves_the_release_of_the_rear_and_not_its_lock()
    {
        var plain = ReleaseBehaviour.Of(Car(0).Model(), Bar(150), 0.8, Share);
        var late = ReleaseBehaviour.Of(Car(8).Model(), Bar(150), 0.8, Share);
        Assert.Equal(plain.LocksAt, late.LocksAt);
        Assert.Equal(plain.FreeAt.Front!.Value.Bars, late.FreeAt.Front!.Value.Bars, 1e-6);
        Assert.True(late.FreeAt.Rear < plain.FreeAt.Rear);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(5)]
    [InlineData(10)]
    public void The_highest_knee_frees_the_rear_with_the_front_and_a_little_more_does_not(double hysteresis)
    {
        Vehicle car = Car(hysteresis);
        Pressure knee = ReleaseBehaviour.HighestKnee(car, car.LoadCases[0], Bar(150), 0.8, Share)!.Value;
        bool Good(double bars) => ReleaseBehaviour.Of(car.WithRearKnee(Bar(bars)).Model(), Bar(150), 0.8, Share).RearIsFreeWithFront;
        Assert.True(Good(knee.Bars));
        Assert.False(Good(knee.Bars + 0.05));
        Assert.InRange(knee.Bars, 5, 60);
    }

    // Each bar of hysteresis must come off the outlet, and the outlet rises by 1 − slope for each bar of knee.
    [Fact]
    public void A_valve_that_lets_go_late_needs_a_knee_lower_by_its_hysteresis_over_one_less_slope()
    {
        Vehicle plain = Car(0), late = Car(5);
        double difference = (ReleaseBehaviour.HighestKnee(plain, plain.LoadCases[0], Bar(150), 0.8, Share)!.Value
            - ReleaseBehaviour.HighestKnee(late, late.LoadCases[0], Bar(150), 0.8, Share)!.Value).Bars;
        Assert.Equal(5 / (1 - 0.35), difference, 0.05);
    }

    [Fact]
    public void Without_a_valve_a_slope_must_be_given()
    {
        Vehicle bare = TestCars.With(120, 80, 2.6, 1.2, 0.55, 12_000);
        Assert.Throws<ArgumentException>(() => ReleaseBehaviour.HighestKnee(bare, bare.LoadCases[0], Bar(150), 0.8, Share));
        Assert.NotNull(ReleaseBehaviour.HighestKnee(bare, bare.LoadCases[0], Bar(150), 0.8, Share, slope: 0.35));
        Assert.Throws<ArgumentOutOfRangeException>(() => ReleaseBehaviour.Of(bare.Model(), Bar(150), 0.8, 1.1));
    }
}
