using BrakeBalance.Measurements;
using UnitsNet;

namespace BrakeBalance.Tests.Measurements;

public class ValveFittingTests
{
    /// <summary>Pairs read on an invented valve: both gauges scatter, a share of the rear readings may be anything.</summary>
    private static List<GaugePair> Readings(Random random, double kneeBars, double slope, double scatterBars, int count = 16, double outliers = 0, double? turns = null, double topBars = 80, double releaseExtraBars = 0, PressurePhase phase = PressurePhase.Apply)
    {
        List<GaugePair> pairs = [];
        for (int i = 0; i < count; i++)
        {
            double front = 5 + (topBars - 5) * i / (count - 1);
            double rear = front <= kneeBars ? front : kneeBars + slope * (front - kneeBars) + releaseExtraBars;
            rear = random.NextDouble() < outliers ? random.NextDouble() * topBars : rear + scatterBars * Normal(random);
            pairs.Add(new GaugePair { Line = i + 2, Front = Pressure.FromBars(Math.Max(0, front + scatterBars * Normal(random))), Rear = Pressure.FromBars(Math.Max(0, rear)), Turns = turns, Phase = phase });
        }

        return pairs;
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    [Fact]
    public void Readings_without_scatter_give_the_knee_and_slope_back()
    {
        ValveFit fit = ValveFitting.Analyse(Readings(new Random(1), 31, 0.37, 0)).Positions.Single().Apply!;
        Assert.Equal(31, fit.Knee!.Value.Estimate.Bars, 2);
        Assert.Equal(0.37, fit.Slope!.Value.Estimate, 3);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.1)]
    public void Ninety_percent_intervals_hold_the_truth_in_about_ninety_percent_of_logs(double outliers)
    {
        const int logs = 300;
        int knees = 0, slopes = 0;
        for (int i = 0; i < logs; i++)
        {
            Random random = RandomNumbers.Stream(4000, i);
            double knee = 20 + 25 * random.NextDouble(), slope = 0.25 + 0.35 * random.NextDouble();
            ValveFit fit = ValveFitting.Analyse(Readings(random, knee, slope, 0.7, outliers: outliers)).Positions.Single().Apply!;
            knees += fit.Knee!.Value.Low.Bars <= knee && knee <= fit.Knee.Value.High.Bars ? 1 : 0;
            slopes += fit.Slope!.Value.Low <= slope && slope <= fit.Slope.Value.High ? 1 : 0;
        }

        Assert.InRange(knees / (double)logs, 0.85, 0.95);
        Assert.InRange(slopes / (double)logs, 0.85, 0.95);
    }

    [Fact]
    public void A_tenth_of_wild_readings_hardly_moves_the_knee()
    {
        double worst = 0;
        for (int i = 0; i < 100; i++)
        {
            ValveFit fit = ValveFitting.Analyse(Readings(new Random(900 + i), 30, 0.35, 0.5, count: 20, outliers: 0.1)).Positions.Single().Apply!;
            worst = Math.Max(worst, Math.Abs(fit.Knee!.Value.Estimate.Bars - 30));
        }

        Assert.True(worst < 3, $"worst error {worst:0.0} bar");
    }

    [Fact]
    public void Readings_left_out_are_named_by_line()
    {
        List<GaugePair> pairs = Readings(new Random(3), 30, 0.35, 0.3);
        pairs[9] = pairs[9] with { Rear = Pressure.FromBars(70) };
        GaugeAnalysis analysis = ValveFitting.Analyse(pairs);
        Assert.Equal([11], analysis.Positions[0].Apply!.LeftOut);
        Assert.Contains(analysis.Findings, f => f.Kind == GaugeFindingKind.Outliers && f.Text.Contains("line 11"));
    }

    [Fact]
    public void Hysteresis_is_the_gap_between_release_and_apply()
    {
        List<GaugePair> pairs = Readings(new Random(5), 30, 0.35, 0.2, count: 20);
        pairs.AddRange(Readings(new Random(6), 30, 0.35, 0.2, count: 20, releaseExtraBars: 4, phase: PressurePhase.Release));
        KnobPosition position = ValveFitting.Analyse(pairs).Positions.Single();
        Assert.InRange(position.Hysteresis!.Value.Bars, 2.5, 5);
        Assert.NotNull(position.Release);
    }

    [Fact]
    public void A_rise_and_fall_without_a_phase_column_is_split_at_the_top()
    {
        var pairs = Readings(new Random(5), 30, 0.35, 0.1, count: 12).Select(p => p with { Phase = null }).ToList();
        pairs.AddRange(Enumerable.Reverse(Readings(new Random(6), 30, 0.35, 0.1, count: 12, releaseExtraBars: 4, topBars: 78)).Select(p => p with { Phase = null }));
        KnobPosition position = ValveFitting.Analyse(pairs).Positions.Single();
        Assert.Equal(12, position.Apply!.Readings);
        Assert.NotNull(position.Release);
    }

