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
    private static readonly Lazy<string> StyleText = new(() => Read("figures.css") + DarkDrawings());
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

    /// <summary>The colours of the light theme, each with the one that stands for it on a dark page.</summary>
    private static IReadOnlyList<(string Light, string Dark)> Pairs { get; } =
    [
        .. new Func<Theme, string>[]
        {
            theme => theme.Background, theme => theme.Ink, theme => theme.Muted, theme => theme.Grid, theme => theme.Front,
            theme => theme.Rear, theme => theme.Ideal, theme => theme.Other, theme => theme.Guide,
        }.Select(colour => (colour(Theme.Light), colour(Theme.Dark))),
        .. Theme.Light.Scale.Zip(Theme.Dark.Scale),
    ];

    private static string DarkColours() =>
        PlainJson.Text(new JsonObject(Pairs.Select(pair => KeyValuePair.Create(pair.Light, (JsonNode?)pair.Dark))));

    /// <summary>Drawings in a page are made in the light colours and shown in those of the page; on paper they stay light.</summary>
    private static string DarkDrawings()
    {
        string dark = string.Concat(Pairs.Select(pair => $"--{pair.Light[1..]}:{pair.Dark};"));
        IEnumerable<string> rules = from pair in Pairs
                                    from paint in new[] { "fill", "stroke" }
                                    select $".bb-static [{paint}=\"{pair.Light}\"]{{{paint}:var(--{pair.Light[1..]},{pair.Light})}}\n";
        return $"@media screen {{ :root[data-theme=dark] {{ {dark} }} }}\n"
            + $"@media screen and (prefers-color-scheme: dark) {{ :root:not([data-theme=light]) {{ {dark} }} }}\n{string.Concat(rules)}";
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
