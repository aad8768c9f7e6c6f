using System.Text.Json;
using System.Text.RegularExpressions;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>The page that lists the others: a door for each kind of reader, all pages as cards, and a search through them.</summary>
internal static partial class IndexPage
{
    private const string Job =
        "What will this car do when I press the pedal, which axle locks first, and where do I set the proportioning valve? "
        + "These pages answer that for one car at a time, from a vehicle file with its masses, its brakes and its hydraulics.";

    private const string Caution = "These pages calculate; they approve nothing.";

    private const string WholeCaution =
        "Brakes can kill: set them up and test them only with competent people, off public roads, within local law and by the service "
        + "manual. A car whose rear axle locks first can spin without warning.";

    private const string Search =
        """
        <form class="bb-search" role="search" hidden><label for="bb-search">Search titles, headings and questions</label>
        <input type="search" id="bb-search" autocomplete="off" spellcheck="false">
        <p id="bb-found" role="status"></p><ul id="bb-results"></ul></form>

        """;

    /// <summary>What a reader comes for, two pictures of it, and the two next steps; of these only those whose pages there are.</summary>
    private static readonly (string Who, string What, string[] Pictures, (string Page, string Words)[] Steps)[] Doors =
    [
        ("I race", "Set the valve of my own car, and know how sure that is.", ["01-brake-balance.html", "02-choosing-the-setting.html"],
            [("your-car.html", "Enter your car"), ("05-from-test-stops-to-a-setting.html", "Measure it: from test stops to a setting")]),
        ("I teach", "Ten short lessons, each with a picture to move and exercises.", ["03-ideal-curve.html", "09-rear-lock.html"],
            [("01-static-load.html", "Begin with the first lesson"), ("01-brake-balance.html", "The whole chain in one notebook")]),
        ("I write", "Pictures and plain words that agree with the calculation.",
            ["what-the-knee-does.html", "06-what-happens-when-an-axle-locks.html"],
            [("what-the-knee-does.html", "What the knee does, told without the trade's words"),
                ("questions.html", "The common questions, answered for this car")]),
    ];

    /// <summary>Renders the index.</summary>
    public static string Html(IReadOnlyList<PageGroup> groups, SiteOptions options)
    {
        RenderedPage[] pages = [.. groups.SelectMany(group => group.Pages)];
        var body = new StringBuilder();
        body.Append("<main id=\"content\" class=\"bb-index\" tabindex=\"-1\">\n<h1>Brake balance</h1>\n<p class=\"bb-lead\">").Append(Job)
            .Append("</p>\n").Append(Notices.CautionHtml(Caution, WholeCaution));
        AppendDoors(body, pages);
        body.Append(Search);
        foreach (PageGroup group in groups.Where(group => group.Pages.Count > 0))
            AppendGroup(body, group);
        body.Append("</main>\n<script type=\"application/json\" id=\"bb-places\">")
            .Append(HtmlText.ScriptBody(JsonSerializer.Serialize(pages.SelectMany(Places)))).Append("</script>\n");
        return PageShell.Html(new PageShell.Parts("Brake balance notebooks", body.ToString(), options.Facts, IsIndex: true,
            SingleFile: false)
        {
            OwnScript = PageAssets.Read("Pages.index.js"),
        });
    }

    private static void AppendDoors(StringBuilder body, RenderedPage[] pages)
    {
        body.Append("<div class=\"bb-doors\">\n");
        foreach ((string who, string what, string[] pictures, (string Page, string Words)[] steps) in Doors)
        {
            (string Page, string Words)[] open = [.. steps.Where(step => pages.Any(page => page.FileName == step.Page))];
            if (open.Length == 0)
                continue;
            body.Append("<section><h2>").Append(who).Append("</h2>\n<p>").Append(what).Append("</p>\n<div class=\"bb-pair\">");
            foreach (RenderedPage page in pictures.SelectMany(name => pages.Where(page => page.FileName == name)))
                AppendPicture(body, page);
            body.Append("</div>\n<ul>");
            foreach ((string page, string words) in open)
                body.Append("<li><a href=\"").Append(page).Append("\">").Append(words).Append("</a></li>");
            body.Append("</ul></section>\n");
        }
        body.Append("</div>\n");
    }

    private static void AppendGroup(StringBuilder body, PageGroup group)
    {
        bool path = group.Pages.All(page => page.Minutes > 0) && group.Title == PageGroup.Lessons;
        int minutes = group.Pages.Sum(page => page.Minutes);
        body.Append("<h2>").Append(group.Title).Append("</h2>\n")
            .Append(path ? $"<p>A path from the first to the last, {minutes} minutes in all.</p>\n<ol" : "<ul")
            .Append(" class=\"bb-cards\">\n");
        foreach (RenderedPage page in group.Pages)
        {
            body.Append("<li>");
            AppendPicture(body, page);
            body.Append("<h3><a href=\"").Append(HtmlText.Escape(page.FileName)).Append("\">").Append(HtmlText.Escape(page.Title))
                .Append("</a></h3>");
            if (page.Finding.Length > 0)
                body.Append("<p class=\"bb-finding\">").Append(page.Finding).Append("</p>");
            if (page.Summary.Length > 0)
                body.Append("<p>").Append(page.Summary).Append("</p>");
            if (path)
                body.Append(CultureInfo.InvariantCulture, $"<p class=\"bb-minutes\">{page.Minutes} minutes</p>");
            body.Append("</li>\n");
        }
        body.Append(path ? "</ol>\n" : "</ul>\n");
    }

    private static void AppendPicture(StringBuilder body, RenderedPage page)
    {
        if (page.Picture is { Length: > 0 } picture)
            body.Append("<img alt=\"\" width=\"720\" height=\"450\" src=\"").Append(picture).Append("\">");
    }

    /// <summary>What can be found in a page: the words, the address, and the page's title where the words are not that.</summary>
    private static IEnumerable<string[]> Places(RenderedPage page) =>
        page.Headings.Where(heading => heading.Level > 1)
            .Select(heading => new[] { Plain(heading.Html), $"{page.FileName}#{heading.Id}", page.Title })
            .Prepend([page.Title, page.FileName, ""]);

    private static string Plain(string html) => System.Net.WebUtility.HtmlDecode(Markup().Replace(html, ""));

    [GeneratedRegex("<annotation.*?</annotation>|<[^>]+>")]
    private static partial Regex Markup();
}
