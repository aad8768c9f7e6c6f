namespace BrakeBalance.Charts;

/// <summary>What a page needs beside the fragments of its figures: a style sheet, and a script that reads values from them.</summary>
public static class FigureAssets
{
    private static readonly Lazy<string> StyleText = new(() => Read("figures.css") + DarkColours());
    private static readonly Lazy<string> ReadingText = new(() => Read("reading.js"));
    private static readonly Lazy<string> SheetText = new(() => Read("sheet.css"));

    /// <summary>The style sheet of figures, on the page's custom properties where there are any; drawings follow a dark page.</summary>
    public static string Style => StyleText.Value;

    /// <summary>The style sheet of printed sheets, which are documents of their own.</summary>
    public static string Sheet => SheetText.Value;

    /// <summary>The script that reads values from figures for pointer, finger and arrow keys.</summary>
    public static string Reading => ReadingText.Value;

    /// <summary>The script that moves explorables; it needs one that gives it <c>bbDesk</c>.</summary>
    public static string Exploring => Read("explore.js");

    /// <summary>What a notebook client is given once a notebook; controls move where its page may ask the kernel.</summary>
    /// <remarks>A client's root font size is not that of its text.</remarks>
    public static string ForClients => $"<style>{Read("figures.css").Replace("rem", "em", StringComparison.Ordinal)}</style>\n"
        + $"<script>\n{Reading}if (globalThis.Jupyter?.notebook && !globalThis.bbDesk) {{\n{Read("client.js")}{Exploring}}}\n</script>\n";

    /// <summary>The script that Plotly.NET carries for its charts, with its licence comment.</summary>
    public static string Plotly => Charts.Text.Value;

    /// <summary>The rules that show a page, and the drawings in it, in the colours and the font of one theme on every screen.</summary>
    /// <param name="theme">The theme.</param>
    public static string Only(Theme theme)
    {
        ArgumentNullException.ThrowIfNull(theme);
        string ground = theme.Background == "none" ? "transparent" : theme.Background;
        return $"@media screen {{\n:root[data-theme] {{ --paper: {ground}; --card: {ground}; --picture: {ground}; --ink: {theme.Ink}; "
            + $"--muted: {theme.Muted};{(theme.Font == Theme.Light.Font ? "" : $" --sans: {theme.Font};")} }}\n"
            + $".bb-static svg {{ font-family: {theme.Font}; }}\n{Colours(":root[data-theme]", theme)}}}\n";
    }

    private static string DarkColours() =>
        $"@media screen {{\n{Colours(":root[data-theme=dark]", Theme.Dark)}}}\n@media screen and (prefers-color-scheme: dark) {{\n"
            + $"{Colours(":root:not([data-theme=light])", Theme.Dark)}}}\n";

    // Drawings carry the light colours as attributes; each gives way to its twin.
    private static string Colours(string root, Theme theme)
    {
        Theme light = Theme.Light;
        (string From, string To)[] pairs =
        [
            (light.Background, theme.Background), (light.Ink, theme.Ink), (light.Muted, theme.Muted), (light.Grid, theme.Grid),
            (light.Front, theme.Front), (light.Rear, theme.Rear), (light.Ideal, theme.Ideal), (light.Other, theme.Other),
            (light.Guide, theme.Guide),
        ];
        // A heat map's colours lie between those of the scale: where the other scale runs from dark to pale, all are turned over at once.
        string heat = theme.Scale == light.Scale ? "" : $"{root} .bb-static .bb-heat {{ filter: invert(0.88) hue-rotate(180deg); }}\n";
        return string.Concat(pairs.SelectMany(pair => new[] { "fill", "stroke" }.Select(name =>
            $"{root} .bb-static [{name}=\"{pair.From}\"] {{ {name}: {pair.To}; }}\n"))) + heat;
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
