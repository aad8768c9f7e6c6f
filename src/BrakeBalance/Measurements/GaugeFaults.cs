using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace BrakeBalance.Measurements;

/// <summary>Recognises faults of the lines and gauges in gauge pairs.</summary>
/// <remarks>The limits are common practice: 10 % of share, 3 bar of offset and 1 bar of fall while holding are what two bled dial gauges
/// can tell, and the two may differ from each other by 1.5 % of full scale. What lies within that says nothing about bores, pistons or
/// valves.</remarks>
internal static class GaugeFaults
{
    private const double ShareTolerance = 0.05;
    private const double GaugeAccuracy = 0.015;
    private const double LeastScatterBars = 0.05;
    private const double Certain = 0.999;
    private const double OffsetBars = 3;
    private const double HoldFallBars = 1;
    private const double HoldFallShare = 0.03;
    private const double Surely = 5;
    private const double SmallGapBars = 1.5;

    /// <summary>Usual full scales of dial gauges in bar.</summary>
    private static readonly double[] Scales = [25, 40, 60, 100, 160, 250, 400];

    public static IEnumerable<GaugeFinding> Find(GaugePair[] pairs, double belowKnee)
    {
        double[] x = [.. pairs.Select(p => p.Front.Bars)];
        double[] y = [.. pairs.Select(p => p.Rear.Bars)];
        if (pairs.Length < 4)
        {
            yield break;
        }

        double top = x.Max();
        if (top > 10 && y.Max() < 0.05 * top)
        {
            yield return new GaugeFinding(GaugeFindingKind.NoRearPressure,
                Invariant.Text($"The rear gauge never passes {InBoth.Bars(y.Max())} while the front one reaches {InBoth.Bars(top)}: "
                    + $"the rear circuit is blocked, open, or its gauge is shut off. Do not drive."));
            yield break;
        }

        foreach (GaugeFinding finding in Holds(pairs))
        {
            yield return finding;
        }

        GaugePair[] moving = [.. pairs.Where(p => p.Phase != PressurePhase.Hold)];
        if (moving.Length < 4)
        {
            yield break;
        }

        x = [.. moving.Select(p => p.Front.Bars)];
        y = [.. moving.Select(p => p.Rear.Bars)];
        bool[] leads = [.. x.Select((_, i) => y[i] > belowKnee * x[i] * (1 + ShareTolerance) + 0.5 * OffsetBars)];
        // Single wild readings must not decide, so four fifths of the readings in the upper part have to agree.
        double reach = KneeFit.Median([.. y.OrderDescending().Take(Math.Max(3, y.Length / 4))]);
        int[] high = [.. Enumerable.Range(0, x.Length).Where(i => Math.Max(x[i], y[i]) > 0.6 * reach)];
        bool bends = high.Length >= 3 && high.Count(i => leads[i]) >= 0.8 * high.Length;
        int lows = Enumerable.Range(0, x.Length).Count(i => y[i] < 0.35 * reach && !leads[i]);
        if (bends && lows > 0)
        {
            yield return new GaugeFinding(GaugeFindingKind.Swapped,
                Invariant.Text($"At high pressure the rear gauge reads above the front one "
                    + $"({InBoth.Bars(y.Max())} against {InBoth.Bars(x[Array.IndexOf(y, y.Max())])}), and a valve can only lower the rear: "
                    + $"the gauges, lines or columns are swapped, or the valve sits in the front line."));
        }
    }

    /// <summary>Looks at the readings below the knee and up to a third of the highest pressure, where any valve should be open.</summary>
    /// <param name="positions">Readings with pressure rising, in bar, and the knee fitted to them; null with too few.</param>
    /// <param name="belowKnee">Rear over front line pressure below the knee [–].</param>
    /// <returns>The first finding whose effect is certain; null when there is none.</returns>
    public static GaugeFinding? BelowKnee((double[] Front, double[] Rear, FittedKnee? Knee)[] positions, double belowKnee) =>
        positions.Where(p => p.Knee is not null).Select(p => BelowKnee(p.Front, p.Rear, p.Knee!, belowKnee))
            .FirstOrDefault(f => f is not null);

