using System.Runtime.CompilerServices;

namespace BrakeBalance;

/// <summary>Writes text with numbers in it alike in every culture.</summary>
[InterpolatedStringHandler]
internal ref struct Invariant(int literalLength, int formattedCount)
{
    private DefaultInterpolatedStringHandler _text = new(literalLength, formattedCount, CultureInfo.InvariantCulture);

    public static string Text(ref Invariant text) => text._text.ToStringAndClear();

    /// <summary>Words as they begin a sentence.</summary>
    public static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    public void AppendLiteral(string value) => _text.AppendLiteral(value);

    public void AppendFormatted<T>(T value, string? format = null) => _text.AppendFormatted(value, format);

    public void AppendFormatted<T>(T value, int alignment, string? format = null) => _text.AppendFormatted(value, alignment, format);
}
