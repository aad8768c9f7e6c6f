using System.Globalization;
using BrakeBalance.Balance;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Measurements;

/// <summary>Finds the setting that uses the road best while the rear locks first only rarely.</summary>
/// <remarks>
/// <para>Maximises the mean braking efficiency at first lock-up subject to P(rear locks first) staying below a level in every combination of load,
/// surface and state of the brakes, by drawing friction, height of the centre of gravity, adhesion and the knee itself at random.</para>
/// <para>Assumes a straight stop with slowly rising pressure and no anti-lock system. A setting is a start for testing, not an approval.</para>
/// </remarks>
public static class RobustSetting
{
    /// <summary>Slope of a valve that is not there yet: the middle of what adjustable valves have (common practice).</summary>
    private const double AddedSlope = 0.4;
    private const int Settings = 61;

    /// <summary>Finds the setting.</summary>
    /// <param name="question">Car, conditions and level.</param>
    /// <param name="progress">Told the part done, 0 to 1; may be null.</param>
    /// <returns>The answer.</returns>
    public static SettingAnswer Find(SettingQuestion question, IProgress<double>? progress = null)
    {
        BrakeHydraulics hydraulics = question.Vehicle.Hydraulics;
        ProportioningValve? valve = hydraulics.RearProportioningValve;
        SettingVariable variable = valve is not null ? SettingVariable.Knee
            : hydraulics.Split is BalanceBarSplit ? SettingVariable.BalanceBar : SettingVariable.AddedKnee;
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
            double slope = valve?.Slope ?? AddedSlope;
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
        IReadOnlyList<string> changes = recommended is null ? HardwareChanges(question, variable, valve?.Slope) : [];
        return new SettingAnswer
        {
            Variable = variable,
            Recommended = recommended,
            Present = points[Settings],
            TradeOff = tradeOff,
            Conditions = conditions,
            Level = question.Level,
            Draws = sweep.DrawsUsed,
            Sentence = Sentence(question, variable, recommended, points[Settings], conditions, tradeOff),
            HardwareChanges = changes,
            Assumptions = Assumptions(question, sweep, variable),
        };
    }

    private static SettingPoint Point(SweepCell[][][] outcomes, int setting) => new()
    {
        RearFirst = outcomes.Average(o => o.Average(v => v[setting].RearFirst)),
        WorstRearFirst = outcomes.Max(o => o.Max(v => v[setting].RearFirst)),
        MeanEfficiency = outcomes.Average(o => o.Average(v => v[setting].Efficiency)),
    };

    private static string Sentence(SettingQuestion question, SettingVariable variable, SettingPoint? best, SettingPoint present, ConditionOutcome[] conditions, SettingPoint[] tradeOff)
    {
        ConditionOutcome worst = conditions.MaxBy(c => c.RearFirst)!;
        string where = $"{worst.LoadCase}, {worst.Surface}, {worst.State}"
            + (question.Vehicle.Aerodynamics is null ? "" : $", {SpeedRange.Words(worst.Speed)}");
        if (best is null)
        {
            return Text($"No such setting: even with the least rear braking the rear locks first with a probability of {Percent(conditions.Max(c => c.RearFirst))} ({where}), and at most {Percent(question.Level)} is wanted.");
        }

        string setting = variable switch
        {
            SettingVariable.BalanceBar => Text($"Set the balance bar to {best.FrontForceShare:0.00} of the rod force on the front cylinder"),
            SettingVariable.AddedKnee when best.Knee!.Value.Pascals >= tradeOff[^1].Knee!.Value.Pascals * 0.999 => "No valve is needed",
            SettingVariable.AddedKnee => Text($"A valve of slope {AddedSlope:0.0#} in the rear line, with its knee at {best.Knee!.Value.Bars:0.#} bar ({best.Knee.Value.PoundsForcePerSquareInch:0} psi)"),
            _ => Text($"Set the knee to {best.Knee!.Value.Bars:0.#} bar ({best.Knee.Value.PoundsForcePerSquareInch:0} psi)") + (best.Turns is { } turns ? Text($", {turns:0.#} turns in from fully out") : ""),
        };
        return Text($"{setting}: the rear then locks first with a probability of at most {Percent(best.WorstRearFirst)} ({where}) and {Percent(best.RearFirst)} over all conditions, and {Percent(best.MeanEfficiency)} of the road is used on average. As set now it is at most {Percent(present.WorstRearFirst)}, {Percent(present.RearFirst)} and {Percent(present.MeanEfficiency)}.");
    }

