using BrakeBalance.Charts;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Tables;
using BrakeBalance.Notebooks.Pages;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>Set-ups side by side: the answers in words and numbers, and their figures overlaid.</summary>
internal static class ComparisonPage
{
    public const string FileName = "compare.html";

    /// <summary>The style of pages of set-ups and parts.</summary>
    public const string Style =
        """
        .bb-sides { max-width: 78rem; margin: 0 auto; padding: 0 clamp(0.9rem, 3vw, 2rem) 2rem; }
        .bb-sides tbody th { min-width: 9rem; }
        .bb-sides .bb-scroll { max-height: none; }
        .bb-sides .bb-figure { max-width: 60rem; }
        """;

    private const string Caution = "Work on brakes and test stops are for competent people, within local law and by the service manual.";

    /// <summary>The page among those of a run.</summary>
    /// <param name="setUps">The set-ups, the first being what the others are held against.</param>
    /// <param name="comparison">Their answers.</param>
    /// <param name="units">The system of units.</param>
    public static RenderedPage Render(IReadOnlyList<(string Name, Vehicle Car)> setUps, SetUpComparison comparison, UnitSystem units)
    {
        string html = PageShell.Html(new PageShell.Parts(Title(setUps), Body(setUps, comparison, null, units), [PageShell.Units(units)],
            IsIndex: false, SingleFile: true, HasCode: false));
        return new RenderedPage(FileName, Title(setUps), HtmlText.Escape(Lead(setUps)), html, []);
    }

    /// <summary>The page by itself.</summary>
    /// <param name="setUps">The set-ups, the first being what the others are held against.</param>
    /// <param name="comparison">Their answers.</param>
    /// <param name="load">The load case by which they are compared; null for the first of each.</param>
    /// <param name="units">The system of units.</param>
    public static string Html(
        IReadOnlyList<(string Name, Vehicle Car)> setUps, SetUpComparison comparison, string? load, UnitSystem units) =>
        Alone(Title(setUps), Body(setUps, comparison, load, units), units);

    /// <summary>A page with no others beside it.</summary>
    public static string Alone(string title, string body, params UnitSystem[] units) => PageShell.Html(new PageShell.Parts(
        title, body, [PageShell.Units(units)], IsIndex: true, SingleFile: true, HasCode: false));

    /// <summary>The figures of some set-ups laid over one another.</summary>
    public static void Figures(StringBuilder body, IReadOnlyList<(string Name, Vehicle Car)> setUps, SetUpComparison comparison,
        string? load, UnitSystem units)
    {
        (string Name, BalanceModel Model)[] models =
            [.. setUps.Select(setUp => (setUp.Name, new BalanceModel(setUp.Car, load is null ? setUp.Car.LoadCases[0]
                : setUp.Car.LoadCase(load))))];
        foreach (Figure figure in new[]
        {
            ComparisonFigures.Forces(models, units, settings: comparison.Settings),
            ComparisonFigures.SetUps(models, units, settings: comparison.Settings), ComparisonFigures.Effort(models, units),
        }.OfType<Figure>())
        {
            body.Append(figure.ToHtml());
        }
    }

    /// <summary>Opens a page's content with its title and caution.</summary>
    public static StringBuilder Opened(string title, string lead, IEnumerable<string> cautions) =>
        new StringBuilder("<style>\n").Append(Style).Append("\n</style>\n<main id=\"content\" class=\"bb-sides\" tabindex=\"-1\">\n<h1>")
            .Append(HtmlText.Escape(title)).Append("</h1>\n<p class=\"bb-lead\">").Append(HtmlText.Escape(lead)).Append("</p>\n")
            .Append("<div class=\"bb-caution\" role=\"note\"><p><strong>Caution.</strong> ")
            .Append(HtmlText.Escape(string.Join(' ', cautions))).Append("</p></div>\n");

    private static string Title(IReadOnlyList<(string Name, Vehicle Car)> setUps) =>
        "Side by side: " + string.Join(", ", setUps.Select(setUp => setUp.Name));

    private static string Lead(IReadOnlyList<(string Name, Vehicle Car)> setUps) => Invariant.Text(
        $"{setUps.Count} set-ups, each held against the first, {setUps[0].Name}. Rows in which they differ are shaded.");

    private static string Body(
        IReadOnlyList<(string Name, Vehicle Car)> setUps, SetUpComparison comparison, string? load, UnitSystem units)
    {
        StringBuilder body = Opened(Title(setUps), Lead(setUps), [SettingWords.Caution, Caution]);
        foreach (string legend in setUps.Select(setUp => BandText.LegendOf(setUp.Car)).Where(text => text.Length > 0).Distinct())
        {
            body.Append("<p>").Append(HtmlText.Escape(legend)).Append("</p>\n");
        }

        body.Append(new ComparisonTable(comparison).ToHtml()).Append("<h2>Laid over one another</h2>\n");
        Figures(body, setUps, comparison, load, units);
        return body.Append("</main>\n").ToString();
    }
}
