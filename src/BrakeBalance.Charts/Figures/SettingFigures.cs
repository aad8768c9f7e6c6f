namespace BrakeBalance.Charts.Figures;

/// <summary>Figures of the choice of a setting: knee and slope over loads, surfaces and friction spread.</summary>
public static class SettingFigures
{
    private static readonly Pressure Hair = Pressure.FromPascals(1);

    /// <summary>Where in the plane of knee and slope the front locks first in every case.</summary>
    /// <param name="outcomes">The outcomes of a sweep over evenly spaced knees and slopes.</param>
    /// <param name="setting">The answer, whose safe limit and settings are marked; null for none.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <exception cref="ArgumentException">The outcomes are not a full grid.</exception>
    public static Figure SafeSettings(
        IReadOnlyList<SettingOutcome> outcomes, Setting? setting = null, UnitSystem? units = null)
    {
        SettingGrid grid = SettingGrid.Of(outcomes);
        var figure = new FigureBuilder("safe-settings", units, setting?.Vehicle);
        int safe = Safe(outcomes, setting).Count();
        bool anySlope = Safe(outcomes, setting).Any(one => one.Slope == outcomes.Max(other => other.Slope));
        string finding = setting is { SafeLimit: { Knee: not null } limit, Middle.Slope: { } slope }
            ? $"With a slope of {Finding.Rate(slope)} " + (setting.Rule, setting.HoldsAtAnySetting) switch
            {
                (SettingRule.Chance, true) => "this car's own stops allow any knee",
                (SettingRule.Chance, false) => "this car's own stops allow a knee of up to " + SettingWords.Number(limit, figure.Units),
                (_, true) => "the front axle locks first everywhere at any knee",
                _ => "the front axle locks first everywhere up to a knee of " + SettingWords.Number(limit, figure.Units),
            }
            : safe == 0 ? $"None of the {outcomes.Count} settings tried keeps the front axle first everywhere"
                : Invariant.Text($"{safe} of {outcomes.Count} settings tried keep the front axle first in every case");
        figure
            .Title(finding)
            .Describe(
                $"Each knee and slope{Of(setting?.Vehicle)}, over all loads, surfaces and the spread of friction. "
                    + $"A starting point for tests, one change at a time.{Stricter(grid, setting)}",
                Invariant.Text($"{safe} of {outcomes.Count} settings tried keep the front axle first in every case")
                    + (safe == 0 ? ". " : $"; they lie at low knees{(anySlope ? "" : " and low slopes")}. ")
                + (setting is null ? $"{finding}." : SettingWords.Sentence(setting, figure.Units)))
            .X("Knee", "p", Measure.LinePressure)
            .Y("Slope above the knee", "", Measure.Number)
            .Map(
                "which axle locks first", grid.KneeMiddles, grid.SlopeMiddles, grid.Rows(Class),
                new MapClass("front first in every case", Tone.Ideal),
                new MapClass("rear first in more cases", Tone.Rear, Hatch.Rising),
                new MapClass("rear first in up to a tenth of the cases", Tone.Other, Hatch.Dots),
                Beyond(setting));
        Mark(figure, grid, setting);
        return figure.Table(table => Table(table, outcomes)).Build();

        int Class(SettingOutcome outcome) => !outcome.FrontFirstEverywhere ? outcome.RearFirstShare <= 0.1 ? 2 : 1
            : IsBeyond(outcome, setting) ? 3 : 0;
    }

    // The map is of the corners at the file's middle numbers; a limit by the car's own stops or over the file's ranges is another.
    private static bool IsBeyond(SettingOutcome outcome, Setting? setting) => outcome.FrontFirstEverywhere
        && setting is { Variable: not SettingVariable.BalanceBar } && (setting.Rule == SettingRule.Chance || setting.Band is not null)
        && !(outcome.Knee <= setting.SafeLimit?.Knee + Hair);

    internal static IEnumerable<SettingOutcome> Safe(IEnumerable<SettingOutcome> outcomes, Setting? setting) =>
        outcomes.Where(outcome => outcome.FrontFirstEverywhere && !IsBeyond(outcome, setting));

    private static MapClass Beyond(Setting? setting) => new(setting?.Rule == SettingRule.Chance
        ? "front first by the file, beyond the own stops' limit" : "front first at the ranges' middle only",
        Tone.Guide, Hatch.Falling);

    private static string Stricter(SettingGrid grid, Setting? setting) =>
        !grid.Rows(outcome => IsBeyond(outcome, setting)).Any(row => row.Contains(true)) ? ""
        : (setting!.SafeLimit is null ? " Grey hatching: not safe " : " Grey hatching: beyond the safe limit ")
            + (setting.Rule == SettingRule.Chance ? "by the car's own stops." : "over the file's ranges.");

