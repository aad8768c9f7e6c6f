using BrakeBalance.Charts.Figures;

namespace BrakeBalance.Charts.Live;

/// <summary>Some set-ups side by side: what differs as a table, braking efficiency as one figure.</summary>
internal static class LiveComparison
{
    /// <summary>The comparison; a set-up with problems says so in its column.</summary>
    public static string Html(IReadOnlyList<(string Name, LiveCar Car)> cars, UnitSystem units, FigureSize size)
    {
        var html = new StringBuilder("<div class=\"bb-scroll\" tabindex=\"0\" role=\"region\" aria-label=\"Set-ups side by side\">\n");
        html.Append("<table>\n<thead><tr><td></td>");
        foreach ((string name, LiveCar _) in cars)
        {
            html.Append("<th scope=\"col\">").Append(HtmlRenderer.Escape(name)).Append("</th>");
        }

        html.Append("</tr></thead>\n<tbody>\n");
        (string Name, LiveCar Car)[] sound = [.. cars.Where(car => car.Car.Study is not null)];
        IReadOnlyList<ComparisonRow> rows = sound.Length == 0 ? [new("locks_first", "Locks first", [], [], [])] : SetUpComparison.Of(
            [.. sound.Select(car => (car.Name, car.Car.Study!.Car))], units,
            settings: [.. sound.Select(car => car.Car.Study!.Answer)]).Rows;
        foreach ((int at, ComparisonRow row) in rows.Index())
        {
            int next = 0;
            string[] cells = [.. cars.Select(car => car.Car.Study is null
                ? at == 0 ? $"the file has {(car.Car.Problems.Count == 1 ? "a problem" : "problems")}" : "–"
                : row.Differences[next] is { Length: > 0 } far ? $"{row.Texts[next++]}; {far}" : row.Texts[next++])];
            html.Append(cells.Distinct().Count() > 1 ? "<tr class=\"bb-differs\">" : "<tr>").Append("<th scope=\"row\">")
                .Append(HtmlRenderer.Escape(row.Label)).Append("</th>");
            foreach (string cell in cells)
            {
                html.Append("<td>").Append(HtmlRenderer.Escape(cell)).Append("</td>");
            }

            html.Append("</tr>\n");
        }

        html.Append("</tbody>\n</table>\n</div>\n");
        if (Figure(cars, units) is { } figure)
        {
            html.Append("<figure class=\"bb-figure\">").Append(LivePictures.Html(figure, size)).Append("</figure>\n");
        }

        return html.ToString();
    }

    /// <summary>Braking efficiency of the set-ups without problems; null for fewer than two, or when one never locks a wheel.</summary>
    public static Figure? Figure(IReadOnlyList<(string Name, LiveCar Car)> cars, UnitSystem units)
    {
        (string Name, BalanceModel Model)[] models =
            [.. cars.Where(car => car.Car.Study is not null).Select(car => (car.Name, car.Car.Study!.Light))];
        return models.Length > 1 ? ComparisonFigures.SetUps(models, units) : null;
    }
}
