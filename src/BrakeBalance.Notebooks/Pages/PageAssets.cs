using System.Reflection;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>The style sheet and the scripts of the pages.</summary>
public static class PageAssets
{
    private const string PlotlyResource = "Plotly.NET.plotly-2.28.0.min.js";

    private static readonly Lazy<string> LazyPlotly = new(() => Read(typeof(Plotly.NET.Chart).Assembly, PlotlyResource));
    private static readonly Lazy<string> LazyStyle = new(() => Read(typeof(PageAssets).Assembly, "Pages.page.css"));
    private static readonly Lazy<string> LazyScript = new(() => Read(typeof(PageAssets).Assembly, "Pages.page.js"));

    /// <summary>The chart script as Plotly.NET carries it.</summary>
    /// <exception cref="InvalidOperationException">This version of Plotly.NET carries no such script.</exception>
    public static string Plotly => LazyPlotly.Value;

    /// <summary>The style sheet of every page.</summary>
    public static string Style => LazyStyle.Value;

    /// <summary>The script of every page: theme, code folding, contents.</summary>
    public static string Script => LazyScript.Value;

    private static string Read(Assembly assembly, string name)
    {
        using Stream stream = assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The assembly {assembly.GetName().Name} carries no resource {name}; it has {string.Join(", ", assembly.GetManifestResourceNames())}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