    /// <summary>
    /// What the safe settings cost: mean braking efficiency over knee and slope, blank where the rear locks first in some case.
    /// </summary>
    /// <param name="outcomes">The outcomes of a sweep over evenly spaced knees and slopes.</param>
    /// <param name="setting">The answer, whose safe limit and settings are marked; null for none.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <exception cref="ArgumentException">The outcomes are not a full grid.</exception>
    public static Figure EfficiencyOfSettings(IReadOnlyList<SettingOutcome> outcomes, Setting? setting = null, UnitSystem? units = null)
    {
        SettingGrid grid = SettingGrid.Of(outcomes);
        var figure = new FigureBuilder("setting-efficiency", units, setting?.Vehicle);
        string stricter = Stricter(grid, setting);
        const string what = "mean braking efficiency";
        SettingOutcome[] safe = [.. Safe(grid.Rows(outcome => outcome).SelectMany(row => row), setting)];
        string basis = setting?.Conditions.Adhesions is { } roads
            ? $", all load cases, adhesion {Finding.Rate(roads[0])} to {Finding.Rate(roads[^1])}" : "";
        string finding = safe.Length == 0
            ? "No setting tried keeps the front axle first everywhere"
            : $"Among the safe settings the {what} runs from {Percent(safe.Min(one => one.MeanEfficiency))} to "
                + $"{Percent(safe.Max(one => one.MeanEfficiency))}{basis}";
        figure
            .Title(finding)
            .Describe(
                $"{Finding.Capital(what)}{Of(setting?.Vehicle)} over surfaces and load cases at nominal friction. "
                    + $"Blank: the rear axle locks first in some case.{stricter}",
                $"{finding}. It grows with knee and slope up to the edge of the safe region.")
            .X("Knee", "p", Measure.LinePressure)
            .Y("Slope above the knee", "", Measure.Number)
            .Heat(what, grid.KneeMiddles, grid.SlopeMiddles,
                grid.Rows(outcome => outcome.FrontFirstEverywhere ? outcome.MeanEfficiency : (double?)null), Measure.Percent);
        if (stricter.Length > 0)
        {
            figure.Map("beyond the safe limit", grid.KneeMiddles, grid.SlopeMiddles,
                grid.Rows(outcome => IsBeyond(outcome, setting) ? 0 : -1), Beyond(setting));
        }

        if (!outcomes.MaxBy(outcome => (outcome.Knee.Pascals, outcome.Slope))!.FrontFirstEverywhere && safe.Length > 0)
        {
            figure.Note("blank: the rear locks first in some case", grid.Knees[^1], grid.Slopes[^1] * 0.85 + grid.Slopes[0] * 0.15,
                Tone.Rear);
        }

        Mark(figure, grid, setting);
        return figure.Table(table => Table(table, outcomes)).Build();

        string Percent(double efficiency) => Measure.Percent.Text(efficiency, figure.Units);
    }

    /// <summary>The safe limit of the knee over the slope, one line for each spread of friction.</summary>
    /// <param name="curves">For each spread [–] the safe limit at each slope [–]; null where there is none.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="car">The car, where the caption is to name it.</param>
    /// <exception cref="ArgumentException">No slope has a safe limit.</exception>
    public static Figure SafeLimits(
        IReadOnlyList<(double FrictionSpread, IReadOnlyList<(double Slope, Pressure? Knee)> Points)> curves,
        UnitSystem? units = null, Vehicle? car = null)
    {
        var figure = new FigureBuilder("safe-limits", units);
        var known = Known(curves);
        Refuse.If(known.Count == 0, "No slope has a knee that keeps the front axle first everywhere.", nameof(curves));

        figure
            .Title(Title())
            .Describe(
                $"The highest knee{Of(car)} that keeps the front axle first in all conditions, for each slope and spread of pad friction."
                    + (car is not null && OwnMeasurements.Of(car)?.Estimate is { StopsUsed: > 0 }
                        ? " By the file's numbers, without the car's own stops." : ""),
                string.Join(' ', known.Select(curve =>
                    $"With friction off by up to {Spread(curve.FrictionSpread)} the front axle stays first with {Allowed(curve.Points[0])} "
                    + $"and with {Allowed(curve.Points[^1])}.")))
            .X("Slope above the knee", "", Measure.Number)
            .Y("Safe limit of the knee", "p", Measure.LinePressure, 0);
        Tone[] tones = [Tone.Ideal, Tone.Main, Tone.Other, Tone.Front];
        Dash[] dashes = [Dash.Solid, Dash.Dash, Dash.DashDot, Dash.LongDash];
        foreach ((int i, (double spread, List<(double Slope, Pressure Knee)> points)) in known.Index())
        {
            figure.Line($"friction ± {Spread(spread)}", points.Select(p => p.Slope).ToArray(), points.Select(p => p.Knee).ToArray(),
                tones[i % tones.Length], dashes[i % dashes.Length], 2.4);
        }

        return figure.Build();

        string Spread(double spread) => Measure.Percent.Text(spread, figure.Units);

        bool IsAny(Pressure knee) => knee >= car?.Hydraulics.MaximumPressure;

        string Allowed((double Slope, Pressure Knee) at) =>
            (IsAny(at.Knee) ? "any knee" : $"a knee of up to {SettingWords.Number(at.Knee, figure.Units)}")
                + $" at a slope of {Finding.Rate(at.Slope)}";

        string Title() => Cost(curves) is not { } cost ? "The safe limit of the knee depends on the slope above it"
            : $"Friction off by up to {Spread(cost.Wide)} instead of {Spread(cost.Narrow)} "
                + (cost.Lost is not { } lost
                    ? "leaves " + (IsAny(cost.Most) ? "any knee safe"
                        : $"the safe limit of the knee at {figure.Text(Measure.LinePressure, cost.Most)}")
                    : "costs "
                        + (IsAny(cost.Most) || known[0].Points[0].Knee.Pascals == known[0].Points[^1].Knee.Pascals ? "at least " : "")
                        + $"{figure.Text(Measure.LinePressure, lost)} of knee") + $" at a slope of {Finding.Rate(cost.Slope)}";
    }

