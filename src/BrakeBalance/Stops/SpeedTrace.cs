using System.Globalization;
using CsvHelper;

namespace BrakeBalance.Stops;

/// <summary>Speed over time, as a lap gives it.</summary>
public sealed record SpeedTrace
{
    private SpeedTrace(IReadOnlyList<double> seconds, IReadOnlyList<double> metresPerSecond, IReadOnlyList<string> leftOut)
    {
        Seconds = seconds;
        MetresPerSecond = metresPerSecond;
        LeftOut = leftOut;
    }

    /// <summary>Times in seconds, rising.</summary>
    public IReadOnlyList<double> Seconds { get; }

    /// <summary>Speeds in metres per second, one for each time.</summary>
    public IReadOnlyList<double> MetresPerSecond { get; }

    /// <summary>Rows that could not be used, each with its line number and the reason.</summary>
    public IReadOnlyList<string> LeftOut { get; }

    /// <summary>Reads a trace from a file.</summary>
    /// <param name="path">Path of the file; its form is that of <see cref="Read"/>.</param>
    /// <returns>The trace.</returns>
    /// <exception cref="IOException">The file cannot be read.</exception>
    /// <exception cref="FormatException">A column is missing, or fewer than two rows can be used.</exception>
    public static SpeedTrace Load(string path)
    {
        using StreamReader file = File.OpenText(path);
        return Read(file);
    }

    /// <summary>Reads a trace from comma-separated text.</summary>
    /// <param name="text">Text with a header line that names the columns <c>time_s</c> and one of <c>speed_km_h</c>, <c>speed_mph</c>, <c>speed_m_s</c>; lines that begin with # are comments; decimal points.</param>
    /// <returns>The trace; rows without two numbers, with a negative speed or with a time that does not rise are left out and listed.</returns>
    /// <exception cref="FormatException">A column is missing, or fewer than two rows can be used.</exception>
    public static SpeedTrace Read(TextReader text)
    {
        ArgumentNullException.ThrowIfNull(text);
        string plain = string.Join('\n', text.ReadToEnd().Split('\n').Select(line => line.TrimStart().StartsWith('#') ? "" : line.TrimEnd('\r')));
        using CsvReader csv = CsvReader.FromText(plain, new CsvReaderOptions
        {
            HasHeader = false,
            TrimWhitespace = true,
            TrackLineNumbers = true,
            FieldCountMismatch = CsvFieldCountHandling.Allow,
        });
        string[] header = [];
        while (header.All(string.IsNullOrWhiteSpace))
        {
            header = csv.Read() ? csv.Current.ToArray() : throw new FormatException("The speed trace is empty; its first line must name the columns time_s and speed_km_h.");
        }

        int time = Array.IndexOf(header, "time_s");
        (string Name, double Factor)[] units = [("speed_km_h", 1 / 3.6), ("speed_mph", 0.44704), ("speed_m_s", 1)];
        (string Name, double Factor) unit = units.FirstOrDefault(u => header.Contains(u.Name));
        if (time < 0 || unit.Name is null)
        {
            throw new FormatException(
                $"The speed trace has the columns {string.Join(", ", header)}; it needs time_s and one of speed_km_h, speed_mph, speed_m_s.");
        }

        int speed = Array.IndexOf(header, unit.Name);
        List<double> seconds = [];
        List<double> speeds = [];
        List<string> leftOut = [];
        while (csv.Read())
        {
            string[] cells = csv.Current.ToArray();
            if (cells.All(string.IsNullOrWhiteSpace))
            {
                continue;
            }

            string? reason = null;
            if (!Number(cells, time, out double t) || !Number(cells, speed, out double v))
            {
                reason = "no number for time or speed";
                t = v = 0;
            }
            else if (v < 0)
            {
                reason = "the speed is negative";
            }
            else if (seconds.Count > 0 && t <= seconds[^1])
            {
                reason = "the time does not rise";
            }

            if (reason is not null)
            {
                leftOut.Add(FormattableString.Invariant($"line {csv.LineNumber}: {reason}"));
                continue;
            }

            seconds.Add(t);
            speeds.Add(v * unit.Factor);
        }

        return seconds.Count >= 2
            ? new SpeedTrace(seconds, speeds, leftOut)
            : throw new FormatException($"Fewer than two rows of the speed trace can be used. {string.Join("; ", leftOut.Take(3))}");
    }

    private static bool Number(string[] cells, int column, out double value)
    {
        value = 0;
        return column < cells.Length
            && double.TryParse(cells[column], NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);
    }
}
