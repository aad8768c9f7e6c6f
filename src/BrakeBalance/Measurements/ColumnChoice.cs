using System.Text.RegularExpressions;

namespace BrakeBalance.Measurements;

/// <summary>What a column means, set by hand.</summary>
/// <param name="Meaning">What it means.</param>
/// <param name="Unit">Its unit as this program writes it; null for the file's own.</param>
/// <param name="Name">Its name in the file, or # and its number from 1.</param>
public sealed partial record ColumnChoice(ColumnMeaning Meaning, string? Unit, string Name)
{
    /// <summary>The form in which a choice is written.</summary>
    public const string Form = "\"speed [km/h]=name in the file\"";

    /// <summary>The words for every meaning.</summary>
    public static IReadOnlyList<string> Meanings => [.. Enum.GetValues<ColumnMeaning>().Select(WordsOf)];

    /// <summary>A meaning in words, such as <c>front pressure</c>.</summary>
    /// <param name="meaning">The meaning.</param>
    public static string WordsOf(ColumnMeaning meaning) => Capital().Replace(meaning.ToString(), " $1").Trim().ToLowerInvariant();

    /// <summary>Reads a choice such as <c>speed [km/h]=GPS Speed</c>.</summary>
    /// <param name="text">The text; the unit may be left out, <c>none=…</c> leaves a column unused.</param>
    /// <returns>The choice, or what is wrong with the text.</returns>
    public static (ColumnChoice? Choice, string? Fault) Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        Match match = Written().Match(text);
        string words = match.Success ? match.Groups[1].Value.Trim().ToLowerInvariant() : "";
        if (!match.Success || !Meanings.Contains(words))
        {
            return (null, $"'{text}' is not understood. Accepted: {Form}, where the first word is one of {string.Join(", ", Meanings)}.");
        }

        ColumnMeaning meaning = Enum.GetValues<ColumnMeaning>().First(m => WordsOf(m) == words);
        string? unit = match.Groups[2].Success ? LogUnits.Plain(match.Groups[2].Value) : null;
        IReadOnlyList<string> units = SeriesColumns.UnitsOf(meaning);
        return unit is null || units.Count == 0 || units.Contains(unit)
            ? (new ColumnChoice(meaning, unit, match.Groups[3].Value.Trim().Trim('"')), null)
            : (null, $"'{text}': {words} is not read in '{unit}'. Accepted: {string.Join(", ", units)}.");
    }

    [GeneratedRegex("(?<=[a-z])([A-Z])")]
    private static partial Regex Capital();

    [GeneratedRegex(@"^\s*([A-Za-z ]+?)\s*(?:\[([^\]]*)\])?\s*=\s*(\S.*)$")]
    private static partial Regex Written();
}
