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

    /// <summary>Finds the setting.</summary>
    /// <param name="question">Car, conditions and level.</param>
    /// <param name="progress">Told the part done, 0 to 1; may be null.</param>
    public static SettingAnswer Find(SettingQuestion question, IProgress<double>? progress = null)
    {
        SettingSweep sweep = Sweep(question);
        (SettingPoint[] points, SweepCell[][][] outcomes) = Run(question, sweep, Row(question, sweep), progress);
        SettingPoint? best = Best(null, points, question.Level);
        int shown = best is null ? 0 : Array.IndexOf(points, best);
        return At(new SettingAnswer(
            Variable: SettingSearch.VariableOf(question.Vehicle),
            Recommended: best,
            TradeOff: points,
            Conditions: [.. outcomes.Select((cells, i) => sweep.Outcome(i, cells, shown))],
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
        SettingPoint[] points = Run(question, sweep, row[..first], null).Points;
        SettingPoint? best = Best(null, points, question.Level);
        return first == Settings || points[^1].WorstRearFirst > question.Level
            ? best : Best(best, Run(question, sweep, row[first..], null).Points, question.Level);
    }

    /// <summary>The same answer for a car that is set as the question has it.</summary>
    public static SettingAnswer At(SettingAnswer answer, SettingQuestion question) => answer with
    {
        PresentLater = new(() =>
        {
            BrakeHydraulics hydraulics = question.Vehicle.Hydraulics;
            double present = Bar(question)?.FrontForceShare
                ?? hydraulics.RearProportioningValve?.Knee.Pascals ?? double.PositiveInfinity;
            return Run(question, Sweep(question), [present], null).Points[0];
        }),
    };

    private static SettingPoint? Best(SettingPoint? best, SettingPoint[] points, double level) => points.Aggregate(best, (found, point) =>
        point.WorstRearFirst <= level && (found is null || point.MeanEfficiency > found.MeanEfficiency + 1e-5) ? point : found);

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

    private static (SettingPoint[] Points, SweepCell[][][] Outcomes) Run(
        SettingQuestion question, SettingSweep sweep, double[] row, IProgress<double>? progress)
    {
        if (Bar(question) is { } bar)
        {
            SweepCell[][][] found =
                sweep.Run(null, [.. row.Select(s => (bar with { FrontForceShare = s }).RearToFrontPressureRatio)], progress);
            return ([.. row.Select((s, i) => Point(found, i) with { FrontForceShare = s })], found);
        }

        SweepCell[][][] outcomes = sweep.Run(row, null, progress);
        return ([.. row.Select((k, i) => Point(outcomes, i) with
        {
            Knee = double.IsInfinity(k) ? null : Pressure.FromPascals(k),
            Turns = double.IsInfinity(k) ? null
                : question.Vehicle.Hydraulics.RearProportioningValve?.Adjustment?.TurnsFor(Pressure.FromPascals(k)),
        })], outcomes);
    }

    private static SettingPoint Point(SweepCell[][][] outcomes, int setting) => new()
    {
        RearFirst = outcomes.Average(o => o.Average(v => v[setting].RearFirst)),
        WorstRearFirst = outcomes.Max(o => o.Max(v => v[setting].RearFirst)),
        MeanEfficiency = outcomes.Average(o => o.Average(v => v[setting].Efficiency)),
    };
}
