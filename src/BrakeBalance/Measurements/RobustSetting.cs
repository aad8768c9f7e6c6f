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
        BrakeHydraulics hydraulics = question.Vehicle.Hydraulics;
        ProportioningValve? valve = hydraulics.RearProportioningValve;
        SettingVariable variable = SettingSearch.VariableOf(question.Vehicle);
        SettingPoint[] points;
        SweepCell[][][] outcomes;
        SettingSweep sweep;
        if (hydraulics.Split is BalanceBarSplit bar && variable == SettingVariable.BalanceBar)
        {
            double[] shares = [.. Enumerable.Range(0, Settings).Select(i => 0.8 - 0.6 * i / (Settings - 1)), bar.FrontForceShare];
            sweep = new SettingSweep(question, 1);
            outcomes = sweep.Run(null, [.. shares.Select(s => (bar with { FrontForceShare = s }).RearToFrontPressureRatio)], progress);
            points = [.. shares.Select((s, i) => Point(outcomes, i) with { FrontForceShare = s })];
        }
        else
        {
            double slope = valve?.Slope ?? SettingSearch.AddedSlope;
            sweep = new SettingSweep(question, slope);
            double top = Math.Max(sweep.HighestKnee(), 1e6);
            double present = valve?.Knee.Pascals ?? double.PositiveInfinity;
            double[] knees = [.. Enumerable.Range(0, Settings).Select(i => top * i / (Settings - 1)), present];
            outcomes = sweep.Run(knees, null, progress);
            points = [.. knees.Select((k, i) => Point(outcomes, i) with
            {
                Knee = double.IsInfinity(k) ? null : Pressure.FromPascals(k),
                Turns = double.IsInfinity(k) ? null : valve?.Adjustment?.TurnsFor(Pressure.FromPascals(k)),
            })];
        }

        SettingPoint[] tradeOff = points[..Settings];
        int best = -1;
        for (int i = 0; i < Settings; i++)
        {
            if (points[i].WorstRearFirst <= question.Level && (best < 0 || points[i].MeanEfficiency > points[best].MeanEfficiency + 1e-5))
            {
                best = i;
            }
        }

        int shown = Math.Max(0, best);
        ConditionOutcome[] conditions = [.. outcomes.Select((cells, i) => sweep.Outcome(i, cells, shown))];
        SettingPoint? recommended = best < 0 ? null : points[best];
        return new SettingAnswer(
            Variable: variable,
            Recommended: recommended,
            Present: points[Settings],
            TradeOff: tradeOff,
            Conditions: conditions,
            Level: question.Level,
            Draws: sweep.DrawsUsed);
    }

    private static SettingPoint Point(SweepCell[][][] outcomes, int setting) => new()
    {
        RearFirst = outcomes.Average(o => o.Average(v => v[setting].RearFirst)),
        WorstRearFirst = outcomes.Max(o => o.Max(v => v[setting].RearFirst)),
        MeanEfficiency = outcomes.Average(o => o.Average(v => v[setting].Efficiency)),
    };
}
