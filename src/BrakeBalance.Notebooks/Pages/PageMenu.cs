namespace BrakeBalance.Notebooks.Pages;

internal sealed record PageGroup(string Title, IReadOnlyList<RenderedPage> Pages)
{
    /// <summary>The title of the lessons, which are taken one after the other.</summary>
    public const string Lessons = "Lessons";
}

/// <summary>The menu of all pages in the top bar. Pages are made one by one and get it when all are known.</summary>
internal static class PageMenu
{
    /// <summary>Where a page leaves room for the menu.</summary>
    public const string Place = "<!-- pages -->";

    /// <summary>A page with the menu.</summary>
    /// <param name="html">The page.</param>
    /// <param name="fileName">Its file, which the menu marks.</param>
    /// <param name="groups">All pages.</param>
    /// <returns>The page; one without room for a menu stays as it is.</returns>
    public static string Into(string html, string fileName, IEnumerable<PageGroup> groups)
    {
        int place = html.IndexOf(Place, StringComparison.Ordinal);
        if (place < 0)
            return html;
        var menu = new StringBuilder("<details class=\"bb-menu\"><summary>Notebooks</summary><nav aria-label=\"All pages\">\n");
        foreach (PageGroup group in groups.Where(group => group.Pages.Count > 0))
        {
            menu.Append("<p>").Append(group.Title).Append("</p>\n<ul>");
            foreach (RenderedPage page in group.Pages)
            {
                menu.Append("<li><a href=\"").Append(HtmlText.Escape(page.FileName)).Append('"')
                    .Append(page.FileName == fileName ? " aria-current=\"page\">" : ">").Append(HtmlText.Escape(page.Title))
                    .Append("</a></li>\n");
            }
            menu.Append("</ul>\n");
        }
        return html.Remove(place, Place.Length).Insert(place, menu.Append("</nav></details>\n").ToString());
    }
}
