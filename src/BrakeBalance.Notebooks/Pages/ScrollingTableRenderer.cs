using Markdig.Extensions.Tables;
using Markdig.Renderers;
using Markdig.Renderers.Html;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>Puts a table in a box of its own, which scrolls where the page is narrower than the table.</summary>
internal sealed class ScrollingTableRenderer : HtmlObjectRenderer<Table>
{
    private readonly HtmlTableRenderer inner = new();

    protected override void Write(HtmlRenderer renderer, Table table)
    {
        renderer.EnsureLine();
        renderer.Write("<div class=\"bb-scroll\">");
        inner.Write(renderer, table);
        renderer.Write("</div>");
        renderer.EnsureLine();
    }
}
