using BrakeBalance.Notebooks.Execution;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>Cells of one notebook as HTML.</summary>
internal sealed class CellRenderer(string notebook, ProseRenderer prose)
{
    private int codeCells;

    /// <summary>Renders a cell; an empty text for a cell that shows nothing.</summary>
    public string Html(ExecutedCell cell) => cell switch
    {
        ExecutedMarkdownCell markdown => prose.Render(markdown.Id, markdown.Source),
        ExecutedCodeCell code => Code(code),
        _ => throw new ArgumentException($"A cell of type {cell.GetType().Name} cannot be shown.", nameof(cell)),
    };

    /// <summary>The id of a code cell's element.</summary>
    public static string ElementId(ExecutedCell cell) => "cell-" + HtmlText.Slug(cell.Id);

    private string Code(ExecutedCodeCell cell)
    {
        codeCells++;
        string number = codeCells.ToString(CultureInfo.InvariantCulture);
        var html = new StringBuilder();
        html.Append("<section class=\"bb-cell\" id=\"").Append(ElementId(cell)).Append("\" aria-label=\"Code cell ").Append(number)
            .Append("\">\n");
        AppendSource(html, cell);
        foreach (CellOutput output in cell.Outputs)
            html.Append(OutputRenderer.Html(output, $"{notebook}-{number}"));
        if (cell.Failure is { } failure)
            AppendFailure(html, failure);
        return html.Append("</section>\n").ToString();
    }

    private static void AppendSource(StringBuilder html, ExecutedCodeCell cell)
    {
        if (string.IsNullOrWhiteSpace(cell.Source))
            return;
        int lines = cell.Source.TrimEnd('\n').Count(c => c == '\n') + 1;
        string size = lines == 1 ? "1 line" : lines.ToString(CultureInfo.InvariantCulture) + " lines";
        html.Append("<details class=\"bb-code\"><summary>C# <span>").Append(size).Append("</span></summary><pre><code>")
            .Append(CodeHighlighter.Html(cell.Source)).Append("</code></pre></details>\n");
    }

    private static void AppendFailure(StringBuilder html, CellFailure failure)
    {
        html.Append("<div class=\"bb-failure\" role=\"note\">"
            + "<p><strong>This cell failed.</strong> The cells below it were not run.</p><pre>")
            .Append(HtmlText.Escape(failure.Message)).Append("</pre>");
        if (failure.Line is { } line)
        {
            html.Append("<p>Line ").Append(line.ToString(CultureInfo.InvariantCulture));
            if (failure.SourceLine is { } source)
                html.Append(": <code>").Append(HtmlText.Escape(source.Trim())).Append("</code>");
            html.Append("</p>");
        }
        html.Append("</div>\n");
    }
}
