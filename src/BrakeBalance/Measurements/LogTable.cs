using CsvHelper;

namespace BrakeBalance.Measurements;

/// <summary>A log as cells: header, rows with their line numbers, comments, and lines that are no rows.</summary>
internal sealed class LogTable
{
    private LogTable(char delimiter, int headerLine, string[] header, List<(int Line, string[] Cells)> rows, List<LogProblem> problems,
        List<string> remarks) =>
        (Delimiter, HeaderLine, Header, Rows, Problems, Remarks) = (delimiter, headerLine, header, rows, problems, remarks);

    public char Delimiter { get; }

    public int HeaderLine { get; }

    public string[] Header { get; }

    public List<(int Line, string[] Cells)> Rows { get; }

    public List<LogProblem> Problems { get; }

    public List<string> Remarks { get; }

    /// <summary>Lines below the header that are no rows, because a quotation mark is not closed.</summary>
    public int Broken => HeaderLine == 0 ? 0 : Problems.Count(p => p.Line > HeaderLine);

    public static LogTable Read(TextReader reader)
    {
        List<LogProblem> problems = [];
        List<string> remarks = [];
        List<string> lines = [];
        while (reader.ReadLine() is { } line)
        {
            string text = lines.Count == 0 ? line.TrimStart('\uFEFF') : line;
            string trimmed = text.TrimStart().TrimStart('"');
            if (trimmed.StartsWith('#'))
            {
                remarks.Add(trimmed.TrimStart('#').Trim().TrimEnd(';', ',', '"', '\t'));
                text = "";
            }
            else if (text.Count(c => c == '"') % 2 != 0)
            {
                problems.Add(new LogProblem { Line = lines.Count + 1, Reason = "a quotation mark is not closed on this line" });
                text = "";
            }

            lines.Add(text);
        }

        int headerIndex = lines.FindIndex(l => !string.IsNullOrWhiteSpace(l));
        if (headerIndex < 0)
        {
            problems.Add(new LogProblem
            {
                Line = Math.Max(1, lines.Count),
                Reason = "the log has no header line; "
                    + "its first line that is no comment names the columns with their units, such as 'front pressure [bar]'"
            });
            return new LogTable(',', 0, [], [], problems, remarks);
        }

        char delimiter = DelimiterOf(lines[headerIndex]);
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
            problems.Add(new LogProblem { Line = headerIndex + 1, Reason = "the log has a header and no rows of numbers below it" });
        }

        return new LogTable(delimiter, headerIndex + 1, header ?? [], rows, problems, remarks);
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
