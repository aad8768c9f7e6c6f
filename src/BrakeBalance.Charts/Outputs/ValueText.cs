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
        IEnumerable members => Joined(members),
        IFormattable formattable => formattable.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString() ?? "",
    };

    /// <summary>The members of a list, each written, and a note in place of those beyond <see cref="MostMembers"/>.</summary>
    internal static List<string> Shown(IEnumerable members, Func<object?, string> written)
    {
        List<string> texts = [.. members.Cast<object?>().Take(MostMembers + 1).Select(written)];
        if (texts.Count > MostMembers)
        {
            texts[MostMembers] = Invariant.Text($"… (the first {MostMembers} are shown)");
        }

        return texts;
    }

    private static string Joined(IEnumerable members)
    {
        List<string> texts = Shown(members, Of);
        return string.Join(texts.Any(text => text.Contains('\n')) ? "\n" : ", ", texts);
    }
}
