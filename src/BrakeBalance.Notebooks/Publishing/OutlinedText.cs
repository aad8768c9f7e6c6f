using System.Reflection;
using System.Xml.Linq;
using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Fonts.TrueType;
using UglyToad.PdfPig.Fonts.TrueType.Parser;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>Turns the words of a drawing into outlines, so that it looks the same whatever fonts there are where it is shown.</summary>
/// <remarks>
/// Each word keeps the width that it was laid out with. The outlines are those of Inter (SIL Open Font License 1.1), which a package
/// carries and the program embeds.
/// </remarks>
internal static class OutlinedText
{
    private static readonly string[] Laid =
        ["x", "y", "textLength", "lengthAdjust", "text-anchor", "font-size", "font-weight", "font-style", "font-family", "stroke-width"];

    private static readonly Lazy<(TrueTypeFont Regular, TrueTypeFont Bold)> Fonts = new(Load);

    /// <summary>The drawing with outlines in place of its words; a word with a letter that the font lacks stays as it is.</summary>
    /// <param name="svg">A drawing that names itself.</param>
    public static string Of(string svg)
    {
        XElement root = XDocument.Parse(svg, LoadOptions.PreserveWhitespace).Root!;
        XNamespace ns = root.Name.Namespace;
        string id = ((string)root.Attribute("aria-labelledby")!).Split(' ')[0];
        Dictionary<string, string> glyphs = [];
        foreach (XElement text in root.Descendants(ns + "text").Where(text => !text.HasElements).ToArray())
        {
            bool bold = Inherited(text, "font-weight") == "bold";
            TrueTypeFont font = bold ? Fonts.Value.Bold : Fonts.Value.Regular;
            if (text.Value.Any(letter => !font.TryGetAdvanceWidth(letter, out _)
                || letter is not (' ' or '\u00a0') && !font.TryGetPath(letter, out _)))
            {
                continue;
            }

            double size = Number(Inherited(text, "font-size")) ?? 16, unit = size / font.GetUnitsPerEm();
            double[] widths = [.. text.Value.Select(letter => font.TryGetAdvanceWidth(letter, out double width) ? width : 0)];
            double natural = unit * widths.Sum(), shown = Number((string?)text.Attribute("textLength")) ?? natural;
            double start = (Number((string?)text.Attribute("x")) ?? 0)
                - shown * (Inherited(text, "text-anchor") switch { "end" => 1, "middle" => 0.5, _ => 0 });
            double wide = natural > 0 ? unit * shown / natural : unit;
            var group = new XElement(ns + "g", text.Attributes().Where(one => !Laid.Contains(one.Name.LocalName)));
            if (Number(Inherited(text, "stroke-width")) is { } stroke)
            {
                group.SetAttributeValue("stroke-width", Shown(stroke / unit));
            }

            // A turn stands before the shift and the scale, as it does on the words.
            group.SetAttributeValue("transform", string.Join(' ', new[]
            {
                (string?)text.Attribute("transform"),
                $"translate({Shown(start)} {Shown(Number((string?)text.Attribute("y")) ?? 0)})",
                $"scale({Shown(wide, 6)} {Shown(unit, 6)})",
            }.OfType<string>()));
            double at = 0;
            foreach ((char letter, double width) in text.Value.Zip(widths))
            {
                if (font.TryGetPath(letter, out IReadOnlyList<PdfSubpath>? outline))
                {
                    string name = FormattableString.Invariant($"{id}-{(bold ? "b" : "r")}{(int)letter:x}");
                    glyphs.TryAdd(name, Path(outline));
                    group.Add(new XElement(ns + "use", new XAttribute("href", "#" + name),
                        at == 0 ? null : new XAttribute("x", Shown(at, 0))));
                }

                at += width;
            }

            text.ReplaceWith(group);
        }

        if (glyphs.Count > 0)
        {
            root.Elements().Last(one => one.Name.LocalName is "title" or "desc" or "metadata").AddAfterSelf("\n", new XElement(ns + "defs",
                glyphs.Select(glyph => new XElement(ns + "path", new XAttribute("id", glyph.Key), new XAttribute("d", glyph.Value)))));
        }

        return root.ToString(SaveOptions.DisableFormatting) + (svg.EndsWith('\n') ? "\n" : "");
    }

    private static string? Inherited(XElement element, string name) =>
        element.AncestorsAndSelf().Select(one => (string?)one.Attribute(name)).FirstOrDefault(value => value is not null);

    private static double? Number(string? text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) ? value : null;

    private static string Shown(double number, int digits = 2) => Math.Round(number, digits).ToString(CultureInfo.InvariantCulture);

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

        static string At(PdfPoint point) => $"{Shown(point.X, 0)} {Shown(-point.Y, 0)}";
    }

    private static (TrueTypeFont Regular, TrueTypeFont Bold) Load()
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

        TrueTypeFont Font(string name)
        {
            (_, int at, int length) = files.Single(file => file.Name.EndsWith(name, StringComparison.Ordinal));
            reader.BaseStream.Position = sizeof(int) + list + at;
            return TrueTypeFontParser.Parse(new TrueTypeDataBytes(reader.ReadBytes(length)));
        }
    }
}
