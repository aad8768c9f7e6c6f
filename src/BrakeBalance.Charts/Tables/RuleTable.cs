using System.Net;

namespace BrakeBalance.Charts.Tables;

/// <summary>The verdicts of rules on a car and on those that its file's ranges allow; informative, never a type approval.</summary>
public sealed class RuleTable : IHtmlOutput
{
    private const string Note = "Informative: a calculation is no type approval.";

    private readonly (RuleVerdict Verdict, string Outcome, string Finding)[] _rows;
    private readonly string _note;

    private RuleTable(Vehicle vehicle, Func<Vehicle, IReadOnlyList<RuleVerdict>> check)
    {
        Banded<IReadOnlyList<RuleVerdict>> all = Banded.Of(vehicle, check);
        _rows = [.. all.Middle.Select((_, i) => all.Select(of => of.ElementAtOrDefault(i)?.In(Display.Units))!)
            .Select(row => (row.Middle, row.Text(verdict => Words(verdict.Outcome)), row.Text(verdict => verdict.Explanation)))];
        _note = $"{Note} {BandText.LegendOf(vehicle)}".TrimEnd();
    }

    /// <summary>The verdicts of the rules on the distribution of the braking.</summary>
    /// <param name="vehicle">The car.</param>
    public static RuleTable Of(Vehicle vehicle) => new(vehicle, DistributionRules.Check);

    /// <summary>The verdicts of the rules on stopping, with what stands in for a part that fails.</summary>
    /// <param name="vehicle">The car.</param>
    public static RuleTable OfStopping(Vehicle vehicle) => new(vehicle, EffectivenessRules.Check);

    /// <inheritdoc/>
    public string ToHtml()
    {
        var html = new StringBuilder(
            "<table class=\"bb-rules\">\n<thead><tr><th scope=\"col\">Verdict</th>"
                + "<th scope=\"col\">Rule and source</th><th scope=\"col\">Finding</th></tr></thead>\n<tbody>\n");
        foreach ((RuleVerdict verdict, string outcome, string finding) in _rows)
        {
            html.Append(CultureInfo.InvariantCulture,
                $"<tr><td data-rule=\"{verdict.Rule}\">"
                    + $"<strong class=\"bb-{verdict.Outcome.ToString().ToLowerInvariant()}\">{Escape(outcome)}</strong></td>")
                .Append(CultureInfo.InvariantCulture,
                    $"<td>{Escape(verdict.Title)}<br><small>{Escape(verdict.Source)}</small></td><td>{Escape(finding)}</td></tr>\n");
        }

        return html.Append("</tbody>\n</table>\n<p class=\"frame-note\">").Append(_note).Append("</p>").ToString();
    }

    /// <inheritdoc/>
    public string ToPlainText() => string.Join('\n', _rows.Select(row =>
        $"{row.Outcome}: {row.Verdict.Title} ({row.Verdict.Source}). {row.Finding}").Append(_note));

    private static string Words(RuleOutcome outcome) => outcome switch
    {
        RuleOutcome.Pass => "✓ pass",
        RuleOutcome.Fail => "✗ fail",
        _ => "– not applicable",
    };

    private static string Escape(string text) => WebUtility.HtmlEncode(text);
}
