using System.Net;

namespace BrakeBalance.Charts.Lessons;

/// <summary>Text in Markdown with typeset formulas, as the assembly computed it: a page typesets it, a notebook's client too.</summary>
public sealed class Markdown : IHtmlOutput
{
    private readonly IReadOnlyList<string> _paragraphs;

    internal Markdown(IReadOnlyList<string> paragraphs)
    {
        _paragraphs = paragraphs;
    }

    /// <inheritdoc/>
    public string ToHtml() => string.Concat(_paragraphs.Select(text =>
        $"<div class=\"bb-markdown\">{WebUtility.HtmlEncode(text)}</div>\n"));

    /// <inheritdoc/>
    public string ToPlainText() => string.Join("\n\n", _paragraphs);
}
