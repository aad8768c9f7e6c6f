using System.Text.RegularExpressions;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>A page ready to be written.</summary>
internal sealed partial record RenderedPage(string FileName, string Title, string Summary, string Html, IReadOnlyList<PageProblem> Problems)
{
    /// <summary>A page that stands in a folder already, for others to link to, by its title there; null when there is none.</summary>
    public static RenderedPage? StandingIn(string folder, string fileName) =>
        Path.Combine(folder, fileName) is var path && File.Exists(path)
            && TitleOf().Match(File.ReadLines(path).FirstOrDefault(line => line.StartsWith("<title>", StringComparison.Ordinal)) ?? "")
                is { Success: true } match
            ? new(fileName, System.Net.WebUtility.HtmlDecode(match.Groups[1].Value)
                .Replace(PageShell.TitleEnd, "", StringComparison.Ordinal), "", "", [])
            : null;

    /// <summary>Its headings, or the questions that it answers, by which it is found.</summary>
    public IReadOnlyList<PageHeading> Headings { get; init; } = [];

    /// <summary>How long a learner takes, for a lesson.</summary>
    public int Minutes { get; init; }

    /// <summary>What its first figure shows, as HTML; empty for none.</summary>
    public string Finding => FirstTitle().Match(Html).Groups[1].Value;

    /// <summary>Its first figure without words, for an image's address; empty for none.</summary>
    /// <remarks>An image of its own, so that no id of the drawing stands in the page that shows it.</remarks>
    public string Picture => FirstDrawing().Match(Html) is { Success: true, Value: { } drawing }
        ? "data:image/svg+xml," + Uri.EscapeDataString(Words().Replace(drawing, "")).Replace("%20", " ", StringComparison.Ordinal)
            .Replace("%3D", "=", StringComparison.Ordinal).Replace("%2F", "/", StringComparison.Ordinal)
            .Replace("%2C", ",", StringComparison.Ordinal).Replace("%3A", ":", StringComparison.Ordinal)
        : "";

    /// <summary>Whether the calculation assembly runs in the page.</summary>
    public bool IsLive { get; init; }

    /// <summary>Whether a reader may edit its cells.</summary>
    public bool IsEdited { get; init; }

    [GeneratedRegex("<title>(.*?)</title>")]
    private static partial Regex TitleOf();

    [GeneratedRegex("<figcaption class=\"bb-title\">(.*?)</figcaption>")]
    private static partial Regex FirstTitle();

    [GeneratedRegex("<svg xmlns=.*?</svg>", RegexOptions.Singleline)]
    private static partial Regex FirstDrawing();

    [GeneratedRegex("<(text|title|desc|style)\\b[^>]*>.*?</\\1>\\n?", RegexOptions.Singleline)]
    private static partial Regex Words();
}
