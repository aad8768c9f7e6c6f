using Plotly.NET;

namespace BrakeBalance.Charts;

/// <summary>A figure: what is drawn, what it says in words, and the numbers behind it.</summary>
/// <remarks>
/// <para>Made by a <see cref="FigureBuilder"/>; see there for a short how-to. From this one model come the chart
/// (<see cref="ToPlotly"/>), the drawing (<see cref="ToSvg"/>) and the fragment of a page (<see cref="ToHtml"/>).</para>
/// <para>Layers hold SI numbers; they are converted to <see cref="Units"/> once, at the axis. All output is the same byte
/// by byte for the same figure, whatever the culture.</para>
/// </remarks>
public sealed record Figure : IHtmlOutput
{
    /// <summary>The most characters an alt text should have.</summary>
    public const int AltTextLimit = 180;

    /// <summary>The most points a line keeps when drawn.</summary>
    public const int PointLimit = 2000;

    /// <summary>A short name, unique in a page: lower-case letters, digits and hyphens.</summary>
    public required string Id { get; init; }

    /// <summary>What the figure shows, as a finding: <c>The rear locks first above 0.62 g</c>.</summary>
    public required string Title { get; init; }

    /// <summary>The finding where a title of the publisher's own stands over the figure; null where the title says it.</summary>
    public string? Finding { get; init; }

    /// <summary>One or two sentences below the figure.</summary>
    public required string Caption { get; init; }

    /// <summary>Kind of chart, axes where there is room, and finding, for those who do not see it.</summary>
    public string AltText
    {
        get
        {
            string kind = IsToScale ? "Plan" : XAxis.Categories is not null ? "Bar chart"
                : Layers.Any(layer => layer is MapLayer or HeatLayer) ? "Map"
                : Layers.Any(layer => layer is LineLayer) ? "Line chart" : "Chart of points";
            string axes = $"{Small(YAxis.Quantity)} over {Small(XAxis.Quantity)}";
            string whole = $"{kind}, {axes}: {Finding ?? Title}.";
            return whole.Length <= AltTextLimit ? whole : $"{kind}: {Finding ?? Title}.";
        }
    }

    /// <summary>The figure in a paragraph, for those who do not see it.</summary>
    public required string LongDescription { get; init; }

    /// <summary>The axis from left to right.</summary>
    public required Axis XAxis { get; init; }

    /// <summary>The axis from bottom to top.</summary>
    public required Axis YAxis { get; init; }

    /// <summary>What is drawn, from back to front.</summary>
    public required IReadOnlyList<Layer> Layers { get; init; }

    /// <summary>The numbers behind the figure, in display units; a page shows none, by pointer and keys neither, when it has no columns.
    /// </summary>
    public required FigureTable Table { get; init; }

    /// <summary>The system of units in which numbers are shown.</summary>
    public required UnitSystem Units { get; init; }

    /// <summary>A credit line; null for none.</summary>
    public string? Credit { get; init; }

    /// <summary>Whether a length is drawn alike along both axes, as on a plan; one of the axes then reaches farther than asked.</summary>
    public bool IsToScale { get; init; }

    /// <summary>Whether a label that finds no clean place stands in the key below the plot.</summary>
    public bool IsKeyedWhereCrowded { get; init; }

    /// <summary>Whether bars of one category stand on one another instead of side by side.</summary>
    public bool StacksBars { get; init; }

    /// <summary>The chart, whose points answer to the pointer.</summary>
    /// <returns>A chart of Plotly.NET with the theme for white pages.</returns>
    public GenericChart ToPlotly() => PlotlyRenderer.Chart(this, FigureSize.Page);

    /// <summary>The chart's traces and layout.</summary>
    /// <returns>JSON with the members <c>data</c> and <c>layout</c>.</returns>
    public string ToPlotlyJson() => PlotlyRenderer.Json(this, FigureSize.Page);

    /// <summary>The drawing.</summary>
    /// <param name="size">Its size; null for <see cref="FigureSize.Page"/>.</param>
    /// <param name="theme">Its colours; null for <see cref="Theme.Light"/>.</param>
    /// <returns>An SVG document with editable text, one named group a layer, and title and description for assistive technology.</returns>
    public string ToSvg(FigureSize? size = null, Theme? theme = null) =>
        SvgRenderer.Svg(this, size ?? FigureSize.Page, theme ?? Theme.Light);

    /// <inheritdoc/>
    public string ToHtml()
    {
        var html = new StringBuilder();
        HtmlRenderer.Figure(html, this);
        return html.ToString();
    }

    internal static string Small(string words) => words.Length == 0 ? words : char.ToLowerInvariant(words[0]) + words[1..];

    /// <inheritdoc/>
    public string ToPlainText()
    {
        var text = new StringBuilder();
        text.Append(Title).Append('\n').Append(Caption).Append('\n').Append(LongDescription).Append('\n').Append(PlainTable.Of(Table));
        return text.ToString();
    }
}
