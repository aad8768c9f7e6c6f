using System.CommandLine;
using BrakeBalance.Measurements;

namespace BrakeBalance.Notebooks.Commands;

/// <summary>Reads the logs that a command is given, and refuses those of which too much is lost.</summary>
internal static class LogInput
{
    private const int MostReasons = 20;

    /// <summary>The option that lets a command answer from what is left of a log.</summary>
    public static Option<bool> AllowLost() => new("--allow-lost-rows") { Description = "Answers even when more than 2 % of a log's rows cannot be read" };

    /// <summary>Reads a log.</summary>
    /// <param name="path">Path of the log, with the option that names it for the messages.</param>
    /// <param name="read">Reads the text.</param>
    /// <param name="allowLost">Whether any number of rows may be lost.</param>
    /// <returns>The rows that could be read, at least one, and what was left out.</returns>
    /// <exception cref="BadInputException">The log cannot be opened, has no row that can be used, or loses too many.</exception>
    public static LogReading<T> Read<T>(string path, Func<TextReader, LogReading<T>> read, bool allowLost)
    {
        LogReading<T> reading;
        try
        {
            using var text = new StreamReader(path);
            reading = read(text);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new BadInputException($"{path}: the log cannot be opened. Accepted: the path of a CSV file.");
        }

        if (reading.Rows.Count > 0 && (allowLost || !reading.LosesTooMuch))
        {
            return reading;
        }

        List<string> problems = [.. reading.Problems.Take(MostReasons).Select(problem => $"{path}: {problem}")];
        if (reading.Problems.Count > MostReasons)
        {
            problems.Add($"{path}: and {reading.Problems.Count - MostReasons} more.");
        }

        problems.Add(reading.Rows.Count == 0
            ? $"{path}: no row can be used. Accepted: a header line that names each column and its unit, then rows of numbers."
            : $"{path}: {reading.Lost} of {reading.Rows.Count + reading.Lost} rows cannot be read, more than 2 %. Mend them, or add --allow-lost-rows.");
        throw new BadInputException(problems);
    }
}