    /// <summary>Looks for what only the order of the readings shows: a gauge that drifts, readings of the wrong branch.</summary>
    /// <param name="pairs">The readings as they were taken.</param>
    /// <param name="fits">The rising branch of each position.</param>
    /// <param name="belowKnee">Rear over front line pressure below the knee [–].</param>
    public static IEnumerable<GaugeFinding> InOrder(
        GaugePair[] pairs, IReadOnlyList<(double? Turns, ValveFit? Fit)> fits, double belowKnee)
    {
        List<(double Place, double Front, double Off, double Noise, bool Above, bool Fell)> rows = [];
        for (int i = 0; i < pairs.Length; i++)
        {
            ValveFit? fit = fits.FirstOrDefault(one => one.Turns == pairs[i].Turns).Fit;
            if (fit is null || pairs[i].Phase is PressurePhase.Hold or PressurePhase.Release)
            {
                continue;
            }

            double front = pairs[i].Front.Bars, scatter = Math.Max(LeastScatterBars, fit.Scatter.Bars);
            bool above = fit.Knee is { } knee && front > knee.Estimate.Bars;
            double slope = above ? fit.Slope!.Value.Estimate : belowKnee;
            bool fell = i > 0 && pairs[i - 1].Turns == pairs[i].Turns && front < pairs[i - 1].Front.Bars - 4 * scatter;
            rows.Add((i, front, pairs[i].Rear.Bars - fit.RearAt(pairs[i].Front, belowKnee).Bars,
                scatter * Math.Sqrt(1 + slope * slope), above, fell));
        }

        // A single dip is one wrong reading, which has its own finding.
        if (rows.Count(row => row is { Above: true, Fell: true }) >= 3 && rows.Count(row => row is { Above: true, Fell: false }) >= 3)
        {
            (double higher, double sure) = Robust(
                rows.Where(row => row.Above).Select(row => (row.Off, row.Noise, new[] { 1.0, row.Fell ? 1 : 0 })), 1);
            if (sure > Surely && higher > SmallGapBars)
            {
                yield return new GaugeFinding(GaugeFindingKind.MixedBranches,
                    $"Of the readings called rising, those taken while the front pressure fell stand {InBoth.Bars(higher)} higher at the "
                    + "rear: they are of the falling branch (hysteresis). Write release in the column phase, or read only as the pressure "
                    + "rises.");
                yield break;
            }
        }

        double span = pairs.Length - 1;
        if (rows.Count(row => !row.Above) >= 6 && fits.Count > 1)
        {
            (double drift, double sure) = Robust(
                rows.Where(row => !row.Above).Select(row => (row.Off, row.Noise, new[] { 1.0, row.Front, row.Place / span })), 2);
            if (sure > Surely && Math.Abs(drift) > SmallGapBars)
            {
                yield return new GaugeFinding(GaugeFindingKind.Drift,
                    $"Below the knee, where the valve is open, the rear gauge {(drift > 0 ? "gains" : "loses")} "
                    + $"{InBoth.Bars(Math.Abs(drift))} on the front one from first to last: one of the gauges drifts. Read both zeros, "
                    + "swap the gauges and repeat.");
            }
        }
    }

    private static (double Value, double Sure) Robust(IEnumerable<(double Off, double Noise, double[] Row)> rows, int which)
    {
        (double Off, double Noise, double[] Row)[] all = [.. rows];
        (Vector<double> found, Matrix<double> spread, _, double[] surprises) = RearLineCheck.Robust([.. all.Select(row => row.Row)],
            [.. all.Select(row => row.Off)], [.. all.Select(row => row.Noise)], [.. all[0].Row.Select(_ => 100.0)]);
        // What is looked for has swollen the scatter of the fit before; about this line it is what it is.
        double left = Math.Clamp(1.4826 * KneeFit.Median([.. surprises.Select(Math.Abs)]), 0.2, 2);
        return (found[which], Math.Abs(found[which]) / (left * Math.Sqrt(spread[which, which])));
    }

