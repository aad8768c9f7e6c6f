using BrakeBalance.Charts.Figures;

namespace BrakeBalance.Charts.Sheets;

/// <summary>A bench report on one sheet of paper: the job in front, the checklists behind.</summary>
public static class BenchPrintSheet
{
    /// <summary>The sheet as a document of its own.</summary>
    /// <param name="report">The report.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>A complete HTML document without scripts that fetches nothing; it prints on A4 and on Letter.</returns>
    public static string Html(BenchReport report, UnitSystem? units = null)
    {
        ArgumentNullException.ThrowIfNull(report);
        UnitSystem system = units ?? Display.Units;
        var html = new StringBuilder();
        html.Append("<!DOCTYPE html>\n<html lang=\"en-GB\">\n<head>\n<meta charset=\"utf-8\">\n" + PageMark.Html
            + "\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
            .Append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; "
                + "style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'\">\n")
            .Append("<link rel=\"icon\" href=\"data:,\">\n<title>Bench sheet: ").Append(Escape(report.Sheet.Name))
                .Append("</title>\n<style>\n").Append(FigureAssets.Sheet).Append("</style>\n</head>\n<body>\n<main>\n");
        Head(html, report);
        Findings(html, report, system);
        Hoses(html, report, system);
        Plumbing(html, report, system);
        Changes(html, report, system);
        html.Append("<section class=\"back\">\n<div class=\"lists\">\n");
        foreach (Checklist list in Checklist.All)
        {
            html.Append("<section>\n<h2>").Append(Escape(list.Title)).Append("</h2>\n<p class=\"before\">").Append(Escape(list.Before))
                .Append("</p>\n<ul>\n");
            foreach (string step in list.Steps)
            {
                html.Append("<li>").Append(Escape(InBoth.Only(step, system == UnitSystem.Us))).Append("</li>\n");
            }

            html.Append("</ul>\n</section>\n");
        }

        return html.Append("</div>\n</section>\n</main>\n"
            + "<footer>Made with the brake balance notebooks. Pressures are gauge.</footer>\n</body>\n</html>\n").ToString();
    }

    private static void Head(StringBuilder html, BenchReport report)
    {
        html.Append("<header>\n<div><h1>Bench sheet: ").Append(Escape(report.Sheet.Name)).Append("</h1>\n");
        if (report.Sheet.Note.Length > 0)
        {
            html.Append("<p>").Append(Escape(report.Sheet.Note)).Append("</p>\n");
        }

        html.Append("</div>\n<dl><dt>Car</dt><dd></dd><dt>Date</dt><dd></dd><dt>Done by</dt><dd></dd><dt>Checked "
            + "by</dt><dd></dd></dl>\n</header>\n")
            .Append("<p class=\"caution\">A calculation is no approval. Brake work and test stops are for competent people and off "
                + "public roads, under local law and the car's service manual. A car whose rear axle locks first spins.</p>\n");
    }

    private static void Findings(StringBuilder html, BenchReport report, UnitSystem units)
    {
        BenchFinding[] open = [.. report.Findings.Where(finding => finding.Severity != BenchSeverity.Pass)];
        html.Append("<h2>Fix first</h2>\n");
        if (open.Length == 0)
        {
            html.Append("<p>Nothing was found wrong in what was measured.</p>\n");
            return;
        }

        html.Append("<ul>\n");
        foreach (BenchFinding finding in open)
        {
            html.Append("<li><strong>").Append(Escape(BenchTables.Word(finding.Severity))).Append("</strong> ")
                .Append(Escape(finding.In(units).ToString())).Append("</li>\n");
        }

        html.Append("</ul>\n");
    }

    private static void Hoses(StringBuilder html, BenchReport report, UnitSystem units)
    {
        if (report.Sheet.Hoses.IsEmpty)
        {
            return;
        }

        Table(html, BenchTables.CutList(report, units));
        html.Append("<p>Angles between ends: first end hanging down, clockwise, seen from the second end. To buy: ");
        html.AppendJoin("; ", report.Purchase.Select(line => Escape($"{Measure.Distance.Text(line.ToBuy, units)} of {line.Rating.Name}")))
            .Append(".</p>\n");
    }

