namespace BrakeBalance.Charts.Sheets;

/// <summary>Writes a pocket card as a page that prints on one sheet and reads well on a phone.</summary>
public static class PocketCardPage
{
    private const string Caution =
        "Calculated, approved by nobody. A car whose rear axle locks first spins. Change one thing at a time, "
            + "check with gauges, test off public roads with competent people, and keep to local law and the service manual.";

    private const string Style =
        """
        *,*::before,*::after{box-sizing:border-box}
        html{color-scheme:light;background:#e9ecee;color:#000;-webkit-text-size-adjust:100%;text-size-adjust:100%}
        body{margin:0;font:1rem/1.35 "Segoe UI",Roboto,"Helvetica Neue",Arial,"Liberation Sans",sans-serif;font-size-adjust:.519}
        main{background:#fff;max-width:44rem;margin:0 auto;padding:1rem}
        h1{font-size:1.35rem;line-height:1.15;margin:0} h2{font-size:.95rem;margin:.9rem 0 .25rem;text-transform:none}
        p{margin:.2rem 0} .load{color:#333}
        .warning{border:3px solid #000;background:#000;color:#fff;border-radius:.4rem;padding:.4rem .7rem;margin:.6rem 0}
        .back{border:3px solid #000;border-radius:.4rem;padding:.4rem .7rem;margin:.6rem 0}
        .back strong{display:block;font-size:1.75rem;line-height:1.15}
        table{border-collapse:collapse;width:100%;font-variant-numeric:tabular-nums}
        th,td{border:1px solid #555;padding:.25rem .3rem;text-align:center}
        thead th{font-size:.78rem;line-height:1.15;font-weight:600;vertical-align:bottom}
        tbody th,tbody td{font-size:1.3rem;font-weight:650;line-height:1.15}
        tbody td:last-child{font-size:1.15rem;white-space:nowrap}
        tr.own{background:#dfe9f2;outline:3px solid #000;outline-offset:-2px}
        tr.rear td:last-child{background:#000;color:#fff}
        dl{display:grid;grid-template-columns:repeat(auto-fit,minmax(8.5rem,1fr));gap:.35rem;margin:0}
        dl div{border:1px solid #555;border-radius:.3rem;padding:.25rem .45rem}
        dt{font-size:.8rem} dd{margin:0;font-size:1.25rem;font-weight:700;line-height:1.15}
        .lines th{font-size:.78rem;font-weight:600;padding:.15rem .3rem} .lines td{height:1.9rem}
        .caution{border-left:.4rem solid #000;padding-left:.5rem;font-size:.85rem;margin-top:.7rem}
        .wide{overflow-x:auto}
        main.banded tbody td{font-size:.95rem}
        main.banded tbody td:last-child{font-size:.9rem;white-space:normal} main.banded dd{font-size:1rem}
        @media screen and (max-width:34rem){
          main{padding:.6rem} thead th{font-size:.72rem} tbody th,tbody td{font-size:1.12rem;padding:.2rem .1rem}
          tbody td:last-child{font-size:.9rem} .back strong{font-size:1.5rem}
        }
        @media print{
          html{background:#fff} body{font-size:8.4pt;line-height:1.25} main{max-width:none;padding:0 .3mm}
          h1{font-size:13pt} h2{font-size:8.4pt;margin:1.6mm 0 .5mm} p{margin:.4mm 0}
          .back,.warning{margin:1mm 0;padding:.6mm 2mm} .back strong{font-size:17pt}
          .wide{overflow:visible} thead th{font-size:7pt;padding:.4mm} tbody th,tbody td{font-size:12.5pt;padding:.3mm .4mm}
          tbody td:last-child{font-size:11.5pt}
          dl{gap:1mm;grid-template-columns:repeat(4,1fr)} dl.pedal{grid-template-columns:repeat(6,1fr)}
          dl.pedal div{grid-column:span 2} dl.pedal div:nth-child(n+4){grid-column:span 3}
          dl div{padding:.4mm 1.2mm} dt{font-size:7pt} dd{font-size:11.5pt}
          dl.pedal div:nth-child(n+4){display:flex;justify-content:space-between;align-items:center;gap:1mm}
          .lines td{height:5.6mm} .lines th{font-size:7pt} .caution{font-size:7pt;line-height:1.2;margin-top:1.4mm}
          main.banded tbody td,main.banded tbody td:last-child{font-size:7pt;line-height:1.15;padding:.45mm .2mm}
          main.banded dd{font-size:7.5pt} main.banded .back strong{font-size:13pt} main.banded .lines td{height:4.2mm}
          main.banded :is(p,.back){font-size:7.4pt;line-height:1.15} main.banded h2{margin-top:.8mm} main.banded dl div{padding:0 1mm}
          tr,dl div{break-inside:avoid} *{print-color-adjust:exact;-webkit-print-color-adjust:exact}
        }
        """;

