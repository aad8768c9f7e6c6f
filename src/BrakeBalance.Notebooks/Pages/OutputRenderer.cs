using System.Text.RegularExpressions;
using BrakeBalance.Notebooks.Execution;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>Outputs of a cell as HTML: markup is passed on by its media type, everything else is escaped.</summary>
internal static partial class OutputRenderer
{
    /// <summary>Renders one output by the richest media type it offers.</summary>
    /// <param name="output">The output.</param>
    /// <param name="fileName">The name under which a table may be saved, without extension.</param>
    public static string Html(CellOutput output, string fileName)
    {
        string? csv = output.Data.GetValueOrDefault("text/csv");
        string shown = Shown(output.Data, csv);
        return csv is null || shown.Length == 0 ? shown : shown + SaveLink(csv, fileName);
    }

    /// <summary>What stands below a cell that failed: why, and the line.</summary>
    public static string Html(CellFailure failure)
    {
        string line = failure.Line is not { } number ? "" : string.Create(CultureInfo.InvariantCulture, $"<p>Line {number}")
            + (failure.SourceLine is { } source ? $": <code>{HtmlText.Escape(source.Trim())}</code></p>" : "</p>");
        return "<div class=\"bb-failure\" role=\"note\"><p><strong>This cell failed.</strong> The cells below it were not run.</p><pre>"
            + $"{HtmlText.Escape(failure.Message)}</pre>{line}</div>\n";
    }

    private static string Shown(IReadOnlyDictionary<string, string> data, string? csv)
    {
        if (data.TryGetValue("text/html", out string? html))
            return IsBareTable(html) ? $"<div class=\"bb-output bb-scroll\">{html}</div>\n" : $"<div class=\"bb-output\">{html}</div>\n";
        if (data.TryGetValue("image/svg+xml", out string? svg))
            return $"<div class=\"bb-output bb-scroll\">{SvgProlog().Replace(svg, "")}</div>\n";
        if (data.TryGetValue("image/png", out string? png) && Base64().IsMatch(png))
            return "<div class=\"bb-output\"><img alt=\"Picture made by the cell\" "
                + $"src=\"data:image/png;base64,{png.ReplaceLineEndings("")}\"></div>\n";
        string text = data.GetValueOrDefault("text/plain") ?? csv
            ?? string.Join('\n', data.OrderBy(d => d.Key, StringComparer.Ordinal).Select(d => $"{d.Key}: {d.Value}"));
        // Columns are made with runs of spaces; without them the text is sentences, which may wrap and need no fixed pitch.
        string kind = text.Contains("  ", StringComparison.Ordinal) ? "bb-text" : "bb-text bb-words";
        return text.Length == 0 ? "" : $"<pre class=\"bb-output {kind}\">{HtmlText.Escape(text.TrimEnd('\n'))}</pre>\n";
    }

    private static string SaveLink(string csv, string fileName) =>
        $"<p class=\"bb-save\"><a download=\"{HtmlText.Escape(fileName)}.csv\" "
            + $"href=\"data:text/csv;charset=utf-8,{Uri.EscapeDataString(csv)}\">Save the table as CSV</a></p>\n";

    private static bool IsBareTable(string html) => html.AsSpan().TrimStart().StartsWith("<table", StringComparison.OrdinalIgnoreCase);

    [GeneratedRegex(@"^\s*(<\?xml[^>]*\?>)?\s*(<!DOCTYPE[^>]*>)?\s*", RegexOptions.IgnoreCase)]
    private static partial Regex SvgProlog();

    [GeneratedRegex(@"^[A-Za-z0-9+/=\s]+$")]
    private static partial Regex Base64();
}
