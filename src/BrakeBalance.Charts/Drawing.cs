using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts;

/// <summary>A drawing without axes, such as a diagram of hoses: drawn as SVG, with its words and its table.</summary>
/// <remarks>
/// Laid out twice, for a page and for a phone; the page's style sheet shows the one that fits. The same input gives the same bytes.
/// </remarks>
public sealed record Drawing : IHtmlOutput
{
    private readonly FigureSize _wide;
    private readonly FigureSize _narrow;
    private readonly Func<FigureSize, Theme, string> _draw;

    internal Drawing(FigureSize wide, FigureSize narrow, Func<FigureSize, Theme, string> draw)
    {
        (_wide, _narrow, _draw) = (wide, narrow, draw);
    }

    /// <summary>A short name, unique in a page: lower-case letters, digits and hyphens.</summary>
    public required string Id { get; init; }

    /// <summary>What the drawing shows, as a finding.</summary>
    public required string Title { get; init; }

    /// <summary>One or two sentences below it.</summary>
    public required string Caption { get; init; }

    /// <summary>The drawing in at most <see cref="Figure.AltTextLimit"/> characters, for those who do not see it.</summary>
    public required string AltText { get; init; }

    /// <summary>The drawing in a paragraph, for those who do not see it.</summary>
    public required string LongDescription { get; init; }

    /// <summary>What it shows as a table.</summary>
    public required FigureTable Table { get; init; }

    /// <summary>The drawing as an SVG document.</summary>
    /// <param name="narrow">Whether it is laid out for a phone.</param>
    /// <param name="theme">Its colours; null for <see cref="Theme.Light"/>.</param>
    /// <returns>SVG with editable text, and title and description for assistive technology.</returns>
    public string ToSvg(bool narrow = false, Theme? theme = null) => Svg(narrow ? _narrow : _wide, theme ?? Theme.Light);

    /// <inheritdoc/>
    public string ToHtml()
    {
        var html = new StringBuilder();
        html.Append(CultureInfo.InvariantCulture, $"<figure class=\"bb-figure bb-drawing\" id=\"{Id}\">\n");
        HtmlRenderer.Finding(html, Title);
        HtmlRenderer.Drawings(html, Svg(_wide, Theme.Light), Svg(_narrow, Theme.Light));
        HtmlRenderer.Words(html, Id, Title, Caption, LongDescription, Table);
        return html.Append("</figure>\n").ToString();
    }

    /// <inheritdoc/>
    public string ToPlainText() => $"{Title}\n{Caption}\n{LongDescription}\n{PlainTable.Of(Table)}";

    private string Svg(FigureSize size, Theme colours)
    {
        string id = $"{Id}-{size.Name}";
        var svg = new SvgWriter();
        svg.Open(
            "svg",
            ("xmlns", "http://www.w3.org/2000/svg"),
            ("viewBox", $"0 0 {SvgWriter.Number(size.Width)} {SvgWriter.Number(size.Height)}"),
            ("width", size.Width),
            ("height", size.Height),
            ("role", "img"),
            ("aria-labelledby", $"{id}-title {id}-desc"),
            ("font-family", colours.Font),
            ("font-size", size.FontSize));
        svg.Text("title", AltText, ("id", $"{id}-title"));
        svg.Text("desc", LongDescription, ("id", $"{id}-desc"));
        svg.Empty("rect", ("width", size.Width), ("height", size.Height), ("fill", colours.Background));
        svg.Raw(_draw(size, colours));
        return svg.Close().ToString();
    }
}
