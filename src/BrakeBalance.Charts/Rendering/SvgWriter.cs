using System.Globalization;
using System.Text;

namespace BrakeBalance.Charts.Rendering;

/// <summary>Writes SVG elements with invariant numbers of at most two decimals.</summary>
internal sealed class SvgWriter
{
    private readonly StringBuilder _text = new();
    private readonly Stack<string> _open = new();

    /// <summary>A number as it stands in an attribute.</summary>
    public static string Number(double value)
    {
        string text = value.ToString("0.##", CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }

    /// <summary>Text with the characters escaped that XML reserves.</summary>
    public static string Escape(string text) => text
        .Replace("&", "&amp;", StringComparison.Ordinal)
        .Replace("<", "&lt;", StringComparison.Ordinal)
        .Replace(">", "&gt;", StringComparison.Ordinal)
        .Replace("\"", "&quot;", StringComparison.Ordinal);

    /// <summary>Opens an element.</summary>
    public SvgWriter Open(string name, params ReadOnlySpan<(string Name, object? Value)> attributes)
    {
        Tag(name, attributes, ">");
        _text.Append('\n');
        _open.Push(name);
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
        Tag(name, attributes, ">");
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
        _text.Append("</").Append(_open.Pop()).Append(">\n");
        return this;
    }

    /// <inheritdoc/>
    public override string ToString() => _text.ToString();

    private void Tag(string name, ReadOnlySpan<(string Name, object? Value)> attributes, string end)
    {
        _text.Append('<').Append(name);
        foreach ((string key, object? value) in attributes)
        {
            if (value is not null)
            {
                _text.Append(' ').Append(key).Append("=\"").Append(value is double number ? Number(number) : Escape(value.ToString()!)).Append('"');
            }
        }

        _text.Append(end);
    }
}
