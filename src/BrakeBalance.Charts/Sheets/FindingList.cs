using BrakeBalance.Charts.Figures;

namespace BrakeBalance.Charts.Sheets;

/// <summary>Findings as a list that also reads on a phone: what is wrong or doubtful in full, what is as wanted folded away.</summary>
/// <param name="findings">The findings.</param>
public sealed class FindingList(IEnumerable<BenchFinding> findings) : IHtmlOutput
{
    private readonly BenchFinding[] _open =
        [.. findings.Where(finding => finding.Severity != BenchSeverity.Pass).OrderByDescending(finding => finding.Severity)];
    private readonly BenchFinding[] _good = [.. findings.Where(finding => finding.Severity == BenchSeverity.Pass)];

    /// <inheritdoc/>
    public string ToHtml()
    {
        var html = new StringBuilder("<div class=\"bb-findings\">\n");
        if (_open.Length == 0)
        {
            html.Append("<p class=\"bb-verdict\" data-kind=\"good\">Nothing was found wrong in what was measured.</p>\n");
        }

        foreach (BenchFinding finding in _open)
        {
            html.Append(CultureInfo.InvariantCulture,
                $"<p class=\"bb-verdict\" data-kind=\"caution\">{Word(finding)}: {HtmlRenderer.Escape(Text(finding))}</p>\n");
        }

        if (_good.Length > 0)
        {
            html.Append(CultureInfo.InvariantCulture,
                $"<details{(_open.Length == 0 && _good.Length < 3 ? " open" : "")}><summary>Passed: {_good.Length}</summary>\n<ul>\n");
            foreach (BenchFinding finding in _good)
            {
                html.Append("<li>").Append(HtmlRenderer.Escape(Text(finding))).Append("</li>\n");
            }

            html.Append("</ul>\n</details>\n");
        }

        return html.Append("</div>\n").ToString();
    }

    /// <inheritdoc/>
    public string ToPlainText() => string.Concat(_open.Concat(_good).Select(finding => $"{Word(finding)}: {Text(finding)}\n"));

    private static string Text(BenchFinding finding) => finding.In(Display.Units).ToString();

    private static string Word(BenchFinding finding) =>
        finding.Severity == BenchSeverity.Caution ? "Caution" : BenchTables.Word(finding.Severity);
}
