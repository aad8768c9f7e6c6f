using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;

namespace BrakeBalance;

/// <summary>Refuses what cannot be worked with. The words are put together only when they are needed, alike in every culture.</summary>
internal static class Refuse
{
    public static void If([DoesNotReturnIf(true)] bool refused, string why, string? parameter = null)
    {
        if (refused)
        {
            throw new ArgumentException(why, parameter);
        }
    }

    public static void If([DoesNotReturnIf(true)] bool refused,
        [InterpolatedStringHandlerArgument(nameof(refused))] ref Words why, string? parameter = null) =>
        If(refused, refused ? why.Text() : "", parameter);

    [InterpolatedStringHandler]
    public ref struct Words
    {
        private DefaultInterpolatedStringHandler _text;

        public Words(int literalLength, int formattedCount, bool refused, out bool needed)
        {
            needed = refused;
            _text = refused ? new(literalLength, formattedCount, CultureInfo.InvariantCulture) : default;
        }

        public string Text() => _text.ToStringAndClear();

        public void AppendLiteral(string value) => _text.AppendLiteral(value);

        public void AppendFormatted<T>(T value, string? format = null) => _text.AppendFormatted(value, format);
    }
}
