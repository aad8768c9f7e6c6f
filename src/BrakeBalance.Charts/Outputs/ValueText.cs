using System.Collections;
using Microsoft.Data.Analysis;

namespace BrakeBalance.Charts.Outputs;

/// <summary>A cell's result in words.</summary>
public static class ValueText
{
    /// <summary>At most so many members of a list are written out.</summary>
    public const int MostMembers = 100;

    /// <summary>Any value as plain text.</summary>
    /// <param name="value">What the cell returned or showed; may be null.</param>
    /// <returns>Lines separated by LF; the same in every culture.</returns>
    public static string Of(object? value) => value switch
    {
        null => "null",
        string text => text,
        IHtmlOutput output => output.ToPlainText(),
        DataFrame frame => new FrameTable(frame).ToPlainText(),
        IQuantity quantity => NumberText.Of(quantity),
        double number => NumberText.Of(number),
        float number => NumberText.Of(number),
        bool flag => flag ? "true" : "false",
        DictionaryEntry entry => $"{Of(entry.Key)}: {Of(entry.Value)}",
        IDictionary dictionary => Joined(dictionary.Keys.Cast<object>().Select(object? (key) => new DictionaryEntry(key, dictionary[key]))),
        _ when RecordTable.Of(value) is { } table => new FrameTable(table).ToPlainText(),
        IEnumerable members => Joined(members.Cast<object?>()),
        IFormattable formattable => formattable.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString() ?? "",
    };

    private static string Joined(IEnumerable<object?> members)
    {
        List<string> texts = [.. members.Take(MostMembers + 1).Select(Of)];
        if (texts.Count > MostMembers)
        {
            texts[MostMembers] = FormattableString.Invariant($"… (the first {MostMembers} are shown)");
        }

        return string.Join(texts.Any(text => text.Contains('\n')) ? "\n" : ", ", texts);
    }
}
