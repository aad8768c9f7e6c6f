using System.CommandLine;

namespace BrakeBalance.Notebooks.Commands;

/// <summary>Reads the logs that a command is given, and refuses those of which too much is lost.</summary>
internal static class LogInput
{
    /// <summary>The option that lets a command answer from what is left of a log.</summary>
    public static Option<bool> AllowLost() => Options.Of<bool>("--allow-lost-rows",
        "Answers even when more than 2 % of a log's rows cannot be read");

    /// <summary>The option that says what columns of a time series mean.</summary>
    public static Option<string[]> Columns() => Options.Of<string[]>("--column",
        $"What a column means, where the guess is wrong or its unit is not known: {ColumnChoice.Form}; none=… leaves it out, #3 names it "
            + $"by its place. Meanings: {string.Join(", ", ColumnChoice.Meanings)}", "MEANING=NAME", []);

    /// <summary>What was said of columns.</summary>
    public static IReadOnlyList<ColumnChoice> ChoicesOf(IEnumerable<string> given, List<string> problems)
    {
        List<ColumnChoice> choices = [];
        foreach ((ColumnChoice? choice, string? fault) in given.Select(ColumnChoice.Read))
        {
            if (choice is not null)
            {
                choices.Add(choice);
            }
            else
            {
                problems.Add("--column: " + fault);
            }
        }

        problems.AddRange(choices.Where(c => c.Meaning != ColumnMeaning.None).GroupBy(c => c.Meaning).Where(same => same.Count() > 1)
            .Select(same => $"--column: {ColumnChoice.WordsOf(same.Key)} is set {same.Count()} times; set one column for it."));
        return choices;
    }

    /// <summary>Reads a log.</summary>
    /// <returns>The rows that could be read, at least one, and what was left out.</returns>
    /// <exception cref="BadInputException">The log cannot be opened, has no row that can be used, or loses too many.</exception>
    public static LogReading<T> Read<T>(string path, Func<TextReader, LogReading<T>> read, bool allowLost)
    {
        List<string> problems = [];
        return LogFile.Read(path, read, allowLost, problems) ?? throw new BadInputException(problems);
    }
}
