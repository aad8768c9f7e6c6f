using System.Globalization;

namespace BrakeBalance.Measurements;

/// <summary>Recognises faults of the lines and gauges in gauge pairs.</summary>
/// <remarks>The limits are common practice: 10 % of share, 3 bar of offset and 1 bar of fall while holding are what two bled dial gauges can tell.</remarks>
internal static class GaugeFaults
{
    private const double ShareTolerance = 0.05;
    private const double OffsetBars = 3;
    private const double HoldFallBars = 1;
    private const double HoldFallShare = 0.03;

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
            yield return new GaugeFinding(GaugeFindingKind.NoRearPressure, Text($"The rear gauge never passes {y.Max():0.#} bar while the front one reaches {top:0.#} bar: the rear circuit is blocked, open, or its gauge is shut off. Do not drive."));
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
            yield return new GaugeFinding(GaugeFindingKind.Swapped, Text($"At high pressure the rear gauge reads above the front one ({y.Max():0.#} bar against {x[Array.IndexOf(y, y.Max())]:0.#} bar), and a valve can only lower the rear: the gauges, lines or columns are swapped, or the valve sits in the front line."));
            yield break;
        }

        foreach (IGrouping<double?, GaugePair> group in moving.GroupBy(p => p.Turns))
        {
            // A knee seen among the low readings explains by itself why the rear stays behind.
            KneeFit fit = KneeFit.Fit([.. group.Select(p => p.Front.Bars)], [.. group.Select(p => p.Rear.Bars)], belowKnee, 0.05);
            bool seen = group.Count() >= 4 && fit.HasKnee && fit.Knee > group.Min(p => p.Front.Bars) && fit.Knee < group.Max(p => p.Front.Bars) / 3;
            if (!seen && BelowKnee([.. group], belowKnee) is { } finding)
            {
                yield return finding;
                yield break;
            }
        }
    }

    /// <summary>Looks at the readings up to a third of the highest pressure, where any valve should still be open.</summary>
    private static GaugeFinding? BelowKnee(GaugePair[] pairs, double belowKnee)
    {
        double limit = pairs.Max(p => p.Front.Bars) / 3;
        GaugePair[] low = [.. pairs.Where(p => p.Front.Bars <= limit && p.Front.Bars > 1)];
        if (low.Length < 3)
        {
            return null;
        }

        double share = KneeFit.Median([.. low.Select(p => p.Rear.Bars / p.Front.Bars)]);
        double gap = KneeFit.Median([.. low.Select(p => belowKnee * p.Front.Bars - p.Rear.Bars)]);
        double[] slopes = [.. low.Zip(low.Skip(1)).Where(z => Math.Abs(z.Second.Front.Bars - z.First.Front.Bars) > 0.5).Select(z => (z.Second.Rear.Bars - z.First.Rear.Bars) / (z.Second.Front.Bars - z.First.Front.Bars))];
        double gradient = slopes.Length > 0 ? KneeFit.Median(slopes) : share;
        if (Math.Abs(gap) > OffsetBars && Math.Abs(gradient - belowKnee) < 2 * ShareTolerance)
        {
            string leader = gap < 0 ? "rear" : "front";
            string cause = gap < 0 ? "a hold-off (metering) valve in the front line, or a zero error of a gauge" : "a zero error of a gauge, or a valve that opens late in the rear line";
            return new GaugeFinding(GaugeFindingKind.Offset, Text($"From the first readings on the {leader} gauge leads by about {Math.Abs(gap):0.#} bar: {cause}. Swap the gauges and read again."));
        }

        return share < belowKnee * (1 - 2 * ShareTolerance) || share > belowKnee * (1 + 2 * ShareTolerance)
            ? new GaugeFinding(GaugeFindingKind.UnequalBelowKnee, Text($"Even at low pressure the rear reads {share:0.##} of the front where {belowKnee:0.##} is expected: a second valve in series, a leak or air in the rear line, another bore or balance-bar position, a knee below the readings, or a gauge that is off. Swap the gauges and read again."))
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
                yield return new GaugeFinding(kind, Text($"With the pedal held the front went from {first.Front.Bars:0.#} to {last.Front.Bars:0.#} bar and the rear from {first.Rear.Bars:0.#} to {last.Rear.Bars:0.#} bar: the {what}. Find it before the car moves."));
            }

            i = end + 1;
        }
    }

    private static bool Falls(double first, double last) => first - last > Math.Max(HoldFallBars, HoldFallShare * first);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