    [Fact]
    public void The_knee_against_turns_covers_the_truth_and_gives_turns_for_a_knee()
    {
        int held = 0, turnsHeld = 0;
        const int logs = 200;
        for (int i = 0; i < logs; i++)
        {
            Random random = RandomNumbers.Stream(7000, i);
            List<GaugePair> pairs = [];
            for (int t = 0; t <= 4; t++)
            {
                pairs.AddRange(Readings(random, 14 + 8 * t, 0.36, 0.6, count: 12, turns: t));
            }

            KnobCalibration calibration = ValveFitting.Analyse(pairs).Calibration!;
            Interval<Pressure> at = calibration.KneeAt(2.5);
            held += at.Low.Bars <= 34 && 34 <= at.High.Bars ? 1 : 0;
            Interval<double> turns = calibration.TurnsFor(Pressure.FromBars(34))!.Value;
            turnsHeld += turns.Low <= 2.5 && 2.5 <= turns.High ? 1 : 0;
        }

        Assert.InRange(held / (double)logs, 0.85, 0.96);
        Assert.InRange(turnsHeld / (double)logs, 0.85, 0.96);
    }

    [Fact]
    public void Readings_below_the_knee_say_only_that_it_lies_above()
    {
        ValveFit fit = ValveFitting.Analyse(Readings(new Random(2), 90, 0.35, 0.4)).Positions.Single().Apply!;
        Assert.Null(fit.Knee);
        Assert.Null(fit.Slope);
        Assert.InRange(fit.HighestFront.Bars, 78, 82);
    }

    [Fact]
    public void Swapped_gauges_are_recognised_and_not_fitted()
    {
        List<GaugePair> swapped = [.. Readings(new Random(2), 30, 0.35, 0.3).Select(p => p with { Front = p.Rear, Rear = p.Front })];
        GaugeAnalysis analysis = ValveFitting.Analyse(swapped);
        Assert.Contains(analysis.Findings, f => f.Kind == GaugeFindingKind.Swapped);
        Assert.Empty(analysis.Positions);
    }

    [Fact]
    public void A_healthy_valve_gives_no_finding()
    {
        for (int i = 0; i < 50; i++)
        {
            Assert.DoesNotContain(ValveFitting.Analyse(Readings(new Random(i), 30, 0.35, 0.2, count: 12)).Findings, f => f.Kind != GaugeFindingKind.Outliers);
        }
    }

    [Theory]
    [InlineData(0, 6, GaugeFindingKind.RearLeak)]
    [InlineData(6, 0, GaugeFindingKind.FrontLeak)]
    [InlineData(6, 6, GaugeFindingKind.BothFall)]
    public void A_leak_shows_in_a_held_pedal(double frontFall, double rearFall, GaugeFindingKind kind)
    {
        List<GaugePair> pairs = Readings(new Random(2), 30, 0.35, 0.2);
        pairs.Add(new GaugePair { Front = Pressure.FromBars(60), Rear = Pressure.FromBars(40), Phase = PressurePhase.Hold });
        pairs.Add(new GaugePair { Front = Pressure.FromBars(60 - frontFall), Rear = Pressure.FromBars(40 - rearFall), Phase = PressurePhase.Hold });
        Assert.Equal([kind], ValveFitting.Analyse(pairs).Findings.Select(f => f.Kind));
    }

    [Fact]
    public void A_second_valve_in_series_and_a_dead_rear_line_are_said()
    {
        List<GaugePair> weak = [.. Readings(new Random(2), 300, 0.35, 0.1).Select(p => p with { Rear = 0.7 * p.Rear })];
        Assert.Contains(ValveFitting.Analyse(weak).Findings, f => f.Kind == GaugeFindingKind.UnequalBelowKnee);
        List<GaugePair> dead = [.. weak.Select(p => p with { Rear = Pressure.Zero })];
        Assert.Equal([GaugeFindingKind.NoRearPressure], ValveFitting.Analyse(dead).Findings.Select(f => f.Kind));
    }

    [Fact]
    public void A_hold_off_valve_in_front_shows_as_a_constant_lead_of_the_rear()
    {
        List<GaugePair> pairs = [.. Readings(new Random(2), 60, 0.35, 0.1, count: 24).Select(p => p with { Rear = p.Rear + Pressure.FromBars(6) })];
        Assert.Contains(ValveFitting.Analyse(pairs).Findings, f => f.Kind == GaugeFindingKind.Offset && f.Text.Contains("metering"));
    }

    [Fact]
    public void Twin_master_cylinders_are_fitted_with_their_own_share_below_the_knee()
    {
        List<GaugePair> pairs = [.. Readings(new Random(2), 30, 0.4, 0.1).Select(p => p with { Rear = 0.8 * p.Rear })];
        GaugeAnalysis analysis = ValveFitting.Analyse(pairs, belowKnee: 0.8);
        Assert.Empty(analysis.Findings);
        Assert.Equal(30, analysis.Positions[0].Apply!.Knee!.Value.Estimate.Bars, 0);
    }
}
