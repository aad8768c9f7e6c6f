using System.Net;

namespace BrakeBalance.Charts.Tables;

/// <summary>The verdicts of the distribution rules on a car; informative, never a type approval.</summary>
/// <param name="verdicts">The verdicts.</param>
public sealed class RuleTable(IReadOnlyList<RuleVerdict> verdicts) : IHtmlOutput
{
    private const string Note = "Informative: a calculation is no type approval.";

    /// <summary>The verdicts on a car.</summary>
    /// <param name="vehicle">The car.</param>
    public static RuleTable Of(Vehicle vehicle) => new(DistributionRules.Check(vehicle));

    /// <inheritdoc/>
    public string ToHtml()
    {
        var html = new StringBuilder(
            "<table class=\"bb-rules\">\n<thead><tr><th scope=\"col\">Verdict</th>"
                + "<th scope=\"col\">Rule and source</th><th scope=\"col\">Finding</th></tr></thead>\n<tbody>\n");
        foreach (RuleVerdict verdict in verdicts.Select(verdict => verdict.In(Display.Units)))
        {
            html.Append(CultureInfo.InvariantCulture,
                $"<tr><td data-rule=\"{verdict.Rule}\">"
                    + $"<strong class=\"bb-{verdict.Outcome.ToString().ToLowerInvariant()}\">{Words(verdict.Outcome)}</strong></td>")
                .Append(CultureInfo.InvariantCulture,
                    $"<td>{Escape(verdict.Title)}<br><small>{Escape(verdict.Source)}</small>"
                        + $"</td><td>{Escape(verdict.Explanation)}</td></tr>\n");
        }

        return html.Append("</tbody>\n</table>\n<p class=\"frame-note\">").Append(Note).Append("</p>").ToString();
    }

    /// <inheritdoc/>
    public string ToPlainText() => string.Join('\n', verdicts.Select(verdict =>
        $"{Words(verdict.Outcome)}: {verdict.Title} ({verdict.Source}). {verdict.Explanation}").Append(Note));

    private static string Words(RuleOutcome outcome) => outcome switch
    {
        RuleOutcome.Pass => "✓ pass",
        RuleOutcome.Fail => "✗ fail",
        _ => "– not applicable",
    };

    private static string Escape(string text) => WebUtility.HtmlEncode(text);
}
