
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

    /// <summary>A figure as it stands on the page: finding, drawing, caption, numbers; without a size, drawn for desk and phone.</summary>
    public static string Html(Figure figure, FigureSize? size)
    {
        var html = new StringBuilder();
        HtmlRenderer.Inside(html, figure, size);
        return html.ToString();
    }
}
