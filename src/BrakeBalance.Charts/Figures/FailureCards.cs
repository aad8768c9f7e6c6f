using System.Net;

namespace BrakeBalance.Charts.Figures;

/// <summary>One card for each case of failure: pedal force, deceleration, distance, and what to beware of.</summary>
/// <param name="outcomes">The outcomes of one load case.</param>
/// <param name="conditions">What was asked; the usual conditions unless said.</param>
/// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
public sealed class FailureCards(IReadOnlyList<FailureOutcome> outcomes, FailureConditions? conditions = null, UnitSystem? units = null)
    : IHtmlOutput
{
    private const string Style = """
        <style>
        .bb-cards { display: grid; grid-template-columns: repeat(auto-fill, minmax(16rem, 1fr)); gap: 1rem; margin: 1rem 0; }
        .bb-card { border: 1px solid currentColor; border-radius: 0.4rem; padding: 0.6rem 0.9rem; break-inside: avoid; }
        .bb-card h3 { margin: 0 0 0.4rem; font-size: 1.05rem; border: 0; padding: 0; }
        .bb-card dl { margin: 0; display: grid; grid-template-columns: auto auto; gap: 0.15rem 0.8rem; }
        .bb-card dt { font-weight: normal; }
        .bb-card dd { margin: 0; text-align: right; font-weight: bold; }
        .bb-card p { margin: 0.5rem 0 0; }
        </style>
        """;

    private readonly FailureConditions _asked = conditions ?? new FailureConditions();
    private readonly UnitSystem _units = units ?? Display.Units;

    /// <inheritdoc/>
    public string ToHtml()
    {
        var html = new StringBuilder(Style).Append("\n<div class=\"bb-cards\">\n");
        foreach (FailureOutcome outcome in outcomes)
        {
            html.Append(CultureInfo.InvariantCulture,
                $"<section class=\"bb-card\">\n<h3>{Text(Finding.Capital(outcome.Case.Name))}</h3>\n<dl>\n");
            foreach ((string name, string value) in Lines(outcome))
            {
                html.Append(CultureInfo.InvariantCulture, $"<dt>{Text(name)}</dt><dd>{Text(value)}</dd>\n");
            }

            html.Append("</dl>\n");
            foreach (string notice in outcome.Notices)
            {
                html.Append(CultureInfo.InvariantCulture, $"<p>{Text(notice)}</p>\n");
            }

            html.Append("</section>\n");
        }

        return html.Append("</div>\n").ToString();
    }

    /// <inheritdoc/>
    public string ToPlainText() => string.Join('\n', outcomes.Select(outcome =>
        $"{Finding.Capital(outcome.Case.Name)}: " + string.Join("; ", Lines(outcome).Select(line => $"{line.Name} {line.Value}")) + "."
            + string.Concat(outcome.Notices.Select(notice => " " + InBoth.Only(notice, _units == UnitSystem.Us)))));

    private IEnumerable<(string Name, string Value)> Lines(FailureOutcome outcome)
    {
        string rate = FootFigures.Words(_asked.BrakingRate);
        yield return ($"Pedal force for a deceleration of {rate} g", outcome.PedalForceForRate is { } force
            ? Measure.ControlForce.Text(force, _units) : outcome.WhyNot ?? "–");
        yield return ($"Deceleration with up to {Measure.ControlForce.Text(_asked.PedalForce, _units)}",
            FootFigures.Words(outcome.RateAtForce) + "\u00a0g");
        yield return ("Bound by", FootFigures.BoundWords(outcome.Bound));
        yield return ($"Stop from {Measure.Speed.Text(_asked.Speed, _units)}", outcome.Distance is { } stop
            ? Measure.Distance.Text(stop.FromFirstTouch, _units) : "–");
        yield return ("With the driver's reaction", outcome.Distance is { } whole ? Measure.Distance.Text(whole.Whole, _units) : "–");
        yield return ("Locks first", outcome.LockUpRate is null
            ? "no axle" : outcome.FirstToLock switch { Axle.Front => "front axle", Axle.Rear => "rear axle", _ => "both" });
        if (outcome.Travel?.LeftToFloor is { } left)
        {
            yield return ("Pedal left to the floor", Measure.Travel.Text(left, _units));
        }
    }

    private string Text(string text) => WebUtility.HtmlEncode(InBoth.Only(text, _units == UnitSystem.Us));
}
