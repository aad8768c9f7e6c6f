using System.Security.Cryptography;
using System.Text.Json.Nodes;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Publishing;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>One figure as a page with a chart whose points answer to the pointer; it needs no other file and no network.</summary>
internal static class ChartPage
{
    private const string Style = "body{margin:1rem;font-family:Arial,sans-serif;color:#1b1f23;background:#fff}"
        + "figure{margin:0;max-width:60rem;overflow-x:auto}#chart{min-width:45rem}h1{font-size:1.2rem}p{line-height:1.45;margin:.5rem 0}";

    /// <summary>The page.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="style">How its publisher writes numbers; null for the usual way.</param>
    public static string Html(Figure figure, HouseStyle? style)
    {
        string draw = HtmlText.ScriptBody($"(()=>{{const chart={figure.ToPlotlyJson()};"
            + (style is null ? "" : $"chart.layout.separators={JsonValue.Create(style.Separators).ToJsonString()};")
            + "document.fonts.load('1em Arial').finally(()=>"
            + "Plotly.newPlot('chart',chart.data,chart.layout,{displayModeBar:false,responsive:true,scrollZoom:false}))})();");
        string[] scripts = [HtmlText.ScriptBody(FigureAssets.Plotly), draw];
        string hashes = string.Join(' ', scripts.Select(script =>
            $"'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script)))}'"));
        string words = string.Join("</p>\n<p>", new[] { figure.Caption, figure.Credit }.OfType<string>().Select(HtmlText.Escape));
        return $"<!DOCTYPE html>\n<html lang=\"en-GB\">\n<head>\n<meta charset=\"utf-8\">\n{PageMark.Html}\n"
            + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<meta http-equiv=\"Content-Security-Policy\" "
            + $"content=\"default-src 'none'; script-src {hashes}; style-src 'unsafe-inline'; img-src data: blob:; font-src data:\">\n"
            + $"<link rel=\"icon\" href=\"data:,\">\n<title>{HtmlText.Escape(figure.Title)}</title>\n"
            + $"<style>{OutlinedText.Face}{Style}</style>\n</head>\n<body>\n"
            + $"<main><h1>{HtmlText.Escape(figure.Title)}</h1>\n<figure tabindex=\"0\">\n"
            + $"<div id=\"chart\" role=\"img\" aria-label=\"{HtmlText.Escape(figure.AltText)}\"></div>\n</figure>\n<p>{words}</p></main>\n"
            + string.Concat(scripts.Select(script => $"<script>{script}</script>\n")) + "</body>\n</html>\n";
    }
}
