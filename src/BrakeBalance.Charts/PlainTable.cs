namespace BrakeBalance.Charts;

internal static class PlainTable
{
    /// <summary>The table with columns padded to line up; numbers stand to the right.</summary>
    public static string Of(FigureTable table)
    {
        IReadOnlyList<string>[] rows = [table.Columns, .. Enumerable.Range(0, (int)table.Frame.Rows.Count).Select(row => table.Row(row))];
        return string.Concat(Lines(rows, table.IsNumeric).Select(line => line + "\n"));
    }

    /// <summary>Rows with columns padded to line up; numbers stand to the right.</summary>
    public static IEnumerable<string> Lines(IReadOnlyList<IReadOnlyList<string>> rows, Func<int, bool> isNumeric)
    {
        int[] widths = [.. rows[0].Select((_, column) => rows.Max(row => row[column].Length))];
        return rows.Select(row => string.Join("  ", row.Select((cell, column) =>
            isNumeric(column) ? cell.PadLeft(widths[column]) : cell.PadRight(widths[column]))).TrimEnd(' '));
    }
}
