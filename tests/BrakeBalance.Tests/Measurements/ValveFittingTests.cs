using System.Globalization;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using UnitsNet;
using Xunit.Abstractions;

namespace BrakeBalance.Tests.Measurements;

public class ValveFittingTests(ITestOutputHelper output)
{
    /// <summary>Pairs read on an invented valve: both gauges scatter, a share of the rear readings may be anything.</summary>
    private static List<GaugePair> Readings(Random random, double kneeBars, double slope, double scatterBars, int count = 16,
        double outliers = 0, double? turns = null, double topBars = 80, double releaseExtraBars = 0,
        PressurePhase phase = PressurePhase.Apply)
    {
        List<GaugePair> pairs = [];
        for (int i = 0; i < count; i++)
        {
            double front = 5 + (topBars - 5) * i / (count - 1);
            double rear = front <= kneeBars ? front : kneeBars + slope * (front - kneeBars) + releaseExtraBars;
            rear = random.NextDouble() < outliers ? random.NextDouble() * topBars : rear + scatterBars * Normal(random);
            pairs.Add(new GaugePair
            {
                Line = i
                + 2,
                Front = Pressure.FromBars(Math.Max(0, front + scatterBars * Normal(random))),
                Rear = Pressure.FromBars(Math.Max(0, rear)),
                Turns = turns,
                Phase = phase
            });
        }

        return pairs;
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    [Fact]
    public void Readings_without_scatter_give_the_knee_and_slope_back()
    {
        ValveFit fit = ValveFitting.Analyse(Readings(new Random(1), 31, 0.37, 0)).Positions.Single().Apply!;
        Assert.Equal(31, fit.Knee!.Value.Estimate.Bars, 2);
        Assert.Equal(0.37, fit.Slope!.Value.Estimate, 3);
    }

    /// <summary>Which part of the curve a log shows.</summary>
    private enum Cover
    {
        BothSides,
        TwoBelow,
        TwoAbove,
    }

    /// <summary>Reads a valve as a person does: few readings, uneven steps, both gauges scattering and rounded to their marks.</summary>
    private static (double Knee, List<GaugePair> Pairs) Read(Random random, Cover cover, double slope, double scatter, double mark,
        int count, double top, double? turns = null, int line = 2)
    {
        double share = cover switch
        {
            Cover.TwoBelow => (2.2 + 0.8 * random.NextDouble()) / count,
            Cover.TwoAbove => 1 - (2.2 + random.NextDouble()) / count,
            _ => 0.3 + 0.3 * random.NextDouble(),
        };
        double knee = share * top;
        Pressure Gauge(double bars) => Pressure.FromBars(Math.Max(0, Math.Round((bars + scatter * Normal(random)) / mark) * mark));
        return (knee, [.. Enumerable.Range(0, count).Select(i =>
        {
            double front = top * (i + 0.5 + 0.6 * (random.NextDouble() - 0.5)) / count;
            return new GaugePair
            {
                Line = line + i,
                Front = Gauge(front),
                Rear = Gauge(front <= knee ? front : knee + slope * (front - knee)),
                Turns = turns,
                Phase = PressurePhase.Apply,
            };
        })]);
    }

    private static (double Slope, double Scatter, double Mark, int Count, double Top) Drawn(Random random) =>
        (0.2 + 0.4 * random.NextDouble(), 0.2
            + 0.8 * random.NextDouble(), random.Next(3) switch { 0 => 0.1, 1 => 0.5, _ => 1.0 }, random.Next(8, 21), 60
            + 60 * random.NextDouble());

    private static bool Holds(Interval<double> band, double truth) => band.Low <= truth && truth <= band.High;

    private static bool Holds(Interval<Pressure> band, double truthBars) => band.Low.Bars <= truthBars && truthBars <= band.High.Bars;

    [Fact]
    public void Ninety_percent_intervals_hold_the_truth_in_ninety_percent_of_realistic_logs()
    {
        const int logs = 600;
        int[] seeds = [21];
        var seen = new (Cover Cover, bool Shown, bool Knee, bool Slope, bool Rejected)[seeds.Length * logs];
        Parallel.For(0, seen.Length, i =>
        {
            Random random = RandomNumbers.Stream(seeds[i / logs], i % logs);
            Cover cover = random.Next(4) is var c && c < 2 ? Cover.BothSides : c == 2 ? Cover.TwoBelow : Cover.TwoAbove;
            (double slope, double scatter, double mark, int count, double top) = Drawn(random);
            (double knee, List<GaugePair> pairs) = Read(random, cover, slope, scatter, mark, count, top);
            ValveFit fit = ValveFitting.Analyse(pairs).Positions.Single().Apply!;
            seen[i] = (cover, fit.Knee is not null, fit.Knee is { } k && Holds(k, knee), fit.Slope is { } s
                && Holds(s, slope), fit.LeftOut.Count > 0);
        });
        double Share(Func<(Cover Cover, bool Shown, bool Knee, bool Slope, bool Rejected), bool> what,
            IEnumerable<(Cover Cover, bool Shown, bool Knee, bool Slope, bool Rejected)> of) =>
            of.Count(what) / (double)of.Count();
        foreach (var regime in seen.Where(x => x.Shown).GroupBy(x => x.Cover).OrderBy(g => g.Key))
        {
            output.WriteLine($"{regime.Key}: {regime.Count()} logs, "
                + $"knee {Share(x => x.Knee, regime):0.000}, slope {Share(x => x.Slope, regime):0.000}");
            Assert.InRange(Share(x => x.Knee, regime), 0.86, 0.95);
            Assert.InRange(Share(x => x.Slope, regime), 0.86, 0.95);
        }

        foreach (int part in Enumerable.Range(0, seeds.Length))
        {
            var shown = seen.Skip(part * logs).Take(logs).Where(x => x.Shown).ToArray();
            output.WriteLine($"seed {seeds[part]}: "
                + $"{shown.Length} logs, knee {Share(x => x.Knee, shown):0.000}, slope {Share(x => x.Slope, shown):0.000}");
            Assert.InRange(shown.Length, 500, logs);
            Assert.InRange(Share(x => x.Knee, shown), 0.88, 0.92);
            Assert.InRange(Share(x => x.Slope, shown), 0.88, 0.92);
        }

        Assert.True(Share(x => x.Rejected, seen) < 0.01, "honest readings were rejected");
    }

    [Fact]
    public void With_a_tenth_of_wild_readings_the_intervals_still_hold_the_truth()
    {
        const int logs = 300;
        var held = new (bool Knee, bool Slope)[logs];
        Parallel.For(0, logs, i =>
        {
            Random random = RandomNumbers.Stream(4000, i);
            double knee = 20 + 25 * random.NextDouble(), slope = 0.25 + 0.35 * random.NextDouble();
            ValveFit fit = ValveFitting.Analyse(Readings(random, knee, slope, 0.7, outliers: 0.1)).Positions.Single().Apply!;
            held[i] = (Holds(fit.Knee!.Value, knee), Holds(fit.Slope!.Value, slope));
        });
        Assert.InRange(held.Count(h => h.Knee) / (double)logs, 0.85, 0.95);
        Assert.InRange(held.Count(h => h.Slope) / (double)logs, 0.85, 0.95);
    }

    /// <summary>
    /// A day at the adjuster: three positions, gauges that scatter by 8 psi, each position with its own slope if the valve is faulty.
    /// </summary>
    private static (double[] Knees, GaugeAnalysis Analysis) Day(int seed, int log, double[] slopes)
    {
        Random random = RandomNumbers.Stream(seed, log);
        List<GaugePair> pairs = [];
        double[] knees = new double[slopes.Length];
        for (int t = 0; t < slopes.Length; t++)
        {
            // The last position is hardly covered: two or three readings above its knee.
            (knees[t], List<GaugePair> read) =
                Read(random, t == slopes.Length - 1
                ? Cover.TwoAbove : Cover.BothSides, slopes[t], 0.55, 0.5, random.Next(8, 14), 80, t, 2 + 20 * t);
            pairs.AddRange(read);
        }

        return (knees, ValveFitting.Analyse(pairs));
    }

    [Fact]
    public void Eight_psi_of_scatter_cannot_make_slopes_differ_between_positions()
    {
        const int logs = 500;
        var seen = new (bool Alarm, bool Held, double Greatest, bool OneSlope, bool Other)[logs];
        Parallel.For(0, logs, i =>
        {
            (_, GaugeAnalysis analysis) = Day(8, i, [0.35, 0.35, 0.35]);
            Interval<double>[] slopes = [.. analysis.Positions.Select(p => p.Apply!.Slope).OfType<Interval<double>>()];
            seen[i] = (analysis.Findings.Any(f => f.Kind == GaugeFindingKind.SlopeVaries), Holds(analysis.Slope!.Value, 0.35),
                slopes.Max(s => s.Estimate), slopes.Distinct()
                .Count() == 1, analysis.Findings.Any(f => f.Kind != GaugeFindingKind.SlopeVaries));
        });
        output.WriteLine($"alarms {seen.Count(s => s.Alarm)}, other findings {seen.Count(s => s.Other)}, "
            + $"held {seen.Count(s => s.Held)}, greatest slope {seen.Max(s => s.Greatest):0.00} of {logs}");
        Assert.InRange(seen.Count(s => s.Alarm), 0, 0.015 * logs);
        Assert.InRange(seen.Count(s => s.Other), 0, 0.01 * logs);
        Assert.All(seen.Where(s => !s.Alarm), s => Assert.True(s.OneSlope));
        Assert.InRange(seen.Count(s => s.Held) / (double)logs, 0.88, 0.93);
        Assert.True(seen.Where(s => !s.Alarm).Max(s => s.Greatest) < 0.45);
    }

    /// <summary>
    /// With 8 psi of scatter one position gives its slope to a standard deviation of about 0.03 and the difference of two to 0.042. The
    /// alarm asks for
    /// F = 6.6 (2 and 25 degrees of freedom, one false alarm in two hundred), so a difference of 0.15 (noncentrality 13 to 15) cannot be
    /// found nine times
    /// of ten by any test at that level; one of 0.25 (noncentrality 35) is.
    /// </summary>
    [Theory]
    [InlineData(0.25, 0.75)]
    [InlineData(0.15, 0.97)]
    public void A_slope_that_truly_varies_is_found_and_widens_the_answer(double first, double least)
    {
        const int logs = 60;
        var seen = new (bool Alarm, double Width)[logs];
        var even = new double[logs];
        double Width(GaugeAnalysis analysis) => analysis.Slope!.Value.High - analysis.Slope.Value.Low;
        Parallel.For(0, logs, i =>
        {
            GaugeAnalysis varying = Day(9, i, [first, 0.40, 0.40]).Analysis;
            seen[i] = (varying.Findings.Any(f => f.Kind == GaugeFindingKind.SlopeVaries), Width(varying));
            even[i] = Width(Day(9, i, [0.35, 0.35, 0.35]).Analysis);
        });
        output.WriteLine($"found {seen.Count(s => s.Alarm)} of {logs}; "
            + $"mean width {seen.Average(s => s.Width):0.000} against {even.Average():0.000}");
        Assert.True(seen.Count(s => s.Alarm) >= least * logs);
        Assert.True(seen.Where((s, i) => s.Width > even[i]).Count() >= 0.95 * logs);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_gross_error_moves_knee_and_slope_no_further_than_their_intervals(bool digits)
    {
        const int logs = 150;
        var moved = new bool[logs];
        Parallel.For(0, logs, i =>
        {
            Random random = RandomNumbers.Stream(77, i);
            (_, List<GaugePair> pairs) = Read(random, Cover.BothSides, 0.2 + 0.4 * random.NextDouble(), 0.5, 0.5, random.Next(10, 21), 90);
            ValveFit clean = ValveFitting.Analyse(pairs).Positions.Single().Apply!;
            int at = random.Next(pairs.Count);
            double rear = pairs[at].Rear.Bars;
            // 37 written for 73, or a reading with ten times the scatter.
            double wrong = digits ? 10 * (Math.Floor(rear) % 10) + Math.Floor(rear / 10) + rear % 1 : rear + (random.Next(2) == 0 ? 5 : -5);
            pairs[at] = pairs[at] with { Rear = Pressure.FromBars(Math.Max(0, wrong)) };
            ValveFit fit = ValveFitting.Analyse(pairs).Positions.Single().Apply!;
            moved[i] = !(Holds(fit.Knee!.Value, clean.Knee!.Value.Estimate.Bars) && Holds(clean.Knee.Value, fit.Knee.Value.Estimate.Bars)
                && Holds(fit.Slope!.Value, clean.Slope!.Value.Estimate) && Holds(clean.Slope.Value, fit.Slope.Value.Estimate));
        });
        output.WriteLine($"moved beyond in {moved.Count(m => m)} of {logs}");
        Assert.InRange(moved.Count(m => m), 0, 0.05 * logs);
    }

    [Theory]
    [InlineData(0.985)]
    [InlineData(1.015)]
    public void Gauges_that_differ_by_their_accuracy_give_no_advice_on_parts(double gain)
    {
        for (int i = 0; i < 60; i++)
        {
            // 1.5 % of a full scale of 100 bar, as a zero error the worst case at low pressure.
            Random random = RandomNumbers.Stream(55, i);
            List<GaugePair> pairs = [
                .. Read(random, Cover.BothSides, 0.35, 0.3, 0.1, 20, 90).Pairs.Select(p =>
                p with { Rear = Pressure.FromBars(Math.Max(0, p.Rear.Bars + 100 * (gain - 1))) })];
            Assert.DoesNotContain(ValveFitting.Analyse(pairs).Findings, f =>
                f.Kind is GaugeFindingKind.UnequalBelowKnee or GaugeFindingKind.Offset or GaugeFindingKind.Swapped);
        }
    }

    [Fact]
    public void A_difference_within_the_accuracy_of_the_gauges_asks_for_them_to_be_swapped()
    {
        List<GaugePair> pairs = [.. Readings(new Random(2), 30, 0.35, 0.05, count: 24).Select(p => p with { Rear = 0.92 * p.Rear })];
        GaugeFinding finding = Assert.Single(ValveFitting.Analyse(pairs).Findings, f =>
            f.Kind is GaugeFindingKind.GaugesDiffer or GaugeFindingKind.UnequalBelowKnee);
        Assert.Equal(GaugeFindingKind.GaugesDiffer, finding.Kind);
        Assert.Contains("Swap the gauges and repeat", finding.Text);
    }

    [Fact]
    public void A_tenth_of_wild_readings_hardly_moves_the_knee()
    {
        double worst = 0;
        for (int i = 0; i < 100; i++)
        {
            ValveFit fit = ValveFitting.Analyse(
                Readings(new Random(900 + i), 30, 0.35, 0.5, count: 20, outliers: 0.1)).Positions.Single().Apply!;
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
        GaugeAnalysis analysis = ValveFitting.Analyse(pairs);
        Assert.InRange(analysis.Hysteresis!.Value.Estimate.Bars, 2.5, 5);
        Assert.NotNull(analysis.Positions.Single().Release);
    }

    /// <summary>A log of both branches at three positions, by the release law, with its cap at the highest outlet.</summary>
    private static List<GaugePair> BothWays(Random random, double hysteresis, double slope, double knee, double scatter = 0.5)
    {
        var pairs = new List<GaugePair>();
        Pressure Gauge(double bars) => Pressure.FromBars(Math.Max(0, Math.Round(bars + scatter * Normal(random), 1)));
        for (int turns = 0; turns < 3; turns++)
        {
            double at = knee + 6 * turns, top = 78 + 4 * random.NextDouble();
            double Rising(double x) => x <= at ? x : at + slope * (x - at);
            for (int i = 0; i < 22; i++)
            {
                bool falling = i >= 14;
                double front = falling ? top * (1 - (i - 13) / 9.0) : top * (i + 1) / 14;
                double rear = falling ? Math.Min(Math.Min(front, Rising(front) + hysteresis), Rising(top)) : Rising(front);
                pairs.Add(new GaugePair
                {
                    Line = pairs.Count + 2,
                    Front = Gauge(front),
                    Rear = Gauge(rear),
                    Turns = turns,
                    Phase = falling ? PressurePhase.Release : PressurePhase.Apply,
                });
            }
        }

        return pairs;
    }

    [Fact]
    public void The_ninety_percent_interval_of_the_hysteresis_holds_the_truth_in_ninety_percent_of_logs()
    {
        const int logs = 300;
        var held = new bool[logs];
        var other = new bool[logs];
        Parallel.For(0, logs, i =>
        {
            Random random = RandomNumbers.Stream(313, i);
            double truth = 1.5 + 5 * random.NextDouble(), slope = 0.25 + 0.25 * random.NextDouble();
            GaugeAnalysis found = ValveFitting.Analyse(BothWays(random, truth, slope, 12 + 10 * random.NextDouble()));
            held[i] = found.Hysteresis is { } gap && Holds(gap, truth);
            other[i] = found.Findings.Any(f => f.Kind is GaugeFindingKind.Drift or GaugeFindingKind.MixedBranches);
        });
        output.WriteLine($"held {held.Count(h => h)} of {logs}; drift or branches alarmed {other.Count(o => o)}");
        Assert.InRange(held.Count(h => h) / (double)logs, 0.86, 0.94);
        Assert.InRange(other.Count(o => o), 0, 0.02 * logs);
    }

    [Fact]
    public void The_falling_branch_shares_the_slope_and_leaves_the_line_of_equal_pressures_later()
    {
        GaugeAnalysis found = ValveFitting.Analyse(BothWays(new Random(3), 4, 0.35, 15));
        Assert.All(found.Positions, position =>
        {
            Assert.Equal(position.Apply!.Slope, position.Release!.Slope);
            double later = (position.Release.Knee!.Value.Estimate - position.Apply.Knee!.Value.Estimate).Bars;
            Assert.Equal(found.Hysteresis!.Value.Estimate.Bars / (1 - found.Slope!.Value.Estimate), later, 1e-6);
        });
    }

    [Fact]
    public void Falling_readings_written_as_rising_are_named_and_doubted()
    {
        int named = 0;
        const int logs = 30;
        for (int i = 0; i < logs; i++)
        {
            GaugePair[] mixed =
                [.. BothWays(new Random(40 + i), 5, 0.35, 14).Select(pair => pair with { Phase = PressurePhase.Apply })];
            GaugeAnalysis found = ValveFitting.Analyse(mixed);
            named += found.Findings.Any(f => f.Kind == GaugeFindingKind.MixedBranches) ? 1 : 0;
        }

        output.WriteLine($"named {named} of {logs}");
        Assert.InRange(named, 0.9 * logs, logs);
    }

    [Fact]
    public void A_gauge_that_drifts_through_the_log_is_named()
    {
        int named = 0;
        const int logs = 30;
        for (int i = 0; i < logs; i++)
        {
            Random random = new(80 + i);
            List<GaugePair> pairs = BothWays(random, 3, 0.35, 16);
            double bars = (random.Next(2) == 0 ? 1 : -1) * (4 + 4 * random.NextDouble());
            GaugeAnalysis found = ValveFitting.Analyse(pairs.Select((pair, at) => pair with
            {
                Rear = Pressure.FromBars(Math.Max(0, pair.Rear.Bars + bars * at / pairs.Count)),
            }));
            named += found.Findings.Any(f => f.Kind == GaugeFindingKind.Drift) ? 1 : 0;
        }

        output.WriteLine($"named {named} of {logs}");
        Assert.InRange(named, 0.9 * logs, logs);
    }

    [Fact]
    public void Ninety_percent_intervals_of_a_held_line_hold_its_fall()
    {
        const int holds = 400;
        int front = 0, creep = 0;
        for (int n = 0; n < holds; n++)
        {
            Random random = RandomNumbers.Stream(91, n);
            double fall = 10 * random.NextDouble(), rise = 4 * random.NextDouble();
            HeldLines held = HeldLines.Of([.. Enumerable.Range(0, 10).Select(i => new GaugePair
            {
                Front = Pressure.FromBars(50 - fall * i / 10.0 + 0.5 * Normal(random)),
                Rear = Pressure.FromBars(30 + (rise - 0.35 * fall) * i / 10.0 + 0.5 * Normal(random)),
                Phase = PressurePhase.Hold,
                Time = Duration.FromSeconds(6 * i),
            })], 0.35, 0.5)!;
            front += Holds(held.FrontFall, fall) ? 1 : 0;
            creep += Holds(held.Creep, rise) ? 1 : 0;
        }

        output.WriteLine($"front {front}, creep {creep} of {holds}");
        Assert.InRange(front, 0.86 * holds, 0.94 * holds);
        Assert.InRange(creep, 0.86 * holds, 0.94 * holds);
    }

    [Fact]
    public void A_held_pedal_shows_creep_and_leak_down_beside_what_is_usual()
    {
        Random random = new(12);
        List<GaugePair> pairs = BothWays(random, 3, 0.35, 16, 0.3);
        pairs.AddRange(Enumerable.Range(0, 13).Select(i => new GaugePair
        {
            Front = Pressure.FromBars(50 - 8 * i / 12.0 + 0.3 * Normal(random)),
            Rear = Pressure.FromBars(30 + 0.3 * Normal(random)),
            Turns = 2,
            Phase = PressurePhase.Hold,
            Time = Duration.FromSeconds(100 + 5 * i),
        }));
        GaugeAnalysis found = ValveFitting.Analyse(pairs);
        Assert.Equal(8, found.Held!.FrontFall.Estimate.Bars, 0.6);
        Assert.Equal(0, found.Held.RearFall.Estimate.Bars, 0.6);

        // The valve would have let the rear fall with the front: that it stands is creep.
        Assert.InRange(found.Held.Creep.Estimate.Bars, 2, 3.6);
        Assert.Equal(["creep", "leak-down, front"], found.Properties.Where(p => p.IsOutside).Select(p => p.Name));
        Assert.Null(ValveFitting.Analyse(BothWays(random, 3, 0.35, 16)).Held);
    }

    [Fact]
    public void Readings_far_off_weigh_less_and_none_is_thrown_out_unseen()
    {
        List<GaugePair> pairs = Readings(new Random(3), 30, 0.35, 0.3);
        pairs[9] = pairs[9] with { Rear = pairs[9].Rear + Pressure.FromBars(12) };
        ValveFit fit = ValveFitting.Analyse(pairs).Positions.Single().Apply!;
        Assert.Equal(pairs.Select(pair => pair.Line), fit.Weights.Select(weight => weight.Line));
        Assert.True(fit.Weights.Single(weight => weight.Line == 11).Weight < 0.05);
        Assert.All(fit.Weights.Where(weight => weight.Line != 11), weight => Assert.InRange(weight.Weight, 0.5, 1));
    }

    [Fact]
    public void A_rise_and_fall_without_a_phase_column_is_split_at_the_top()
    {
        var pairs = Readings(new Random(5), 30, 0.35, 0.1, count: 12).Select(p => p with { Phase = null }).ToList();
        pairs.AddRange(Enumerable.Reverse(Readings(new Random(6), 30, 0.35, 0.1, count: 12, releaseExtraBars: 4, topBars: 78))
            .Select(p => p with { Phase = null }));
        AdjusterPosition position = ValveFitting.Analyse(pairs).Positions.Single();
        Assert.Equal(12, position.Apply!.Readings);
        Assert.NotNull(position.Release);
    }

    [Fact]
    public void The_knee_against_turns_covers_the_truth_and_gives_turns_for_a_knee()
    {
        const int logs = 200;
        var seen = new (bool Knee, bool Turns)[logs];
        Parallel.For(0, logs, i =>
        {
            Random random = RandomNumbers.Stream(7000, i);
            List<GaugePair> pairs = [];
            for (int t = 0; t <= 4; t++)
            {
                pairs.AddRange(Readings(random, 14 + 8 * t, 0.36, 0.6, count: 12, turns: t));
            }

            AdjusterCalibration calibration = ValveFitting.Analyse(pairs).Calibration!;
            Interval<Pressure> at = calibration.KneeAt(2.5);
            seen[i] = (Holds(at, 34), Holds(calibration.TurnsFor(Pressure.FromBars(34))!.Value, 2.5));
        });

        Assert.InRange(seen.Count(s => s.Knee) / (double)logs, 0.85, 0.96);
        Assert.InRange(seen.Count(s => s.Turns) / (double)logs, 0.85, 0.96);
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
            Assert.DoesNotContain(ValveFitting.Analyse(Readings(new Random(i), 30, 0.35, 0.2, count: 12)).Findings, f =>
                f.Kind != GaugeFindingKind.Outliers);
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
        pairs.Add(new GaugePair
        {
            Front = Pressure.FromBars(60 - frontFall),
            Rear = Pressure.FromBars(40 - rearFall),
            Phase = PressurePhase.Hold
        });
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
        List<GaugePair> pairs = [.. Readings(new Random(2), 60, 0.35, 0.1, count: 24)
            .Select(p => p with { Rear = p.Rear + Pressure.FromBars(6) })];
        Assert.Contains(ValveFitting.Analyse(pairs).Findings, f => f.Kind == GaugeFindingKind.Offset && f.Text.Contains("metering"));
    }

    [Fact]
    public void Twin_master_cylinders_are_fitted_with_their_own_share_below_the_knee()
    {
        List<GaugePair> pairs = [.. Readings(new Random(2), 30, 0.4, 0.1).Select(p => p with { Rear = 0.8 * p.Rear })];
        GaugeAnalysis analysis = ValveFitting.Analyse(pairs, belowKnee: 0.8);
        Assert.Empty(analysis.Findings);
        Assert.Equal(0.8 * 30, analysis.Positions[0].Apply!.Knee!.Value.Estimate.Bars, 0);
    }

    [Theory]
    [InlineData("10,10;10,10;10,10;10,10;10,10;10,10")]
    [InlineData("0,0;0,0;0,0;0,0;0,0")]
    [InlineData("10,10;20,20;30,30;30,30")]
    [InlineData("40,30;40,30;40,30;40.1,30;40,30.1;40,29.9")]
    [InlineData("0,0;0.1,0;299,299;300,0;300,300;0,0")]
    [InlineData("10,10;20,20;30,30;40,40;40.001,40;40.002,40.002")]
    public void Readings_that_say_nothing_of_a_valve_give_no_number_beyond_any_valve(string readings)
    {
        GaugePair[] pairs = [.. readings.Split(';').Select(pair => pair.Split(',')).Select((pair, i) => new GaugePair
        {
            Line = i + 2,
            Front = Pressure.FromBars(double.Parse(pair[0], System.Globalization.CultureInfo.InvariantCulture)),
            Rear = Pressure.FromBars(double.Parse(pair[1], System.Globalization.CultureInfo.InvariantCulture)),
        })];
        GaugeAnalysis analysis = ValveFitting.Analyse(pairs);
        Assert.True(analysis.Slope is not { } slope || (slope.Low >= -0.5 && slope.High <= 1.5), analysis.Slope?.ToString());
        Assert.All(analysis.Positions.SelectMany(p => new[] { p.Apply, p.Release }).OfType<ValveFit>()
            .Select(fit => fit.Knee).OfType<Interval<Pressure>>(),
            knee => Assert.True(knee.Low >= Pressure.Zero && knee.High <= Pressure.FromBars(400)));
        Assert.Equal(pairs.Max(p => p.Front) - pairs.Min(p => p.Front) < Pressure.FromBars(5),
            analysis.Findings.Any(f => f.Text.Contains("front pressure moves only from", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData(0.707)]
    [InlineData(1.2)]
    public void A_valve_behind_two_bores_is_told_as_it_stands_in_the_file(double ratio)
    {
        const double fullyOut = 8.3, turn = 9.5, slope = 0.43;
        GaugePair[] pairs =
        [
            .. from turns in new[] { 0.0, 1, 2, 3 }
               from front in Enumerable.Range(1, 12).Select(i => i * 7.0)
               let inlet = ratio * front
               let knee = fullyOut + (turns * turn)
               select new GaugePair
               {
                   Line = 0, Turns = turns, Front = Pressure.FromBars(front),
                   Rear = Pressure.FromBars(inlet <= knee ? inlet : knee + (slope * (inlet - knee))),
               },
        ];
        GaugeAnalysis found = ValveFitting.Analyse(pairs, ratio);
        Assert.Equal(slope, found.Slope!.Value.Estimate, 0.01);
        Assert.Equal(fullyOut, found.Calibration!.KneeAt(0).Estimate.Bars, 0.2);
        Assert.Equal(turn, found.Calibration.KneePerTurn.Estimate.Bars, 0.1);
        Assert.Equal(fullyOut + turn, found.Positions[1].Apply!.Knee!.Value.Estimate.Bars, 0.2);
    }

    /// <summary>By these bores and a bar at 47 % in front the rear line stands at 0.783 of the front.</summary>
    [Theory]
    [InlineData(0.47, false)]
    [InlineData(0.472, false)]
    [InlineData(0.478, true)]
    [InlineData(0.45, true)]
    [InlineData(0.55, true)]
    public void Gauges_of_a_bar_without_a_valve_tell_where_the_bar_stands_and_no_knee(double share, bool told)
    {
        BalanceBarSplit At(double front) =>
            new() { FrontBore = Length.FromInches(0.625), RearBore = Length.FromInches(0.75), FrontForceShare = front };
        Vehicle car = CarEstimationTests.Coupe with { Hydraulics = new BrakeHydraulics { Split = At(0.47) } };
        var random = new Random(5);
        double Scatter() => 0.2 * Normal(random);
        GaugePair[] pairs = [.. Enumerable.Range(1, 16).Select(i => new GaugePair
        {
            Line = i + 1,
            Front = Pressure.FromBars(4.0 * i + Scatter()),
            Rear = Pressure.FromBars(At(share).RearToFrontPressureRatio * 4 * i + Scatter()),
            Phase = PressurePhase.Apply,
        })];
        GaugeAnalysis read = ValveFitting.Analyse(pairs, car);
        Assert.Null(Assert.Single(read.Positions).Apply!.Knee);
        Assert.Empty(read.Properties);
        Assert.Equal(At(share).RearToFrontPressureRatio, read.InletRatio, 0.01);
        string[] bar = [.. read.Findings.Where(finding => finding.Kind == GaugeFindingKind.UnlikeTheFile).Select(finding => finding.Text)];
        Assert.Equal(told ? 1 : 0, bar.Length);
        Assert.All(bar, text => Assert.Equal(
            100 * share, double.Parse(text.Split(" the bar is at ")[1].Split(' ')[0], CultureInfo.InvariantCulture), 0.3));
        Assert.All(bar, text => Assert.Contains("front, where the file has 47.0 %", text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_valve_that_the_file_leaves_out_is_still_found()
    {
        Vehicle car = CarEstimationTests.Coupe with { Hydraulics = new BrakeHydraulics() };
        GaugeAnalysis read = ValveFitting.Analyse(Readings(new Random(3), 31, 0.37, 0.2), car);
        Assert.Equal(31, Assert.Single(read.Positions).Apply!.Knee!.Value.Estimate.Bars, 1.5);
        Assert.Equal(0.37, read.Slope!.Value.Estimate, 0.05);
    }

    [Theory]
    [InlineData(24, "the knee at 25.8 bar, where the file has 24 bar", "the knee at 374 psi, where the file has 348 psi")]
    [InlineData(26, null, null)]
    public void Gauges_of_a_fixed_valve_tell_a_knee_that_is_not_the_file_s(double fileBars, string? metric, string? customary)
    {
        Vehicle car = CarEstimationTests.Coupe with
        {
            Hydraulics = new() { RearValves = [new ProportioningValve { Knee = Pressure.FromBars(fileBars), Slope = 0.33 }] },
        };
        GaugeFinding[] told = [.. ValveFitting.Analyse(Readings(new Random(4), 26, 0.33, 0.2, 22), car).Findings];
        Assert.Equal(metric is null ? 0 : 1, told.Length);
        Assert.All(told, finding => Assert.Contains(metric!, InBoth.Only(finding.Text, customary: false), StringComparison.Ordinal));
        Assert.All(told, finding => Assert.Contains(customary!, InBoth.Only(finding.Text, customary: true), StringComparison.Ordinal));
    }

    /// <summary>Each fault that has pressures in its words.</summary>
    [Fact]
    public void What_is_wrong_with_the_lines_is_said_in_bar_or_in_psi_and_never_in_the_other()
    {
        List<GaugePair> Rear(Func<double, double> of) =>
        [
            .. Readings(new Random(2), 90, 1, 0.05)
                .Select(pair => pair with { Rear = Pressure.FromBars(Math.Max(0, of(pair.Front.Bars))) }),
        ];
        List<GaugePair> held = [.. Readings(new Random(2), 30, 0.4, 0.05), .. new[] { 60.0, 50 }.Select(bars => new GaugePair
        {
            Front = Pressure.FromBars(60), Rear = Pressure.FromBars(bars - 20), Phase = PressurePhase.Hold,
        })];
        GaugeFinding[] found =
        [
            .. new List<GaugePair>[]
            {
                Rear(_ => 0.3), Rear(front => front < 40 ? front : 1.3 * front), Rear(front => front - 6), Rear(front => 0.93 * front),
                held,
                [.. Readings(new Random(2), 30, 0.4, 0.05).Take(3)],
            }.SelectMany(log => ValveFitting.Analyse(log).Findings),
        ];
        GaugeFindingKind[] kinds = [.. found.Select(finding => finding.Kind).Distinct()];
        Assert.Subset(kinds.ToHashSet(), new HashSet<GaugeFindingKind>
        {
            GaugeFindingKind.NoRearPressure, GaugeFindingKind.Swapped, GaugeFindingKind.Offset, GaugeFindingKind.RearLeak,
        });
        Assert.All(found, finding => Assert.DoesNotContain("psi", InBoth.Only(finding.Text, customary: false), StringComparison.Ordinal));
        Assert.All(found, finding => Assert.DoesNotContain(" bar", InBoth.Only(finding.Text, customary: true), StringComparison.Ordinal));
    }
}
