namespace BrakeBalance.Charts.Figures;

/// <summary>Figures of a stop: each takes what the calculation assembly answers and draws it.</summary>
public static partial class StopFigures
{
    /// <summary>Adhesion against slip, with the greatest value and the locked wheel marked.</summary>
    /// <param name="curves">The curves; at most five.</param>
    /// <param name="wheelLoad">Normal reaction of one wheel; above zero.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static Figure SlipCurves(IReadOnlyList<SlipCurve> curves, Force wheelLoad, UnitSystem? units = null)
    {
        var figure = new FigureBuilder("slip-curves", units);
        double[] slips = [.. Enumerable.Range(0, 101).Select(i => i / 100.0 * (i / 100.0))];
        SlipCurve first = curves[0];
        double peak = first.PeakAdhesion(wheelLoad);
        double locked = first.LockedAdhesion(wheelLoad);
        figure
            .Title($"A locked wheel on {first.Name} keeps {Percent(locked / peak)} of its peak adhesion")
            .Describe(
                $"Adhesion against slip at a wheel load of {figure.Text(Measure.BrakeForce, wheelLoad)}. "
                    + "0 % slip: rolling freely; 100 %: locked.",
                string.Join(' ', curves.Select(curve =>
                    $"On {curve.Name} adhesion peaks: {Number(curve.PeakAdhesion(wheelLoad))}, at {Percent(curve.PeakSlip(wheelLoad))} "
                        + $"slip, and {Number(curve.LockedAdhesion(wheelLoad))} with the wheel locked.")))
            .X("Slip", "s", Measure.Percent, 0, 1)
            .Y("Adhesion coefficient", "μ", Measure.Number, 0);
        Dash[] dashes = [Dash.Solid, Dash.Dash, Dash.DashDot, Dash.LongDash, Dash.Dot];
        Tone[] tones = [Tone.Main, Tone.Front, Tone.Other, Tone.Ideal, Tone.Rear];
        foreach ((int i, SlipCurve curve) in curves.Index())
        {
            figure.Line(curve.Name, slips, slips.Select(s => curve.AdhesionCoefficient(s, wheelLoad))
                .ToArray(), tones[i % 5], dashes[i % 5], labelAt: 0.8);
        }

        figure.Points(
            "peak adhesion", curves.Select(c => c.PeakSlip(wheelLoad)).ToArray(), curves.Select(c => c.PeakAdhesion(wheelLoad))
                .ToArray(), Tone.Main, Marker.Ring, label: "");
        return figure.Build();
    }

    /// <summary>Heading against time of several stops.</summary>
    /// <param name="stops">Name and outcome of each; at most five, all with traces.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static Figure Headings(IReadOnlyList<(string Name, YawResult Stop)> stops, UnitSystem? units = null)
    {
        var figure = new FigureBuilder("headings", units, stops[0].Stop.Car.Vehicle);
        figure
            .Title(Turns(stops))
            .Describe(
                $"{stops[0].Stop.Car.Name}: heading from the first, steering held still.",
                string.Join(' ', stops.Select(s => Finding.Capital(Outcome(s.Name, s.Stop)))))
            .X("Time since the foot touched the pedal", "t", Measure.Time, 0)
            .Y("Heading without sign", "ψ", Measure.Angle, 0)
            .Level("square to the road", Math.PI / 2, Tone.Guide);
        Dash[] dashes = [Dash.Solid, Dash.Dash, Dash.DashDot, Dash.LongDash, Dash.Dot];
        foreach ((int i, (string caseName, YawResult stop)) in stops.Index())
        {
            figure.Line(
                caseName, stop.Trace.Select(s => s.TimeSeconds).ToArray(), stop.Trace.Select(s => Math.Abs(s.HeadingRadians)).ToArray(),
                CaseTone(caseName, i), dashes[i % 5]);
        }

        return figure.Build();
    }

    private static string Turns(IReadOnlyList<(string Name, YawResult Stop)> stops)
    {
        (string name, YawResult worst) = stops.MaxBy(s => s.Stop.GreatestHeading);
        return worst.SquareToRoadAt is { } square
            ? $"{Finding.Capital(name)}: square to the road after {Number(square.Seconds)} s"
            : $"No case turns the car square to the road: {Degrees(worst.GreatestHeading)} at most";
    }

    internal static string Outcome(string name, YawResult stop) => stop.SquareToRoadAt is { } square
        ? $"{name}: square to the road after {Number(square.Seconds)} s, heading {Degrees(stop.FinalHeading)} at standstill."
        : $"{name}: at most {Degrees(stop.GreatestSideslip)} of sideslip, heading {Degrees(stop.FinalHeading)} at standstill.";

    internal static Tone CaseTone(string name, int place) => name.Contains("rear", StringComparison.OrdinalIgnoreCase) ? Tone.Rear
        : name.Contains("front", StringComparison.OrdinalIgnoreCase) ? Tone.Front
        : place % 2 == 0 ? Tone.Main : Tone.Ideal;

    internal static string Number(double value) => Measure.Number.Text(value, UnitSystem.Si);

    private static string Percent(double value) => Measure.Percent.Text(value, UnitSystem.Si);

    internal static string Degrees(Angle angle) => Invariant.Text($"{Math.Round(angle.Degrees) + 0.0:0;−0}°");
}
