using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>Quotations that begin with a word in bold, such as "Caution.", become boxes.</summary>
internal static class Notices
{
    private const string Key = "bb-notice";

    /// <summary>Marks a quotation that is a notice.</summary>
    public static void Mark(QuoteBlock quote)
    {
        if (quote.FirstOrDefault() is not ParagraphBlock { Inline.FirstChild: EmphasisInline { DelimiterCount: 2 } strong })
            return;
        string word = strong.FirstChild is LiteralInline literal ? literal.Content.ToString().TrimEnd('.', ':', '!', ' ') : "";
        quote.SetData(Key, word.Equals("Caution", StringComparison.OrdinalIgnoreCase) ? "bb-caution" : "bb-note");
    }

    /// <summary>The class of the box; null for an ordinary quotation.</summary>
    public static string? ClassOf(QuoteBlock quote) => quote.GetData(Key) as string;
}

/// <summary>Writes notices as <c>aside</c> elements.</summary>
internal sealed class NoticeRenderer : HtmlObjectRenderer<QuoteBlock>
{
    private readonly QuoteBlockRenderer inner = new();

    /// <inheritdoc/>
    protected override void Write(HtmlRenderer renderer, QuoteBlock quote)
    {
        if (Notices.ClassOf(quote) is not { } name)
        {
            inner.Write(renderer, quote);
            return;
        }
        renderer.EnsureLine();
        renderer.WriteLine($"<div class=\"{name}\" role=\"note\">");
        renderer.WriteChildren(quote);
        renderer.EnsureLine();
        renderer.WriteLine("</div>");
    }
}
