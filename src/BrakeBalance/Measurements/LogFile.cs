namespace BrakeBalance.Measurements;

/// <summary>Reads log files, and refuses those of which too much is lost.</summary>
public static class LogFile
{
    private const int MostReasons = 20;

    /// <summary>Reads a log.</summary>
    /// <typeparam name="T">Kind of row.</typeparam>
    /// <param name="path">Path of the log.</param>
    /// <param name="read">Reads the text.</param>
    /// <param name="allowLost">Whether any number of rows may be lost.</param>
    /// <param name="problems">Takes what is wrong, each with the file and, where there is one, the line.</param>
    /// <param name="open">Opens the text of a path; null for a file on disk.</param>
    /// <returns>The rows that could be read, at least one, and what was left out; null when the log cannot be used.</returns>
    public static LogReading<T>? Read<T>(string path, Func<TextReader, LogReading<T>> read, bool allowLost, ICollection<string> problems,
        Func<string, TextReader>? open = null)
    {
        ArgumentNullException.ThrowIfNull(read);
        ArgumentNullException.ThrowIfNull(problems);
        LogReading<T> reading;
        try
        {
            using TextReader text = open is null ? LogText.Open(path) : open(path);
            reading = read(text);
        }
        catch (Exception exception)
            when (exception is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            problems.Add($"{path}: the log cannot be opened. Accepted: the path of a CSV file.");
            return null;
        }

        if (reading.Rows.Count > 0 && (allowLost || !reading.LosesTooMuch))
        {
            return reading;
        }

        foreach (LogProblem problem in reading.Problems.Take(MostReasons))
        {
            problems.Add($"{path}: {problem}");
        }

        if (reading.Problems.Count > MostReasons)
        {
            problems.Add($"{path}: and {reading.Problems.Count - MostReasons} more.");
        }

        problems.Add(reading.Rows.Count == 0
            ? $"{path}: no row can be used. Accepted: a header line that names each column and its unit, then rows of numbers."
            : $"{path}: {reading.Lost} of {reading.Rows.Count + reading.Lost} rows cannot be read, more than 2 %. "
                + "Mend them, or add --allow-lost-rows.");
        return null;
    }
}
