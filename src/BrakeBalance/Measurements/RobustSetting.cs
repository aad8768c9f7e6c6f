using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;

namespace BrakeBalance.Measurements;

/// <summary>Finds the setting that uses the road best while the rear locks first only rarely.</summary>
/// <remarks>
/// <para>Maximises the mean braking efficiency at first lock-up subject to P(rear locks first) staying below a level in every
/// combination of load,
/// surface and state of the brakes, by drawing friction, height of the centre of gravity, adhesion and the knee itself at random.</para>
/// <para>Assumes a straight stop with slowly rising pressure and no anti-lock system. A setting is a start for testing, not an
/// approval.</para>
/// </remarks>
internal static class RobustSetting
{
    private const int Settings = 61;
    private const int Closer = 8;

    /// <summary>Finds the setting.</summary>
    /// <param name="question">Car, conditions and level.</param>
    /// <param name="progress">Told the part done, 0 to 1; may be null.</param>
    public static SettingAnswer Find(SettingQuestion question, IProgress<double>? progress = null)
    {
        SettingSweep sweep = Sweep(question);
        double[] row = Row(question, sweep);
        SweepCell[][][] outcomes = Run(question, sweep, row, progress);
        (SettingPoint? limit, SweepCell[][][] there) = Limit(question, sweep, row, outcomes);
        return At(new SettingAnswer(
            Variable: SettingSearch.VariableOf(question.Vehicle),
            Recommended: limit,
            TradeOff: Points(question, row, outcomes),
            Conditions: [.. there.Select((cells, i) => sweep.Outcome(i, cells, 0))],
            Level: question.Level,
            Draws: sweep.DrawsUsed), question);
    }

    /// <summary>The setting of <see cref="Find"/> alone: more rear braking never makes rear-first rarer, so little more is tried.</summary>
    /// <param name="question">Car, conditions and level.</param>
    /// <param name="near">A limit that it probably lies near.</param>
    public static SettingPoint? Best(SettingQuestion question, SettingLimit near)
    {
        SettingSweep sweep = Sweep(question);
        double[] row = Row(question, sweep);
        int first = Math.Min(row.Count(at => (Bar(question) is null ? at : 1 - at) <= Setting.Amount(near)) + 4, Settings);
        SweepCell[][][] outcomes = Run(question, sweep, row[..first], null);
        if (first < Settings && outcomes.Max(of => of.Max(cells => cells[^1].RearFirst)) <= question.Level)
        {
            SweepCell[][][] rest = Run(question, sweep, row[first..], null);
            outcomes = [.. outcomes.Zip(rest, (of, more) => of.Zip(more, (cells, others) => (SweepCell[])[.. cells, .. others]).ToArray())];
            first = Settings;
        }

        return Limit(question, sweep, row[..first], outcomes).Point;
    }

    /// <summary>The same answer for a car that is set as the question has it.</summary>
    public static SettingAnswer At(SettingAnswer answer, SettingQuestion question) => answer with
    {
        PresentLater = new(() =>
        {
            BrakeHydraulics hydraulics = question.Vehicle.Hydraulics;
            double present = Bar(question)?.FrontForceShare ?? hydraulics.RearProportioningValve?.Knee.Pascals ?? double.PositiveInfinity;
            return Points(question, [present], Run(question, Sweep(question), [present], null))[0];
        }),
    };

    // The highest setting within the level: of those tried, then of some between it and the next. Where all of them are within it, nothing
    // that can be set is beyond.
    private static (SettingPoint? Point, SweepCell[][][] Cells) Limit(
        SettingQuestion question, SettingSweep sweep, double[] row, SweepCell[][][] outcomes)
    {
        SettingPoint[] points = Points(question, row, outcomes);
        int at = Array.FindLastIndex(points, point => point.WorstRearFirst <= question.Level);
        if (at >= 0 && at + 1 < points.Length)
        {
            double[] closer = [.. Enumerable.Range(0, Closer).Select(i => row[at] + (row[at + 1] - row[at]) * i / Closer)];
            outcomes = Run(question, sweep, closer, null);
            points = Points(question, closer, outcomes);
            at = Array.FindLastIndex(points, point => point.WorstRearFirst <= question.Level);
        }
        else if (at >= 0 && points[at].Knee is not null)
        {
            points[at] = points[at] with { Knee = question.Vehicle.Hydraulics.MaximumPressure, Turns = null };
        }

        int shown = Math.Max(at, 0);
        return (at < 0 ? null : points[at], [.. outcomes.Select(of => of.Select(cells => (SweepCell[])[cells[shown]]).ToArray())]);
    }

    private static BalanceBarSplit? Bar(SettingQuestion question) =>
        SettingSearch.VariableOf(question.Vehicle) == SettingVariable.BalanceBar
            ? question.Vehicle.Hydraulics.Split as BalanceBarSplit : null;

    private static SettingSweep Sweep(SettingQuestion question) => new(question, Bar(question) is not null ? 1
        : question.Vehicle.Hydraulics.RearProportioningValve?.Slope ?? SettingSearch.AddedSlope);

    // Shares of the rod force, or knees in pascals, from least to most rear braking.
    private static double[] Row(SettingQuestion question, SettingSweep sweep)
    {
        if (Bar(question) is not null)
        {
            return [.. Enumerable.Range(0, Settings).Select(i => 0.8 - 0.6 * i / (Settings - 1))];
        }

        double top = Math.Max(sweep.HighestKnee(), 1e6);
        return [.. Enumerable.Range(0, Settings).Select(i => top * i / (Settings - 1))];
    }

    private static SweepCell[][][] Run(SettingQuestion question, SettingSweep sweep, double[] row, IProgress<double>? progress) =>
        Bar(question) is { } bar
            ? sweep.Run(null, [.. row.Select(s => (bar with { FrontForceShare = s }).RearToFrontPressureRatio)], progress)
            : sweep.Run(row, null, progress);

    private static SettingPoint[] Points(SettingQuestion question, double[] row, SweepCell[][][] outcomes) => Bar(question) is not null
        ? [.. row.Select((s, i) => Point(outcomes, i) with { FrontForceShare = s })]
        : [.. row.Select((k, i) => Point(outcomes, i) with
        {
            Knee = double.IsInfinity(k) ? null : Pressure.FromPascals(k),
            Turns = double.IsInfinity(k) ? null
                : question.Vehicle.Hydraulics.RearProportioningValve?.Adjustment?.TurnsFor(Pressure.FromPascals(k)),
        })];

    private static SettingPoint Point(SweepCell[][][] outcomes, int setting) => new()
    {
        RearFirst = outcomes.Average(o => o.Average(v => v[setting].RearFirst)),
        WorstRearFirst = outcomes.Max(o => o.Max(v => v[setting].RearFirst)),
        MeanEfficiency = outcomes.Average(o => o.Average(v => v[setting].Efficiency)),
    };
}
