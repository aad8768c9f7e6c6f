namespace BrakeBalance.Charts.Figures;

/// <summary>Figures of braking in a bend: what lets go, and what that means for the valve.</summary>
public static class BendFigures
{
    private const string LateralAcceleration = "Lateral acceleration";

    /// <summary>Deceleration at which the first wheel slides and at which the first axle no longer holds the bend, against lateral
    /// acceleration.</summary>
    /// <param name="map">The bends.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <exception cref="ArgumentException">No pressure brings a wheel to its limit anywhere.</exception>
    public static Figure Braking(BendMap map, UnitSystem? units = null)
    {
        var figure = new FigureBuilder("bend", units, map.Car);
        BendPoint[] sliding = [.. map.Points.Where(point => point.Course.FirstWheel is not null)];
        Refuse.If(sliding.Length == 0, "No pressure brings a wheel to its limit in any bend, so there is nothing to show.", nameof(map));

        BendPoint[] lost = [.. map.Points.Where(point => point.Course.FirstAxle is not null)];
        BendPoint[] spins = [.. lost.Where(point => point.RearLetsGo)];
        BendPoint middle = sliding[sliding.Length / 2];
        figure
            .Title(spins.Length == 0
                ? lost.Length == 0 ? "No pressure takes an axle out of the bend" : "In every bend the front axle lets go first"
                : $"At {RearLed(map)} g sideways the rear axle lets go first: the car spins")
            .Describe(
                $"{Finding.Capital(map.Car.InText)}, {map.LoadCase}, adhesion {StopFigures.Number(map.Adhesion)}, "
                    + $"{figure.Text(Measure.Speed, map.Speed)}. Steady bend, pressure rising. A sliding wheel "
                + "brakes less, but its axle is lost only when the other wheel no longer holds it.",
                $"At {Lateral(middle)} g sideways the {Wheel(middle)} slides first, at "
                    + $"{StopFigures.Number(middle.Course.FirstWheel!.BrakingRate)} g. "
                + (middle.Course.FirstAxle is { } loss
                    ? $"The {Name(loss.Axle)} axle no longer holds the bend at {StopFigures.Number(loss.BrakingRate)} g. " : "")
                + $"Without braking the tyres hold {StopFigures.Number(map.Limit.StandardGravity)} g.")
            .X(LateralAcceleration, "a", Measure.InG, 0)
            .Y("Deceleration", "z", Measure.InG, 0)
            .Line(
                "first wheel slides", sliding.Select(Sideways).ToArray(),
                    sliding.Select(point => point.Course.FirstWheel!.BrakingRate).ToArray(), Tone.Main, Dash.Dot, 2);
        Run[] runs = [.. Runs(lost, point => point.RearLetsGo, point => point.Course.FirstAxle!.BrakingRate)];
        foreach (Run run in runs)
        {
            figure.Line(
                run.IsSo ? "rear lets go: spins" : "front lets go: runs wide", run.X, run.Y, run.IsSo ? Tone.Rear : Tone.Front,
                run.IsSo ? Dash.Dash : Dash.Solid, 3, LabelOf(run, runs));
        }

        BendPoint[] listed = Listed(map);
        return figure.Table(table => table
            .Column(LateralAcceleration, Measure.InG, listed.Select(Sideways).ToArray())
            .Words("First wheel", listed.Select(Wheel))
            .Column("Deceleration then", Measure.InG, listed.Select(point => point.Course.FirstWheel?.BrakingRate).ToArray())
            .Words("First axle lost", listed.Select(point => point.Course.FirstAxle is { } loss ? Name(loss.Axle) : "none"))
            .Column("Deceleration at that", Measure.InG, listed.Select(point => point.Course.FirstAxle?.BrakingRate).ToArray())
            .Column("Line pressure at that", Measure.LinePressure,
                listed.Select(point => point.Course.FirstAxle?.LinePressure.Pascals).ToArray())
            .Column("Rear side force needed", Measure.BrakeForce,
                listed.Select(point => (double?)point.Course.SideForceNeeded.Rear.Newtons).ToArray())
            .Column("Rear side force left", Measure.BrakeForce,
                listed.Select(point => point.Course.FirstAxle?.SideForceLeft.Rear.Newtons).ToArray()))
            .Build();
    }

