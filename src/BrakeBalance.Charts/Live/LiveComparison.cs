using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Tables;

namespace BrakeBalance.Charts.Live;

/// <summary>Some set-ups side by side: what differs as a table, braking efficiency as one figure.</summary>
internal static class LiveComparison
{
    /// <summary>The comparison; a set-up with problems says so in its column.</summary>
    public static string Html(IReadOnlyList<(string Name, LiveCar Car)> cars, UnitSystem units, FigureSize size)
    {
        (string Name, LiveCar Car)[] sound = [.. cars.Where(car => car.Car.Study is not null)];
        IReadOnlyList<ComparisonRow> rows = sound.Length == 0 ? [new("locks_first", "Locks first", [], [], [])] : SetUpComparison.Of(
            [.. sound.Select(car => (car.Name, car.Car.Study!.Car))], units,
            settings: [.. sound.Select(car => car.Car.Study!.Answer)]).Rows;
        var html = new StringBuilder(ComparisonTable.Html([.. cars.Select(car => car.Name)], rows.Index().Select(pair =>
        {
            ((int at, ComparisonRow row), int next) = (pair, 0);
            return (row.Label, (IReadOnlyList<string>)[.. cars.Select(car => car.Car.Study is null
                ? at == 0 ? $"the file has {(car.Car.Problems.Count == 1 ? "a problem" : "problems")}" : "–"
                : ComparisonTable.Cell(row, next++))]);
        })));
        if (Figure(cars, units) is { } figure)
        {
            html.Append("<figure class=\"bb-figure\">").Append(LivePictures.Html(figure, size)).Append("</figure>\n");
        }

        return html.ToString();
    }

    /// <summary>Braking efficiency of the set-ups without problems; null for fewer than two, or when one never locks a wheel.</summary>
    public static Figure? Figure(IReadOnlyList<(string Name, LiveCar Car)> cars, UnitSystem units)
    {
        (string Name, LiveCar Car)[] sound = [.. cars.Where(car => car.Car.Study is not null)];
        return sound.Length < 2 ? null : ComparisonFigures.SetUps(
            [.. sound.Select(car => (car.Name, car.Car.Study!.Light))], units, settings: [.. sound.Select(car => car.Car.Study!.Answer)]);
    }
}
