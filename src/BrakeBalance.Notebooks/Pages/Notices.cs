using Markdig.Helpers;
using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>Quotations that begin with a word in bold, such as "Caution.", become boxes.</summary>
internal static class Notices
{
    /// <summary>What stands between the first sentence of a caution and the rest; its end is that of a <c>div</c>.</summary>
    public const string BeforeRest = "<details class=\"bb-more\"><summary>The whole caution</summary></details>\n<div class=\"bb-rest\">";

    private const string Key = "bb-notice";
    private const string Caution = "bb-caution";

    /// <summary>Marks a quotation that is a notice.</summary>
    public static void Mark(QuoteBlock quote)
    {
        if (quote.FirstOrDefault() is not ParagraphBlock { Inline.FirstChild: EmphasisInline { DelimiterCount: 2 } strong })
            return;
        string word = strong.FirstChild is LiteralInline literal ? literal.Content.ToString().TrimEnd('.', ':', '!', ' ') : "";
        bool isCaution = word.Equals("Caution", StringComparison.OrdinalIgnoreCase);
        quote.SetData(Key, isCaution ? Caution : "bb-note");
        if (isCaution)
            Split(quote, strong);
    }

    public static bool IsCaution(Block block) => block is QuoteBlock quote && ClassOf(quote) == Caution;

    /// <summary>A caution as HTML: its first sentence is always seen, the rest on request and on paper.</summary>
    public static string CautionHtml(string first, string rest) =>
        $"<div class=\"{Caution}\" role=\"note\"><p><strong>Caution.</strong> {first}</p>\n{BeforeRest}<p>{rest}</p></div></div>\n";

    /// <summary>Leaves the first sentence in the first paragraph and moves what follows it into one of its own.</summary>
    private static void Split(QuoteBlock quote, EmphasisInline strong)
    {
        for (Inline? inline = strong.NextSibling; inline is not null; inline = inline.NextSibling)
        {
            if (inline is not LiteralInline literal || literal.Content.ToString() is not { } text
                || text.IndexOf(". ", StringComparison.Ordinal) is not (>= 0 and int end))
                continue;
            literal.Content = new StringSlice(text[..(end + 1)]);
            var rest = new ContainerInline();
            rest.AppendChild(new LiteralInline(text[(end + 2)..]));
            while (literal.NextSibling is { } next)
            {
                next.Remove();
                rest.AppendChild(next);
            }
            quote.Insert(1, new ParagraphBlock { Inline = rest });
            return;
        }
    }

    /// <summary>The class of the box; null for an ordinary quotation.</summary>
    public static string? ClassOf(QuoteBlock quote) => quote.GetData(Key) as string;
}

/// <summary>Writes notices as <c>aside</c> elements.</summary>
internal sealed class NoticeRenderer : HtmlObjectRenderer<QuoteBlock>
{
    private readonly QuoteBlockRenderer inner = new();

    protected override void Write(HtmlRenderer renderer, QuoteBlock quote)
    {
        if (Notices.ClassOf(quote) is not { } name)
        {
            inner.Write(renderer, quote);
            return;
        }
        renderer.EnsureLine();
        renderer.WriteLine($"<div class=\"{name}\" role=\"note\">");
        bool folds = Notices.IsCaution(quote) && quote.Count > 1;
        foreach ((int i, Block block) in quote.Index())
        {
            if (folds && i == 1)
                renderer.WriteLine(Notices.BeforeRest);
            renderer.Write(block);
        }
        renderer.EnsureLine();
        renderer.WriteLine(folds ? "</div></div>" : "</div>");
    }
}
