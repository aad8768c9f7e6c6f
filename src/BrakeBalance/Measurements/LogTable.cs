using CsvHelper;

namespace BrakeBalance.Measurements;

/// <summary>A log as cells: header, rows with their line numbers, comments, and lines that are no rows.</summary>
internal sealed class LogTable(char delimiter, int headerLine, string[] header, string[] units, List<(int Line, string[] Cells)> rows,
    List<LogProblem> problems, List<string> remarks)
{
    private const int MostLooked = 400;

    public char Delimiter { get; } = delimiter;

    public int HeaderLine { get; } = headerLine;

    public string[] Header { get; } = header;

    /// <summary>The units of a line below the header that holds nothing else; none when there is no such line.</summary>
    public string[] Units { get; } = units;

    public List<(int Line, string[] Cells)> Rows { get; } = rows;

    public List<LogProblem> Problems { get; } = problems;

    public List<string> Remarks { get; } = remarks;

    /// <summary>Lines below the header that are no rows, because a quotation mark is not closed.</summary>
    public int Broken => HeaderLine == 0 ? 0 : Problems.Count(p => p.Line > HeaderLine);

    /// <summary>Reads a log.</summary>
    /// <param name="reader">The log's text.</param>
    /// <param name="preamble">
    /// Whether lines that are no table may stand before the header, as loggers write them; they become remarks. Else the header is the
    /// first line that is no remark.
    /// </param>
    public static LogTable Read(TextReader reader, bool preamble = false)
    {
        List<LogProblem> problems = [];
        List<string> remarks = [];
        List<string> lines = [];
        Dictionary<int, string> marked = [];
        while (reader.ReadLine() is { } line)
        {
            string text = lines.Count == 0 ? line.TrimStart('\uFEFF') : line;
            string trimmed = text.TrimStart().TrimStart('"');
            if (trimmed.StartsWith('#'))
            {
                marked[lines.Count] = trimmed.TrimStart('#').Trim();
                remarks.Add(trimmed.TrimStart('#').Trim().TrimEnd(';', ',', '"', '\t'));
                text = "";
            }
            else if (IsOpen(text))
            {
                problems.Add(new LogProblem(lines.Count + 1, "a quotation mark is not closed on this line"));
                text = "";
            }

            lines.Add(text);
        }

        int headerIndex = lines.FindIndex(l => !string.IsNullOrWhiteSpace(l));
        string[] units = [];
        char? found = null;
        if (preamble && headerIndex >= 0)
        {
            (headerIndex, units, found) = FindHeader(lines, marked, remarks, headerIndex);
        }

        if (headerIndex < 0)
        {
            problems.Add(new LogProblem(Math.Max(1, lines.Count),
                "there is no header line: the first line that is no comment names the columns, with units where they have any"));
            return new LogTable(',', 0, [], [], [], problems, remarks);
        }

        char delimiter = found ?? DelimiterOf(lines[headerIndex]);
        var options = new CsvReaderOptions
        {
            Separator = delimiter,
            HasHeader = false,
            TrimWhitespace = true,
            TrimInsideQuotes = true,
            TrackLineNumbers = true,
            AllowLineBreaksInQuotes = false,
            FieldCountMismatch = CsvFieldCountHandling.Allow,
        };
        using CsvReader csv = CsvReader.FromText(string.Join('\n', lines), options);
        string[]? header = null;
        List<(int, string[])> rows = [];
        while (csv.Read())
        {
            string[] cells = csv.Current.ToArray();
            if (cells.All(string.IsNullOrWhiteSpace))
            {
                continue;
            }

            if (header is null)
            {
                header = cells;
            }
            else
            {
                rows.Add(((int)csv.LineNumber, cells));
            }
        }

        if (rows.Count == 0)
        {
            problems.Add(new LogProblem(headerIndex + 1, "the log has a header and no rows of numbers below it"));
        }

        return new LogTable(delimiter, headerIndex + 1, header ?? [], units, rows, problems, remarks);
    }

    // The header is the line before the first rows of numbers, or the one before that when a line of units stands between.
    private static (int Header, string[] Units, char? Delimiter) FindHeader(
        List<string> lines, Dictionary<int, string> marked, List<string> remarks, int first)
    {
        int[] filled = [.. Enumerable.Range(0, lines.Count).Where(i => !string.IsNullOrWhiteSpace(lines[i])).Take(MostLooked)];
        (char sign, int[] numbers) = ";\t|,".Select(s => (s, filled.Select(i => NumbersIn(lines[i], s)).ToArray()))
            .MaxBy(pair => pair.Item2.Sum());
        if (numbers.All(n => n == 0))
        {
            return (first, [], null);
        }

        // A lone row of numbers may stand in the preamble; the rows of the table follow one another.
        bool Follows(int n) => numbers[n] > 0 && numbers.Skip(n).Take(5).Select(cells => cells > 0 ? 1.0 : 0).Average() >= 0.6;
        int data = Enumerable.Range(0, numbers.Length).FirstOrDefault(Follows, Array.FindIndex(numbers, n => n > 0));
        int row = filled[data];
        int[] before = [.. filled.Take(data).Reverse().Where(i => Cells(lines[i], sign).Count > 1).Take(2)];
        bool hasUnits = before.Length == 2 && Cells(lines[before[1]], sign).Count >= Cells(lines[before[0]], sign).Count - 1
            && LogUnits.AreUnits(Cells(lines[before[0]], sign));
        int header = before.Length > 0 ? before[hasUnits ? 1 : 0] : -1;
        int remark = marked.Keys.Where(i => i < row).DefaultIfEmpty(-1).Max();
        if (remark >= 0 && before.Length == 0 && Cells(marked[remark], sign).Count >= Cells(lines[row], sign).Count)
        {
            header = remark;
            lines[header] = marked[remark];
        }

        string[] units = hasUnits ? [.. Cells(lines[before[0]], sign)] : [];
        foreach (int i in filled.Where(i => header >= 0 && i < row && i != header))
        {
            if (i < header)
            {
                remarks.Add(lines[i].Trim(' ', '\t', ';', ',', '|', '"'));
            }

            lines[i] = "";
        }

        return (header >= 0 ? header : first, units, sign);
    }

    // How many cells of a line are numbers; 0 when the line is no row of numbers.
    private static int NumbersIn(string line, char sign)
    {
        List<string> cells = Cells(line, sign);
        int filled = cells.Count(cell => !LogNumbers.IsMissing(cell)), numbers = cells.Count(LogNumbers.IsNumberOrTime);
        return cells.Count > 1 && numbers * 2 > filled ? numbers : 0;
    }

    private static List<string> Cells(string line, char sign)
    {
        List<string> cells = [];
        bool quoted = false;
        int from = 0;
        for (int i = 0; i <= line.Length; i++)
        {
            quoted ^= i < line.Length && line[i] == '"' && line[from..i].TrimStart() is ("" or ['"', ..]);
            if (i == line.Length || line[i] == sign && !quoted)
            {
                cells.Add(Unquoted(line[from..i].Trim()));
                from = i + 1;
            }
        }

        return cells;
    }

    // A quotation mark within a cell, such as that of inches, is its own.
    private static string Unquoted(string cell) => cell is ['"', .. var inner, '"'] ? inner.Replace("\"\"", "\"").Trim()
        : cell is ['"', .. var rest] ? rest.Trim() : cell;

    // Whether a quotation mark that opens a cell is never closed.
    private static bool IsOpen(string line)
    {
        bool quoted = false, begins = true, own = false;
        foreach (char c in line)
        {
            (quoted, own) = c == '"' && (begins || own) ? (!quoted, true) : (quoted, own);
            begins = !quoted && (c is ',' or ';' or '\t' or '|' || begins && c == ' ');
            own &= !begins;
        }

        return quoted;
    }

    private static char DelimiterOf(string header)
    {
        int depth = 0;
        int semicolons = 0, tabs = 0, commas = 0;
        foreach (char c in header)
        {
            depth += c is '[' or '(' ? 1 : c is ']' or ')' ? -1 : 0;
            if (depth == 0)
            {
                semicolons += c == ';' ? 1 : 0;
                tabs += c == '\t' ? 1 : 0;
                commas += c == ',' ? 1 : 0;
            }
        }

        return semicolons >= Math.Max(1, Math.Max(tabs, commas)) ? ';' : tabs >= Math.Max(1, commas) ? '\t' : ',';
    }
}
