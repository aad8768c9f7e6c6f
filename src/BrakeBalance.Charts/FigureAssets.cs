using System.Text.Json.Nodes;
using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts;

/// <summary>What a page needs beside the fragments of its figures: one script, one style sheet.</summary>
/// <remarks>
/// The live charts also need the plotly script in the page, before <see cref="Script"/>; without it the static drawings stay.
/// </remarks>
public static class FigureAssets
{
    private static readonly Lazy<string> ScriptText =
        new(() => Read("figures.js").Replace("__BB_COLOURS__", DarkColours(), StringComparison.Ordinal));
    private static readonly Lazy<string> StyleText = new(() => Read("figures.css"));
    private static readonly Lazy<string> SheetText = new(() => Read("sheet.css"));
    private static readonly Lazy<string> PlotlyText = new(ReadPlotly);

    /// <summary>The script that draws live charts and moves the explorables; plain JavaScript for the end of the body.</summary>
    public static string Script => ScriptText.Value;

    /// <summary>The style sheet of figures, on the page's custom properties where there are any.</summary>
    public static string Style => StyleText.Value;

    /// <summary>The style sheet of printed sheets, which are documents of their own.</summary>
    public static string Sheet => SheetText.Value;

    /// <summary>The plotly script that Plotly.NET carries, with its licence comment.</summary>
    public static string Plotly => PlotlyText.Value;

    private static string DarkColours()
    {
        Theme light = Theme.Light, dark = Theme.Dark;
        var map = new JsonObject();
        foreach ((string from, string to) in new[]
                 {
                     (light.Background, dark.Background), (light.Ink, dark.Ink), (light.Muted, dark.Muted), (light.Grid, dark.Grid),
                     (light.Front, dark.Front), (light.Rear, dark.Rear), (light.Ideal, dark.Ideal), (light.Other, dark.Other),
                         (light.Guide, dark.Guide),
                 }.Concat(light.Scale.Zip(dark.Scale)))
        {
            map[from] = to;
        }

        return PlainJson.Text(map);
    }

    private static string Read(string name)
    {
        using Stream stream = typeof(FigureAssets).Assembly.GetManifestResourceStream($"BrakeBalance.Charts.Assets.{name}")!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }

    private static string ReadPlotly()
    {
        System.Reflection.Assembly assembly = typeof(global::Plotly.NET.GenericChart).Assembly;
        string name = assembly.GetManifestResourceNames().Single(n => n.EndsWith(".min.js", StringComparison.Ordinal));
        using Stream stream = assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
