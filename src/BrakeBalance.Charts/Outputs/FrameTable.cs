using System.Net;
using Microsoft.Data.Analysis;

namespace BrakeBalance.Charts.Outputs;

/// <summary>A data frame as a table; long frames are cut and say so.</summary>
/// <param name="frame">The frame; a column's name carries its unit, such as <c>Knee [bar]</c>.</param>
/// <param name="mostRows">At most so many rows are shown.</param>
public sealed class FrameTable(DataFrame frame, int mostRows = FrameTable.DefaultMostRows) : IHtmlOutput
{
    /// <summary>Rows shown when nothing else is asked for.</summary>
    public const int DefaultMostRows = 40;

    private long RowsShown => Math.Min(frame.Rows.Count, mostRows);

    private bool IsCut => frame.Rows.Count > mostRows;

    private IEnumerable<string> Notes =>
    [
        .. frame is NotedFrame noted ? [noted.Note] : (string[])[],
        .. IsCut ? [Invariant.Text($"The first {RowsShown} of {frame.Rows.Count} rows are shown.")] : (string[])[],
    ];

    /// <inheritdoc/>
    public string ToHtml()
    {
        var html = new StringBuilder("<table class=\"frame\">\n<thead><tr>");
        foreach (DataFrameColumn column in frame.Columns)
        {
            html.Append(CultureInfo.InvariantCulture, $"<th scope=\"col\"{NumberClass(column)}>{WebUtility.HtmlEncode(column.Name)}</th>");
        }

        html.Append("</tr></thead>\n<tbody>\n");
        for (long row = 0; row < RowsShown; row++)
        {
            html.Append("<tr>");
            foreach (DataFrameColumn column in frame.Columns)
            {
                html.Append(CultureInfo.InvariantCulture, $"<td{NumberClass(column)}>{WebUtility.HtmlEncode(Cell(column, row))}</td>");
            }

            html.Append("</tr>\n");
        }

        return html.Append("</tbody>\n</table>").AppendJoin("", Notes.Select(note => $"\n<p class=\"frame-note\">{note}</p>")).ToString();
    }

    /// <inheritdoc/>
    public string ToPlainText()
    {
        string[][] rows = [[.. frame.Columns.Select(column => column.Name)],
            .. Enumerable.Range(0, (int)RowsShown).Select(row => frame.Columns.Select(column => Cell(column, row)).ToArray())];
        IEnumerable<string> lines = PlainTable.Lines(rows, column => frame.Columns[column].IsNumericColumn());
        return string.Join('\n', lines.Concat(Notes));
    }

    /// <summary>The whole frame as comma-separated values, numbers in full precision.</summary>
    /// <returns>A heading and one line a row, separated by LF.</returns>
    public string ToCsv()
    {
        var csv = new StringBuilder();
        Line(frame.Columns.Select(column => column.Name));
        foreach (DataFrameRow row in frame.Rows)
        {
            Line(row.Select(value => Convert.ToString(value, CultureInfo.InvariantCulture) ?? ""));
        }

        return csv.ToString();

        void Line(IEnumerable<string> fields) => csv.AppendJoin(',', fields.Select(CsvText.Cell)).Append('\n');
    }

    private static string NumberClass(DataFrameColumn column) => column.IsNumericColumn() ? " class=\"number\"" : "";

    /// <summary>A cell; the numbers of a column have the same count of decimals, so that their points stand below one another.</summary>
    private string Cell(DataFrameColumn column, long row) => column[row] switch
    {
        null => "–",
        double number when Decimals(column) is { } decimals =>
            NumberText.Signed(number.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)),
        { } value => ValueText.Of(value),
    };

    private int? Decimals(DataFrameColumn column)
    {
        int most = 0;
        for (long row = 0; row < RowsShown; row++)
        {
            string text = column[row] is double number ? NumberText.Of(number) : "";
            if (text.Contains('E', StringComparison.Ordinal))
            {
                return null;
            }

            most = Math.Max(most, text.Length - 1 - (text.IndexOf('.') is >= 0 and var point ? point : text.Length - 1));
        }

        return most;
    }
}
