namespace BrakeBalance.Charts;

/// <summary>What a page needs beside the fragments of its figures: a style sheet.</summary>
public static class FigureAssets
{
    private static readonly Lazy<string> StyleText = new(() => Read("figures.css") + DarkColours());
    private static readonly Lazy<string> SheetText = new(() => Read("sheet.css"));

    /// <summary>The style sheet of figures, on the page's custom properties where there are any; drawings follow a dark page.</summary>
    public static string Style => StyleText.Value;

    /// <summary>The style sheet of printed sheets, which are documents of their own.</summary>
    public static string Sheet => SheetText.Value;

    /// <summary>The script that Plotly.NET carries for its charts, with its licence comment.</summary>
    public static string Plotly => Charts.Text.Value;

    // Drawings carry the light colours as attributes; on a dark screen each gives way to its dark twin.
    private static string DarkColours()
    {
        Theme light = Theme.Light, dark = Theme.Dark;
        (string From, string To)[] pairs =
        [
            (light.Background, dark.Background), (light.Ink, dark.Ink), (light.Muted, dark.Muted), (light.Grid, dark.Grid),
            (light.Front, dark.Front), (light.Rear, dark.Rear), (light.Ideal, dark.Ideal), (light.Other, dark.Other),
            (light.Guide, dark.Guide), .. light.Scale.Zip(dark.Scale),
        ];
        string Rules(string root) => string.Concat(pairs.SelectMany(pair => new[] { "fill", "stroke" }.Select(name =>
            $"{root} .bb-static [{name}=\"{pair.From}\"] {{ {name}: {pair.To}; }}\n")));
        return "@media screen {\n" + Rules(":root[data-theme=dark]") + "}\n@media screen and (prefers-color-scheme: dark) {\n"
            + Rules(":root:not([data-theme=light])") + "}\n";
    }

    internal static string Read(string name) =>
        Text(typeof(FigureAssets).Assembly, $"BrakeBalance.Charts.Assets.{name}").ReplaceLineEndings("\n");

    private static string Text(System.Reflection.Assembly assembly, string name)
    {
        using Stream stream = assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }

    // Apart from the rest, so that what runs in a browser, and needs a style sheet only, does not carry the package.
    private static class Charts
    {
        public static readonly Lazy<string> Text = new(Read);

        private static string Read()
        {
            System.Reflection.Assembly assembly = typeof(global::Plotly.NET.GenericChart).Assembly;
            return FigureAssets.Text(
                assembly, assembly.GetManifestResourceNames().Single(name => name.EndsWith(".min.js", StringComparison.Ordinal)));
        }
    }
}
