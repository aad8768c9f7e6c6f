namespace BrakeBalance.Charts;

/// <summary>Cells of comma-separated values.</summary>
public static class CsvText
{
    /// <summary>A cell, in quotation marks where it has to be (RFC 4180).</summary>
    /// <param name="text">The cell's text.</param>
    /// <returns>The cell as it is written.</returns>
    public static string Cell(string text) =>
        text.AsSpan().IndexOfAny(",\"\n\r") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
