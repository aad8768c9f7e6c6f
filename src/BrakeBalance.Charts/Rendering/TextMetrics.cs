namespace BrakeBalance.Charts.Rendering;

/// <summary>How wide text is, without asking a font.</summary>
/// <remarks>
/// Advance widths of the usual sans-serif faces with the metrics of Helvetica, in thousandths of the font size. Boxes are a
/// little wider than the text; other faces are scaled to the width that <see cref="Natural"/> gives.
/// </remarks>
internal static class TextMetrics
{
    /// <summary>The font list of every figure.</summary>
    public const string FontFamily = "Arial, Helvetica, 'Liberation Sans', sans-serif";

    /// <summary>Height of a line of text per font size.</summary>
    public const double LineHeight = 1.2;

    private const double Safety = 1.04;
    private const int FirstCharacter = ' ';

    private static readonly short[] Widths =
    [
        278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
        556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
        1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
        667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
        333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
        556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
    ];

    /// <summary>The room that one line of text needs.</summary>
    /// <returns>The width in the unit of <paramref name="fontSize"/>.</returns>
    public static double Width(string text, double fontSize, bool bold = false) => Safety * Natural(text, fontSize, bold);

    /// <summary>The length at which one line of text is drawn, in every face.</summary>
    /// <returns>The length in the unit of <paramref name="fontSize"/>.</returns>
    public static double Natural(string text, double fontSize, bool bold = false)
    {
        double sum = 0;
        foreach (char c in text)
        {
            int index = c - FirstCharacter;
            sum += index >= 0 && index < Widths.Length ? Widths[index] : c switch
            {
                '\u00a0' => 278,
                '\u202f' => 200,
                '·' => 333,
                '°' => 400,
                >= '₀' and <= '₉' => 370,
                '²' or '³' or '¹' or '⁻' => 333,
                '—' => 1000,
                '–' or 'μ' or 'µ' => 556,
                '±' or '−' or '×' or '≤' or '≥' or '≈' => 584,
                _ => 650,
            };
        }

        return sum / 1000 * fontSize * (bold ? 1.07 : 1);
    }

    /// <summary>The text with each number bound to its unit, so that no line ends between them.</summary>
    public static string Bound(string text) => string.Create(text.Length, text, (bound, of) =>
    {
        of.CopyTo(bound);
        for (int i = 1; i < of.Length - 1; i++)
        {
            ReadOnlySpan<char> behind = of.AsSpan(i + 1);
            int end = behind.IndexOfAny(" ,;:.)/");
            if (of[i] == ' ' && char.IsAsciiDigit(of[i - 1]) && (end < 0 ? behind : behind[..end]) is "g" or "%" or "bar" or "psi")
            {
                bound[i] = '\u00a0';
            }
        }
    });

    /// <summary>Breaks text into lines.</summary>
    public static IReadOnlyList<string> Wrap(string text, double fontSize, double widest, bool bold = false)
    {
        List<string> lines = [];
        string line = "";
        foreach (string word in Bound(text).Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            string longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && Width(longer, fontSize, bold) > widest)
            {
                lines.Add(line);
                line = word;
            }
            else
            {
                line = longer;
            }
        }

        if (line.Length > 0)
        {
            lines.Add(line);
        }

        return lines;
    }
}
