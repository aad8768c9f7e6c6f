using System.Text.RegularExpressions;

namespace BrakeBalance.Measurements;

/// <summary>Reads the numbers of one log, with the decimal mark that the log as a whole uses.</summary>
internal sealed partial class LogNumbers
{
    private static readonly string[] MissingMarks = ["", "-", "–", "—", "na", "n/a", "nan", "?", "none recorded"];

    private const double LargestNumber = 1e15;

    private readonly char _mark;

    private LogNumbers(char mark) => _mark = mark;

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

    public static bool IsMissing(string cell) => MissingMarks.Contains(cell.Trim().ToLowerInvariant());

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

    [GeneratedRegex(@"^[+-]?[1-9]\d{0,2},\d{3}$")]
    private static partial Regex Thousands();
}
