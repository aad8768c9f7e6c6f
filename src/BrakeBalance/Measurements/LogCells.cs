using System.Text.RegularExpressions;

namespace BrakeBalance.Measurements;

/// <summary>Finds the columns of a log by name and hands out the cells of one row at a time, keeping the faults.</summary>
internal sealed partial class LogCells(LogTable table)
{
    private readonly LogTable _table = table;
    private readonly LogNumbers _numbers = LogNumbers.For(table.Rows.SelectMany(r => r.Cells));
    private readonly (string Name, string Unit)[] _columns = table.Header.Select(Split).ToArray();
    private readonly HashSet<int> _used = [];
    private (int Line, string[] Cells) _row;
    private string? _fault;
    private bool _passedOver;

    public List<LogProblem> Problems { get; } = [];

    /// <summary>The line of the header, from 1.</summary>
    public int HeaderLine => Math.Max(1, _table.HeaderLine);

    // Whether a column that was asked for by name has numbers that cannot be read: the rest may tell something else than the whole.
    private bool _unreadable;

    /// <summary>A column of numbers; null when the log does not have it, or names a unit that is not known: then no row is read.</summary>
    public Column<T>? Number<T>(Dictionary<string, Func<double, T>> units, params string[] names)
    {
        (int index, string unit) = Find(names) is >= 0 and int bracketed
            ? (bracketed, _columns[bracketed].Unit) : WithSuffix(units.Keys, names);
        if (index < 0)
        {
            return null;
        }

        if (!units.ContainsKey(LogUnits.Plain(unit)))
        {
            string given = unit.Length == 0 ? "names no unit" : $"has the unit '{unit}', which is not known here";
            Problems.Add(new LogProblem(_table.HeaderLine,
                $"the column '{_table.Header[index]}' {given}; "
                    + $"write '{names[0]} [unit]' with one of {string.Join(", ", units.Keys.Where(known => known.Length > 0))}"));
            _unreadable |= _table.Rows.Any(row => index < row.Cells.Length && !LogNumbers.IsMissing(row.Cells[index]));
            return null;
        }

        Column<T>? column = Number(units, index, LogUnits.Plain(unit), names[0]);
        _unreadable |= column is null;
        return column;
    }

    /// <summary>A column of numbers by its place, in a unit that its table knows; null when its numbers can be read in two ways.</summary>
    public Column<T>? Number<T>(Dictionary<string, Func<double, T>> units, int index, string unit, string name)
    {
        _used.Add(index);
        if (LogUnits.CoarseUnits.Contains(unit)
            && _numbers.LooksLikeThousands(_table.Rows.Where(r => index < r.Cells.Length).Select(r => r.Cells[index])))
        {
            Problems.Add(new LogProblem(_table.HeaderLine,
                $"the column '{_table.Header[index]}' is not used: "
                    + "its numbers, such as 1,200, could be one and a fifth or twelve hundred; write 1200"));
            return null;
        }

        return new Column<T>(index, name, units[unit]);
    }

    // Loggers write the unit behind the name: time_s, speed_km_h.
    private (int Index, string Unit) WithSuffix(IEnumerable<string> units, string[] names)
    {
        foreach (string unit in units.Where(unit => unit.Length > 0))
        {
            string suffix = " " + unit.Replace('/', ' ');
            int index = Array.FindIndex(_columns, c => c.Unit.Length == 0
                && names.Any(name => c.Name.Replace('/', ' ').Replace('²', '2') == name + suffix));
            if (index >= 0)
            {
                _used.Add(index);
                return (index, unit);
            }
        }

        return (-1, "");
    }

    /// <summary>Whether a column that nobody asked for has these letters in its name.</summary>
    public bool IsUnused(string letters) =>
        _columns.Index().Any(column => !_used.Contains(column.Index) && column.Item.Name.Contains(letters, StringComparison.Ordinal));

    /// <summary>Index of a column of words; −1 when the log does not have it.</summary>
    public int Find(params string[] names)
    {
        int index = Array.FindIndex(_columns, c => names.Contains(c.Name));
        if (index >= 0)
        {
            _used.Add(index);
        }

        return index;
    }

    /// <summary>Notes the columns that nobody asked for, so that a misspelt name does not pass in silence.</summary>
    public void ReportUnusedColumns(params string[] passedOver)
    {
        for (int i = 0; i < _columns.Length; i++)
        {
            if (!_used.Contains(i) && _columns[i].Name.Length > 0 && !passedOver.Contains(_columns[i].Name))
            {
                Problems.Add(new LogProblem(_table.HeaderLine,
                    $"the column '{_table.Header[i]}' is not known and was not used"));
            }
        }
    }

