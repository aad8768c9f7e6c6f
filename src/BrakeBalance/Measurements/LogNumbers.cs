using System.Text.RegularExpressions;

namespace BrakeBalance.Measurements;

/// <summary>Reads the numbers of one log, with the decimal mark that the log as a whole uses.</summary>
internal sealed partial class LogNumbers(char mark)
{
    private static readonly string[] MissingMarks = ["", "-", "–", "—", "na", "n/a", "nan", "?", "none recorded"];

    private const double LargestNumber = 1e15;

    private readonly char _mark = mark;

    public char Mark => _mark;

    /// <summary>Finds the decimal mark: the one most numbers of the log use; a point when none has any.</summary>
    public static LogNumbers For(IEnumerable<string> cells)
    {
        int points = 0, commas = 0;
        foreach (string cell in cells)
        {
            if (Marked().Match(cell.Trim()) is { Success: true } match)
            {
                points += match.Groups[1].Value == "." ? 1 : 0;
                commas += match.Groups[1].Value == "," ? 1 : 0;
            }
        }

        return new LogNumbers(commas > points ? ',' : '.');
    }

    public static bool IsMissing(string cell) => MissingMarks.Contains(cell.Trim(), StringComparer.OrdinalIgnoreCase);

    /// <summary>Whether a cell is a number with either decimal mark, or a time of day, or a date.</summary>
    public static bool IsNumberOrTime(string cell) => cell.Length > 0 && (Plain().IsMatch(cell) || Moment(cell) is not null);

    /// <summary>Seconds of a time of day (from midnight) or of a date with one (from the year 2000); null when a cell is neither.</summary>
    public static double? Moment(string cell)
    {
        if (Clock().Match(cell.Trim()) is not { Success: true } match)
        {
            return null;
        }

        double Part(string name) =>
            match.Groups[name].Success ? double.Parse(match.Groups[name].Value.Replace(',', '.'), CultureInfo.InvariantCulture) : 0;
        if (Part("h") > 24 || Part("m") > 59 || Part("s") >= 61)
        {
            return null;
        }

        double day = 0;
        if (match.Groups["y"].Success)
        {
            (int year, int month, int date) = ((int)Part("y"), (int)Part("mo"), (int)Part("d"));
            if (year is < 1980 or > 2200 || month is < 1 or > 12 || date < 1 || date > DateTime.DaysInMonth(year, month))
            {
                return null;
            }

            day = (new DateTime(year, month, date) - new DateTime(2000, 1, 1)).TotalDays;
        }

        return day * 86_400 + Part("h") * 3600 + Part("m") * 60 + Part("s");
    }

    /// <summary>Whether all marked numbers of a column read like whole thousands written with a comma, such as 1,200.</summary>
    public bool LooksLikeThousands(IEnumerable<string> column)
    {
        string[] marked = column.Select(c => c.Trim()).Where(c => Marked().IsMatch(c)).ToArray();
        return _mark == ',' && marked.Length > 0 && marked.All(c => Thousands().IsMatch(c));
    }

    /// <summary>The number in a cell, or the reason why there is none.</summary>
    public (double Value, string? Fault) Parse(string cell)
    {
        string text = cell.Trim().Replace('\u2212', '-');
        char other = _mark == ',' ? '.' : ',';
        if (Marked().Match(text) is { Success: true } match && match.Groups[1].Value[0] == other)
        {
            return (0, $"'{cell}' is written with '{other}' where the rest of the log writes decimals with '{_mark}'");
        }

        // Beyond the largest a change of unit could overflow, and nothing of a car is that large.
        return double.TryParse(text.Replace(_mark, '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
            && Math.Abs(value) <= LargestNumber
            ? (value, null)
            : (0, $"'{cell}' is not a number");
    }

    [GeneratedRegex(@"^[+-]?\d*([.,])\d+([eE][+-]?\d+)?$")]
    private static partial Regex Marked();

    [GeneratedRegex(@"^[+\-\u2212]?[0-9]*([.,]?[0-9]+)([eE][+-]?[0-9]+)?$")]
    private static partial Regex Plain();

    [GeneratedRegex(@"^(?:(?<y>[0-9]{4})-(?<mo>[0-9]{2})-(?<d>[0-9]{2})[T ])?(?<h>[0-9]{1,2}):(?<m>[0-9]{2})"
        + @":(?<s>[0-9]{2}(?:[.,][0-9]{1,9})?)\s*(?:Z|[+-][0-9]{2}:?[0-9]{2})?$")]
    private static partial Regex Clock();

    [GeneratedRegex(@"^[+-]?[1-9]\d{0,2},\d{3}$")]
    private static partial Regex Thousands();
}
