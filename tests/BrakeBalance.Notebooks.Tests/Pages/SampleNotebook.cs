using BrakeBalance.Charts;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Lessons;
using BrakeBalance.Notebooks.Execution;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Notebooks.Tests.Pages;

/// <summary>A small executed notebook with every kind of cell and output.</summary>
internal static class SampleNotebook
{
    public static ExecutedNotebook Create(string name = "01-sample") => new(name, "Which axle locks first?", [
        new ExecutedMarkdownCell("intro", """
            # Which axle locks first?

            A pedal force becomes two line pressures, and those become two braking forces.
            This page follows one car from the pedal to the road.

            > **Caution.** A calculation is no approval. Test off public roads.

            > **Try it.** Halve the knee pressure and look at the braking rate.

            ## The load moves forward

            While the car slows at the braking rate $z$, the front axle carries

            $$N_1 = m\,g\left(\frac{b}{E} + z\,\frac{h}{E}\right), \qquad N_2 = m\,g\left(\frac{a}{E} - z\,\frac{h}{E}\right)$$

            and the ideal rear force follows from the front one:

            $$T_2 = \frac{m g}{2}\left[\sqrt{\left(\frac{b}{h}\right)^2 + \frac{4E}{h}\cdot\frac{T_1}{m g}}
              - \left(\frac{b}{h} + \frac{2 T_1}{m g}\right)\right]$$

            | Quantity | Symbol | Front | Rear | A column that is long | And another one that is longer |
            |---|---|---:|---:|---|---|
            | Static axle load | $P_i$ | 9336 N | 7335 N | at rest on level ground | with the driver aboard |
            | Utilised adhesion | $f_i$ | 0.81 | 0.79 | braking force over normal reaction | both near the braking rate |
            """),
        Code("c1", "// the car\nvar knee = Pressure.FromBars(24.5);\nvar name = \"coupe\";\n"
            + "foreach (var p in new[] { 1, 2 })\n    Console.WriteLine(p);", Plain("1\n2\n<script>alert('no')</script>")),
        new ExecutedMarkdownCell("valve", """
            ## The valve bends the line

            $$p_2 = \begin{cases} p_1 & \text{for } p_1 \le p_k \\ p_k + s\,(p_1 - p_k) & \text{for } p_1 > p_k \end{cases}$$

            ### What to see

            See [choosing the setting](02-choosing.ipynb#the-load-moves-forward) or the [regulation](https://example.org/r13h).
            Inline: $k \ge \frac{z+0.07}{0.85}$ and $\hat{p}_\mathrm{max}$.
            """),
        Code("c2", "frame", new CellOutput(new Dictionary<string, string>
        {
            ["text/html"] = "<table class=\"frame\"><thead><tr><th scope=\"col\">Knee [bar]</th><th scope=\"col\" class=\"number\">"
                + "z [–]</th></tr></thead><tbody><tr><td>20</td><td class=\"number\">0.71</td></tr></tbody></table>",
            ["text/plain"] = "unused",
            ["text/csv"] = "Knee [bar],z [–]\n20,0.71\n",
        })),
        Code("c3", "drawing", new CellOutput(new Dictionary<string, string>
        {
            ["image/svg+xml"] = "<?xml version=\"1.0\"?><svg xmlns=\"http://www.w3.org/2000/svg\" "
                + "viewBox=\"0 0 100 50\" role=\"img\" aria-label=\"A line\"><path d=\"M0 50L100 0\" stroke=\"currentColor\"/></svg>",
        })),
    ]);

    public static ExecutedNotebook Failed() => new("09-failed", "A failed run", [
        new ExecutedMarkdownCell("t", "# A failed run\n\nText before."),
        new ExecutedCodeCell("bad cell", "var a = 1;\nvar b = a / zero; // <b>", [], [],
            new CellFailure("Attempted to divide by <zero>.", 2, "var b = a / zero; // <b>")),
    ]);

    /// <summary>A figure with sliders: the one of the lesson on the knee.</summary>
    public static ExecutedNotebook WithChart() => new("01-chart", "Chart", [
        new ExecutedMarkdownCell("t", "# Chart\n\nOne chart."),
        Code("quiet", "var quiet = 1;"),
        Code("c", "chart", new CellOutput(new Dictionary<string, string>
        {
            ["text/html"] = LessonSheet.Of("knee", seed: 2026, units: UnitSystem.Si).Figure.ToHtml(),
        })) with
        {
            Tags = ["first-screen"],
        },
    ]);

    /// <summary>A figure with sliders of a car from a file.</summary>
    public static ExecutedNotebook WithCar() => new("02-own", "Travel", [
        new ExecutedMarkdownCell("t", "# Travel\n\nOne chart."),
        Code("c", "chart", new CellOutput(new Dictionary<string, string>
        {
            ["text/html"] = FootExplorables.Travel(
                VehicleFile.Load(RepositoryRoot.File("data/vehicles/coupe-1960s.json")).Vehicle, UnitSystem.Si).ToHtml(),
        })),
    ]);

    private static ExecutedCodeCell Code(string id, string source, params CellOutput[] outputs) => new(id, source, [], outputs, null);

    private static CellOutput Plain(string text) => new(new Dictionary<string, string> { ["text/plain"] = text });
}