    /// <summary>The highest knee with which the front axle lets go first, against lateral acceleration; without a proportioning valve, what
    /// side force the rear has left.</summary>
    /// <param name="map">The bends.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static Figure SafeKnee(BendMap map, UnitSystem? units = null)
    {
        var figure = new FigureBuilder("bend-knee", units, map.Car);
        figure.X(LateralAcceleration, "a", Measure.InG, 0);
        return map.Valve is { } valve ? Knees(figure, map, valve.Knee).Build() : SideForce(figure, map).Build();
    }

    private static FigureBuilder Knees(FigureBuilder figure, BendMap map, Pressure present)
    {
        double most = map.Points.Where(point => !map.AnyKnee(point)).Select(point => point.SafeKnee?.Pascals ?? 0).DefaultIfEmpty(0).Max();
        double top = Math.Min(map.MaximumPressure.Pascals,
            Math.Ceiling(1.25 * Math.Max(Math.Max(most, present.Pascals), 10e5) / 10e5) * 10e5);
        double[] lateral = [.. map.Points.Select(Sideways)];
        bool always = map.Points.All(map.AnyKnee);
        string set = $"present knee of {SettingWords.Knee(present, figure.Units)}";
        string title = map.Points.FirstOrDefault(point => point.RearLetsGo) is not { } spins
            ? always ? "At any knee the front axle lets go first, in every bend" : $"The {set} keeps the front first in every bend"
            : spins.Course.LateralAcceleration.Value == 0 ? $"With the {set} the rear locks first even straight on"
            : $"With the {set} the rear lets go first at {RearLed(map)} g sideways";
        string everywhere = map.SafeKneeEverywhere is { } knee
            ? always ? "Any knee does in every bend." : $"A knee of {SettingWords.Number(knee, figure.Units)} holds in every bend shown."
            : $"At {Spans(map, point => point.SafeKnee is null)} g sideways no knee does.";
        string steps = always || !map.Points.Any(map.AnyKnee) ? ""
            : $" At {Spans(map, map.AnyKnee)} g any knee does: the front lets go first even with no valve holding back.";
        string straight = steps.Length > 0 && !map.AnyKnee(map.Points[0])
            ? " Straight on both wheels of an axle lock at once, in a bend the inner one first." : "";
        figure
            .Title(title)
            .Describe(
                $"Up to the line the front axle of {map.Car.InText} lets go first, above it the rear: {map.LoadCase}, adhesion "
                    + $"{StopFigures.Number(map.Adhesion)}, {figure.Text(Measure.Speed, map.Speed)}, nominal friction. {everywhere}",
                $"{everywhere}{steps}{straight} Straight on the limit is {Limit(figure, map, map.Points[0])}, at "
                + $"{Lateral(map.Points[^1])} g sideways {Limit(figure, map, map.Points[^1])}. The front axle takes "
                    + $"{Measure.Percent.Text(map.FrontRollShare, figure.Units)} of the load that moves across the car.")
            .Y("Knee", "p", Measure.LinePressure, 0, top);
        if (!always && map.Points.Count > 1)
        {
            // A knee above the pressure at which an axle is lost does nothing: the limit ends in a step.
            Run[] runs = [.. Runs(map.Points, map.AnyKnee, point => Math.Min(top, point.SafeKnee?.Pascals ?? 0), level: true)];
            foreach (Run run in runs)
            {
                double[] across = [.. run.X, run.X[^1], run.X[0]];
                string? label = LabelOf(run, runs);
                if (run.IsSo)
                {
                    figure.Region("any knee", across, [.. run.X.Select(_ => 0.0), top, top], Tone.Ideal, Hatch.None, label);
                }
                else
                {
                    figure.Region("rear lets go first: spins", across, [.. run.Y, top, top], Tone.Rear, Hatch.Rising, label);
                    figure.Line("highest knee with the front first", run.X, run.Y, Tone.Front, Dash.Solid, 3, label);
                }
            }
        }

        return figure
            .Level("present knee", present.Pascals, Tone.Other, Dash.Dot)
            .Table(table => table
                .Column(LateralAcceleration, Measure.InG, lateral)
                .Words("Highest knee with the front first", map.Points.Select(point => Limit(figure, map, point)))
                .Words("At the present knee",
                    map.Points.Select(point => point.Course.FirstAxle is { } loss ? $"{Name(loss.Axle)} first" : "none")));
    }

