using System.Collections.Concurrent;
using System.Reflection;
using BrakeBalance.Charts;
using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Fonts.TrueType;
using UglyToad.PdfPig.Fonts.TrueType.Parser;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>The outlines of letters in published drawings: those of Inter (SIL Open Font License 1.1), which a package carries.</summary>
internal static class OutlinedText
{
    private static readonly Lazy<((TrueTypeFont Font, byte[] File) Regular, (TrueTypeFont Font, byte[] File) Bold)> Fonts = new(Load);

    private static readonly ConcurrentDictionary<(char, bool), (double, string)?> Known = new();

    private static readonly Lazy<LetterOutlines> Inter = new(() =>
        new(Fonts.Value.Regular.Font.GetUnitsPerEm(), (letter, bold) => Known.GetOrAdd((letter, bold), _ => Letter(letter, bold))));

    /// <summary>The drawing with outlines in place of its words; a word with a letter that the font lacks stays as it is.</summary>
    public static string Of(string svg) => Inter.Value.Of(svg);

    /// <summary>The letters that figures are written with, for a page that saves them: Latin, Greek, and signs.</summary>
    public static string Letters => Inter.Value.Text(Written);

    /// <summary>What a page's style says so that its words and drawings look the same whatever fonts there are.</summary>
    public static string Face => OfPages.Value;

    private static readonly char[] Written = [.. Enumerable.Range(' ', 95).Concat(Enumerable.Range(0xa0, 96))
        .Concat(Enumerable.Range(0x391, 57)).Select(code => (char)code)
        .Concat("–—‘’“”…₀₁₂₃₄′″→←↑↓−≈≤≥√∞")];

    // Under the name that drawings ask for; letters that are not in it are left to the fonts of the machine.
    private static readonly Lazy<string> OfPages = new(() => string.Concat(
        new[] { ("400", Fonts.Value.Regular), ("700", Fonts.Value.Bold) }.Select(face =>
        {
            (string weight, (TrueTypeFont font, byte[] file)) = face;
            (int Glyph, char Letter)[] has = [.. Written.Select(letter => (Glyph(font, letter), letter)).Where(one => one.Item1 > 0)];
            string packed = Convert.ToBase64String(WebFont.Of(file, has));
            return $"@font-face{{font-family:Arial;font-weight:{weight};src:url(data:font/woff;base64,{packed}) format(\"woff\");"
                + $"unicode-range:{string.Join(',', has.Select(one => Invariant.Text($"U+{(int)one.Letter:X}")))}}}\n";
        })) + ":root{--sans:Arial,sans-serif}\n");

    private static int Glyph(TrueTypeFont font, char letter) =>
        font.TableRegister.CMapTable is { } map && map.TryGetGlyphIndex(letter, out int glyph) ? glyph : 0;

    private static (double, string)? Letter(char letter, bool bold)
    {
        TrueTypeFont font = (bold ? Fonts.Value.Bold : Fonts.Value.Regular).Font;
        bool drawn = font.TryGetPath(letter, out IReadOnlyList<PdfSubpath>? outline);
        return font.TryGetAdvanceWidth(letter, out double width) && (drawn || letter is ' ' or '\u00a0')
            ? (width, drawn && outline!.Count > 0 ? Path(outline) : "") : null;
    }

    private static string Path(IEnumerable<PdfSubpath> outline)
    {
        var path = new StringBuilder();
        foreach (PdfSubpath.IPathCommand command in outline.SelectMany(part => part.Commands))
        {
            path.Append(command switch
            {
                PdfSubpath.Move move => "M" + At(move.Location),
                PdfSubpath.Line line => "L" + At(line.To),
                PdfSubpath.QuadraticBezierCurve curve => $"Q{At(curve.ControlPoint)} {At(curve.EndPoint)}",
                PdfSubpath.CubicBezierCurve curve => $"C{At(curve.FirstControlPoint)} {At(curve.SecondControlPoint)} {At(curve.EndPoint)}",
                _ => "Z",
            });
        }

        return path.ToString();

        static string At(PdfPoint point) => Invariant.Text($"{(int)Math.Round(point.X)} {(int)Math.Round(-point.Y)}");
    }

    private static ((TrueTypeFont, byte[]) Regular, (TrueTypeFont, byte[]) Bold) Load()
    {
        using Stream carried = typeof(OutlinedText).Assembly.GetManifestResourceStream("Fonts")!;
        using var library = new MemoryStream();
        carried.CopyTo(library);
        // The package keeps its fonts in one resource: length of a list, the list (name, place, length), the files.
        using var reader = new BinaryReader(Assembly.Load(library.ToArray()).GetManifestResourceStream("!AvaloniaResources")!);
        int list = reader.ReadInt32();
        _ = reader.ReadInt32();
        (string Name, int At, int Length)[] files =
            [.. Enumerable.Range(0, reader.ReadInt32()).Select(_ => (reader.ReadString(), reader.ReadInt32(), reader.ReadInt32()))];
        return (Font("Inter-Regular.ttf"), Font("Inter-Bold.ttf"));

        (TrueTypeFont, byte[]) Font(string name)
        {
            (_, int at, int length) = files.Single(file => file.Name.EndsWith(name, StringComparison.Ordinal));
            reader.BaseStream.Position = sizeof(int) + list + at;
            byte[] file = reader.ReadBytes(length);
            return (TrueTypeFontParser.Parse(new TrueTypeDataBytes(file)), file);
        }
    }
}
