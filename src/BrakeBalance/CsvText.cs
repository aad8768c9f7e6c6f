namespace BrakeBalance;

/// <summary>Cells of comma-separated values.</summary>
public static class CsvText
{
    private const string FormulaSigns = "=+-@\t\r";

    /// <summary>A cell, in quotation marks where it has to be (RFC 4180), and never a formula.</summary>
    /// <param name="text">The cell's text.</param>
    /// <returns>The cell as it is written; words that a spreadsheet would take for a formula begin with an apostrophe.</returns>
    public static string Cell(string text)
    {
        string safe = IsFormula(text) ? "'" + text : text;
        return safe.AsSpan().IndexOfAny(",;\"\n\r") < 0 ? safe : $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }

    /// <summary>The words of a cell that <see cref="Cell"/> wrote, as they were.</summary>
    internal static string Words(string cell) => cell.StartsWith('\'') && IsFormula(cell[1..]) ? cell[1..] : cell;

    private static bool IsFormula(string text) =>
        text.Length > 0 && FormulaSigns.Contains(text[0])
            && !double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _);
}