    private static void Plumbing(StringBuilder html, BenchReport report, UnitSystem units)
    {
        if (report.Sheet.Plumbing is null && report.PushRod is null)
        {
            return;
        }

        html.Append(report.Sheet.Plumbing is null ? "<div>\n" : "<div class=\"pair\">\n");
        if (report.Sheet.Plumbing is { } plumbing)
        {
            html.Append("<div><h2>Plumbing</h2>\n").Append(PlumbingDrawing.Of(plumbing.Return.Plumbing, units).ToSvg(theme: Theme.Print))
                .Append("</div>\n<div>");
        }
        else
        {
            html.Append("<div>");
        }

        if (report.PushRod is not null && report.Sheet.PushRod is { } rod)
        {
            html.Append("<h2>Push rod</h2>\n<p>Seat ").Append(Escape(BenchMeasures.Gap.Text(rod.PistonDepth, units))).Append(" deep, rod ")
                .Append(Escape(BenchMeasures.Gap.Text(rod.Projection, units)))
                .Append(" out: ").Append(Escape($"{rod.Finding().In(units).What} {rod.Finding().In(units).Why}")).Append("</p>\n");
        }

        if (!report.Releases.IsEmpty)
        {
            html.Append("<h2>Release</h2>\n<table><thead><tr><th>Oil</th><th class=\"number\">In the return, at rest</th>"
                + "<th class=\"number\">Pedal back within</th></tr></thead><tbody>\n");
            foreach ((Temperature oil, ReleaseEffect effect) in report.Releases)
            {
                string time = effect.ReleaseTime is { } back ? Measure.Time.Text(back, units) : "not by springs";
                html.Append(CultureInfo.InvariantCulture,
                    $"<tr><td>{Escape(Measure.Temperature.Text(oil, units))}</td>"
                        + $"<td class=\"number\">{Escape(BenchMeasures.BackPressure.Text(effect.Standing, units))}</td>"
                        + $"<td class=\"number\">{Escape(time)}</td></tr>\n");
            }

            html.Append("</tbody></table>\n");
        }

        html.Append("</div>\n</div>\n");
    }

    private static void Changes(StringBuilder html, BenchReport report, UnitSystem units)
    {
        if (report.Sheet.Change is not null)
        {
            Table(html, BenchTables.Changes(report, units));
        }
    }

    private static void Table(StringBuilder html, NamedTable named)
    {
        FigureTable table = named.Table;
        html.Append("<h2>").Append(Escape(named.Title)).Append("</h2>\n");
        if (named.Caption.Length > 0)
        {
            html.Append("<p>").Append(Escape(named.Caption)).Append("</p>\n");
        }

        html.Append("<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"Table: ").Append(Escape(named.Title))
            .Append("\">\n<table><thead><tr>");
        foreach ((int i, string column) in table.Columns.Index())
        {
            html.Append(table.IsNumeric(i) ? "<th scope=\"col\" class=\"number\">" : "<th scope=\"col\">").Append(Escape(column))
                .Append("</th>");
        }

        html.Append("</tr></thead>\n<tbody>\n");
        for (long row = 0; row < table.Frame.Rows.Count; row++)
        {
            html.Append("<tr>");
            foreach ((int i, string cell) in table.Row(row).Index())
            {
                html.Append(table.IsNumeric(i)
                    ? "<td class=\"number\">" : table.Columns[i] == "Verdict" ? "<td class=\"verdict\">" : "<td>").Append(Escape(cell))
                    .Append("</td>");
            }

            html.Append("</tr>\n");
        }

        html.Append("</tbody></table>\n</div>\n");
    }

    private static string Escape(string text) => HtmlRenderer.Escape(text);
}
