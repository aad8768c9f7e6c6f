using BrakeBalance.Charts.Figures;

namespace BrakeBalance.Charts.Live;

/// <summary>Up to four set-ups side by side: what differs as a table, braking efficiency as one figure.</summary>
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
        IReadOnlyList<(string Label, string Text)>[] columns = [.. cars.Select(car => Column(car.Car, units))];
        foreach (string label in columns.OrderByDescending(column => column.Count).First().Select(row => row.Label))
        {
            string[] cells = [.. columns.Select(column => column.FirstOrDefault(row => row.Label == label).Text ?? "–")];
            html.Append(cells.Distinct().Count() > 1 ? "<tr class=\"bb-differs\">" : "<tr>").Append("<th scope=\"row\">")
                .Append(HtmlRenderer.Escape(label)).Append("</th>");
            foreach (string cell in cells)
            {
                html.Append("<td>").Append(HtmlRenderer.Escape(cell)).Append("</td>");
            }

            html.Append("</tr>\n");
        }

        html.Append("</tbody>\n</table>\n</div>\n");
        (string Name, BalanceModel Model)[] models =
            [.. cars.Where(car => car.Car.Study is not null).Select(car => (car.Name, car.Car.Study!.Light))];
        if (models.Length > 1 && ComparisonFigures.SetUps(models, units) is { } figure)
        {
            html.Append("<figure class=\"bb-figure\">").Append(LivePictures.Html(figure, size)).Append("</figure>\n");
        }

        return html.ToString();
    }

    private static IReadOnlyList<(string Label, string Text)> Column(LiveCar car, UnitSystem units)
    {
        if (car.Study is not { } study)
        {
            return [("Locks first", $"the file has {(car.Problems.Count == 1 ? "a problem" : "problems")}")];
        }

        List<(string, string)> rows = [.. SettingWords.Lines(study.Answer, units)];
        Banded<BalanceModel> models = Banded.Of(study.Car, drawn => new BalanceModel(drawn, drawn.LoadCases[0]));
        rows.Add(("Load case of what follows", study.Light.LoadCase.Name));
        foreach ((string road, double adhesion) in new[] { ("wet", Conditions.WetAdhesion), ("dry", Conditions.DryAdhesion) })
        {
            rows.Add(($"First lock-up, {road} road", models.Text(model => model.FirstLockUp(adhesion) is { } lockUp
                ? FormattableString.Invariant(
                    $"{Finding.AxleWord(lockUp)} {lockUp.At.BrakingRate:0.00} g, efficiency {100 * lockUp.Efficiency:0} %")
                : "none")));
        }

        if (study.Control is not null)
        {
            rows.Add(("Pedal force at 0.5 g", models.Text(model => new ControlForce(model).AtRate(0.5) is { } at
                ? Measure.ControlForce.Text(at.PedalForce, units) : "not reached")));
        }

        return rows;
    }
}
