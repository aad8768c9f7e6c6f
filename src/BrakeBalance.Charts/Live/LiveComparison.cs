using BrakeBalance.Charts.Figures;

namespace BrakeBalance.Charts.Live;

/// <summary>Up to four set-ups side by side: what differs as a table, braking efficiency as one figure.</summary>
internal static class LiveComparison
{
    private static readonly (Tone Tone, Dash Dash)[] Strokes =
        [(Tone.Main, Dash.Solid), (Tone.Other, Dash.Dash), (Tone.Front, Dash.Dot), (Tone.Ideal, Dash.DashDot)];

    /// <summary>The comparison; a set-up with problems says so in its column.</summary>
    public static string Html(IReadOnlyList<(string Name, LiveCar Car)> cars, UnitSystem units, FigureSize size, Theme theme)
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
        if (models.Length > 1 && Efficiencies(models, units) is { } figure)
        {
            html.Append("<figure class=\"bb-figure\">").Append(LivePictures.Html(figure, size, theme)).Append("</figure>\n");
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
        foreach ((string road, double adhesion) in new[] { ("wet", Conditions.WetAdhesion), ("dry", Conditions.DryAdhesion) })
        {
            LockUp? lockUp = study.Light.FirstLockUp(adhesion);
            rows.Add(($"First lock-up, {road} road", lockUp is null ? "none" : FormattableString.Invariant(
                $"{Finding.AxleWord(lockUp)}, {lockUp.At.BrakingRate:0.00} g, efficiency {100 * lockUp.Efficiency:0} %")));
        }

        if (study.Control is not null)
        {
            var foot = new ControlForce(study.Light);
            rows.Add(("Pedal force at 0.5 g",
                foot.AtRate(0.5) is { } at ? Measure.ControlForce.Text(at.PedalForce, units) : "not reached"));
        }

        return rows;
    }

    private static Figure? Efficiencies((string Name, BalanceModel Model)[] models, UnitSystem units)
    {
        LockUp[][] locks =
        [
            .. models.Select(model =>
                ComparisonFigures.DefaultAdhesions.Select(adhesion => model.Model.FirstLockUp(adhesion)).OfType<LockUp>().ToArray()),
        ];
        if (locks.Any(one => one.Length == 0))
        {
            return null;
        }

        string[] rear = [.. models.Where((_, i) => locks[i].Any(at => at.First == Axle.Rear)).Select(model => model.Name)];
        string finding = rear.Length == 0
            ? "No set-up locks the rear first on any of these surfaces"
            : $"The rear locks first somewhere with {string.Join(" and ", rear)}";
        double floor = Math.Floor(locks.Min(one => one.Min(at => at.Efficiency)) * 20 - 0.2) / 20;
        FigureBuilder figure = new FigureBuilder("set-ups", units)
            .Title(finding)
            .Describe(
                "Braking efficiency at the first lock-up, first load case, standing still. "
                + "Triangles: the rear axle locks first, dangerous.",
                "Lines of braking efficiency over adhesion, one a set-up; triangles where the rear axle locks first.",
                finding + ".")
            .X("Adhesion", "k", Measure.Number, 0, ComparisonFigures.DefaultAdhesions.Max())
            .Y("Braking efficiency", "", Measure.Percent, Math.Max(0, floor), 1);
        for (int i = 0; i < models.Length; i++)
        {
            (Tone tone, Dash dash) = Strokes[i % Strokes.Length];
            figure.Line(models[i].Name, locks[i].Select(at => at.Adhesion).ToArray(), locks[i].Select(at => at.Efficiency).ToArray(),
                tone, dash, 2.4);
            ComparisonFigures.MarkRearFirst(figure, $"rear locks first, {models[i].Name}", locks[i], Tone.Rear);
        }

        return figure.Table(table =>
        {
            TableBuilder rows = table.Column("Adhesion k", Measure.Number, ComparisonFigures.DefaultAdhesions.ToArray());
            foreach ((string name, BalanceModel model) in models)
            {
                rows.Column($"Braking efficiency, {name}", Measure.Percent,
                    ComparisonFigures.DefaultAdhesions.Select(adhesion => model.FirstLockUp(adhesion)?.Efficiency));
            }
        }).Build();
    }
}
