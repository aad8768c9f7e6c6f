
namespace BrakeBalance.Charts.Live;

/// <summary>The figures of a live page: which stand where, and how one is written.</summary>
internal static class LivePictures
{
    /// <summary>The figures by tab, each by its name in the catalogue.</summary>
    public static IReadOnlyList<(string Tab, IReadOnlyList<string> Names)> All { get; } =
    [
        ("balance", ["brake-forces", "braking-efficiency", "knee-setting", "adhesion-utilisation", "line-pressures", "load-cases",
            "safe-settings", "bend-knee"]),
        ("pedal", ["effort", "travel", "reserve", "failures", "bore-ratio"]),
        ("stops", ["stop-speed", "stop-deceleration", "stop-loads", "distances", "headings", "plan"]),
        ("heat", ["heat-stops", "heat-drift", "heat-time"]),
        ("measure", ["gauge-readings", "knee-against-turns", "measured-rates", "lock-events", "setting-trade-off"]),
    ];

    /// <summary>A figure as it stands on the page: finding, drawing, caption, numbers.</summary>
    public static string Html(Figure figure, FigureSize size, Theme theme)
    {
        var html = new StringBuilder();
        html.Append("<h2 class=\"bb-title\">").Append(HtmlRenderer.Escape(figure.Title)).Append("</h2>\n<div class=\"bb-static\">")
            .Append(figure.ToSvg(size, theme)).Append("</div>\n<figcaption>").Append(HtmlRenderer.Escape(figure.Caption))
            .Append("</figcaption>\n<details class=\"bb-data\"><summary>Numbers and description</summary>\n<p>")
            .Append(HtmlRenderer.Escape(figure.LongDescription)).Append("</p>\n");
        HtmlRenderer.Table(html, figure.Table, figure.Id, figure.Title);
        return html.Append("</details>\n").ToString();
    }
}
