using BrakeBalance.Hydraulics;
using BrakeBalance.Rules;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// The three acceptance lines for the distribution of braking between the axles. Directive 71/320/EEC as amended, Annex II Appendix
/// 3.1.1: conditions
/// read at legislation.gov.uk (text of 2007), its line k = (z + 0.07)/0.85 read in Crolla (ed.), Automotive Engineering (2009), ch.
/// 12.1, p. 362, which
/// restates the directive as amended by 91/422/EEC; UN R13 has the same form. UN R13-H: k = (z + 0.04)/0.7, from memory.
/// 49 CFR 571.135 S7.4.5: z = 0.9 k for the rear curve only, braking ratios 0.15 to 0.80 (read). The tabulated points are recomputed.
/// </summary>
[Source("Directive 71/320/EEC Annex II Appendix 3.1.1; 49 CFR 571.135 S7.4.5", Reading.Read)]
public class DistributionRuleLines
{
    [Source("Crolla (ed.), Automotive Engineering (2009), p. 362", Reading.Read)]
    [Theory]
    [InlineData(0.10, 0.2000)]
    [InlineData(0.20, 0.3176)]
    [InlineData(0.30, 0.4353)]
    [InlineData(0.45, 0.6118)]
    [InlineData(0.52, 0.6941)]
    [InlineData(0.61, 0.8000)]
    public void Points_on_the_line_of_R13(double rate, double adhesion)
    {
        Assert.Equal(adhesion, DistributionRules.UnR13Line.GreatestAdhesion(rate), 0.00005);
        Assert.Equal((rate + 0.07) / 0.85, DistributionRules.UnR13Line.GreatestAdhesion(rate), 1e-12);
    }

    [Source("UN R13-H Annex 5", Reading.FromMemory)]
    [Theory]
    [InlineData(0.10, 0.2000)]
    [InlineData(0.20, 0.3429)]
    [InlineData(0.30, 0.4857)]
    [InlineData(0.45, 0.7000)]
    [InlineData(0.52, 0.8000)]
    public void Points_on_the_line_of_R13H(double rate, double adhesion) =>
        Assert.Equal(adhesion, DistributionRules.UnR13HLine.GreatestAdhesion(rate), 0.00005);

    [Fact]
    public void The_line_of_R13_ends_at_a_rate_of_0_61() => Assert.Equal(0.61, DistributionRules.UnR13Line.LeastRate(0.8), 1e-12);

    [Source("UN R13-H Annex 5", Reading.FromMemory)]
    [Fact]
    public void The_line_of_R13H_ends_at_a_rate_of_0_52() => Assert.Equal(0.52, DistributionRules.UnR13HLine.LeastRate(0.8), 1e-12);

    // The alternative for light goods vehicles, z ≥ 0.5 k + 0.21 (read in the directive), ends at the same point: 0.8 at 0.61.
    [Fact]
    public void The_line_of_R13_meets_the_goods_vehicles_line_at_its_end() =>
        Assert.Equal(0.5 * 0.8 + 0.21, DistributionRules.UnR13Line.LeastRate(0.8), 1e-12);

    [Theory]
    [InlineData(0.2, 0.2222)]
    [InlineData(0.45, 0.5)]
    [InlineData(0.8, 0.8889)]
    public void Points_on_the_line_of_571_135(double rate, double adhesion) =>
        Assert.Equal(adhesion, DistributionRules.Fmvss135RearLimit(rate), 0.00005);

    // Ideal distribution k = z lies inside all three.
    [Source("UN R13-H Annex 5 among them", Reading.FromMemory)]
    [Theory]
    [InlineData(0.2)]
    [InlineData(0.5)]
    [InlineData(0.8)]
    public void The_ideal_distribution_keeps_all_three(double rate)
    {
        Assert.True(DistributionRules.UnR13Line.LeastRate(rate) <= rate);
        Assert.True(DistributionRules.UnR13HLine.LeastRate(rate) <= rate);
        Assert.True(rate <= DistributionRules.Fmvss135RearLimit(rate));
    }

    [Source("UN R13-H Annex 5 among them", Reading.FromMemory)]
    [Fact]
    public void A_car_with_much_front_braking_keeps_the_line_of_R13H_and_breaks_that_of_R13()
    {
        IReadOnlyList<RuleVerdict> verdicts = DistributionRules.Check(TestCars.FixedShare(0.97, 2.5, 1.0, 0.5));
        Assert.Equal(RuleOutcome.Pass, Outcome(verdicts, "un-r13h-line"));
        Assert.Equal(RuleOutcome.Fail, Outcome(verdicts, "un-r13-line"));
        Assert.Equal(RuleOutcome.Pass, Outcome(verdicts, "fmvss135-rear-line"));
        Assert.Equal(RuleOutcome.Pass, Outcome(verdicts, "un-r13h-order"));
    }

    [Source("UN R13-H Annex 5 among them", Reading.FromMemory)]
    [Fact]
    public void A_car_with_much_rear_braking_breaks_only_the_line_of_571_135_and_the_orders()
    {
        IReadOnlyList<RuleVerdict> verdicts = DistributionRules.Check(TestCars.FixedShare(0.60, 2.5, 1.2, 0.4));
        Assert.Equal(RuleOutcome.Pass, Outcome(verdicts, "un-r13h-line"));
        Assert.Equal(RuleOutcome.Fail, Outcome(verdicts, "fmvss135-rear-line"));
        Assert.Equal(RuleOutcome.Fail, Outcome(verdicts, "fmvss135-sequence"));
        Assert.Equal(RuleOutcome.Fail, Outcome(verdicts, "un-r13h-order"));
    }

