namespace BrakeBalance.Measurements;

/// <summary>Puts stops into a log of test stops, below the rows that are there.</summary>
public static class StopLog
{
    /// <summary>Adds rows in the columns, units and signs of the log.</summary>
    /// <param name="log">The log's text; it stays as it is.</param>
    /// <param name="stops">The stops, each with a note that tells it from others; a note that is there already is refused.</param>
    /// <returns>The whole text, or every problem.</returns>
    public static (string? Text, IReadOnlyList<string> Problems) Add(string log, IReadOnlyList<(TestStop Stop, string Note)> stops)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(stops);
        LogTable table = LogTable.Read(new StringReader(log));
        if (table.Header.Length == 0)
        {
            return (null, ["the log has no header line"]);
        }

        var cells = new LogCells(table);
        StopColumns of = StopColumns.In(cells);
        int notes = cells.Find("notes", "note"), number = cells.Find("stop");
        List<string> problems = [.. cells.Problems.Select(p => p.ToString())];
        problems.AddRange(stops.SelectMany(stop => table.Rows
            .Where(row => notes >= 0 && notes < row.Cells.Length && row.Cells[notes] == stop.Note)
            .Select(row => Invariant.Text($"line {row.Line} holds the stop '{stop.Note}' already; take that row out to put it in again"))));

        char mark = LogNumbers.For(table.Rows.SelectMany(row => row.Cells)).Mark;
        string Number(double value, string form) => value.ToString(form, CultureInfo.InvariantCulture).Replace('.', mark);
        HashSet<string> lacking = [];
        List<string> lines = [];
        foreach ((TestStop stop, string note) in stops)
        {
            string[] row = new string[table.Header.Length];
            void Word(int index, string name, string? word)
            {
                if (word is not null && index >= 0)
                {
                    row[index] = word;
                }
                else if (word is not null)
                {
                    lacking.Add(name);
                }
            }

            void Quantity<T>(LogCells.Column<T>? column, string name, T? value, Func<T, double> si, string form) where T : struct =>
                Word(column?.Index ?? -1, name, value is { } v && column is not null ? Number(si(v) / si(column.Make(1)), form)
                    : value is null ? null : "");
            Quantity(of.Speed, "speed [km/h]", stop.InitialSpeed, v => v.MetersPerSecond, "0.0");
            Quantity(of.PedalForce, "pedal force [N]", stop.PedalForce, f => f.Newtons, "0");
            Quantity(of.FrontPressure, "front pressure [bar]", stop.FrontPressure, p => p.Pascals, "0.0");
            Quantity(of.RearPressure, "rear pressure [bar]", stop.RearPressure, p => p.Pascals, "0.0");
            Quantity(of.LockPressure, "lock pressure [bar]", stop.LockPressure, p => p.Pascals, "0.0");
            Quantity(of.Deceleration, "deceleration [g]", stop.Deceleration, a => a.MetersPerSecondSquared, "0.000");
            Quantity(of.Turns, "turns", stop.Turns, t => t, "0.##");
            Word(of.Locked, "locked first", stop.Locked?.ToString().ToLowerInvariant());
            Word(of.Surface, "surface", stop.Surface);
            Word(of.LoadCase, "load case", stop.LoadCase);
            Word(notes, "notes", note);
            Word(number, "stop", number < 0 ? null : Invariant.Text($"{table.Rows.Count + lines.Count + 1}"));
            lines.Add(string.Join(table.Delimiter, row.Select(Cell)));
        }

        string Cell(string? cell) =>
            cell is null ? "" : LogNumbers.IsNumberOrTime(cell) && !cell.Contains(table.Delimiter) ? cell : CsvText.Cell(cell);

        problems.AddRange(lacking.Select(name => $"the header names no column for '{name}'; add it, or name another file"));
        return problems.Count > 0 ? (null, problems) : ($"{log.TrimEnd('\n', '\r')}\n{string.Join('\n', lines)}\n", []);
    }
}
