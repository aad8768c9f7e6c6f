using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts;

internal static class HtmlRenderer
{
    // Characters from which a cell keeps room to be read in a narrow window, where its table scrolls.
    private const int LongCell = 60;

    /// <summary>The figure element: finding, drawing, caption, numbers.</summary>
    /// <param name="html">Written to.</param>
    /// <param name="figure">The figure.</param>
    /// <param name="size">The size at which it is drawn; null for a page and for a phone, of which the screen shows one.</param>
    public static void Figure(StringBuilder html, Figure figure, FigureSize? size = null)
    {
        html.Append(CultureInfo.InvariantCulture, $"<figure class=\"bb-figure\" id=\"{figure.Id}\">\n");
        Inside(html, figure, size);
        html.Append("</figure>\n");
    }

    /// <summary>What stands in a figure element.</summary>
    public static void Inside(StringBuilder html, Figure figure, FigureSize? size = null)
    {
        Finding(html, figure.Title);
        string read = figure.IsToScale || figure.Table.Columns.Count == 0 ? "" : $" data-read=\"{Escape(FigureReading.Json(figure))}\"";
        if (size is null)
        {
            Drawings(html, Drawing(FigureSize.Page), Drawing(FigureSize.Phone), read);
        }
        else
        {
            html.Append("<div class=\"bb-static\"").Append(read).Append(">\n").Append(Drawing(size)).Append("</div>\n");
        }

        Words(html, figure.Id, figure.Title, figure.Caption, figure.LongDescription, figure.Table, figure.Credit);

        string Drawing(FigureSize at) => figure.ToSvg(at.For(figure));
    }

    /// <summary>The finding, above the drawing.</summary>
    public static void Finding(StringBuilder html, string title) =>
        html.Append("<figcaption class=\"bb-title\">").Append(Escape(TextMetrics.Bound(title))).Append("</figcaption>\n");

    /// <summary>A drawing for a page and one for a phone; the style sheet shows the one that fits.</summary>
    public static void Drawings(StringBuilder html, string wide, string narrow, string read = "") =>
        html.Append("<div class=\"bb-static bb-wide\"").Append(read).Append(">\n").Append(wide)
            .Append("</div>\n<div class=\"bb-static bb-narrow\" hidden>\n").Append(narrow).Append("</div>\n");

    /// <summary>Caption, description and numbers of a figure or drawing.</summary>
    public static void Words(
        StringBuilder html, string id, string title, string caption, string description, FigureTable table, string? credit = null)
    {
        html.Append("<p class=\"bb-caption\">").Append(Escape(TextMetrics.Bound(caption)));
        if (credit is not null)
        {
            html.Append(" <small class=\"bb-credit\">").Append(Escape(credit)).Append("</small>");
        }

        html.Append("</p>\n");
        if (table.Columns.Count == 0)
        {
            return;
        }

        html.Append("<details class=\"bb-data\"><summary>Numbers and description</summary>\n<p>").Append(Escape(description))
            .Append("</p>\n");
        Table(html, table, id, title);
        html.Append("</details>\n");
    }

    /// <summary>A table with a link that saves it as CSV.</summary>
    public static void Table(StringBuilder html, FigureTable table, string id, string name)
    {
        html.Append(CultureInfo.InvariantCulture,
            $"<p><a class=\"bb-csv\" download=\"{id}.csv\" "
                + $"href=\"data:text/csv;charset=utf-8,{DataText(table.ToCsv())}\">Save as CSV</a></p>\n");
        html.Append(CultureInfo.InvariantCulture,
            $"<div class=\"bb-scroll\" tabindex=\"0\" role=\"group\" aria-label=\"{Escape("Table: " + name)}\">\n<table>\n<thead><tr>");
        foreach (string column in table.Columns)
        {
            html.Append(CultureInfo.InvariantCulture, $"<th scope=\"col\">{Escape(column)}</th>");
        }

        html.Append("</tr></thead>\n<tbody>\n");
        for (long row = 0; row < table.Frame.Rows.Count; row++)
        {
            html.Append("<tr>");
            foreach ((int column, string cell) in table.Row(row).Index())
            {
                string kind = table.IsNumeric(column) ? " class=\"bb-number\"" : cell.Length > LongCell ? " class=\"bb-long\"" : "";
                html.Append(CultureInfo.InvariantCulture, $"<td{kind}>").Append(Escape(cell)).Append("</td>");
            }

            html.Append("</tr>\n");
        }

        html.Append("</tbody>\n</table>\n</div>\n");
    }

    /// <summary>Text with the characters escaped that HTML reserves.</summary>
    public static string Escape(string text) => SvgWriter.Escape(text);

    private static string DataText(string csv) => Uri.EscapeDataString(csv).Replace("%2C", ",", StringComparison.Ordinal);
}
