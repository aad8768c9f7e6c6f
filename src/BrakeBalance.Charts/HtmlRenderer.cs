using System.Text.Json.Nodes;
using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts;

/// <summary>Writes a figure as a fragment of a page.</summary>
internal static class HtmlRenderer
{
    /// <summary>A figure on its own.</summary>
    public static string Fragment(Figure figure)
    {
        var html = new StringBuilder();
        Figure(html, figure, state: null);
        var json = new JsonObject { ["figures"] = new JsonArray(State(figure)) };
        return html.Append(Script(figure.Id, json)).ToString();
    }

    /// <summary>The figure element: live chart, static twin, caption, table.</summary>
    /// <param name="html">Written to.</param>
    /// <param name="figure">The figure.</param>
    /// <param name="state">The setting the static twin shows; null when there is only one.</param>
    public static void Figure(StringBuilder html, Figure figure, string? state)
    {
        string id = figure.Id;
        html.Append(CultureInfo.InvariantCulture,
            $"<figure class=\"bb-figure\" id=\"{id}\">\n<figcaption class=\"bb-title\">{Escape(figure.Title)}</figcaption>\n");
        html.Append(CultureInfo.InvariantCulture,
            $"<div class=\"bb-live\" id=\"{id}-live\" "
                + $"role=\"img\" aria-label=\"{Escape(figure.AltText)}\" aria-describedby=\"{id}-long\"></div>\n");
        html.Append(CultureInfo.InvariantCulture, $"<div class=\"bb-static\">\n{figure.ToSvg()}");
        if (state is null)
        {
            html.Append(SvgRenderer.Svg(figure, FigureSize.Phone, Theme.Light, twin: FigureSize.Page));
        }
        else
        {
            html.Append(CultureInfo.InvariantCulture, $"<p class=\"bb-state\">{Escape(state)}</p>\n");
        }

        html.Append("</div>\n");
        html.Append(CultureInfo.InvariantCulture, $"<p class=\"bb-caption\">{Escape(figure.Caption)}</p>\n");
        if (figure.Credit is { } credit)
        {
            html.Append(CultureInfo.InvariantCulture, $"<p class=\"bb-credit\">{Escape(credit)}</p>\n");
        }

        html.Append("<details class=\"bb-data\"><summary>Numbers and description</summary>\n");
        html.Append(CultureInfo.InvariantCulture, $"<p id=\"{id}-long\">{Escape(figure.LongDescription)}</p>\n");
        Table(html, figure.Table, id, figure.Title);
        html.Append("</details>\n</figure>\n");
    }

    /// <summary>A table with a link that saves it as CSV.</summary>
    public static void Table(StringBuilder html, FigureTable table, string id, string name)
    {
        // The columns of numbers are named at the table: a class for each of thousands of cells would weigh more than the cells.
        IEnumerable<int> numbers = Enumerable.Range(0, table.Columns.Count).Where(table.IsNumeric);
        html.Append(CultureInfo.InvariantCulture,
            $"<p><a class=\"bb-csv\" download=\"{id}.csv\" "
                + $"href=\"data:text/csv;charset=utf-8,{DataText(table.ToCsv())}\">Save as CSV</a></p>\n");
        html.Append(CultureInfo.InvariantCulture,
            $"<div class=\"bb-scroll\" tabindex=\"0\" role=\"region\" aria-label=\"{Escape("Table: " + name)}\">\n"
                + $"<table class=\"{string.Join(' ', numbers.Select(column => $"bb-n{column + 1}"))}\">\n<thead><tr>");
        foreach (string column in table.Columns)
        {
            html.Append(CultureInfo.InvariantCulture, $"<th scope=\"col\">{Escape(column)}</th>");
        }

        html.Append("</tr></thead>\n<tbody>\n");
        for (long row = 0; row < table.Frame.Rows.Count; row++)
        {
            html.Append("<tr>");
            foreach (string cell in table.Row(row))
            {
                html.Append("<td>").Append(Escape(cell)).Append("</td>");
            }

            html.Append("</tr>\n");
        }

        html.Append("</tbody>\n</table>\n</div>\n");
    }

    /// <summary>What the page's script needs of a figure.</summary>
    public static JsonObject State(Figure figure, (FigureLayout Wide, FigureLayout Narrow)? layouts = null,
        int pointLimit = Charts.Figure.PointLimit)
    {
        JsonObject state = PlotlyRenderer.Live(layouts ?? PlotlyRenderer.Layouts(figure), pointLimit);
        state["id"] = figure.Id;
        return state;
    }

    /// <summary>The script element that carries the data of the page's script.</summary>
    public static string Script(string id, JsonObject json) =>
        $"<script type=\"application/json\" class=\"bb-json\" id=\"{id}-json\">{PlainJson.Text(json)}</script>\n";

    /// <summary>Text with the characters escaped that HTML reserves.</summary>
    public static string Escape(string text) => SvgWriter.Escape(text);

    private static string DataText(string csv) => Uri.EscapeDataString(csv).Replace("%2C", ",", StringComparison.Ordinal);
}
