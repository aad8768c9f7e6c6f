using BrakeBalance.Rules;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Rules;

/// <summary>How verdicts are reached: which points count, what is left out, and what the words say.</summary>
public class DistributionRulesTests
{
    private static readonly Vehicle Car = TestCars.FixedShare(0.7, 2.5, 1.1, 0.5);

    [Fact]
    public void Curves_run_in_hundredths_from_0_10_to_1_00()
    {
        UtilisationCurve curve = Assert.Single(UtilisationCurve.Of(Car));
        Assert.Equal(91, curve.Points.Count);
        Assert.Equal(0.10, curve.Points[0].BrakingRate, 1e-12);
        Assert.Equal(1.00, curve.GreatestRate, 1e-12);
    }

    [Fact]
    public void Curves_end_where_the_pressure_does_and_the_verdict_says_so()
    {
        Vehicle weak = Car with { Hydraulics = Car.Hydraulics with { MaximumPressure = Pressure.FromBars(55.5) } };
        Assert.Equal(0.55, UtilisationCurve.Of(weak)[0].GreatestRate, 1e-12);
        RuleVerdict order = DistributionRules.Check(weak).Single(verdict => verdict.Rule == "un-r13h-order");
        Assert.Equal(RuleOutcome.Pass, order.Outcome);
        Assert.Contains("Judged up to a rate of 0.55", order.Explanation);
    }

    [Fact]
    public void Car_that_reaches_no_rate_at_which_a_rule_speaks_is_not_judged()
    {
        Vehicle feeble = Car with { Hydraulics = Car.Hydraulics with { MaximumPressure = Pressure.FromBars(8) } };
        Assert.Equal(0, UtilisationCurve.Of(feeble)[0].GreatestRate);
        Assert.All(DistributionRules.Check(feeble), verdict =>
        {
            Assert.Equal(RuleOutcome.NotApplicable, verdict.Outcome);
            Assert.Null(verdict.Margin);
        });
    }

    [Fact]
    public void Engine_air_and_rolling_resistance_are_left_out()
    {
        Vehicle dressed = Car with
        {
            EngineBraking = new EngineBraking { DrivenAxle = Axle.Rear, BrakingForce = Force.FromNewtons(400) },
            RollingResistanceCoefficient = 0.02,
            Aerodynamics = new Aerodynamics { DragArea = Area.FromSquareMeters(0.8), RearLiftArea = Area.FromSquareMeters(0.3) },
        };
        Assert.Equal(UtilisationCurve.Of(Car)[0].Points, UtilisationCurve.Of(dressed)[0].Points);
    }

    [Fact]
    public void Verdict_names_the_load_case_that_is_worst()
    {
        Vehicle car = TestCars.FixedShare(0.66, 2.5, 1.1, 0.5) with
        {
            LoadCases = [TestCars.Load("tail-heavy", 12_000, 1.4, 0.5), TestCars.Load("nose-heavy", 10_000, 0.95, 0.5)],
        };
        RuleVerdict order = DistributionRules.Check(car).Single(verdict => verdict.Rule == "un-r13h-order");
        Assert.Equal(RuleOutcome.Fail, order.Outcome);
        Assert.StartsWith("nose-heavy, braking rate 0.80", order.At);
        Assert.True(order.Margin < 0);
        Assert.StartsWith("Fail: at nose-heavy", order.Explanation);
        Assert.Contains("the rear axle uses more adhesion than the front", order.Explanation);
    }

    // At z = 0.5: f₁ = 0.7·0.5/(0.56 + 0.5·0.2) = 0.5303, so the line of R13-H asks for 0.1 + 0.7·0.3303 = 0.3312 there.
    [Fact]
    public void Margin_is_the_distance_in_the_rules_own_measure()
    {
        UtilisationPoint point = UtilisationCurve.Of(Car)[0].Points.Single(candidate => Math.Abs(candidate.BrakingRate - 0.5) < 1e-9);
        Assert.Equal(0.5303, point.Front, 0.00005);
        Assert.Equal(0.3312, DistributionRules.UnR13HLine.LeastRate(point.Front), 0.00005);
        RuleVerdict rear = DistributionRules.Check(Car).Single(verdict => verdict.Rule == "fmvss135-rear-line");
        double least = UtilisationCurve.Of(Car)[0].Points.Where(candidate => candidate.BrakingRate is > 0.149 and < 0.801)
            .Min(candidate => candidate.BrakingRate / 0.9 - candidate.Rear);
        Assert.Equal(least, rear.Margin!.Value, 1e-12);
    }
}