    // 3.1.1: between 0.3 and 0.45 the curves may change places as long as the rear stays within k = z + 0.05.
    [Fact]
    public void The_exception_of_the_directive_lets_the_rear_lead_a_little_between_0_3_and_0_45()
    {
        // The rear leads from about 0.31 to a little above the knee at 0.375 and nowhere else.
        Vehicle car = TestCars.FixedShare(0.609, 2.5, 1.1, 0.4)
            .WithRearValves(new ProportioningValve { Knee = Pressure.FromBars(37.5), Slope = 0.3 });
        IReadOnlyList<UtilisationPoint> points = UtilisationCurve.Of(car)[0].Points;
        double[] led = [.. points.Where(point => point.Rear > point.Front && point.BrakingRate <= 0.8).Select(point => point.BrakingRate)];
        Assert.NotEmpty(led);
        Assert.InRange(led.Min(), 0.30, 0.45);
        Assert.InRange(led.Max(), 0.30, 0.45);
        IReadOnlyList<RuleVerdict> verdicts = DistributionRules.Check(car);
        Assert.Equal(RuleOutcome.Pass, Outcome(verdicts, "un-r13-order"));
        Assert.Equal(RuleOutcome.Fail, Outcome(verdicts, "un-r13h-order"));
        Assert.Equal(RuleOutcome.Fail, Outcome(verdicts, "fmvss135-sequence"));
    }

    [Fact]
    public void The_exception_ends_0_05_above_the_ideal_line()
    {
        // Rear-led by far more than 0.05 between 0.3 and 0.45.
        IReadOnlyList<RuleVerdict> verdicts = DistributionRules.Check(TestCars.FixedShare(0.5, 2.5, 1.1, 0.4));
        Assert.Equal(RuleOutcome.Fail, Outcome(verdicts, "un-r13-order"));
    }

    // The same car with a higher knee: the rear stays within k = z + 0.05 but leads beyond a rate of 0.45.
    [Fact]
    public void The_exception_ends_at_a_rate_of_0_45()
    {
        Vehicle car = TestCars.FixedShare(0.609, 2.5, 1.1, 0.4)
            .WithRearValves(new ProportioningValve { Knee = Pressure.FromBars(48), Slope = 0.3 });
        UtilisationPoint[] led =
            [.. UtilisationCurve.Of(car)[0].Points.Where(point => point.Rear > point.Front && point.BrakingRate <= 0.8)];
        Assert.True(led.Max(point => point.BrakingRate) > 0.46);
        Assert.All(led, point => Assert.True(point.Rear < point.BrakingRate + 0.05));
        Assert.Equal(RuleOutcome.Fail, Outcome(DistributionRules.Check(car), "un-r13-order"));
    }

    [Source("UN R13-H Annex 5 among them", Reading.FromMemory)]
    [Fact]
    public void Every_verdict_names_its_regulation_and_says_what_is_from_memory()
    {
        IReadOnlyList<RuleVerdict> verdicts = DistributionRules.Check(TestCars.FixedShare(0.7, 2.5, 1.1, 0.5));
        Assert.All(verdicts.Where(verdict => verdict.Rule.StartsWith("un-r13h", StringComparison.Ordinal)), verdict =>
            Assert.Contains("UN R13-H Annex 5", verdict.Source));
        Assert.All(verdicts.Where(verdict => verdict.Rule.StartsWith("un-r13-", StringComparison.Ordinal)), verdict =>
            Assert.Contains("71/320/EEC", verdict.Source));
        Assert.All(verdicts.Where(verdict => verdict.Rule.StartsWith("fmvss", StringComparison.Ordinal)), verdict =>
            Assert.Contains("49 CFR 571.135", verdict.Source));
        // 49 CFR 571.135 was from memory until its text was read; only UN R13-H still is.
        Assert.All(verdicts, verdict => Assert.Equal(
            verdict.Rule.StartsWith("un-r13h", StringComparison.Ordinal),
                verdict.Source.Contains("from memory", StringComparison.Ordinal)));
        Assert.Equal(6, verdicts.Select(verdict => verdict.Rule).Distinct().Count());
    }

    // Directive 71/320/EEC takes g = 10 m/s² (text read). The curves of a fixed distribution do not know g, z being a ratio of forces;
    // a knee, which is a force, falls at a rate 9.80665/10 as high.
    [Fact]
    public void With_g_of_10_a_knee_falls_at_a_rate_two_percent_lower()
    {
        Vehicle car = TestCars.FixedShare(0.6, 2.5, 1.1, 0.5)
            .WithRearValves(new ProportioningValve { Knee = Pressure.FromBars(40), Slope = 0.3 });
        Vehicle atTen = car with { LoadCases = [TestCars.Load("only", 10_000 * 10 / Gravity.StandardMetresPerSecondSquared, 1.1, 0.5)] };
        double ours = Assert.Single(car.Model().RearKnees()).BrakingRate;
        double theirs = Assert.Single(atTen.Model().RearKnees()).BrakingRate;
        Assert.Equal(0.980665, theirs / ours, 1e-9);
        UtilisationPoint below = UtilisationCurve.Of(car)[0].Points[10];
        UtilisationPoint belowAtTen = UtilisationCurve.Of(atTen)[0].Points[10];
        Assert.Equal(below.Front, belowAtTen.Front, 1e-9);
        Assert.Equal(below.Rear, belowAtTen.Rear, 1e-9);
    }

    private static RuleOutcome Outcome(IEnumerable<RuleVerdict> verdicts, string rule) =>
        verdicts.Single(verdict => verdict.Rule == rule).Outcome;
}
