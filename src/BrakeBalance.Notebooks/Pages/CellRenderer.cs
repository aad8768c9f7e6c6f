using System.Text.RegularExpressions;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Execution;

namespace BrakeBalance.Notebooks.Pages;

internal sealed partial class CellRenderer(string notebook, ProseRenderer prose)
{
    /// <summary>The id of the part of a page that opens it.</summary>
    public const string FirstScreenId = "first-screen";

    private const string Moved = $"<p class=\"bb-moved\"><a href=\"#{FirstScreenId}\">Shown at the top of this page</a></p>\n";

    private int codeCells;

    /// <summary>The output met so far that opens the page; its cell points there. Empty when there is none.</summary>
    public string FirstScreen { get; private set; } = "";

    /// <summary>Renders a cell; an empty text for a cell that shows nothing.</summary>
    public string Html(ExecutedCell cell) => cell switch
    {
        ExecutedMarkdownCell markdown => prose.Render(markdown.Id, InBoth.Only(markdown.Source, Display.Units == UnitSystem.Us)),
        ExecutedCodeCell code => Code(code),
        _ => throw new ArgumentException($"A cell of type {cell.GetType().Name} cannot be shown.", nameof(cell)),
    };

    public static string ElementId(ExecutedCell cell) => "cell-" + HtmlText.Slug(cell.Id);

    private string Code(ExecutedCodeCell cell)
    {
        codeCells++;
        string number = codeCells.ToString(CultureInfo.InvariantCulture);
        var html = new StringBuilder();
        html.Append("<section class=\"bb-cell\" id=\"").Append(ElementId(cell)).Append("\" aria-label=\"Code cell ").Append(number)
            .Append("\">\n");
        string shown = Typeset(
            string.Concat(cell.Outputs.Select(output => OutputRenderer.Html(output, $"{notebook}-{number}"))), prose, cell.Id);
        AppendSource(html, cell, isQuiet: shown.Length == 0 && cell.Failure is null);
        if (shown.Length > 0 && cell.Tags.Contains(NotebookRules.FirstScreen))
            (FirstScreen, shown) = (shown, Moved);
        html.Append(shown);
        if (cell.Failure is { } failure)
            html.Append(OutputRenderer.Html(failure));
        return html.Append("</section>\n").ToString();
    }

    /// <summary>Outputs with their Markdown typeset; in a cell that a reader runs in the page it stays as it is written.</summary>
    internal static string Typeset(string outputs, ProseRenderer prose, string cellId) => Markdown().Replace(
        outputs, text => prose.Render(cellId, System.Net.WebUtility.HtmlDecode(text.Groups[1].Value)));

    /// <summary>The folded source. That of a cell that shows nothing opens with all the others only.</summary>
    private static void AppendSource(StringBuilder html, ExecutedCodeCell cell, bool isQuiet)
    {
        if (string.IsNullOrWhiteSpace(cell.Source))
            return;
        int lines = cell.Source.TrimEnd('\n').Count(c => c == '\n') + 1;
        string size = lines == 1 ? "1 line" : lines.ToString(CultureInfo.InvariantCulture) + " lines";
        html.Append("<details class=\"bb-code").Append(isQuiet ? " bb-quiet" : "").Append("\"><summary>C# <span>").Append(size)
            .Append("</span></summary><pre><code>").Append(CodeHighlighter.Html(cell.Source)).Append("</code></pre></details>\n");
    }
    [GeneratedRegex("<div class=\"bb-markdown\">([^<]*)</div>")]
    private static partial Regex Markdown();
}
