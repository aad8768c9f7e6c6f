using Microsoft.Data.Analysis;

namespace BrakeBalance.Charts;

/// <summary>The numbers behind a figure, or a table in its own right; units stand in the column names.</summary>
public sealed record FigureTable
{
    private const int Digits = 5;

    private readonly Lazy<IReadOnlyList<string>[]> _rows;

    /// <summary>Wraps a data frame.</summary>
    /// <param name="frame">The frame; its column names carry units in brackets.</param>
    public FigureTable(DataFrame frame)
    {
        Frame = frame;
        _rows = new(() => [.. Enumerable.Range(0, (int)frame.Rows.Count).Select(row =>
            (IReadOnlyList<string>)[.. frame.Columns.Select(column => Text(column, row))])]);
    }

    /// <summary>The data frame.</summary>
    public DataFrame Frame { get; }

    /// <summary>The column names, in order.</summary>
    public IReadOnlyList<string> Columns => [.. Frame.Columns.Select(column => column.Name)];

    /// <summary>The cells of a row as text: numbers rounded to five significant digits, missing values empty.</summary>
    /// <param name="row">The row, counted from 0.</param>
    /// <returns>One text a column.</returns>
    public IReadOnlyList<string> Row(long row) => _rows.Value[(int)row];

    /// <summary>The table as comma-separated values (RFC 4180, invariant numbers, LF).</summary>
    /// <returns>A header line and one line a row.</returns>
    public string ToCsv()
    {
        var csv = new StringBuilder();
        csv.AppendJoin(',', Columns.Select(CsvText.Cell)).Append('\n');
        for (long row = 0; row < Frame.Rows.Count; row++)
        {
            csv.AppendJoin(',', Row(row).Select(CsvText.Cell)).Append('\n');
        }

        return csv.ToString();
    }

    internal bool IsNumeric(int column) => Frame.Columns[column].DataType != typeof(string);

    internal static string Text(DataFrameColumn column, long row) => column[row] switch
    {
        null => "",
        double number when column is RoundedColumn rounded => number.ToString($"F{rounded.Digits}", CultureInfo.InvariantCulture),
        double number => Rounding.ToText(number, Digits),
        float number => Rounding.ToText(number, Digits),
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        object value => value.ToString() ?? "",
    };
}
