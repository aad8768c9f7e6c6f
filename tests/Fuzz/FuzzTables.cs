using FsCheck;
using FsCheck.Fluent;

namespace BrakeBalance.Fuzz;

/// <summary>Logs, laps and answers: tables, changed in a few cells, lines or signs.</summary>
internal static class FuzzTables
{
    private const int MostRows = 30;

    private static readonly string[] BadCells =
    [
        "", "-", "NaN", "nan", "Infinity", "1e308", "-1e308", "1e999", "1e-320", "４５", "٣٠", "1,5", "1.5", "1,200", "0", "-0", "-5",
            "1e15", "=1+1", "'=x", "x", "\u001b[31m", "\u0000", "\"", "\ud800",
        "together", "release", "9999999999999999999999", "0.05 bar", "5933 N", "−5933 N", "1e999 N", "４５２０ N", "-1e308 kN",
            "30 %", new string('9', 400),
    ];

    private static readonly string[] BadHeaders =
        ["", "time [s]", "time [min]", "speed [furlong]", "front pressure", "turns", "note", "\u0001", "deceleration [g]",
        "front pressure [psi]", "time_s", "speed_m_s"];

    /// <summary>Changed tables.</summary>
    /// <param name="kind">What they are, for the report.</param>
    /// <param name="sound">Tables to change.</param>
    public static Gen<FuzzCase> Of(string kind, IReadOnlyList<string> sound) =>
        from text in Gen.Elements<string>(sound)
        from gentle in Gen.Choose(0, 9).Select(n => n < 4)
        from count in Gen.Choose(1, 4)
        from edits in Gen.ArrayOf(gentle ? Gentle() : Harsh(), count)
        select new FuzzCase(kind, edits.Aggregate(Short(text), (now, edit) => edit.Change(now)),
            string.Join("; ", edits.Select(edit => edit.What)));

    // Comment lines and a stretch of rows: a case has to be quick.
    private static string Short(string text)
    {
        string[] lines = text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        int comments = lines.TakeWhile(line => line.StartsWith('#')).Count();
        int every = Math.Max(1, (lines.Length - comments - 1) / MostRows);
        return string.Join('\n',
            [.. lines[..(comments + 1)], .. lines[(comments + 1)..].Where((_, i) => every == 1 || i % every == 0 || lines.Length > 500)])
            + "\n";
    }

    private static Gen<TableEdit> Gentle() =>
        from row in Gen.Choose(0, 10_000)
        from column in Gen.Choose(0, 50)
        from percent in Gen.Choose(1, 400)
        from what in Gen.Choose(0, 3)
        select what switch
        {
            0 => Cell(row, column, cell =>
                double.TryParse(cell, out double value)
                ? (value * percent / 100).ToString("0.###", System.Globalization.CultureInfo.InvariantCulture) : cell, $"× {percent} %"),
            1 => Cell(-1 - (row % 2), column, cell =>
                double.TryParse(cell, out double value)
                ? (value * percent / 100).ToString("0.###", System.Globalization.CultureInfo.InvariantCulture)
                : cell, $"column × {percent} %"),
            2 => Lines(lines => [.. lines.Where((_, i) => i == 0 || i != 1 + (row % Math.Max(1, lines.Length - 1)))], "row dropped"),
            _ => Lines(lines => [.. lines, lines[^1]], "last row twice"),
        };

    private static Gen<TableEdit> Harsh() =>
        from row in Gen.Choose(0, 10_000)
        from column in Gen.Choose(0, 50)
        from bad in Gen.Elements(BadCells)
        from header in Gen.Elements(BadHeaders)
        from what in Gen.Choose(0, 11)
        select what switch
        {
            0 or 1 or 2 => Cell(row, column, _ => bad, $"cell = {bad}"),
            3 => Cell(-1, column, _ => bad, $"column = {bad}"),
            4 => new TableEdit(text => Header(text, column, header), $"header = {header}"),
            5 => new TableEdit(text => text.Replace(';', '\t').Replace(',', ';'), "other signs"),
            6 => new TableEdit(text => text.Replace('.', ','), "decimal commas"),
            7 => new TableEdit(text => text[..(row % text.Length)], "cut"),
            8 => new TableEdit(text => text.Insert(row % text.Length, "\""), "quotation mark"),
            9 => Lines(lines => [lines[0]], "header only"),
            10 => Lines(lines => [.. lines[1..].Reverse()], "no header, reversed"),
            _ => new TableEdit(text => "\uFEFF" + text.Replace("\n", "\r\n", StringComparison.Ordinal) + "\u0000", "other ends"),
        };

    private static TableEdit Lines(Func<string[], string[]> change, string what) => new(
        text => text.Split('\n', StringSplitOptions.RemoveEmptyEntries) is { Length: > 0 } lines
            ? string.Join('\n', change(lines)) + "\n" : text, what);

    // A row below −1 means every row, or every second.
    private static TableEdit Cell(int row, int column, Func<string, string> change, string what) => Lines(
        lines =>
        {
            int header = lines.TakeWhile(line => line.StartsWith('#')).Count(), rows = lines.Length - header - 1;
            for (int i = header + 1; i < lines.Length; i++)
            {
                if (row < 0 ? (i % -row == 0) : (i - header - 1) == row % Math.Max(1, rows))
                {
                    char sign = lines[i].Contains(';', StringComparison.Ordinal) ? ';' : ',';
                    string[] cells = lines[i].Split(sign);
                    cells[column % cells.Length] = change(cells[column % cells.Length]);
                    lines[i] = string.Join(sign, cells);
                }
            }

            return lines;
        },
        what);

    private static string Header(string text, int column, string header)
    {
        string[] lines = text.Split('\n');
        int at = lines.TakeWhile(line => line.StartsWith('#')).Count();
        if (at < lines.Length)
        {
            char sign = lines[at].Contains(';', StringComparison.Ordinal) ? ';' : ',';
            string[] cells = lines[at].Split(sign);
            cells[column % cells.Length] = header;
            lines[at] = string.Join(sign, cells);
        }

        return string.Join('\n', lines);
    }

    private sealed record TableEdit(Func<string, string> Full, string What)
    {
        public string Change(string text) => text.Length == 0 ? text : Full(text);
    }
}
