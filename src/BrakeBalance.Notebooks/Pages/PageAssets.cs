namespace BrakeBalance.Notebooks.Pages;

/// <summary>The pages' own style sheet and script; those of the figures come from <see cref="Charts.FigureAssets"/>.</summary>
internal static class PageAssets
{
    private static readonly Lazy<string> LazyStyle = new(() => Read("Pages.page.css"));
    private static readonly Lazy<string> LazyScript = new(() => Read("Pages.page.js"));

    /// <summary>The style sheet of every page.</summary>
    public static string Style => LazyStyle.Value;

    /// <summary>The script of every page: theme, code folding, contents.</summary>
    public static string Script => LazyScript.Value;

    internal static string Read(string name) => Encoding.UTF8.GetString(ReadBytes(name)).TrimStart('\uFEFF').ReplaceLineEndings("\n");

    internal static byte[] ReadBytes(string name)
    {
        using Stream stream = typeof(PageAssets).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The program carries no resource {name}.");
        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
