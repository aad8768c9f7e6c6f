namespace BrakeBalance.Charts.Tables;

/// <summary>Set-ups side by side, one row a matter; rows in which they differ are shaded.</summary>
/// <param name="comparison">The comparison.</param>
public sealed class ComparisonTable(SetUpComparison comparison) : IHtmlOutput
{
    /// <inheritdoc/>
    public string ToHtml() => Html(comparison.Names, comparison.Rows.Select(row => (row.Label, Cells(row))));

    /// <inheritdoc/>
    public string ToPlainText() => string.Concat(comparison.Rows.Select(row => $"{row.Label}: {string.Join(" | ", Cells(row))}\n"));

    /// <summary>What a set-up says in a row, with how far it lies from the first.</summary>
    internal static string Cell(ComparisonRow row, int at) =>
        row.Differences[at] is { Length: > 0 } far ? $"{row.Texts[at]}; {far}" : row.Texts[at];

    internal static string Html(IReadOnlyList<string> names, IEnumerable<(string Label, IReadOnlyList<string> Cells)> rows)
    {
        var html = new StringBuilder("<div class=\"bb-scroll\" tabindex=\"0\" role=\"region\" aria-label=\"Set-ups side by side\">\n");
        html.Append("<table>\n<thead><tr><td></td>");
        foreach (string name in names)
        {
            html.Append("<th scope=\"col\">").Append(HtmlRenderer.Escape(name)).Append("</th>");
        }

        html.Append("</tr></thead>\n<tbody>\n");
        foreach ((string label, IReadOnlyList<string> cells) in rows)
        {
            html.Append(cells.Distinct().Count() > 1 ? "<tr class=\"bb-differs\">" : "<tr>").Append("<th scope=\"row\">")
                .Append(HtmlRenderer.Escape(label)).Append("</th>");
            foreach (string cell in cells)
            {
                html.Append("<td>").Append(HtmlRenderer.Escape(cell)).Append("</td>");
            }

            html.Append("</tr>\n");
        }

        return html.Append("</tbody>\n</table>\n</div>\n").ToString();
    }

    private static IReadOnlyList<string> Cells(ComparisonRow row) => [.. row.Texts.Select((_, at) => Cell(row, at))];
}
