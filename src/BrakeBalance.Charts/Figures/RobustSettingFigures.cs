namespace BrakeBalance.Charts.Figures;

/// <summary>What a setting gives and what it risks.</summary>
public static class RobustSettingFigures
{
    /// <summary>The trade-off: chance of a rear-first lock-up and mean efficiency against the setting.</summary>
    /// <param name="setting">The answer.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="isExample">Whether the car only stands for the reader's: title and caption say so.</param>
    public static Figure TradeOff(Setting setting, UnitSystem? units = null, bool isExample = false)
    {
        ArgumentNullException.ThrowIfNull(setting);
        SettingAnswer answer = setting.Chance;
        // What the car's own stops say is drawn over all that they leave open, not at the middle of the file's ranges.
        var figure = new FigureBuilder(
            "setting-trade-off", units, setting is { Rule: SettingRule.Chance, Kept: null } ? null : setting.Vehicle);
        bool bar = answer.Variable == SettingVariable.BalanceBar;
        SettingPoint[] points = [.. answer.TradeOff.OrderBy(X)];
        double X(SettingPoint point) => bar ? point.FrontForceShare!.Value : point.Knee!.Value.Pascals;
        Measure measure = bar ? Measure.Percent : Measure.LinePressure;
        string level = Measure.Percent.Text(answer.Level, figure.Units);
        SettingLimit byChance = setting.Rule == SettingRule.Chance ? setting.ByChance : setting.OtherRule;
        figure
            .Title((isExample ? $"Example, {setting.Vehicle.Name}: " : "") + (answer.Recommended is null
                ? $"No setting keeps the chance of the rear locking first below {level} in every condition"
                : (byChance.AtAnySetting ? "At any setting" : (bar ? "From " : "Up to a knee of ")
                    + SettingWords.Number(byChance, figure.Units)) + $" the chance that the rear locks first "
                    + $"stays below {level} in every condition"))
            .Describe(
                (isExample ? $"An example with invented logs, {setting.Vehicle.InText}. " : "")
                    + "Chance that the rear locks first (worst load, surface and state of the brakes, and all together) "
                    + $"and mean braking efficiency, against the {(bar ? "front share of the balance bar" : "knee")}.",
                SettingWords.Sentence(setting, figure.Units))
            .X(bar ? "Front cylinder's share of the rod force" : "Knee", bar ? "" : "p", measure)
            .Y("Chance, or efficiency", "", Measure.Percent, 0, 1)
            .Line("mean efficiency", points.Select(X).ToArray(), points.Select(p => p.MeanEfficiency)
                .ToArray(), Tone.Ideal, Dash.Solid, 2.6)
            .Line("rear first, worst case", points.Select(X).ToArray(), points.Select(p => p.WorstRearFirst)
                .ToArray(), Tone.Rear, Dash.Solid, 2.4)
            .Line("rear first, all cases", points.Select(X).ToArray(), points.Select(p => p.RearFirst).ToArray(), Tone.Rear, Dash.Dash, 1.8)
            .Level($"level {level}", answer.Level, Tone.Guide, Dash.Dot);
        void Mark(string name, SettingValue? value, Tone tone, Dash dash)
        {
            if ((bar ? value?.FrontForceShare : value?.Knee?.Pascals) is { } at && at <= points.Max(X))
            {
                figure.Upright(name, at, tone, dash);
            }
        }

        Mark("safe limit", setting.MarkedLimit, Tone.Main, Dash.Dash);
        Mark("recommended", setting.Recommended, Tone.Main, Dash.Solid);
        Mark("present", setting.Present, Tone.Other, Dash.Dot);

        SettingPoint[] listed = [.. points.Where((_, i) => i % 5 == 0)];
        return figure.Table(table => table
            .Column(bar ? "Front share" : "Knee", measure, listed.Select(X).ToArray())
            .Column("Rear first, worst case", Measure.Percent, listed.Select(p => p.WorstRearFirst).ToArray())
            .Column("Rear first, all cases", Measure.Percent, listed.Select(p => p.RearFirst).ToArray())
            .Column("Mean efficiency", Measure.Percent, listed.Select(p => p.MeanEfficiency).ToArray())).Build();
    }

    /// <summary>What to measure next: share of an answer's variance in which each number has a hand.</summary>
    /// <param name="answer">The answer; something must be left to measure.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="car">The car, where the caption is to name it.</param>
    /// <exception cref="ArgumentException">Nothing is left to measure.</exception>
    public static Figure MeasureNext(BandedAnswer answer, UnitSystem? units = null, Vehicle? car = null)
    {
        Refuse.If(answer.MeasureNext.Count == 0, "Every number is known, so there is nothing to measure next.", nameof(answer));

        MeasuringAdvice[] first = [.. answer.MeasureNext.Take(6)];
        return new FigureBuilder("measure-next", units)
            .Title($"Measure first: {Short(first[0].Path)} ({first[0].Path})")
            .Describe(
                (car is null ? "" : $"{car.Name}. ") + "Share of the answer's variance that each number has a hand in; "
                    + "the tallest bar is the number most worth measuring.",
                $"{answer.Question}. Known alone, {first[0].Path} would leave "
                    + $"{Measure.Percent.Text(first[0].BandLeft, units ?? Display.Units)} of the present band. {first[0].How}.")
            .Categories("Entry of the vehicle file", first.Select(a => Short(a.Path)))
            .Y("Share of the variance", "", Measure.Percent, 0, 1)
            .Bars("alone", first.Select(a => a.Alone).ToArray(), Tone.Front)
            .Bars("with others", first.Select(a => a.InAll).ToArray(), Tone.Rear, Hatch.Rising)
            .Table(table => table
                .Words("Entry", first.Select(a => a.Path))
                .Column("Alone", Measure.Percent, first.Select(a => a.Alone).ToArray())
                .Column("With others", Measure.Percent, first.Select(a => a.InAll).ToArray()))
            .Build();
    }

    /// <summary>An entry in a word or two, for below a bar.</summary>
    private static string Short(string path)
    {
        string last = path.Split('.')[^1].Split('[')[0];
        string word = last switch
        {
            "wheelCylinderDiameter" => "cylinder",
            "pistonDiameters" => "piston",
            "drumRadius" => "drum",
            "effectiveRadius" => "disc",
            "loadedRadius" => "tyre",
            "thresholdPressure" => "threshold",
            "centreOfGravityHeight" => "height",
            "frontShare" => "weight share",
            _ => last,
        };
        return path.StartsWith("front.", StringComparison.Ordinal)
            ? "front " + word : path.StartsWith("rear.", StringComparison.Ordinal) ? "rear " + word : word;
    }
}
