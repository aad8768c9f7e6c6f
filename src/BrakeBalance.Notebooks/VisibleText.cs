using System.Text.RegularExpressions;

namespace BrakeBalance.Notebooks;

/// <summary>Text of unknown origin made fit for a terminal: what cannot be seen is written as its code.</summary>
internal static partial class VisibleText
{
    /// <summary>Whether all of a text can be seen: no control characters and no half characters.</summary>
    public static bool IsPlain(string text) => Of(text) == text;

    /// <summary>The text with control characters and half characters written as <c>\u001B</c>; line ends and tabs stay.</summary>
    /// <param name="text">The text.</param>
    /// <param name="colours">Whether the codes that colour text on a terminal stay too.</param>
    public static string Of(string text, bool colours = false)
    {
        var shown = new StringBuilder(text.Length);
        for (int i = 0; i < text.Length; i++)
        {
            if (char.IsSurrogatePair(text, i))
            {
                shown.Append(text, i++, 2);
            }
            else if (colours && text[i] == '\u001b' && Colour().Match(text, i) is { Success: true } code)
            {
                shown.Append(code.ValueSpan);
                i += code.Length - 1;
            }
            else if (text[i] is '\n' or '\t' || (text[i] == '\r' && i + 1 < text.Length && text[i + 1] == '\n') || !Hidden(text[i]))
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

    private static bool Hidden(char c) =>
        char.IsControl(c) || char.IsSurrogate(c) || c is '\u202A' or '\u202B' or '\u202D' or '\u202E' or '\u2066' or '\u2067';

    [GeneratedRegex(@"\G\u001b\[[0-9;]*m")]
    private static partial Regex Colour();
}

/// <summary>Writes text on, with what cannot be seen made visible.</summary>
internal sealed class VisibleWriter(TextWriter inner) : TextWriter(CultureInfo.InvariantCulture)
{
    public override Encoding Encoding => inner.Encoding;

    public override void Write(char value) =>
        inner.Write(value is '\r' || char.IsSurrogate(value) ? value.ToString() : VisibleText.Of(value.ToString()));

    public override void Write(string? value) => inner.Write(VisibleText.Of(value ?? ""));

    public override void Write(char[] buffer, int index, int count) => Write(new string(buffer, index, count));

    public override void Write(ReadOnlySpan<char> buffer) => Write(new string(buffer));

    public override void WriteLine(string? value)
    {
        Write(value);
        inner.WriteLine();
    }

    public override void WriteLine() => inner.WriteLine();

    public override void Flush() => inner.Flush();
}
