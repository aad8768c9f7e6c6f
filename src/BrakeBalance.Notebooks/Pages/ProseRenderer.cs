using Markdig;
using Markdig.Extensions.Mathematics;
using Markdig.Extensions.Tables;
using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>Renders the prose cells of one notebook and collects its headings and problems on the way.</summary>
internal sealed class ProseRenderer(string notebook)
{
    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder()
        .UseMathematics().UsePipeTables().UseFootnotes().UseDefinitionLists().UseEmphasisExtras().DisableHtml().Build();

    private readonly HashSet<string> takenIds = [];
    private readonly List<PageHeading> headings = [];
    private readonly List<PageProblem> problems = [];

    public IReadOnlyList<PageHeading> Headings => headings;

    /// <summary>The problems met so far, in order.</summary>
    public IReadOnlyList<PageProblem> Problems => problems;

    /// <summary>The first plain paragraph met so far, as HTML; null before there is one.</summary>
    public string? FirstParagraph { get; private set; }

    /// <summary>Keeps an id from being given to a heading.</summary>
    public void Reserve(string id) => takenIds.Add(id);

    public string Render(string cellId, string markdown)
    {
        MarkdownDocument document = Markdown.Parse(markdown, Pipeline);
        Report report = message => problems.Add(new PageProblem(notebook, cellId, message));
        foreach (LinkInline link in document.Descendants<LinkInline>())
            Links.Prepare(link, report);
        foreach (AutolinkInline link in document.Descendants<AutolinkInline>())
            Links.Prepare(link, report);
        foreach (QuoteBlock quote in document.Descendants<QuoteBlock>())
            Notices.Mark(quote);
        // The caution stands right below the title, and what opens the page between the two.
        if (document is [HeadingBlock { Level: 1 }, ..] && document.FirstOrDefault(Notices.IsCaution) is { } caution)
        {
            document.Remove(caution);
            document.Insert(1, caution);
        }
        foreach (HeadingBlock heading in document.Descendants<HeadingBlock>())
            Register(heading, report);
        FirstParagraph ??= document.OfType<ParagraphBlock>().Select(p => InnerHtml(p, _ => { })).FirstOrDefault();
        using var writer = new StringWriter { NewLine = "\n" };
        Renderer(writer, report).Render(document);
        return writer.ToString();
    }

    private void Register(HeadingBlock heading, Report report)
    {
        string html = InnerHtml(heading, report);
        string slug = HtmlText.Slug(PlainText(heading));
        string id = slug;
        for (int number = 2; !takenIds.Add(id); number++)
            id = $"{slug}-{number}";
        heading.GetAttributes().Id = id;
        headings.Add(new PageHeading(heading.Level, id, html));
    }

    private static string InnerHtml(LeafBlock block, Report report)
    {
        using var writer = new StringWriter { NewLine = "\n" };
        HtmlRenderer renderer = Renderer(writer, report);
        renderer.ObjectRenderers.Replace<Markdig.Renderers.Html.Inlines.LinkInlineRenderer>(new LinkTextRenderer());
        renderer.WriteLeafInline(block);
        writer.Flush();
        return writer.ToString();
    }

    private static string PlainText(LeafBlock block) => string.Concat(block.Inline!.Descendants().Select(inline => inline switch
    {
        LiteralInline literal => literal.Content.ToString(),
        CodeInline code => code.Content,
        MathInline math => math.Content.ToString(),
        LineBreakInline => " ",
        _ => "",
    }));

    private static HtmlRenderer Renderer(TextWriter writer, Report report)
    {
        var renderer = new HtmlRenderer(writer);
        Pipeline.Setup(renderer);
        renderer.ObjectRenderers.Replace<HtmlMathInlineRenderer>(new FormulaInlineRenderer(report));
        renderer.ObjectRenderers.Replace<HtmlMathBlockRenderer>(new FormulaBlockRenderer(report));
        renderer.ObjectRenderers.Replace<HtmlTableRenderer>(new ScrollingTableRenderer());
        renderer.ObjectRenderers.Replace<QuoteBlockRenderer>(new NoticeRenderer());
        return renderer;
    }
}
