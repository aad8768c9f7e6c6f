using System.Globalization;
using System.Text;

namespace BrakeBalance.Notebooks.Commands;

/// <summary>Text of unknown origin made fit for a terminal: what cannot be seen is written as its code.</summary>
internal static class VisibleText
{
    /// <summary>Whether all of a text can be seen: no control characters and no half characters.</summary>
    public static bool IsPlain(string text) => Of(text) == text;

    /// <summary>The text with control characters and half characters written as <c>\u001B</c>; line ends and tabs stay.</summary>
    public static string Of(string text)
    {
        var shown = new StringBuilder(text.Length);
        for (int i = 0; i < text.Length; i++)
        {
            if (char.IsSurrogatePair(text, i))
            {
                shown.Append(text, i++, 2);
            }
            else if (text[i] is '\n' or '\r' or '\t' || !Hidden(text[i]))
            {
                shown.Append(text[i]);
            }
            else
            {
                shown.Append(CultureInfo.InvariantCulture, $"\\u{(int)text[i]:X4}");
            }
        }

        return shown.ToString();
    }

    private static bool Hidden(char c) => char.IsControl(c) || char.IsSurrogate(c) || c is '\u202A' or '\u202B' or '\u202D' or '\u202E' or '\u2066' or '\u2067';
}
