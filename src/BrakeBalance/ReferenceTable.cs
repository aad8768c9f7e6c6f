namespace BrakeBalance;

/// <summary>
/// A table of reference values that is built into the assembly from <c>data/references</c>: plain commas, no quotes, # for the source.
/// </summary>
internal static class ReferenceTable
{
    /// <summary>All rows of a table.</summary>
    /// <typeparam name="T">What one row becomes.</typeparam>
    /// <param name="file">Name of the file in <c>data/references</c>.</param>
    /// <param name="read">Makes one row's value out of its cells by column name.</param>
    /// <returns>The rows in the file's order.</returns>
    public static IReadOnlyList<T> Rows<T>(string file, Func<IReadOnlyDictionary<string, string>, T> read)
    {
        using Stream stream = typeof(ReferenceTable).Assembly.GetManifestResourceStream(file)
            ?? throw new FileNotFoundException($"The reference table {file} is not built into the assembly.", file);
        using var reader = new StreamReader(stream);
        string[][] lines = [.. reader.ReadToEnd().Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Where(line => line[0] != '#').Select(line => line.Split(','))];
        return [.. lines.Skip(1).Select(cells => read(new Dictionary<string, string>(lines[0].Zip(cells, KeyValuePair.Create))))];
    }

    /// <summary>A cell as a number; null when it is empty.</summary>
    public static double? Number(this IReadOnlyDictionary<string, string> row, string column) =>
        row[column].Length == 0 ? null : double.Parse(row[column], CultureInfo.InvariantCulture);
}
