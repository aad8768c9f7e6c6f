namespace BrakeBalance.Charts.Figures;

/// <summary>Figures of the bench: bends of hoses, back-pressure of the return, release of the pedal.</summary>
public static class BenchFigures
{
    /// <summary>How much hose a bend takes at the least, over its angle, for the sizes of one class.</summary>
    /// <param name="hoseClass">The class as the table of ratings names it.</param>
    /// <param name="hose">An assembly whose bends are marked; null for none.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <exception cref="ArgumentException">The table has no least radius for that class.</exception>
    public static Figure Bends(string hoseClass, HoseAssembly? hose = null, UnitSystem? units = null)
    {
        HoseRating[] sizes = [.. HoseRating.All.Where(row =>
            row.Class == hoseClass && row.LeastBendRadius is not null && row.Bore is { Millimeters: >= 6 and <= 20 })];
        Refuse.If(sizes.Length == 0, $"The table of ratings has no least bend radius for \"{hoseClass}\".", nameof(hoseClass));

        var figure = new FigureBuilder("hose-bends", units);
        double[] turns = [.. Enumerable.Range(0, 37).Select(i => i * Math.PI / 36)];
        HoseRating least = sizes[0], most = sizes[^1];
        string Half(HoseRating size) => figure.Text(BenchMeasures.Cut, size.LeastBendRadius!.Value * Math.PI);
        figure
            .Title($"A half turn takes at least {Half(least)} of {least.Dash} hose and {Half(most)} of {most.Dash}")
            .Describe(
                $"Least length of hose in one bend, least radius times angle, for {hoseClass}. "
                    + "The straight hose at the fittings comes on top. The maker's chart goes before this table.",
                $"For a half turn: {string.Join(", ", sizes.Select(size => $"{size.Dash} {Half(size)}"))}.")
            .X("Angle of the bend", "θ", Measure.Angle, 0, 1.25 * Math.PI)
            .Y("Least hose in the bend", "R θ", BenchMeasures.Cut, 0, 1.05 * Math.PI * most.LeastBendRadius!.Value.Meters);
        // Sizes too near to be named each are named together, from the lowest line up.
        double labelled = double.NegativeInfinity, near = 0.1 * most.LeastBendRadius.Value.Meters;
        Dash[] dashes = [Dash.Solid, Dash.Dash, Dash.DashDot, Dash.LongDash, Dash.Dot];
        foreach ((int i, HoseRating size) in sizes.Index())
        {
            double radius = size.LeastBendRadius!.Value.Meters;
            bool apart = radius - labelled > near;
            labelled = apart ? radius : labelled;
            IEnumerable<HoseRating> named =
                apart ? sizes.Skip(i).TakeWhile(other => other.LeastBendRadius!.Value.Meters - radius <= near) : [];
            figure.Line(size.Dash, turns, turns.Select(turn => turn * radius).ToArray(), Tone.Main, dashes[i % dashes.Length],
                label: string.Join(", ", named.Select(one => one.Dash)), labelAt: 1);
        }

        if (hose?.Routing is { Bends.Length: > 0 } routing)
        {
            figure.Points($"bends of {hose.Name}", routing.Bends.Select(bend => bend.Turn.Radians)
                .ToArray(), routing.Bends.Select(bend => bend.Arc.Meters).ToArray(), Tone.Front, Marker.Diamond, size: 10);
        }

        return figure.Build();
    }

    /// <summary>Back-pressure at the booster's return over the flow out of it, for oils of several temperatures.</summary>
    /// <param name="flow">The return lines; their own temperature is not looked at.</param>
    /// <param name="celsius">Temperatures of the oil in degrees Celsius.</param>
    /// <param name="spring">The pressure that the springs make at the power piston, drawn as a level; null for none.</param>
    /// <param name="top">Upper end of the axis of pressure; null to fit the lines.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    /// <exception cref="InvalidOperationException">The booster's return does not reach the reservoir.</exception>
    public static Figure BackPressure(ReturnFlow flow, IReadOnlyList<double> celsius, Pressure? spring = null, Pressure? top = null,
        UnitSystem? units = null, string id = "back-pressure")
    {
        ArgumentNullException.ThrowIfNull(flow);
        var figure = new FigureBuilder(id, units);
        double[] flows = [.. Enumerable.Range(0, 41).Select(i => i * 0.3 / 60000)];
        var curves = celsius.Select(degrees =>
        {
            ReturnFlow at = flow with { Temperature = Temperature.FromDegreesCelsius(degrees) };
            return (Degrees: degrees, Name: Measure.Temperature.Text(degrees + 273.15, figure.Units),
                Pascals: flows.Select(q => at.BackPressure(VolumeFlow.FromCubicMetersPerSecond(q)).Pascals).ToArray());
        }).ToList();
        bool stands = curves.Exists(curve => curve.Pascals[0] > 0);
        string At(double pascals) => figure.Text(BenchMeasures.BackPressure, pascals);
        (double coldDegrees, string cold, double[] coldest) = curves.MinBy(curve => curve.Degrees);
        (double _, string warm, double[] warmest) = curves.MaxBy(curve => curve.Degrees);
        string most = figure.Text(BenchMeasures.Flow, flows[^1]);
        figure
            .Title(curves.Count == 1
                ? $"Oil of {cold}: {At(coldest[0])} in the return at rest, {At(coldest[^1])} at {most}"
                : stands
                ? $"With the pedal at rest {At(coldest[0])} stand at the booster with oil of {cold}, {At(warmest[0])} at {warm}"
                : $"Cold oil holds back the booster: {At(coldest[^1])} at {cold}, {At(warmest[^1])} at {warm} for {most}")
            .Describe(
                "Back-pressure at the booster's return over the flow out of it, by Darcy's law with 64/Re or Colebrook's friction factor. "
                    + "A bend upwards is the change to turbulent flow.",
                string.Join(' ', curves.Select(curve =>
                    $"Oil of {curve.Name}: {At(curve.Pascals[0])} at rest, {At(curve.Pascals[^1])} at {most}.")))
            .X("Flow out of the booster", "Q", BenchMeasures.Flow, 0)
            .Y("Back-pressure", "Δp", BenchMeasures.BackPressure, 0, top?.Pascals);
        Dash[] dashes = [Dash.Solid, Dash.Dash, Dash.DashDot, Dash.LongDash, Dash.Dot];
        foreach ((int i, (double degrees, string name, double[] pascals)) in curves.Index())
        {
            figure.Line($"oil of {name}", flows, pascals, degrees <= coldDegrees ? Tone.Front : Tone.Main, dashes[i % dashes.Length]);
        }

        if (spring is { } level)
        {
            figure.Line("return springs", [0.0, flows[^1]], [level.Pascals, level.Pascals], Tone.Rear, Dash.LongDash);
        }

        return figure.Build();
    }
}
