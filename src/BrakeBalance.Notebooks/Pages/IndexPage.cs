namespace BrakeBalance.Notebooks.Pages;

/// <summary>The page that lists the others.</summary>
internal static class IndexPage
{
    private const string Job =
        "What will this car do when I press the pedal, which axle locks first, and where do I set the proportioning valve? "
        + "These pages answer that for one car at a time, from a vehicle file with its masses, its brakes and its hydraulics: "
        + "the forces at both axles, the deceleration and the line pressures at which the first axle locks, how much of the road's "
        + "adhesion is used, "
        + "and where the valve's knee belongs. Each page is a notebook: text, equations, the code that computed every number, and "
        + "figures to move.";

    private const string Caution =
        "These pages calculate; they approve nothing. Brakes can kill: set them up and test them only with competent people, "
        + "off public roads, within local law and by the service manual. A car whose rear axle locks first can spin without warning.";

    /// <summary>Renders the index.</summary>
    public static string Html(IReadOnlyList<PageGroup> groups, SiteOptions options)
    {
        var body = new StringBuilder();
        body.Append("<main id=\"content\" class=\"bb-index\" tabindex=\"-1\">\n<h1>Brake balance</h1>\n<p class=\"bb-lead\">").Append(Job)
            .Append("</p>\n")
            .Append("<div class=\"bb-caution\" role=\"note\"><p><strong>Caution.</strong> ").Append(Caution).Append("</p></div>\n");
        foreach (PageGroup group in groups)
            AppendGroup(body, group.Pages, group.Title);
        body.Append("</main>\n");
        return PageShell.Html(new PageShell.Parts("Brake balance notebooks", body.ToString(), options.Facts, IsIndex: true,
            SingleFile: false));
    }

    private static void AppendGroup(StringBuilder body, IReadOnlyList<RenderedPage> members, string title)
    {
        if (members.Count == 0)
            return;
        body.Append("<h2>").Append(title).Append("</h2>\n<ul class=\"bb-cards\">\n");
        foreach (RenderedPage page in members)
        {
            body.Append("<li><h3><a href=\"").Append(HtmlText.Escape(page.FileName)).Append("\">").Append(HtmlText.Escape(page.Title))
                .Append("</a></h3>");
            if (page.Summary.Length > 0)
                body.Append("<p>").Append(page.Summary).Append("</p>");
            body.Append("</li>\n");
        }
        body.Append("</ul>\n");
    }
}
