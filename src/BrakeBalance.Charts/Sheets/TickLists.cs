
namespace BrakeBalance.Charts.Sheets;

/// <summary>Checklists as a notebook shows them.</summary>
/// <param name="lists">The lists.</param>
public sealed class TickLists(params IReadOnlyList<Checklist> lists) : IHtmlOutput
{
    /// <inheritdoc/>
    public string ToHtml()
    {
        var html = new StringBuilder();
        foreach (Checklist list in lists)
        {
            html.Append("<div class=\"bb-ticks\">\n<p><strong>").Append(HtmlRenderer.Escape(list.Title)).Append(".</strong> <em>")
                .Append(HtmlRenderer.Escape(list.Before)).Append("</em></p>\n<ul style=\"list-style: '☐ '\">\n");
            foreach (string step in list.Steps)
            {
                html.Append("<li>").Append(HtmlRenderer.Escape(InBoth.Only(step, Display.Units == UnitSystem.Us))).Append("</li>\n");
            }

            html.Append("</ul>\n</div>\n");
        }

        return html.ToString();
    }

    /// <inheritdoc/>
    public string ToPlainText() =>
        string.Join('\n', lists.Select(list =>
        $"{list.Title}\n{list.Before}\n{string.Concat(list.Steps.Select(step => $"[ ] {step}\n"))}"));
}
