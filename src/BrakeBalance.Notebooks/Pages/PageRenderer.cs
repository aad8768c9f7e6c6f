using System.Security.Cryptography;
using BrakeBalance.Notebooks.Execution;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>Turns an executed notebook into one HTML page.</summary>
/// <remarks>
/// The same notebook and options give the same bytes: the page holds no clock, no path of this machine and no random name.
/// </remarks>
internal static class PageRenderer
{
    private const int DeepestListedHeading = 3;
    private const string EndOfTitle = "</h1>\n";

    /// <summary>Renders a page.</summary>
    /// <param name="notebook">The executed notebook.</param>
    /// <param name="options">What all pages have in common.</param>
    /// <param name="previous">The page before, if any.</param>
    /// <param name="next">The page after, if any.</param>
    public static RenderedPage Render(ExecutedNotebook notebook, SiteOptions options, PageLink? previous = null, PageLink? next = null)
    {
        var prose = new ProseRenderer(notebook.Name);
        foreach (string id in PageShell.ReservedIds.Concat(notebook.Cells.Select(CellRenderer.ElementId)))
            prose.Reserve(id);
        var cells = new CellRenderer(notebook.Name, prose);
        string content = string.Concat(notebook.Cells.Select(cells.Html));
        if (!prose.Headings.Any(h => h.Level == 1))
            content = $"<h1>{HtmlText.Escape(notebook.Title)}</h1>\n{content}";
        int minutes = Minutes(notebook, content);
        string time = content.Contains("<section class=\"bb-exercises\">", StringComparison.Ordinal)
            ? Invariant.Text($"<p class=\"bb-minutes\">About {minutes} minutes alone, 90 in a class.</p>\n") : "";
        content = content.Insert(
            content.IndexOf(EndOfTitle, StringComparison.Ordinal) + EndOfTitle.Length, Opening(notebook, cells) + time);
        bool live = content.Contains("class=\"bb-ask\"", StringComparison.Ordinal);
        var body = new StringBuilder();
        body.Append("<div class=\"bb-layout\">\n");
        AppendContents(body, prose.Headings);
        body.Append("<main id=\"content\" tabindex=\"-1\">\n").Append(content).Append("</main>\n</div>\n");
        AppendNeighbours(body, previous, next);
        bool edited = notebook.Succeeded && notebook.Cells.OfType<ExecutedCodeCell>().Any();
        if (edited)
            PageShell.AppendData(body, "bb-notebook", options.Surroundings.Json(notebook));
        var parts = new PageShell.Parts(notebook.Title, body.ToString(), Facts(notebook, options), IsIndex: false, options.SingleFile)
        {
            IsLive = live,
            IsEdited = edited,
        };
        string html = PageShell.Html(parts);
        return new RenderedPage(PageNames.FileFor(notebook.Name), notebook.Title, prose.FirstParagraph ?? "", html, prose.Problems)
        {
            IsLive = live,
            IsEdited = edited,
            Headings = prose.Headings,
            Minutes = minutes,
        };
    }

    /// <summary>Reading at 120 words a minute and seven minutes an exercise (common practice), to the next five.</summary>
    private static int Minutes(ExecutedNotebook notebook, string content)
    {
        int words = notebook.Cells.OfType<ExecutedMarkdownCell>().Sum(cell => cell.Source.Split((char[]?)null).Length);
        int exercises = content.Split("<section class=\"bb-exercises\">").Skip(1).Sum(sheet => sheet.Split("<li>").Length - 1);
        return (int)Math.Ceiling(((words / 120.0) + (7 * exercises)) / 5) * 5;
    }

    private static void AppendContents(StringBuilder body, IReadOnlyList<PageHeading> headings)
    {
        PageHeading[] listed = [.. headings.Where(h => h.Level is >= 2 and <= DeepestListedHeading)];
        if (listed.Length == 0)
            return;
        body.Append("<nav class=\"bb-contents\" aria-label=\"On this page\"><details open><summary>On this page</summary>\n<ol>");
        bool inner = false;
        for (int i = 0; i < listed.Length; i++)
        {
            PageHeading heading = listed[i];
            // A first heading of the deeper level stands alone rather than inside a list that was never opened.
            bool deeper = heading.Level == DeepestListedHeading && i > 0;
            if (deeper && !inner)
                body.Append("<ol>");
            else if (!deeper && inner)
                body.Append("</li></ol></li>");
            else if (i > 0)
                body.Append("</li>");
            inner = deeper;
            body.Append("\n<li><a href=\"#").Append(heading.Id).Append("\">").Append(heading.Html).Append("</a>");
        }
        body.Append(inner ? "</li></ol></li>" : "</li>").Append("\n</ol></details></nav>\n");
    }

    /// <summary>What stands below the title: the notice of a failed run, and the finding with its picture and its controls.</summary>
    private static string Opening(ExecutedNotebook notebook, CellRenderer cells)
    {
        string notice = notebook.Cells.OfType<ExecutedCodeCell>().FirstOrDefault(c => c.Failure is not null) is not { } failed ? ""
            : "<div class=\"bb-failure\" role=\"note\"><p><strong>This notebook did not run to its end.</strong> "
                + $"<a href=\"#{CellRenderer.ElementId(failed)}\">Go to the cell that failed.</a></p></div>\n";
        return cells.FirstScreen.Length == 0 ? notice
            : $"{notice}<section class=\"bb-first\" id=\"{CellRenderer.FirstScreenId}\" aria-label=\"The finding\">\n"
                + $"{cells.FirstScreen}</section>\n";
    }

    private static void AppendNeighbours(StringBuilder body, PageLink? previous, PageLink? next)
    {
        if (previous is null && next is null)
            return;
        body.Append("<nav class=\"bb-steps\" aria-label=\"Neighbouring notebooks\">\n");
        AppendStep(body, previous, "prev", "Previous");
        AppendStep(body, next, "next", "Next");
        body.Append("</nav>\n");
    }

    private static void AppendStep(StringBuilder body, PageLink? link, string relation, string word)
    {
        if (link is null)
            return;
        body.Append("<a rel=\"").Append(relation).Append("\" class=\"bb-").Append(relation).Append("\" href=\"")
            .Append(HtmlText.Escape(link.FileName))
            .Append("\"><span>").Append(word).Append("</span> ").Append(HtmlText.Escape(link.Title)).Append("</a>\n");
    }

    private static IEnumerable<KeyValuePair<string, string>> Facts(ExecutedNotebook notebook, SiteOptions options)
    {
        string source = string.Join('\0', notebook.Cells.Select(c => c.Id + "\n" + c.Source));
        string digest = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(source)))[..12];
        int code = notebook.Cells.OfType<ExecutedCodeCell>().Count();
        yield return new("Notebook",
            Invariant.Text($"{notebook.Name}.ipynb, {code} code {(code == 1 ? "cell" : "cells")}, ")
            + $"content {digest}");
        foreach (KeyValuePair<string, string> fact in options.FactsOf(notebook))
            yield return fact;
    }
}
