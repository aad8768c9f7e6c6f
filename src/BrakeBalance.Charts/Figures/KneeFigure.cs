namespace BrakeBalance.Charts.Figures;

/// <summary>What the knee of the valve does to efficiency, and how far it may go.</summary>
public static class KneeFigure
{
    private const string RearFirst = "rear first somewhere";
    private const string TooOften = "rear first too often";

    /// <summary>Efficiency against the knee for the valve's slope, with the three settings of the answer.</summary>
    /// <param name="setting">The answer; its car is set by a knee.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <exception cref="ArgumentException">The car is set by a balance bar.</exception>
    public static Figure Of(Setting setting, UnitSystem? units = null)
    {
        ArgumentNullException.ThrowIfNull(setting);
        (Vehicle vehicle, Conditions conditions) = (setting.Vehicle, setting.Conditions);
        double used = setting.Middle.Slope
            ?? throw new ArgumentException("The car is set by a balance bar, not by a knee.", nameof(setting));
        double top = SettingMap.Highest(setting).Pascals;
        Pressure[] knees = [.. Enumerable.Range(0, 61).Select(i => Pressure.FromPascals(top * i / 60))];
        IReadOnlyList<SettingOutcome> outcomes = SettingSearch.Sweep(vehicle, conditions, knees, [used]);
        var figure = new FigureBuilder("knee-setting", units, vehicle);
        figure
            .Title(KneeTitle(figure, setting, used, top))
            .Describe(
                $"Braking efficiency of {vehicle.InText} over all load cases, speeds and surfaces from "
                    + $"{Finding.Rate(conditions.LowestAdhesion)} to {Finding.Rate(conditions.HighestAdhesion)}, against the valve's knee.",
                "A higher knee lets the rear brakes work more. "
                    + $"{SettingWords.Sentence(setting, figure.Units)} Conditions: {SettingWords.Conditions(vehicle, figure.Units)}.")
            .X("Knee", "p", Measure.LinePressure, 0, top)
            .Y("Braking efficiency", "", Measure.Percent, 0, 1);
        double safe = setting.SafeLimit?.Knee?.Pascals ?? 0;
        bool byChance = setting.Rule == SettingRule.Chance;
        if (safe < top)
        {
            figure.Region(byChance ? TooOften : RearFirst, [safe, top, top, safe], [0, 0, 1, 1], Tone.Rear, Hatch.Rising);
        }

        figure
            .Line("mean of all cases", knees, outcomes.Select(outcome => outcome.MeanEfficiency).ToArray(), Tone.Ideal, Dash.Solid, 2.6)
            .Line("least of all cases", knees, outcomes.Select(outcome => outcome.WorstEfficiency).ToArray(), Tone.Front, Dash.Dash, 2.2);
        if (setting.SafeLimit is not null && safe < top)
        {
            figure.Upright("safe limit", safe, Tone.Main, Dash.Dash);
        }

        double? recommended = setting.Recommended?.Knee?.Pascals;
        if (recommended < top)
        {
            figure.Upright("recommended", recommended.Value, Tone.Main, Dash.Solid);
        }

        if (setting.Present?.Knee is { } present && present.Pascals < top && Math.Abs(present.Pascals - (recommended ?? safe)) > 0.01 * top)
        {
            figure.Upright("present", present.Pascals, Tone.Other, Dash.Dot);
        }

        SettingOutcome[] listed = [.. outcomes.Where((_, i) => i % 5 == 0)];
        return figure.Table(table => table
            .Column("Knee", Measure.LinePressure, listed.Select(outcome => outcome.Knee).ToArray())
            .Column("Mean efficiency", Measure.Percent, listed.Select(outcome => outcome.MeanEfficiency).ToArray())
            .Column("Least efficiency", Measure.Percent, listed.Select(outcome => outcome.WorstEfficiency).ToArray())
            .Column("Cases with the rear first", Measure.Percent, listed.Select(outcome => outcome.RearFirstShare).ToArray())).Build();
    }

    private static string KneeTitle(FigureBuilder figure, Setting setting, double slope, double top)
    {
        string withSlope = $"with a slope of {Finding.Rate(slope)}";
        return setting.SafeLimit is not { } limit ? $"No knee keeps the front first {withSlope}"
            : setting.Rule == SettingRule.Chance
                ? (limit.Knee?.Pascals >= top ? "At every knee shown" : $"Up to a knee of {SettingWords.Number(limit, figure.Units)}")
                    + $" the chance of rear-first stays within "
                    + $"{Measure.Percent.Text(setting.Conditions.RearFirstChance, figure.Units)} {withSlope}"
            : limit.Knee?.Pascals >= top ? $"Every knee shown keeps the front first {withSlope}"
            : $"Up to a knee of {SettingWords.Number(limit, figure.Units)} the front locks first everywhere {withSlope}";
    }
}