    private static GaugeFinding? BelowKnee(double[] front, double[] rear, FittedKnee knee, double belowKnee)
    {
        double top = front.Max(), limit = top / 3;
        if (knee.HasKnee && knee.Knee.Estimate > front.Min())
        {
            // A knee seen among the low readings explains by itself why the rear stays behind.
            limit = Math.Min(limit, knee.Knee.Low);
        }

        (double X, double Y)[] low =
            [.. front.Zip(rear).Where((p, i) => !knee.LeftOut[i] && p.First <= limit && p.First > 1).OrderBy(p => p.First)];
        if (low.Length < 3)
        {
            return null;
        }

        double share = KneeFit.Median([.. low.Select(p => p.Y / p.X)]);
        double gap = KneeFit.Median([.. low.Select(p => belowKnee * p.X - p.Y)]);
        double[] slopes = [.. low.Zip(low.Skip(1)).Where(z => z.Second.X - z.First.X > 0.5)
            .Select(z => (z.Second.Y - z.First.Y) / (z.Second.X - z.First.X))];
        double gradient = slopes.Length > 0 ? KneeFit.Median(slopes) : share;
        bool offset = Math.Abs(gap) > OffsetBars && Math.Abs(gradient - belowKnee) < 2 * ShareTolerance;
        // Scatter about the explanation itself, from squares, which few readings need; a median is known to 1.25 of a mean's error.
        double scatter = Math.Sqrt(low.Sum(p => Math.Pow(p.Y - (offset ? belowKnee * p.X - gap : share * p.X), 2)) / (low.Length - 1));
        double error = 1.2533 * Math.Max(scatter, LeastScatterBars) / Math.Sqrt(low.Length);
        double sure = Math.Abs(gap) - error * StudentT.InvCDF(0, 1, low.Length - 1, Certain);
        if (sure < 0)
        {
            return null;
        }

        double scale = Scales.FirstOrDefault(s => s >= top, top), accuracy = GaugeAccuracy * scale;
        if (offset && sure > accuracy)
        {
            string leader = gap < 0 ? "rear" : "front";
            string cause = gap < 0 ? "a metering valve in the front line, or a zero error of a gauge"
                : "a zero error of a gauge, or a valve that opens late in the rear line";
            return new GaugeFinding(GaugeFindingKind.Offset,
                Invariant.Text($"From the first readings on the {leader} gauge leads by about {InBoth.Bars(Math.Abs(gap))}: "
                    + $"{cause}. Swap the gauges and read again."));
        }

        double off = Math.Abs(share / belowKnee - 1);
        if (off > 2 * ShareTolerance && sure > accuracy)
        {
            return new GaugeFinding(GaugeFindingKind.UnequalBelowKnee,
                Invariant.Text($"Even at low pressure the rear reads {share:0.##} of the front where {belowKnee:0.##} is expected: "
                    + $"a second valve in series, a leak or air in the rear line, another bore or balance-bar position, "
                    + $"a knee below the readings, or a gauge that is off. Swap the gauges and read again."));
        }

        return off > ShareTolerance
            ? new GaugeFinding(GaugeFindingKind.GaugesDiffer,
                Invariant.Text($"At low pressure the rear reads {share:0.##} of the front where {belowKnee:0.##} is expected, "
                    + $"{InBoth.Bars(Math.Abs(gap))} apart; two gauges of {InBoth.Bars(scale)} may differ by {InBoth.Bars(accuracy)}, "
                    + $"so this says nothing about the brakes yet. Swap the gauges and repeat: what moves with them is theirs."))
            : null;
    }

    /// <summary>Compares first and last reading of each held pedal.</summary>
    private static IEnumerable<GaugeFinding> Holds(GaugePair[] pairs)
    {
        for (int i = 0; i < pairs.Length;)
        {
            if (pairs[i].Phase != PressurePhase.Hold)
            {
                i++;
                continue;
            }

            int end = i;
            while (end + 1 < pairs.Length && pairs[end + 1].Phase == PressurePhase.Hold && pairs[end + 1].Turns == pairs[i].Turns)
            {
                end++;
            }

            (GaugePair first, GaugePair last) = (pairs[i], pairs[end]);
            bool front = Falls(first.Front.Bars, last.Front.Bars), rear = Falls(first.Rear.Bars, last.Rear.Bars);
            if (front || rear)
            {
                (GaugeFindingKind kind, string what) = (front, rear) switch
                {
                    (true, false) => (GaugeFindingKind.FrontLeak, "front circuit leaks, outside or past its seal"),
                    (false, true) => (GaugeFindingKind.RearLeak, "rear circuit leaks, outside or past its seal"),
                    _ => (GaugeFindingKind.BothFall, "pedal was eased, or the master cylinder lets fluid past"),
                };
                string Went(Func<GaugePair, Pressure> gauge) => $"{InBoth.Bars(gauge(first).Bars)} to {InBoth.Bars(gauge(last).Bars)}";
                yield return new GaugeFinding(kind, $"With the pedal held the front went from {Went(pair => pair.Front)} and the rear from "
                    + $"{Went(pair => pair.Rear)}: the {what}. Find it before the car moves.");
            }

            i = end + 1;
        }
    }

    private static bool Falls(double first, double last) => first - last > Math.Max(HoldFallBars, HoldFallShare * first);
}
