using BrakeBalance.Answers;
using BrakeBalance.Bench;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Summaries;

/// <summary>Set-ups side by side: the answer and its figures, with how far each lies from the first.</summary>
/// <param name="Names">What each set-up is called.</param>
/// <param name="Rows">One row a figure, one text a set-up.</param>
public sealed record SetUpComparison(IReadOnlyList<string> Names, IReadOnlyList<ComparisonRow> Rows)
{
    /// <summary>Most set-ups that can be told apart side by side.</summary>
    public const int Most = 6;

    /// <summary>The answer of each set-up.</summary>
    public IReadOnlyList<Setting> Settings { get; init; } = [];

    /// <summary>Compares set-ups.</summary>
    /// <param name="setUps">The set-ups, each with its name; the first is what the others are held against.</param>
    /// <param name="units">The system of units.</param>
    /// <param name="conditions">Load case and stop by which they are compared; the usual ones unless said.</param>
    /// <param name="settings">The answers, where they are known already; null to work them out.</param>
    /// <returns>The comparison; figures that no car's file can tell are left out.</returns>
    /// <exception cref="ArgumentException">A car has no load case of the name asked for, or cannot be computed.</exception>
    public static SetUpComparison Of(IReadOnlyList<(string Name, Vehicle Car)> setUps, UnitSystem units,
        ChangeConditions? conditions = null, IReadOnlyList<Setting>? settings = null)
    {
        ArgumentNullException.ThrowIfNull(setUps);
        ChangeConditions asked = conditions ?? new();
        Banded<SetUp>[] cars = [.. setUps.Select((setUp, i) =>
            Banded.Of(setUp.Car, drawn => new SetUp(drawn, asked, i == 0 ? asked.OldRings : asked.NewRings)))];
        settings ??= [.. setUps.Select(setUp => Setting.Of(setUp.Car))];
        IReadOnlyList<(string Label, string Text)>[] lines = [.. settings.Select(answer => SettingWords.Lines(answer, units))];
        IEnumerable<ComparisonRow> setting = lines[0].Select((line, row) => new ComparisonRow(
            line.Label.ToLowerInvariant().Replace(' ', '_'), line.Label, [.. lines.Select(one => one[row].Text)],
            [.. lines.Select(_ => "")], [.. lines.Select(_ => new Banded<IQuantity?>(null, [], []))]));
        IEnumerable<ComparisonRow> figures = cars[0].Middle.Figures
            .Where(figure => cars.Any(car => car.Middle[figure.Key] is var own && ((object?)own.Value ?? Says(own)) is not null))
            .Select(figure => (Figure: figure, figure.Key, Texts: (string[])
                [.. cars.Select(car => car.Text(one => SetUp.Text(one[figure.Key].Value, one[figure.Key].Words, units)))]))
            .Select(row => new ComparisonRow(
                row.Key, row.Figure.Name, row.Texts,
                [.. cars.Select((car, i) => i == 0 || row.Figure.Value is null ? ""
                    : Difference(car.Middle[row.Key].Value, row.Texts[0], row.Texts[i], units))],
                [.. cars.Select(car => new Banded<IQuantity?>(car.Middle[row.Key].Value,
                    [.. car.Drawn.Select(drawn => drawn[row.Key].Value)], []))]));
        return new([.. setUps.Select(setUp => setUp.Name)], [.. setting, .. figures]) { Settings = settings };
    }

    // How far a number lies from another, both as shown; empty where either is none or nothing is seen of it.
    private static string Difference(IQuantity? of, string from, string to, UnitSystem units)
    {
        if (of is null || BandText.Leading(from) is not { } first || BandText.Leading(to) is not { } other)
        {
            return "";
        }

        if (of is Ratio)
        {
            return Math.Abs(other - first) < 0.05 ? "" : Invariant.Text($"{other - first:+0.0;−0.0} points");
        }

        Measure measure = SetUp.MeasureOf(of);
        string text = measure.Text(Math.Abs(other - first) / measure.In(units).Scale, units);
        return text == measure.Text(0, units) ? "" : (other > first ? "+" : "−") + text;
    }

    // Words that tell something of the car, not that its file is silent.
    private static string? Says(SetUpFigure figure) => figure.Words is SetUp.Missing or SetUp.Unweighed ? null : figure.Words;
}

/// <summary>One row of a comparison.</summary>
/// <param name="Key">Its key in JSON.</param>
/// <param name="Label">What it is.</param>
/// <param name="Texts">What each set-up says, its numbers with their bands.</param>
/// <param name="Differences">How far each lies from the first; empty where nothing is seen of it or it is no number.</param>
/// <param name="Values">The numbers themselves; without one where a text is the answer.</param>
public sealed record ComparisonRow(
    string Key, string Label, IReadOnlyList<string> Texts, IReadOnlyList<string> Differences, IReadOnlyList<Banded<IQuantity?>> Values)
{
    /// <summary>Whether the set-ups do not all say the same.</summary>
    public bool Differs => Texts.Distinct().Count() > 1;
}
