using System.Text;
using BrakeBalance.Notebooks.Execution;
using BrakeBalance.Notebooks.Pages;

namespace BrakeBalance.Notebooks.Tests.Pages;

public class PageRendererTests
{
    private static readonly SiteOptions Options = new() { Facts = [new("Vehicle", "an <invented> car")] };

    [Fact]
    public void The_page_has_one_first_heading_a_skip_link_contents_and_a_foot()
    {
        string html = PageRenderer.Render(SampleNotebook.Create(), Options).Html;

        Assert.Equal(1, Occurrences(html, "<h1"));
        Assert.Contains("<a class=\"bb-skip\" href=\"#content\">", html, StringComparison.Ordinal);
        Assert.Contains("<main id=\"content\"", html, StringComparison.Ordinal);
        Assert.Contains("<h2 id=\"the-load-moves-forward\">", html, StringComparison.Ordinal);
        Assert.Contains("<a href=\"#what-to-see\">What to see</a>", html, StringComparison.Ordinal);
        Assert.Contains("<dd>an &lt;invented&gt; car</dd>", html, StringComparison.Ordinal);
        Assert.Contains("<title>Which axle locks first? &ndash; Brake balance notebooks</title>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_link_inside_the_page_has_its_target_and_every_id_is_given_once()
    {
        string html = PageRenderer.Render(SampleNotebook.Create(), Options).Html;

        string[] ids = [.. Values(html, " id=\"")];
        Assert.Equal(ids.Length, ids.Distinct().Count());
        Assert.All(Values(html, "href=\"#"), target => Assert.Contains(target, ids));
    }

    [Fact]
    public void Code_is_folded_and_keeps_every_character()
    {
        string html = PageRenderer.Render(SampleNotebook.Create(), Options).Html;

        int start = html.IndexOf("<details class=\"bb-code\">", StringComparison.Ordinal);
        Assert.True(start > 0);
        string code = html[html.IndexOf("<code>", start, StringComparison.Ordinal)..html.IndexOf("</code>", start,
            StringComparison.Ordinal)];
        string text = System.Net.WebUtility.HtmlDecode(System.Text.RegularExpressions.Regex.Replace(code, "<[^>]+>", ""));
        Assert.Equal(((ExecutedCodeCell)SampleNotebook.Create().Cells[1]).Source, text);
        Assert.Contains("<span class=\"k\">foreach</span>", code, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_is_escaped_and_markup_is_passed_on_by_its_media_type()
    {
        string html = PageRenderer.Render(SampleNotebook.Create(), Options).Html;

        Assert.DoesNotContain("<script>alert", html, StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;alert(&#39;no&#39;)&lt;/script&gt;</pre>", html, StringComparison.Ordinal);
        Assert.Contains("<div class=\"bb-output bb-scroll\"><table class=\"frame\">", html, StringComparison.Ordinal);
        Assert.Contains("<div class=\"bb-output bb-scroll\"><svg ", html, StringComparison.Ordinal);
        Assert.DoesNotContain("unused", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<?xml", html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_table_that_comes_with_csv_can_be_saved()
    {
        string html = PageRenderer.Render(SampleNotebook.Create(), Options).Html;

        string link = Values(html, "href=\"data:text/csv;charset=utf-8,").Single();
        Assert.Equal("Knee [bar],z [–]\n20,0.71\n", Uri.UnescapeDataString(link));
        Assert.Contains("download=\"01-sample-2.csv\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Markup_in_prose_titles_and_names_does_not_get_through()
    {
        const string evil = "<img src=x onerror=alert(1)>";
        var notebook = new ExecutedNotebook("n", evil, [
            new ExecutedMarkdownCell("a",
                $"{evil}\n\n## {evil}\n\n[click](javascript:alert(1)) [data](data:text/html,x) ![p](https://example.org/p.png)"),
            new ExecutedCodeCell("\" onmouseover=\"x", evil, [],
                [new CellOutput(new Dictionary<string, string> { ["application/x-other"] = evil })], null),
        ]);

        RenderedPage page = PageRenderer.Render(notebook, new SiteOptions { Facts = [new(evil, evil)] });

        Assert.DoesNotContain("<img src=x", page.Html, StringComparison.Ordinal);
        Assert.DoesNotContain("javascript:", page.Html.Replace("[click](javascript", "", StringComparison.Ordinal),
            StringComparison.Ordinal);
        Assert.DoesNotContain("src=\"https", page.Html, StringComparison.Ordinal);
        Assert.DoesNotContain(" onmouseover=\"", page.Html, StringComparison.Ordinal);
        Assert.Equal(3, page.Problems.Count);
        Assert.All(page.Problems, p => Assert.Equal(("n", "a"), (p.Notebook, p.CellId)));
    }

    [Fact]
    public void An_unknown_formula_command_names_notebook_and_cell_and_shows_the_source()
    {
        var notebook = new ExecutedNotebook("05-x", "X", [new ExecutedMarkdownCell("cell-7", "# X\n\nSee $\\bias{3}$ here.")]);

        RenderedPage page = PageRenderer.Render(notebook, Options);

        PageProblem problem = Assert.Single(page.Problems);
        Assert.Equal("05-x, cell cell-7: Unknown command \\bias at character 1 of the formula \"\\bias{3}\".", problem.ToString());
        Assert.Contains("<code class=\"bb-formula-error\">\\bias{3}</code>", page.Html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_failed_cell_is_shown_with_line_and_reason_and_announced_on_top()
    {
        string html = PageRenderer.Render(SampleNotebook.Failed(), Options).Html;

        Assert.Contains("<a href=\"#cell-bad-cell\">Go to the cell that failed.</a>", html, StringComparison.Ordinal);
        Assert.Contains("Attempted to divide by &lt;zero&gt;.", html, StringComparison.Ordinal);
        Assert.Contains("<p>Line 2: <code>var b = a / zero; // &lt;b&gt;</code></p>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Quotations_that_begin_with_a_bold_word_become_boxes()
    {
        string html = PageRenderer.Render(SampleNotebook.Create(), Options).Html;

        Assert.Contains("<div class=\"bb-caution\" role=\"note\">\n<p><strong>Caution.</strong>", html, StringComparison.Ordinal);
        Assert.Contains("<div class=\"bb-note\" role=\"note\">\n<p><strong>Try it.</strong>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_caution_stands_below_the_title_with_its_first_sentence_in_sight_and_loses_no_word()
    {
        const string words = "**Caution.** One *is* first. Then [two](02-b.ipynb), i.e. *three*.";
        var notebook = new ExecutedNotebook("n", "T", [new ExecutedMarkdownCell("a", $"# T\n\nLead.\n\n> {words}")]);

        string html = PageRenderer.Render(notebook, Options).Html;

        Assert.Contains("<h1 id=\"t\">T</h1>\n<div class=\"bb-caution\" role=\"note\">\n"
            + "<p><strong>Caution.</strong> One <em>is</em> first.</p>\n<details class=\"bb-more\"><summary>The whole caution</summary>"
            + "</details>\n<div class=\"bb-rest\">\n<p>Then <a href=\"02-b.html\">two</a>, i.e. <em>three</em>.</p>\n</div></div>\n"
            + "<p>Lead.</p>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void The_output_with_the_tag_opens_the_page_once_and_its_cell_points_there()
    {
        string html = PageRenderer.Render(SampleNotebook.WithChart(), Options).Html;

        Assert.Equal(1, Occurrences(html, "class=\"bb-explorable\""));
        int section = html.IndexOf("<section class=\"bb-first\" id=\"first-screen\"", StringComparison.Ordinal);
        Assert.Equal(section, html.IndexOf("</h1>\n", StringComparison.Ordinal) + "</h1>\n".Length);
        Assert.True(section < html.IndexOf("<figure ", StringComparison.Ordinal));
        int cell = html.IndexOf("id=\"cell-c\"", StringComparison.Ordinal);
        Assert.True(cell > html.IndexOf("<figure ", StringComparison.Ordinal));
        Assert.True(html.IndexOf("<a href=\"#first-screen\">", StringComparison.Ordinal) > cell);
        Assert.Contains("<details class=\"bb-code bb-quiet\">", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Links_to_notebooks_lead_to_their_pages()
    {
        string html = PageRenderer.Render(SampleNotebook.Create(), Options).Html;

        Assert.Contains("href=\"02-choosing.html#the-load-moves-forward\"", html, StringComparison.Ordinal);
        Assert.Contains("href=\"https://example.org/r13h\" rel=\"noopener noreferrer\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_renders_give_the_same_bytes()
    {
        byte[] first = Encoding.UTF8.GetBytes(PageRenderer.Render(SampleNotebook.Create(), Options).Html);
        byte[] second = Encoding.UTF8.GetBytes(PageRenderer.Render(SampleNotebook.Create(), Options).Html);

        Assert.Equal(first, second);
        Assert.DoesNotContain((byte)'\r', first);
    }

    [Fact]
    public void Contents_nest_deeper_headings_inside_the_section_they_belong_to()
    {
        var notebook = new ExecutedNotebook("n", "T",
            [new ExecutedMarkdownCell("a", "# T\n\n## A\n\n### A1\n\n### A2\n\n## B\n\n#### deep\n\n### B1")]);

        string html = PageRenderer.Render(notebook, Options).Html;

        int start = html.IndexOf("<ol>", StringComparison.Ordinal);
        string list = html[start..html.IndexOf("</details></nav>", start, StringComparison.Ordinal)].Replace("\n", "",
            StringComparison.Ordinal);
        Assert.Equal(
            "<ol><li><a href=\"#a\">A</a><ol><li><a href=\"#a1\">A1</a></li><li><a href=\"#a2\">A2</a></li></ol></li>"
            + "<li><a href=\"#b\">B</a><ol><li><a href=\"#b1\">B1</a></li></ol></li></ol>", list);
    }

    private static IEnumerable<string> Values(string html, string opening) =>
        html.Split(opening).Skip(1).Select(rest => rest[..rest.IndexOf('"', StringComparison.Ordinal)]);

    private static int Occurrences(string text, string part) => text.Split(part).Length - 1;
}