    /// <summary>The page.</summary>
    /// <returns>HTML that needs nothing from elsewhere.</returns>
    public static string Html(PocketCard card, CardPaper paper)
    {
        var html = new StringBuilder("<!DOCTYPE html>\n<html lang=\"en-GB\">\n<head>\n<meta charset=\"utf-8\">\n" + PageMark.Html
            + "\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        html.Append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; "
            + "img-src data:; base-uri 'none'; form-action 'none'\">\n<link rel=\"icon\" href=\"data:,\">\n<title>")
            .Append(HtmlRenderer.Escape($"Brake card, {card.Car}")).Append("</title>\n<style>\n").Append(Style)
            .Append(CultureInfo.InvariantCulture,
                $"\n@page{{size:{paper.WidthMillimetres}mm {paper.HeightMillimetres}mm;margin:7mm}}\n</style>\n</head>\n")
            .Append(CultureInfo.InvariantCulture, $"<body>\n<main{(card.HasBands ? " class=\"banded\"" : "")}>\n")
            .Append(CultureInfo.InvariantCulture,
                $"<h1>{HtmlRenderer.Escape(card.Car)}</h1>\n<p class=\"load\">Brake card, {HtmlRenderer.Escape(card.LoadCase)}. "
                    + $"Line pressures at the brakes, gauge.</p>\n")
            .Append(card.Warning is null ? "" : $"<p class=\"warning\"><strong>WARNING</strong> {HtmlRenderer.Escape(card.Warning)}</p>\n")
            .Append(CultureInfo.InvariantCulture,
                $"<div class=\"back\">Baseline: recommended setting"
                    + $"<strong>{HtmlRenderer.Escape(card.Baseline)}</strong>{HtmlRenderer.Escape(card.Limit)}</div>\n")
            .Append(CultureInfo.InvariantCulture, $"<p class=\"load\">Holds for: {HtmlRenderer.Escape(card.Conditions)}</p>\n");
        html.Append("<h2 id=\"settings\">Resulting pressures")
            .Append(card.Rows.Any(row => row.IsBeyond) ? "; † beyond the safe limit, the rear can lock first" : "")
            .Append("</h2>\n<div class=\"wide\" role=\"region\" aria-labelledby=\"settings\" tabindex=\"0\"><table>\n<thead><tr>");
        foreach (string column in card.Columns)
        {
            html.Append("<th scope=\"col\">").Append(HtmlRenderer.Escape(column)).Append("</th>");
        }

        html.Append("</tr></thead>\n<tbody>\n");
        foreach (CardRow row in card.Rows)
        {
            string kind = string.Join(' ', new[] { row.IsOwn ? "own" : "", row.RearFirst ? "rear" : "" }.Where(word => word.Length > 0));
            html.Append(kind.Length > 0 ? $"<tr class=\"{kind}\">" : "<tr>");
            foreach (string cell in row.Cells)
            {
                html.Append("<td>").Append(cell.Length == 0 ? "&nbsp;" : HtmlRenderer.Escape(cell)).Append("</td>");
            }

            html.Append("</tr>\n");
        }

        html.Append("</tbody>\n</table></div>\n");
        Facts(html, $"First lock-up at the {card.Set} setting", card.FirstLocks, "");
        Facts(html, $"Pedal at the {card.Set} setting", card.Pedal, " class=\"pedal\"");
        html.Append("<h2>Run log</h2>\n<table class=\"lines\">\n<thead><tr><th scope=\"col\">Date, track, tyres</th>"
            + "<th scope=\"col\">Setting</th><th scope=\"col\">Locked first</th><th scope=\"col\">Remarks</th></tr></thead>\n<tbody>\n");
        for (int line = 0; line < 4; line++)
        {
            html.Append("<tr><td>&nbsp;</td><td>&nbsp;</td><td>&nbsp;</td><td>&nbsp;</td></tr>\n");
        }

        return html.Append("</tbody>\n</table>\n<p class=\"caution\">").Append(Caution).Append("</p>\n</main>\n</body>\n</html>\n")
            .ToString();
    }

    private static void Facts(StringBuilder html, string title, IReadOnlyList<(string Name, string Value)> facts, string attributes)
    {
        if (facts.Count == 0)
        {
            return;
        }

        html.Append(CultureInfo.InvariantCulture, $"<h2>{title}</h2>\n<dl{attributes}>\n");
        foreach ((string name, string value) in facts)
        {
            html.Append("<div><dt>").Append(HtmlRenderer.Escape(name)).Append("</dt><dd>").Append(HtmlRenderer.Escape(value))
                .Append("</dd></div>\n");
        }

        html.Append("</dl>\n");
    }
}
