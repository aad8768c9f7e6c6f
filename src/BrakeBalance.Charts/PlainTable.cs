namespace BrakeBalance.Charts;

/// <summary>A table in plain text.</summary>
internal static class PlainTable
{
    /// <summary>The table with columns padded to line up; numbers stand to the right.</summary>
    public static string Of(FigureTable table)
    {
        List<IReadOnlyList<string>> rows = [table.Columns];
        for (long row = 0; row < table.Frame.Rows.Count; row++)
        {
            rows.Add(table.Row(row));
        }

        int[] widths = [.. Enumerable.Range(0, table.Columns.Count).Select(column => rows.Max(row => row[column].Length))];
        var text = new StringBuilder();
        foreach (IReadOnlyList<string> row in rows)
        {
            text.AppendJoin("  ", row.Select((cell, column) =>
                table.IsNumeric(column) ? cell.PadLeft(widths[column]) : cell.PadRight(widths[column])));
            while (text.Length > 0 && text[^1] == ' ')
            {
                text.Length--;
            }

            text.Append('\n');
        }

        return text.ToString();
    }
}
