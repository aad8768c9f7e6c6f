using BrakeBalance.Balance;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Balance;

/// <summary>The search for the greatest setting that keeps the front first.</summary>
public class SettingSearchTests
{
    private static readonly Conditions Conditions = new() { BrakeStates = [new BrakeState { Name = "normal" }] };

    private static readonly Vehicle RearHappy = TestCars.FixedShare(0.6, 2.5, 1.1, 0.55) with
    {
        LoadCases = [TestCars.Load("driver only", 10_000, 1.10, 0.55), TestCars.Load("laden", 13_000, 1.30, 0.57)],
    };

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.15)]
    [InlineData(0.3)]
    public void Greatest_safe_knee_is_safe_and_a_little_more_is_not(double slope)
    {
        SettingLimit limit = SettingSearch.Limit(RearHappy, Conditions, slope);
        Assert.True(limit.Needed);
        Pressure knee = limit.Knee!.Value;
        Assert.Null(SettingSearch.RearFirst(limit.Set(RearHappy)!, Conditions));
        Assert.NotNull(SettingSearch.RearFirst(RearHappy.WithRearKnee(knee + Pressure.FromBars(0.05), slope), Conditions));
        SettingOutcome outcome = SettingSearch.Evaluate(RearHappy, Conditions, knee, slope);
        Assert.True(outcome.FrontFirstEverywhere);
        Assert.Equal(0, outcome.RearFirstShare);
        Assert.InRange(outcome.WorstEfficiency, 0.3, outcome.MeanEfficiency);
        Assert.InRange(outcome.MeanEfficiency, outcome.WorstEfficiency, 1);
        (double mean, double least) = SettingSearch.Efficiency(limit.Set(RearHappy)!, Conditions);
        Assert.Equal(outcome.MeanEfficiency, mean, 1e-9);
        Assert.Equal(outcome.WorstEfficiency, least, 1e-9);
    }

    [Fact]
    public void Spread_of_friction_and_states_of_the_brakes_cost_knee()
    {
        double Knee(Conditions conditions) => SettingSearch.Limit(RearHappy, conditions, 0.2).Knee!.Value.Bars;
        Assert.True(Knee(Conditions.AtMiddle) > Knee(Conditions) + 0.5);
        Assert.Equal(Knee(Conditions with { FrictionSpread = default }), Knee(Conditions.AtMiddle), 1e-9);
        Assert.True(Knee(Conditions) > Knee(new Conditions()) + 0.5);
        BrakeState grabbing = new() { Name = "grabbing at the rear", Rear = 1.08 };
        Assert.Equal("grabbing at the rear",
            SettingSearch.Limit(RearHappy, Conditions with { BrakeStates = [grabbing] }, 0.2).Binding!.BrakeState);
    }

    [Fact]
    public void The_margin_of_a_setting_is_how_much_stronger_the_rear_may_be()
    {
        Vehicle set = RearHappy.WithRearKnee(Pressure.FromBars(10), 0.2);
        double margin = SettingSearch.FrictionMargin(set, Conditions);
        Assert.Null(SettingSearch.RearFirst(set.WithFrictionFactors(1, 1 + margin - 0.002), Conditions.AtMiddle));
        Assert.NotNull(SettingSearch.RearFirst(set.WithFrictionFactors(1, 1 + margin + 0.002), Conditions.AtMiddle));
    }

    [Fact]
    public void A_car_that_is_rear_first_on_ice_already_has_no_safe_knee()
    {
        // A small pressure suffices on ice, and a metering valve leaves that to the rear.
        Vehicle car = RearHappy.WithFrontValves(
            new MeteringValve { OpeningPressure = Pressure.FromBars(40), BlendPressure = Pressure.FromBars(60) });
        SettingLimit limit = SettingSearch.Limit(car, Conditions, 1.0);
        Assert.False(limit.Exists);
        Assert.Null(limit.Set(car));
        Assert.NotNull(limit.Binding);
    }

    [Fact]
    public void A_car_whose_rear_is_held_by_another_valve_needs_no_more()
    {
        Vehicle held = RearHappy with
        {
            Hydraulics = RearHappy.Hydraulics with { RearValves = [new LimitingValve { Limit = Pressure.FromBars(3) }] },
        };
        Assert.Null(SettingSearch.RearFirst(held, Conditions));
        Assert.False(SettingSearch.Limit(held, Conditions).Needed);
        Assert.True(SettingSearch.Limit(RearHappy, Conditions).Needed);
    }

    [Fact]
    public void A_car_with_much_front_braking_needs_no_valve()
    {
        SettingLimit limit = SettingSearch.Limit(TestCars.FixedShare(0.85, 2.5, 1.1, 0.5), Conditions, 0.3);
        Assert.False(limit.Needed);
        Assert.Null(limit.Binding);
        Assert.Equal(250, limit.Knee!.Value.Bars, 1e-6);
    }

    [Fact]
    public void Slope_of_the_cars_own_valve_is_used_when_none_is_given()
    {
        Vehicle car = RearHappy.WithRearValves(new ProportioningValve { Knee = Pressure.FromBars(20), Slope = 0.25 });
        Assert.Equal(0.25, SettingSearch.Limit(car, Conditions).Slope);
        Assert.Equal(SettingVariable.Knee, SettingSearch.VariableOf(car));
        Assert.Equal(SettingSearch.AddedSlope, SettingSearch.Limit(RearHappy, Conditions).Slope);
        Assert.Equal(SettingVariable.AddedKnee, SettingSearch.VariableOf(RearHappy));
    }

    [Fact]
    public void Load_case_may_be_chosen_and_the_worst_one_rules()
    {
        double Knee(params string[] loads) =>
            SettingSearch.Limit(RearHappy, Conditions with { LoadCases = [.. loads] }, 0.2).Knee!.Value.Bars;
        Assert.True(Knee("laden") > Knee("driver only"));
        Assert.Equal(Knee("driver only"), Knee(), 0.02);
        Assert.Contains("\"laden\"", Assert.Throws<ArgumentException>(() => Knee("empty")).Message);
    }

    [Fact]
    public void Sweep_gives_the_same_as_each_setting_by_itself()
    {
        Pressure[] knees = [Pressure.FromBars(10), Pressure.FromBars(25), Pressure.FromBars(60)];
        double[] slopes = [0.1, 0.4];
        IReadOnlyList<SettingOutcome> outcomes = SettingSearch.Sweep(RearHappy, Conditions, knees, slopes);
        Assert.Equal(6, outcomes.Count);
        for (int i = 0; i < outcomes.Count; i++)
        {
            SettingOutcome alone = SettingSearch.Evaluate(RearHappy, Conditions, knees[i / 2], slopes[i % 2]);
            Assert.Equal(alone.RearFirstShare, outcomes[i].RearFirstShare);
            Assert.Equal(alone.MeanEfficiency, outcomes[i].MeanEfficiency);
            Assert.Equal(alone.FrontFirstEverywhere, outcomes[i].FrontFirstEverywhere);
        }

        Assert.Contains(outcomes, outcome => outcome.FrontFirstEverywhere);
        Assert.Contains(outcomes, outcome => outcome.RearFirstShare > 0.2);
    }

    [Fact]
    public void Smallest_safe_front_share_of_a_balance_bar_is_safe_and_a_thousandth_less_is_not()
    {
        Vehicle car = RearHappy with
        {
            Hydraulics = RearHappy.Hydraulics with
            {
                Split = new BalanceBarSplit
                {
                    FrontForceShare = 0.5,
                    FrontBore = Length.FromMillimeters(17.8),
                    RearBore = Length.FromMillimeters(20.6),
                },
            },
        };
        double share = SettingSearch.Limit(car, Conditions).FrontForceShare!.Value;
        Assert.Null(SettingSearch.RearFirst(car.WithFrontForceShare(share), Conditions));
        Assert.NotNull(SettingSearch.RearFirst(car.WithFrontForceShare(share - 0.001), Conditions));
        Assert.Throws<InvalidOperationException>(() => RearHappy.WithFrontForceShare(0.5));
    }

    [Fact]
    public void No_share_of_the_bar_may_be_safe()
    {
        Vehicle car = TestCars.FixedShare(0.12, 2.5, 1.1, 0.55) with
        {
            Hydraulics = new BrakeHydraulics
            {
                Split = new BalanceBarSplit
                {
                    FrontForceShare = 0.5,
                    FrontBore = Length.FromMillimeters(20),
                    RearBore = Length.FromMillimeters(20)
                }
            },
        };
        Assert.False(SettingSearch.Limit(car, Conditions).Exists);
    }

    // C* = C₀ x/(1 + (S − 1)(1 − x)) locks by itself at x = S/(S − 1) = 1.0526, inside a spread of 8 %.
    [Fact]
    public void Rear_shoes_that_lock_by_themselves_within_the_spread_leave_no_safe_knee()
    {
        Vehicle car = RearHappy with
        {
            Brakes = new(RearHappy.Brakes.Front, new DrumBrake
            {
                FrictionCoefficient = 0.4,
                Arrangement = ShoeArrangement.DuoServo,
                WheelCylinderDiameter = Length.FromMillimeters(12),
                EffectiveRadius = Length.FromMillimeters(120),
                Shoes = new CatalogueShoes { NominalFriction = 0.4, NominalBrakeFactor = 4, NominalSensitivity = 20 },
            }),
        };
        Assert.False(SettingSearch.Limit(car, Conditions, 0.2).Exists);
        Assert.True(SettingSearch.Limit(car, Conditions.AtMiddle, 0.2).Exists);
        Assert.Equal(1, SettingSearch.Evaluate(car, Conditions, Pressure.FromBars(10), 0.2).RearFirstShare);
    }

    [Fact]
    public void Friction_at_the_top_of_its_range_still_has_an_answer()
    {
        Vehicle car = RearHappy with { Brakes = RearHappy.Brakes.Select(brake => brake.WithFriction(1.2)) };
        Assert.True(SettingSearch.Limit(car, Conditions, 0.2).Exists);
    }

    [Fact]
    public void Conditions_out_of_range_are_refused()
    {
        Assert.Equal("LowestAdhesion",
            Assert.Throws<ArgumentOutOfRangeException>(() => Conditions with { LowestAdhesion = 0.01 }).ParamName);
        Assert.Throws<ArgumentOutOfRangeException>(() => Conditions with { FrictionSpread = new(0.6, 0) });
        Assert.Throws<ArgumentException>(() => Conditions with { BrakeStates = [] });
        Assert.Equal("AdhesionSteps", Assert.Throws<ArgumentOutOfRangeException>(() => Conditions with { AdhesionSteps = 3 }).ParamName);
        Assert.Contains("below the highest",
            Assert.Throws<InvalidOperationException>(() => (Conditions with { LowestAdhesion = 1.0 }).Adhesions).Message);
        Assert.Equal(41, Conditions.Adhesions.Count);
        Assert.Equal(0.2, Conditions.Adhesions[0]);
        Assert.Equal(1.0, Conditions.Adhesions[^1], 1e-12);
    }
}