    private static List<string> HardwareChanges(SettingQuestion question, SettingVariable variable, double? slope)
    {
        SettingQuestion quick = question with { Draws = Math.Min(question.Draws, 20_000) };
        List<string> changes = [];
        double factor = Enumerable.Range(1, 30).Select(i => 1 - 0.025 * i).FirstOrDefault(f => Works(Weaker(quick, f), variable, slope));
        if (factor > 0)
        {
            changes.Add(Text($"Rear brakes with {factor:0.00} of their present force per pressure would give a setting") + RearParts(question.Vehicle.Brakes.Rear, factor));
        }
        else
        {
            changes.Add("Even rear brakes of a quarter of their present force would not do: look for an input that is wrong, such as the height of the centre of gravity, an axle load or the front brakes' friction.");
        }

        if (variable == SettingVariable.Knee && slope > 0.1)
        {
            double lower = Enumerable.Range(1, 20).Select(i => slope.Value - 0.05 * i).FirstOrDefault(s => s >= 0 && Works(quick, variable, s), -1);
            if (lower >= 0)
            {
                changes.Add(Text($"A valve of slope {lower:0.00} or lower in place of {slope:0.00} would give one too."));
            }
        }
        else if (variable == SettingVariable.BalanceBar && Works(quick, SettingVariable.AddedKnee, AddedSlope))
        {
            changes.Add(Text($"A proportioning valve (slope about {AddedSlope:0.0#}) in the rear line, besides the bar, would give one."));
        }

        changes.Add("Front brakes with more force per pressure (pads of higher friction, larger pistons, larger effective radius) work the same way, at less pedal force.");
        return changes;
    }

    private static bool Works(SettingQuestion question, SettingVariable variable, double? slope)
    {
        // Least rear braking that can be set; more only makes the rear lock earlier.
        var sweep = new SettingSweep(question, slope ?? AddedSlope);
        SweepCell[][][] outcomes = variable == SettingVariable.BalanceBar && question.Vehicle.Hydraulics.Split is BalanceBarSplit bar
            ? sweep.Run(null, [(bar with { FrontForceShare = 0.8 }).RearToFrontPressureRatio], null)
            : sweep.Run([0], null, null);
        return outcomes.All(o => o.All(v => v[0].RearFirst <= question.Level));
    }

    private static SettingQuestion Weaker(SettingQuestion question, double factor)
    {
        // Force at the road goes with torque over radius, so a larger radius stands for any weaker brake.
        Vehicle vehicle = question.Vehicle;
        return question with { Vehicle = vehicle with { Tyres = new(vehicle.Tyres.Front, vehicle.Tyres.Rear with { LoadedRadius = vehicle.Tyres.Rear.LoadedRadius / factor }) } };
    }

    private static string RearParts(Brake brake, double factor) => brake switch
    {
        DrumBrake drum => Text($": a wheel cylinder of {drum.WheelCylinderDiameter.Millimeters * Math.Sqrt(factor):0.0} mm in place of {drum.WheelCylinderDiameter.Millimeters:0.0} mm, or linings of about {drum.FrictionCoefficient * (1 - (1 - factor) / drum.FrictionSensitivity):0.00} friction in place of {drum.FrictionCoefficient:0.00}."),
        _ => Text($": pistons of {Math.Sqrt(factor):0.00} of the present diameter, pads of {brake.FrictionCoefficient * factor:0.00} friction in place of {brake.FrictionCoefficient:0.00}, or a smaller effective radius."),
    };

    private static List<string> Assumptions(SettingQuestion question, SettingSweep sweep, SettingVariable variable)
    {
        string loads = string.Join(", ", question.Vehicle.LoadCases.Select(load => load.Name));
        string surfaces = string.Join(", ", question.Surfaces.Select(s => Text($"{s.Name} {s.Adhesion:0.00} ± {Percent(s.Spread)}")));
        string states = string.Join(", ", question.States.Select(state => state.Name));
        string speeds = sweep.Speeds.Count > 1 ? $", at each of the speeds {string.Join(", ", sweep.Speeds.Select(SpeedRange.Words))}." : ".";
        List<string> list =
        [
            Text($"{sweep.DrawsUsed:N0} draws over {question.Vehicle.LoadCases.Length} load case(s) ({loads}), ")
                + Text($"{question.Surfaces.Count} surface(s) ({surfaces}) and {question.States.Count} state(s) of the brakes ({states}); ")
                + "the level holds in each combination" + speeds,
            question.Estimate is null
                ? Text($"Friction and height of the centre of gravity as in the vehicle file, uncertain by {Percent(question.Spread.FrontFriction)} in front, {Percent(question.Spread.RearFriction)} at the rear and {Percent(question.Spread.CentreOfGravityHeight)}: no test stops were used.")
                : Text($"Friction, height of the centre of gravity and adhesion as estimated from {question.Estimate.StopsUsed} test stops, with their uncertainty."),
            Text($"Each axle's adhesion scatters by {Percent(question.StopScatter)} from stop to stop") + (variable == SettingVariable.BalanceBar ? "." : Text($", and the knee is set to within {question.KneeScatter.Bars:0.#} bar (standard deviation).")),
            "Straight road, slowly rising pressure, no anti-lock system. A setting is where testing starts: prove it on closed ground, least rear braking first.",
        ];
        return list;
    }

    private static string Percent(double fraction) => Text($"{100 * fraction:0.#} %");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
