namespace BrakeBalance.Charts.Figures;

/// <summary>Figures of braking in a bend: what lets go, and what that means for the valve.</summary>
public static class BendFigures
{
    private const string LateralAcceleration = "Lateral acceleration";

    /// <summary>Deceleration at which the first wheel slides and at which the first axle no longer holds the bend, against lateral
    /// acceleration.</summary>
    /// <param name="map">The bends.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    /// <exception cref="ArgumentException">No pressure brings a wheel to its limit anywhere.</exception>
    public static Figure Braking(BendMap map, UnitSystem? units = null, string id = "bend")
    {
        var figure = new FigureBuilder(id, units, map.Car);
        BendPoint[] sliding = [.. map.Points.Where(point => point.Course.FirstWheel is not null)];
        if (sliding.Length == 0)
        {
            throw new ArgumentException("No pressure brings a wheel to its limit in any bend, so there is nothing to show.", nameof(map));
        }

        BendPoint[] lost = [.. map.Points.Where(point => point.Course.FirstAxle is not null)];
        BendPoint[] spins = [.. lost.Where(point => point.RearLetsGo)];
        BendPoint middle = sliding[sliding.Length / 2];
        figure
            .Title(spins.Length == 0
                ? lost.Length == 0 ? "No pressure takes an axle out of the bend" : "In every bend the front axle lets go first"
                : $"At {RearLed(map)} g sideways the rear axle lets go first: the car spins")
            .Describe(
                $"The {map.Car.Name}, {map.LoadCase}, adhesion {StopFigures.Number(map.Adhesion)}, "
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
        foreach (BendPoint[] run in Runs(lost, point => point.RearLetsGo))
        {
            bool rear = run[0].RearLetsGo;
            figure.Line(
                rear ? "rear lets go: spins" : "front lets go: runs wide", run.Select(Sideways).ToArray(),
                    run.Select(point => point.Course.FirstAxle!.BrakingRate).ToArray(),
                rear ? Tone.Rear : Tone.Front, rear ? Dash.Dash : Dash.Solid, 3);
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
    /// <param name="id">The figure's short name.</param>
    public static Figure SafeKnee(BendMap map, UnitSystem? units = null, string id = "bend-knee")
    {
        var figure = new FigureBuilder(id, units, map.Car);
        figure.X(LateralAcceleration, "a", Measure.InG, 0);
        return map.Valve is { } valve ? Knees(figure, map, valve.Knee).Build() : SideForce(figure, map).Build();
    }

    private static FigureBuilder Knees(FigureBuilder figure, BendMap map, Pressure present)
    {
        double most = map.Points.Where(point => !map.AnyKnee(point)).Select(point => point.SafeKnee?.Pascals ?? 0).DefaultIfEmpty(0).Max();
        double top = Math.Min(map.MaximumPressure.Pascals,
            Math.Ceiling(1.25 * Math.Max(Math.Max(most, present.Pascals), 10e5) / 10e5) * 10e5);
        double[] lateral = [.. map.Points.Select(Sideways)];
        (BendPoint From, BendPoint To)[] limited = [.. Finding.Runs(map.Points, point => !map.AnyKnee(point))];
        (BendPoint From, BendPoint To)[] free = [.. Finding.Runs(map.Points, map.AnyKnee)];
        bool always = limited.Length == 0;
        string set = $"present knee of {SettingWords.Knee(present, figure.Units)}";
        string title = map.Points.FirstOrDefault(point => point.RearLetsGo) is not { } spins
            ? always ? "At any knee the front axle lets go first, in every bend" : $"The {set} keeps the front first in every bend"
            : spins.Course.LateralAcceleration.Value == 0 ? $"With the {set} the rear locks first even straight on"
            : $"With the {set} the rear lets go first at {RearLed(map)} g sideways";
        string everywhere = map.SafeKneeEverywhere is { } knee
            ? always ? "Any knee does in every bend." : $"A knee of {SettingWords.Number(knee, figure.Units)} holds in every bend shown."
            : $"At {Spans(map, point => point.SafeKnee is null)} g sideways no knee does.";
        string steps = always || free.Length == 0 ? ""
            : $" At {Spans(map, map.AnyKnee)} g any knee does: "
                + "the front lets go first even with no valve holding back.";
        string straight = steps.Length > 0 && limited[0].From == map.Points[0]
            ? " Straight on both wheels of an axle lock at once, in a bend the inner one first." : "";
        figure
            .Title(title)
            .Describe(
                $"Up to the line the front axle of the {map.Car.Name} lets go first, above it the rear: {map.LoadCase}, adhesion "
                    + $"{StopFigures.Number(map.Adhesion)}, "
                + $"{figure.Text(Measure.Speed, map.Speed)}, nominal friction. {everywhere}",
                $"{everywhere}{steps}{straight} Straight on the limit is {Limit(figure, map, map.Points[0])}, at "
                + $"{Lateral(map.Points[^1])} g sideways {Limit(figure, map, map.Points[^1])}. The front axle takes "
                    + $"{Measure.Percent.Text(map.FrontRollShare, figure.Units)} of the load that moves across the car.")
            .Y("Knee", "p", Measure.LinePressure, 0, top);
        if (!always && map.Points.Count > 1)
        {
            // A knee above the pressure at which an axle is lost does nothing: the limit ends in a step, here at the next bend.
            List<BendPoint> all = [.. map.Points];
            foreach ((int i, (BendPoint from, BendPoint to)) in limited.Index())
            {
                (int first, int last) = (all.IndexOf(from), all.IndexOf(to));
                (int before, int after) = (Math.Max(0, first - 1), Math.Min(all.Count, last + 2));
                double[] across = [.. all[before..after].Select(Sideways)];
                double[] knees = [.. Enumerable.Range(before, after - before)
                    .Select(at => Math.Min(top, all[Math.Clamp(at, first, last)].SafeKnee?.Pascals ?? 0))];
                figure.Region("rear lets go first: spins", [.. across, across[^1], across[0]], [.. knees, top, top], Tone.Rear,
                    Hatch.Rising, i == 0 ? null : "");
                figure.Line("highest knee with the front first", across, knees, Tone.Front, Dash.Solid, 3, i == 0 ? null : "");
            }

            foreach ((BendPoint from, BendPoint to) in free)
            {
                figure.Note("any knee", 0.5 * (Sideways(from) + Sideways(to)), 0.5 * (present.Pascals + top), Tone.Ideal);
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
            .Title(spins.Length == 0 ? "Without a valve the rear still holds when the front lets go"
                : $"Without a valve the rear lets go first at {RearLed(map)} g sideways")
            .Describe(
                $"Side force of the rear axle of the {map.Car.Name} at the moment at which the first axle is lost: {map.LoadCase}, "
                    + $"adhesion {StopFigures.Number(map.Adhesion)}. "
                + "The car has no proportioning valve to set.",
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

    private static IEnumerable<BendPoint[]> Runs(IReadOnlyList<BendPoint> points, Func<BendPoint, bool> kind)
    {
        int start = 0;
        for (int i = 1; i <= points.Count; i++)
        {
            if (i == points.Count || kind(points[i]) != kind(points[start]))
            {
                // The line ends where the next one begins.
                yield return [.. points.Take(Math.Min(i + 1, points.Count)).Skip(start)];
                start = i;
            }
        }
    }
}