    public void Missing(string name, string example)
    {
        if (_columns.Length == 0)
        {
            return;
        }

        Problems.Add(new LogProblem(_table.HeaderLine,
            $"the log has no column '{name}' that can be used, so nothing was read; write it as '{example}'"));
    }

    /// <summary>Reads every row by the function given; a row it calls a fault on is left out, reported and counted.</summary>
    public LogReading<TRow> ReadRows<TRow>(Func<int, TRow?> read) where TRow : class
    {
        if (_unreadable)
        {
            return Nothing<TRow>();
        }

        List<TRow> rows = [];
        int lost = 0;
        foreach ((int Line, string[] Cells) row in _table.Rows)
        {
            (_row, _fault, _passedOver) = (row, null, false);
            if (row.Cells.Length > _columns.Length && row.Cells.Skip(_columns.Length).Any(c => c.Length > 0))
            {
                _fault = Invariant.Text($"{row.Cells.Length} cells where the header names {_columns.Length} columns");
                _fault += _table.Delimiter == ',' ? "; with decimal commas separate the cells by ';' or quote the numbers" : "";
            }

            TRow? result = _fault is null ? read(row.Line) : null;
            if (_fault is not null)
            {
                Problems.Add(new LogProblem(row.Line, _fault));
                lost += _passedOver ? 0 : 1;
            }
            else if (result is not null)
            {
                rows.Add(result);
            }
        }

        return Reading(rows, lost);
    }

    /// <summary>The cell of a column in the row at hand; empty when it is missing.</summary>
    public string Cell(int index) =>
        index >= 0 && index < _row.Cells.Length && !LogNumbers.IsMissing(_row.Cells[index]) ? _row.Cells[index].Trim() : "";

    /// <summary>The reading of a log that lacks a column it cannot do without, or has one that cannot be read: nothing.</summary>
    public LogReading<TRow> Nothing<TRow>() => Reading<TRow>([], _table.Rows.Count);

    private LogReading<TRow> Reading<TRow>(List<TRow> rows, int lost) => new()
    {
        Rows = rows,
        Lost = lost + _table.Broken,
        Problems = [.. _table.Problems.Concat(Problems).OrderBy(p => p.Line)],
        Remarks = _table.Remarks,
    };

    /// <summary>The number in a cell; null when it is missing or no number.</summary>
    public double? Plain(string cell) =>
        !LogNumbers.IsMissing(cell) && _numbers.Parse(cell) is { Fault: null } parsed ? parsed.Value : null;

    /// <summary>Marks the row at hand as faulty; the first reason stands.</summary>
    public void Fault(string reason) => _fault ??= reason;

    /// <summary>Leaves the row at hand out and reports it, but does not count it as lost: nothing was written in it yet.</summary>
    public void PassOver(string reason)
    {
        _passedOver = _fault is null;
        Fault(reason);
    }

    /// <summary>The words of a column in the row at hand; empty when the cell is missing; control characters are a fault.</summary>
    public string Word(int index)
    {
        string word = CsvText.Words(Cell(index));
        if (word.Any(char.IsControl))
        {
            Fault("a cell has characters that cannot be seen");
        }

        return word;
    }

    /// <summary>
    /// The quantity of a column in the row at hand; null when the cell is missing, out of range or no number (the last two are faults).
    /// </summary>
    public T? Value<T>(Column<T>? column, double low, double high, Func<T, double> measure, string rangeInWords) where T : struct
    {
        if (column is null || column.Index >= _row.Cells.Length || LogNumbers.IsMissing(_row.Cells[column.Index]))
        {
            return null;
        }

        string cell = _row.Cells[column.Index];
        (double number, string? fault) = _numbers.Parse(cell);
        if (fault is not null)
        {
            Fault($"{column.Name}: {fault}");
            return null;
        }

        T value = column.Make(number);
        if (!(measure(value) >= low && measure(value) <= high))
        {
            Fault($"{column.Name}: '{cell}' is out of range; {rangeInWords}");
            return null;
        }

        return value;
    }

    private static (string Name, string Unit) Split(string header)
    {
        Match match = NameAndUnit().Match(header.Trim());
        string name = Spaces().Replace(match.Groups[1].Value.ToLowerInvariant().Replace('_', ' '), " ").Trim();
        return (name, match.Groups[2].Success ? match.Groups[2].Value.Trim() : "");
    }

    [GeneratedRegex(@"^(.*?)\s*(?:[\[(]([^\])]*)[\])])?$")]
    private static partial Regex NameAndUnit();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();

    /// <summary>A column of numbers with a known unit.</summary>
    internal sealed record Column<T>(int Index, string Name, Func<double, T> Make);
}
