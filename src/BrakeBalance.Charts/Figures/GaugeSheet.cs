using System.Net;

namespace BrakeBalance.Charts.Figures;

/// <summary>A sheet to take to the car: what pressure gauges should show at given pedal forces, with room for what they do show.</summary>
/// <param name="control">The car's control in one load case.</param>
/// <param name="forces">Pedal forces; 20 to 120 lbf in steps of 20 unless said.</param>
/// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
public sealed class GaugeSheet(ControlForce control, IReadOnlyList<Force>? forces = null, UnitSystem? units = null) : IHtmlOutput
{
    private const string Style = """
        <style>
        .bb-sheet td, .bb-sheet th { border: 1px solid currentColor; padding: 0.35rem 0.6rem; text-align: right; }
        .bb-sheet table { border-collapse: collapse; }
        .bb-sheet .bb-blank { min-width: 5rem; }
        .bb-sheet { break-inside: avoid; overflow-x: auto; }
        </style>
        """;

    private readonly IReadOnlyList<Force> _forces = forces ?? [.. Enumerable.Range(1, 6).Select(i =>
        (units ?? Display.Units) == UnitSystem.Us ? Force.FromPoundsForce(20 * i) : Force.FromNewtons(100 * i))];
    private readonly UnitSystem _units = units ?? Display.Units;

    /// <inheritdoc/>
    public string ToHtml()
    {
        string unit = Measure.LinePressure.In(_units).Symbol;
        string[] headings = [$"Pedal force {Foot.Bracketed}", $"Front brake [{unit}]", $"Rear brake [{unit}]",
            $"Front read [{unit}]", $"Rear read [{unit}]"];
        var html = new StringBuilder(Style)
            .Append("\n<div class=\"bb-sheet\" tabindex=\"0\" role=\"region\" aria-label=\"Gauge table\">\n<table>\n");
        html.Append(CultureInfo.InvariantCulture, $"<caption>{Text(Heading)}</caption>\n<thead><tr>");
        foreach (string heading in headings)
        {
            html.Append(CultureInfo.InvariantCulture, $"<th scope=\"col\">{Text(heading)}</th>");
        }

        html.Append("</tr></thead>\n<tbody>\n");
        foreach (string[] row in Rows())
        {
            html.Append(CultureInfo.InvariantCulture,
                $"<tr><th scope=\"row\">{row[0]}</th><td>{row[1]}</td>"
                    + $"<td>{row[2]}</td><td class=\"bb-blank\"></td><td class=\"bb-blank\"></td></tr>\n");
        }

        return html.Append(CultureInfo.InvariantCulture, $"</tbody>\n</table>\n<p>{Text(Caution)}</p>\n</div>\n").ToString();
    }

    /// <inheritdoc/>
    public string ToPlainText()
    {
        string unit = Measure.LinePressure.In(_units).Symbol;
        return Heading + "\n" + string.Join('\n', Rows().Select(row => $"{row[0]} {Foot.Symbol}: front {row[1]}, rear {row[2]} {unit}"))
            + "\n" + Caution;
    }

    private string Caution => InBoth.Only(
        "Wheels chocked, car in neutral, engine running as the file has it. Bleed the gauges first and push smoothly. With a "
            + "hydraulic booster hold no more than about 450 N (100 lbf) for 5 s. Never exceed the lowest pressure rating in the "
            + "chain. Work for a competent person.", _units == UnitSystem.Us);

    private DisplayUnit Foot => Measure.ControlForce.In(_units);

    private string Heading => $"{control.Model.Vehicle.Name}, {control.Model.LoadCase.Name}: line pressure at the brakes, gauge";

    private IEnumerable<string[]> Rows() => _forces.Select(force =>
    {
        ControlForcePoint point = control.At(force);
        DisplayUnit unit = Measure.LinePressure.In(_units);
        return new[]
        {
            Foot.FromSi(force.Newtons).ToString("0", CultureInfo.InvariantCulture),
            unit.Number(point.Balance.LinePressures.Front.Pascals),
            unit.Number(point.Balance.LinePressures.Rear.Pascals),
        };
    });

    private static string Text(string text) => WebUtility.HtmlEncode(text);
}
