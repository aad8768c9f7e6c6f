
namespace BrakeBalance.Charts.Sheets;

/// <summary>A test plan as a sheet to fill in beside the car.</summary>
public static class TestPlanSheet
{
    /// <summary>The sheet as a document of its own.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>A complete HTML document without scripts that fetches nothing; it prints on A4 and on Letter.</returns>
    public static string Html(TestPlan plan, UnitSystem? units = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        UnitSystem system = units ?? Display.Units;
        string pressure = Measure.LinePressure.In(system).Symbol;
        var html = new StringBuilder();
        html.Append("<!DOCTYPE html>\n<html lang=\"en-GB\">\n<head>\n<meta charset=\"utf-8\">\n" + PageMark.Html
            + "\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
            .Append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; "
                + "style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'\">\n")
            .Append("<link rel=\"icon\" href=\"data:,\">\n<title>Test plan: ").Append(HtmlRenderer.Escape(plan.Car))
                .Append("</title>\n<style>\n").Append(FigureAssets.Sheet)
            .Append(".plan{overflow-x:auto} .plan table{width:100%;border-collapse:collapse} .plan th,.plan td{"
                + "border:1px solid currentColor;padding:.25em .35em;text-align:left;vertical-align:top;overflow-wrap:normal} "
                + ".plan td.fill{min-width:4.2em;height:2.3em}\n")
            .Append("</style>\n</head>\n<body>\n<main>\n<header>\n<div><h1>Test plan: ").Append(HtmlRenderer.Escape(plan.Car))
                .Append("</h1></div>\n")
            .Append("<dl><dt>Date</dt><dd></dd><dt>Driver</dt><dd></dd><dt>Spotters</dt><dd></dd><dt>Weather</dt><dd></dd></dl>\n"
                + "</header>\n<h2>Read out before the first stop</h2>\n<ul class=\"caution\">\n");
        foreach (string caution in plan.Cautions)
        {
            html.Append("<li>").Append(HtmlRenderer.Escape(caution)).Append("</li>\n");
        }

        html.Append("</ul>\n<h2>Stops, in this order</h2>\n"
            + "<div class=\"plan\" tabindex=\"0\" role=\"region\" aria-label=\"Stops\">\n<table>\n<thead><tr>");
        foreach (string heading in (string[])["No.", "Load", "Surface", "Turns", "Speed", "Pressure to build up", "Abort when",
            $"Front [{pressure}]", $"Rear [{pressure}]", $"Front at lock [{pressure}]", "Deceleration [g]", "Locked first",
            "Temperature, notes"])
        {
            html.Append("<th scope=\"col\">").Append(HtmlRenderer.Escape(heading)).Append("</th>");
        }

        html.Append("</tr></thead>\n<tbody>\n");
        foreach (PlannedStop stop in plan.Stops)
        {
            string turns = stop.Turns?.ToString("0.##", CultureInfo.InvariantCulture) ?? "–";
            html.Append("<tr>");
            foreach (string cell in (string[])[stop.Number.ToString(CultureInfo.InvariantCulture), stop.LoadCase, stop.Surface, turns,
                Measure.Speed.Text(stop.Speed, system), Measure.LinePressure.Text(stop.TargetPressure, system), stop.AbortIf(system)])
            {
                html.Append("<td>").Append(HtmlRenderer.Escape(cell)).Append("</td>");
            }

            html.Append("<td class=\"fill\"></td><td class=\"fill\"></td>"
                + "<td class=\"fill\"></td><td class=\"fill\"></td><td class=\"fill\"></td><td class=\"fill\"></td></tr>\n");
        }

        return html.Append("</tbody>\n</table>\n</div>\n<p>Locked first: none, front, rear or together. "
            + "Pressures are gauge. A calculation is no approval.</p>\n</main>\n</body>\n</html>\n").ToString();
    }
}