    private static FigureBuilder SideForce(FigureBuilder figure, BendMap map)
    {
        BendPoint[] lost = [.. map.Points.Where(point => point.Course.FirstAxle is not null)];
        BendPoint[] spins = [.. lost.Where(point => point.RearLetsGo)];
        return figure
            .Title(spins.Length == 0 ? "The rear still holds when the front lets go"
                : $"The rear lets go first at {RearLed(map)} g sideways")
            .Describe(
                $"Side force of the rear axle of {map.Car.InText} at the moment at which the first axle is lost: {map.LoadCase}, "
                    + $"adhesion {StopFigures.Number(map.Adhesion)}. The car has no proportioning valve to set.",
                "Where the rear can give no more than the bend needs, it is the axle that lets go.")
            .Y("Side force of the rear axle", "F", Measure.BrakeForce, 0)
            .Line("could give", lost.Select(Sideways).ToArray(),
                lost.Select(point => point.Course.FirstAxle!.SideForceLeft.Rear.Newtons).ToArray(), Tone.Rear, Dash.Solid, 3)
            .Line("bend needs", lost.Select(Sideways).ToArray(), lost.Select(point => point.Course.SideForceNeeded.Rear.Newtons).ToArray(),
                Tone.Main, Dash.Dash);
    }

    /// <summary>The lateral accelerations over g at which the rear axle is lost first, such as <c>0.40 to 0.85 and 0.95</c>.</summary>
    internal static string RearLed(BendMap map) => Spans(map, point => point.RearLetsGo);

    private static string Spans(BendMap map, Func<BendPoint, bool> of) => string.Join(" and ", Finding.Runs(map.Points, of)
        .Select(run => run.From == run.To ? Lateral(run.From) : $"{Lateral(run.From)} to {Lateral(run.To)}"));

    private static string Limit(FigureBuilder figure, BendMap map, BendPoint point) =>
        point.SafeKnee is not { } knee ? "no knee" : map.AnyKnee(point) ? "any knee" : SettingWords.Number(knee, figure.Units);

    private static BendPoint[] Listed(BendMap map) => [.. map.Points.Where((_, i) => map.Points.Count < 15 || i % 2 == 0)];

    private static double Sideways(BendPoint point) => point.Course.LateralAcceleration.StandardGravity;

    private static string Lateral(BendPoint point) => StopFigures.Number(Sideways(point));

    private static string Name(Axle axle) => axle == Axle.Front ? "front" : "rear";

    private static string Wheel(BendPoint point) =>
        point.Course.FirstWheel is { } wheel ? $"{Name(wheel.Axle)} {(wheel.Side == BendSide.Inner ? "inner" : "outer")} wheel" : "none";

    private static string? LabelOf(Run run, IEnumerable<Run> all) =>
        all.Where(one => one.IsSo == run.IsSo).MaxBy(one => one.X[^1] - one.X[0]) == run ? null : "";

    /// <summary>The bends of one kind in a row; between two kinds each reaches half way, level or along the line.</summary>
    private static IEnumerable<Run> Runs(IReadOnlyList<BendPoint> points, Func<BendPoint, bool> kind, Func<BendPoint, double> value,
        bool level = false)
    {
        int start = 0;
        for (int i = 1; i <= points.Count; i++)
        {
            if (i == points.Count || kind(points[i]) != kind(points[start]))
            {
                List<(double X, double Y)> path = [.. points.Take(i).Skip(start).Select(point => (Sideways(point), value(point)))];
                if (start > 0)
                {
                    path.Insert(0, HalfWay(points[start], points[start - 1]));
                }

                if (i < points.Count)
                {
                    path.Add(HalfWay(points[i - 1], points[i]));
                }

                yield return new(kind(points[start]), [.. path.Select(at => at.X)], [.. path.Select(at => at.Y)]);
                start = i;
            }
        }

        (double X, double Y) HalfWay(BendPoint own, BendPoint other) =>
            (0.5 * (Sideways(own) + Sideways(other)), level ? value(own) : 0.5 * (value(own) + value(other)));
    }

    private sealed record Run(bool IsSo, double[] X, double[] Y);
}
