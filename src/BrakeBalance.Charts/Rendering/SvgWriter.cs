namespace BrakeBalance.Charts.Rendering;

/// <summary>Writes SVG elements with invariant numbers of at most two decimals.</summary>
/// <remarks>
/// Every line of text carries the length that the layout reckoned with, so that a drawing looks the same
/// whatever font draws it: glyphs of a wider or narrower face are scaled to that length.
/// </remarks>
/// <param name="fontSize">
/// The font size that the drawing around these elements gives them; null when they open a drawing themselves.
/// </param>
internal sealed class SvgWriter(double? fontSize = null)
{
    private const double LastBits = 4e-15;

    private static readonly string[] Hundredths =
        [.. Enumerable.Range(0, 100).Select(part => (part / 100.0).ToString(".##", CultureInfo.InvariantCulture))];

    private readonly StringBuilder _text = new();
    private readonly Stack<(string Name, Lettering Lettering)> _open = new();

    /// <summary>A number as it stands in an attribute.</summary>
    /// <remarks>
    /// Hundredths as a whole number: a browser writes thousands of numbers a picture, and a format costs it ten times as much. What is
    /// a half but for the last bits of a double is one.
    /// </remarks>
    public static string Number(double value)
    {
        double hundredths = Math.Floor(Math.Abs(value) * 100 * (1 + LastBits) + 0.5);
        if (!(hundredths < int.MaxValue))
        {
            return value.ToString("0.##", CultureInfo.InvariantCulture);
        }

        int all = (int)hundredths;
        string sign = value < 0 && all > 0 ? "-" : "";
        return string.Concat(sign, (all / 100).ToString(CultureInfo.InvariantCulture), Hundredths[all % 100]);
    }

    /// <summary>Text with the characters escaped that XML reserves.</summary>
    public static string Escape(string text) => text.AsSpan().IndexOfAny("&<>\"") < 0 ? text : text
        .Replace("&", "&amp;", StringComparison.Ordinal)
        .Replace("<", "&lt;", StringComparison.Ordinal)
        .Replace(">", "&gt;", StringComparison.Ordinal)
        .Replace("\"", "&quot;", StringComparison.Ordinal);

    public SvgWriter Open(string name, params ReadOnlySpan<(string Name, object? Value)> attributes)
    {
        Tag(name, attributes, ">");
        _text.Append('\n');
        _open.Push((name, Inherited.With(attributes)));
        return this;
    }

    /// <summary>Writes an element without content.</summary>
    public SvgWriter Empty(string name, params ReadOnlySpan<(string Name, object? Value)> attributes)
    {
        Tag(name, attributes, "/>");
        _text.Append('\n');
        return this;
    }

    /// <summary>Writes an element with text.</summary>
    public SvgWriter Text(string name, string content, params ReadOnlySpan<(string Name, object? Value)> attributes)
    {
        (double? size, bool bold) = Inherited.With(attributes);
        if (name == "text" && content.Length > 0 && size is { } known)
        {
            (string, object?)[] sized =
                [.. attributes, ("textLength", TextMetrics.Natural(content, known, bold)), ("lengthAdjust", "spacingAndGlyphs")];
            Tag(name, sized, ">");
        }
        else
        {
            Tag(name, attributes, ">");
        }

        _text.Append(Escape(content)).Append("</").Append(name).Append(">\n");
        return this;
    }

    /// <summary>Writes elements made elsewhere, as they are.</summary>
    public SvgWriter Raw(string elements)
    {
        _text.Append(elements);
        return this;
    }

    /// <summary>Closes the innermost open element.</summary>
    public SvgWriter Close()
    {
        _text.Append("</").Append(_open.Pop().Name).Append(">\n");
        return this;
    }

    public override string ToString() => _text.ToString();

    private Lettering Inherited => _open.TryPeek(out (string Name, Lettering Lettering) around) ? around.Lettering : new(fontSize, false);

    private void Tag(string name, ReadOnlySpan<(string Name, object? Value)> attributes, string end)
    {
        _text.Append('<').Append(name);
        foreach ((string key, object? value) in attributes)
        {
            if (value is not null)
            {
                _text.Append(' ').Append(key).Append("=\"").Append(value is double number ? Number(number) : Escape(value.ToString()!))
                    .Append('"');
            }
        }

        _text.Append(end);
    }

    private readonly record struct Lettering(double? Size, bool Bold)
    {
        public Lettering With(ReadOnlySpan<(string Name, object? Value)> attributes)
        {
            Lettering own = this;
            foreach ((string name, object? value) in attributes)
            {
                own = (name, value) switch
                {
                    ("font-size", double size) => own with { Size = size },
                    ("font-weight", string weight) => own with { Bold = weight == "bold" },
                    _ => own,
                };
            }

            return own;
        }
    }
}
