using BrakeBalance.Balance;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Balance;

/// <summary>The search for the greatest setting that keeps the front first.</summary>
public class SettingSearchTests
{
    private static readonly SettingConditions Conditions = new() { LowestAdhesion = 0.2, HighestAdhesion = 1.0, FrictionSpread = 0.08 };

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
        SettingAdvice advice = SettingSearch.GreatestSafeKnee(RearHappy, Conditions, slope);
        Assert.True(advice.ValveNeeded);
        Pressure knee = advice.Outcome!.Knee;
        Assert.True(SettingSearch.FrontFirstEverywhere(RearHappy.WithRearKnee(knee, slope), Conditions));
        Assert.False(SettingSearch.FrontFirstEverywhere(RearHappy.WithRearKnee(knee + Pressure.FromBars(0.05), slope), Conditions));
        Assert.True(advice.Outcome.FrontFirstEverywhere);
        Assert.Equal(0, advice.Outcome.RearFirstShare);
        Assert.InRange(advice.Outcome.WorstEfficiency, 0.3, advice.Outcome.MeanEfficiency);
        Assert.InRange(advice.Outcome.MeanEfficiency, advice.Outcome.WorstEfficiency, 1);
        Assert.Contains("greatest that keeps the front first", advice.Sentence);
    }

    [Fact]
    public void Spread_of_friction_costs_knee()
    {
        SettingAdvice advice = SettingSearch.GreatestSafeKnee(RearHappy, Conditions, 0.2);
        Assert.True(advice.Margin > Pressure.Zero);
        Assert.Equal(advice.NominalKnee!.Value.Bars - advice.Outcome!.Knee.Bars, advice.Margin!.Value.Bars, 1e-9);
        SettingAdvice exact = SettingSearch.GreatestSafeKnee(RearHappy, Conditions with { FrictionSpread = 0 }, 0.2);
        Assert.Equal(exact.Outcome!.Knee.Bars, advice.NominalKnee.Value.Bars, 1e-9);
    }

    [Fact]
    public void A_car_that_is_rear_first_on_ice_already_has_no_safe_knee()
    {
        // A small pressure suffices on ice, and a hold-off valve leaves that to the rear.
        Vehicle car = RearHappy.WithFrontValves(new HoldOffValve { OpeningPressure = Pressure.FromBars(40), BlendPressure = Pressure.FromBars(60) });
        SettingAdvice advice = SettingSearch.GreatestSafeKnee(car, Conditions, 1.0);
        Assert.Null(advice.Outcome);
        Assert.Null(advice.Margin);
        Assert.Contains("No knee keeps the front first", advice.Sentence);
    }

    [Fact]
    public void A_car_with_much_front_braking_needs_no_valve()
    {
        SettingAdvice advice = SettingSearch.GreatestSafeKnee(TestCars.FixedShare(0.85, 2.5, 1.1, 0.5), Conditions, 0.3);
        Assert.False(advice.ValveNeeded);
        Assert.Contains("No valve is needed", advice.Sentence);
        Assert.Equal(250, advice.Outcome!.Knee.Bars, 1e-6);
    }

    [Fact]
    public void Slope_of_the_cars_own_valve_is_used_when_none_is_given()
    {
        Vehicle car = RearHappy.WithRearValves(new ProportioningValve { Knee = Pressure.FromBars(20), Slope = 0.25 });
        Assert.Equal(0.25, SettingSearch.GreatestSafeKnee(car, Conditions).Outcome!.Slope);
        Assert.Equal("slope", Assert.Throws<ArgumentException>(() => SettingSearch.GreatestSafeKnee(RearHappy, Conditions)).ParamName);
    }

    [Fact]
    public void Load_case_may_be_chosen_and_the_worst_one_rules()
    {
        double Knee(params string[] loads) => SettingSearch.GreatestSafeKnee(RearHappy, Conditions with { LoadCases = [.. loads] }, 0.2).Outcome!.Knee.Bars;
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
    public void Sweep_can_be_stopped()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => SettingSearch.Sweep(RearHappy, Conditions, [Pressure.FromBars(10)], [0.1], null, stop.Token));
    }

    [Fact]
    public void Smallest_safe_front_share_of_a_balance_bar_is_safe_and_a_thousandth_less_is_not()
    {
        Vehicle car = RearHappy with
        {
            Hydraulics = RearHappy.Hydraulics with
            {
                Split = new BalanceBarSplit { FrontForceShare = 0.5, FrontBore = Length.FromMillimeters(17.8), RearBore = Length.FromMillimeters(20.6) },
            },
        };
        double share = SettingSearch.SmallestSafeFrontShare(car, Conditions)!.Value;
        Vehicle With(double frontShare) => car with { Hydraulics = car.Hydraulics with { Split = (BalanceBarSplit)car.Hydraulics.Split with { FrontForceShare = frontShare } } };
        Assert.True(SettingSearch.FrontFirstEverywhere(With(share), Conditions));
        Assert.False(SettingSearch.FrontFirstEverywhere(With(share - 0.001), Conditions));
        Assert.Equal("vehicle", Assert.Throws<ArgumentException>(() => SettingSearch.SmallestSafeFrontShare(RearHappy, Conditions)).ParamName);
    }

    [Fact]
    public void No_share_of_the_bar_may_be_safe()
    {
        Vehicle car = TestCars.FixedShare(0.12, 2.5, 1.1, 0.55) with
        {
            Hydraulics = new BrakeHydraulics { Split = new BalanceBarSplit { FrontForceShare = 0.5, FrontBore = Length.FromMillimeters(20), RearBore = Length.FromMillimeters(20) } },
        };
        Assert.Null(SettingSearch.SmallestSafeFrontShare(car, Conditions));
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
        SettingAdvice advice = SettingSearch.GreatestSafeKnee(car, Conditions, 0.2);
        Assert.Null(advice.Outcome);
        Assert.NotNull(advice.NominalKnee);
        Assert.Equal(1, SettingSearch.Evaluate(car, Conditions, Pressure.FromBars(10), 0.2).RearFirstShare);
    }

    [Fact]
    public void Friction_at_the_top_of_its_range_still_has_an_answer()
    {
        Vehicle car = RearHappy with { Brakes = RearHappy.Brakes.Select(brake => brake.WithFriction(1.2)) };
        Assert.NotNull(SettingSearch.GreatestSafeKnee(car, Conditions, 0.2).Outcome);
    }

    [Fact]
    public void Conditions_out_of_range_are_refused()
    {
        Assert.Equal("LowestAdhesion", Assert.Throws<ArgumentOutOfRangeException>(() => Conditions with { LowestAdhesion = 0.01 }).ParamName);
        Assert.Equal("FrictionSpread", Assert.Throws<ArgumentOutOfRangeException>(() => Conditions with { FrictionSpread = 0.6 }).ParamName);
        Assert.Equal("AdhesionSteps", Assert.Throws<ArgumentOutOfRangeException>(() => Conditions with { AdhesionSteps = 3 }).ParamName);
        Assert.Contains("below the highest", Assert.Throws<InvalidOperationException>(() => (Conditions with { LowestAdhesion = 1.0 }).Adhesions).Message);
        Assert.Equal(41, Conditions.Adhesions.Count);
        Assert.Equal(0.2, Conditions.Adhesions[0]);
        Assert.Equal(1.0, Conditions.Adhesions[^1], 1e-12);
    }
}