    /// <summary>
    /// What the widest spread of friction costs in knee against the narrowest, at a slope both know: null where there is none, and no loss
    /// where it is less than anybody sets.
    /// </summary>
    internal static (double Narrow, double Wide, double Slope, Pressure Most, Pressure? Lost)? Cost(
        IReadOnlyList<(double FrictionSpread, IReadOnlyList<(double Slope, Pressure? Knee)> Points)> curves)
    {
        List<(double FrictionSpread, List<(double Slope, Pressure Knee)> Points)> known = Known(curves);
        (double narrow, List<(double Slope, Pressure Knee)> most) = known[0];
        (double wide, List<(double Slope, Pressure Knee)> least) = known[^1];
        double[] common = [.. most.Select(point => point.Slope).Intersect(least.Select(point => point.Slope))];
        if (narrow == wide || common.Length == 0)
        {
            return null;
        }

        double slope = common.MinBy(one => Math.Abs(one - 0.3));
        Pressure highest = most.First(point => point.Slope == slope).Knee, lost = highest - least.First(point => point.Slope == slope).Knee;
        return (narrow, wide, slope, highest, lost.Bars < 0.5 ? null : lost);
    }

    private static List<(double FrictionSpread, List<(double Slope, Pressure Knee)> Points)> Known(
        IReadOnlyList<(double FrictionSpread, IReadOnlyList<(double Slope, Pressure? Knee)> Points)> curves) =>
        [.. curves.Select(curve => (curve.FrictionSpread, curve.Points.Where(point => point.Knee is not null)
                .Select(point => (point.Slope, point.Knee!.Value)).ToList()))
            .Where(curve => curve.Item2.Count > 0)];

    private static string Of(Vehicle? car) => car is null ? "" : $" of {car.InText}"
        + (car.Hydraulics.RearProportioningValve is null ? " with a valve added" : "");

    private static void Mark(FigureBuilder figure, SettingGrid grid, Setting? setting)
    {
        void At(string name, SettingValue? value, Tone tone, Marker shape, double size = 10)
        {
            if (value?.Knee is { } knee && setting.Middle.Slope is { } slope && grid.Covers(knee, slope))
            {
                figure.Points(name, [knee.Pascals], [slope], tone, shape, size: size);
            }
        }

        if (setting is not null)
        {
            At("recommended setting", setting.Recommended, Tone.Main, Marker.Ring, 18);
            At("safe limit", setting.MarkedLimit, Tone.Main, Marker.Diamond);
            At("present setting", setting.PresentIsBeyond ? setting.Present : null, Tone.Other, Marker.Cross);
        }
    }

    private static void Table(TableBuilder table, IReadOnlyList<SettingOutcome> outcomes) => table
        .Column("Knee", Measure.LinePressure, outcomes.Select(o => o.Knee).ToArray())
        .Column("Slope", Measure.Number, outcomes.Select(o => o.Slope).ToArray())
        .Words("Front first everywhere", outcomes.Select(o => o.FrontFirstEverywhere ? "yes" : "no"))
        .Column("Cases with the rear first", Measure.Percent, outcomes.Select(o => o.RearFirstShare).ToArray())
        .Column("Mean braking efficiency", Measure.Percent, outcomes.Select(o => o.MeanEfficiency).ToArray())
        .Column("Least braking efficiency", Measure.Percent, outcomes.Select(o => o.WorstEfficiency).ToArray());
}
