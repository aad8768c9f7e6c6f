using BrakeBalance.Hydraulics;
using BrakeBalance.Summaries;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Summaries;

/// <summary>The headless summary: complete, in the order asked for, and loud about what is dangerous.</summary>
public class BalanceSummaryTests
{
    private static readonly Vehicle Car = TestCars.FixedShare(0.62, 2.5, 1.1, 0.55) with
    {
        LoadCases = [TestCars.Load("driver only", 10_000, 1.10, 0.55), TestCars.Load("laden", 13_000, 1.30, 0.57)],
    };

    [Fact]
    public void Every_load_case_rate_and_adhesion_asked_for_is_there_in_order()
    {
        BalanceSummary summary = BalanceSummary.Of(Car, [0.3, 0.6], [0.8, 0.4]);
        Assert.Equal(["driver only", "laden"], summary.LoadCases.Select(part => part.LoadCase.Name));
        Assert.All(summary.LoadCases, part =>
        {
            Assert.Equal([0.3, 0.6], part.Rates.Select(rate => rate.BrakingRate));
            Assert.Equal([0.8, 0.4], part.LockUps.Select(surface => surface.Adhesion));
            Assert.All(part.Rates, rate => Assert.Equal(rate.BrakingRate, rate.Installed!.BrakingRate, 1e-9));
        });
    }

    [Fact]
    public void Defaults_are_used_when_nothing_is_asked_for()
    {
        BalanceSummary summary = BalanceSummary.Of(Car);
        Assert.Equal(BalanceSummary.DefaultBrakingRates, summary.LoadCases[0].Rates.Select(rate => rate.BrakingRate));
        Assert.Equal(BalanceSummary.DefaultAdhesions, summary.LoadCases[0].LockUps.Select(surface => surface.Adhesion));
        Assert.Equal(6, summary.Verdicts.Count);
        Assert.Null(summary.Setting.Present);
    }

    [Fact]
    public void Static_axle_loads_sum_to_the_weight() =>
        Assert.All(BalanceSummary.Of(Car).LoadCases, part => Assert.Equal(
            part.LoadCase.Mass.Kilograms * Gravity.StandardMetresPerSecondSquared,
            (part.StaticAxleLoads.Front + part.StaticAxleLoads.Rear).Newtons,
            1e-6));

    [Fact]
    public void Rear_first_lock_up_is_said_with_load_case_adhesions_and_consequence()
    {
        string notice = Assert.Single(BalanceSummary.Of(Car, loadCase: "driver only", adhesions: [0.1, 0.9, 1.0]).Notices, text =>
            text.Contains("locks first"));
        Assert.Equal("driver only: the rear axle locks first at adhesion 0.90, 1.00. Rear-first lock-up spins the car.", notice);
    }

    [Fact]
    public void Lift_off_and_missing_pressure_are_said_in_words()
    {
        Vehicle high = TestCars.FixedShare(0.8, 2.0, 0.7,
            0.9) with
        { Hydraulics = new BrakeHydraulics { MaximumPressure = Pressure.FromBars(50) } };
        IReadOnlyList<string> notices = BalanceSummary.Of(high, adhesions: [0.3, 1.0]).Notices;
        Assert.Contains(notices, text => text.Contains("rear wheels leave the road at a deceleration of 0.78 g"));
        Assert.Contains(notices, text => text.Contains("no axle locks up to 50 bar (725 psi) at adhesion 1.00"));
    }

    [Fact]
    public void Advice_comes_with_a_proportioning_valve()
    {
        BalanceSummary summary =
            BalanceSummary.Of(Car.WithRearValves(new ProportioningValve { Knee = Pressure.FromBars(30), Slope = 0.2 }));
        Assert.NotNull(summary.Setting.SafeLimit);
        Assert.Equal(30, summary.Setting.Present!.Knee!.Value.Bars, 1e-9);
        Assert.Equal(30, Assert.Single(summary.LoadCases[0].Knees).MasterPressure.Bars, 1e-4);
    }

    [Fact]
    public void Unknown_load_case_and_impossible_numbers_are_refused_with_what_would_do()
    {
        Assert.Contains("\"driver only\", \"laden\"",
            Assert.Throws<ArgumentException>(() => BalanceSummary.Of(Car, loadCase: "half")).Message);
        Assert.Equal("brakingRates", Assert.Throws<ArgumentOutOfRangeException>(() => BalanceSummary.Of(Car, [0])).ParamName);
        Assert.Equal("brakingRates", Assert.Throws<ArgumentOutOfRangeException>(() => BalanceSummary.Of(Car, [double.NaN])).ParamName);
        Assert.Equal("adhesion", Assert.Throws<ArgumentOutOfRangeException>(() => BalanceSummary.Of(Car, null, [3])).ParamName);
    }

    [Fact]
    public void No_answer_is_ever_not_a_number()
    {
        Vehicle extreme = TestCars.FixedShare(0.5, 2.0, 1.9,
            0.9) with
        { EngineBraking = new EngineBraking { DrivenAxle = Axle.Front, BrakingForce = Force.FromNewtons(900) } };
        foreach (LoadCaseSummary part in BalanceSummary.Of(extreme).LoadCases)
        {
            Assert.All(part.LockUps, surface => Assert.True(surface.LockUp is null || double.IsFinite(surface.LockUp.Efficiency)));
            Assert.All(part.Rates, rate =>
                Assert.True(rate.Installed is null || double.IsFinite(rate.Installed.AdhesionUtilisation.Front ?? 0)));
        }
    }

    [Fact]
    public void A_valve_with_hysteresis_is_told_of_by_what_the_axles_do_as_the_foot_eases()
    {
        Vehicle With(double bars) => Car with
        {
            Hydraulics = Car.Hydraulics with
            {
                RearValves = [new ProportioningValve { Knee = Pressure.FromBars(20), Slope = 0.4, Hysteresis = Pressure.FromBars(bars) }],
            },
        };
        Assert.DoesNotContain(BalanceSummary.Of(With(0)).Notices, notice => notice.Contains("turns again", StringComparison.Ordinal));
        foreach (double bars in new[] { 2.0, 30.0 })
        {
            var model = new BrakeBalance.Balance.BalanceModel(With(bars), Car.LoadCases[0]);
            var eased = BrakeBalance.Balance.ReleaseBehaviour.Of(model, model.MaximumPressure, 0.9, 0.75);
            string[] told = [.. BalanceSummary.Of(With(bars)).Notices.Where(notice =>
                notice.StartsWith("driver only: foot eased", StringComparison.Ordinal))];
            Assert.Equal(eased.LocksAt.Rear is null ? 0 : 1, told.Length);
            Assert.All(told, notice =>
                Assert.Equal(!eased.RearIsFreeWithFront, notice.Contains("locked longer", StringComparison.Ordinal)));
        }
    }
}
