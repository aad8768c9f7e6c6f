using System.Net;

namespace BrakeBalance.Charts;

/// <summary>Sentences that a cell answers with: paragraphs that wrap on a narrow page, in one system of units.</summary>
/// <param name="paragraphs">One text a paragraph.</param>
public sealed class Prose(params IEnumerable<string> paragraphs) : IHtmlOutput
{
    private readonly string[] _paragraphs = [.. paragraphs.Select(text => InBoth.Only(text, Display.Units == UnitSystem.Us))];

    /// <inheritdoc/>
    public string ToHtml() => string.Concat(_paragraphs.Select(text => $"<p class=\"bb-prose\">{WebUtility.HtmlEncode(text)}</p>\n"));

    /// <inheritdoc/>
    public string ToPlainText() => string.Join('\n', _paragraphs);
}
