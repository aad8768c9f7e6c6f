namespace BrakeBalance.Charts;

/// <summary>A table that stands on its own in a notebook.</summary>
public sealed record NamedTable : IHtmlOutput
{
    /// <summary>A short name, unique in a page: lower-case letters, digits and hyphens.</summary>
    public required string Id { get; init; }

    /// <summary>What the table shows.</summary>
    public required string Title { get; init; }

    /// <summary>One or two sentences below the title; may be empty.</summary>
    public string Caption { get; init; } = "";

    /// <summary>The numbers.</summary>
    public required FigureTable Table { get; init; }

    /// <inheritdoc/>
    public string ToHtml()
    {
        var html = new StringBuilder();
        html.Append(CultureInfo.InvariantCulture,
            $"<div class=\"bb-table\" id=\"{Id}\">\n<p><strong class=\"bb-title\">{HtmlRenderer.Escape(Title)}</strong>");
        html.Append(CultureInfo.InvariantCulture, $" <span class=\"bb-caption\">{HtmlRenderer.Escape(Caption)}</span></p>\n");
        HtmlRenderer.Table(html, Table, Id, Title);
        return html.Append("</div>\n").ToString();
    }

    /// <inheritdoc/>
    public string ToPlainText() => Title + "\n" + (Caption.Length > 0 ? Caption + "\n" : "") + PlainTable.Of(Table);
}
