using static System.FormattableString;

namespace BrakeBalance.Charts.Lessons;

internal static partial class LessonFigures
{
    // Metres drawn for a force as great as the weight, and how far the body pitches at 1 g [rad]: about twice a road car's.
    private const double ForceScale = 0.95, Pitch = 0.07;

    /// <summary>The car cut free, from the side with its nose to the left: every force on it, and its pitch.</summary>
    private static Figure FreeBody(BalanceModel model, double rate, UnitSystem units)
    {
        double wheelbase = model.Vehicle.Wheelbase.Meters, radius = model.Vehicle.Tyres.Front.LoadedRadius.Meters;
        double a = model.LoadCase.FrontAxleToCentreOfGravity.Meters, h = model.LoadCase.CentreOfGravityHeight.Meters;
        PerAxle<Force> loads = model.NormalReactions(rate), braking = model.IdealForces(rate);
        double weight = model.Weight.Newtons;
        double Drawn(Force force) => ForceScale * force.Newtons / weight;
        Force inertia = model.Weight * rate;
        (double sin, double cos) = Math.SinCos(Pitch * rate);
        (double X, double Y)[] body =
        [
            (-0.72, 0.28), (-0.76, 0.58), (-0.55, 0.78), (0.22 * wheelbase, 0.92), (0.40 * wheelbase, 1.36), (0.74 * wheelbase, 1.36),
            (wheelbase + 0.05, 0.98), (wheelbase + 0.62, 0.92), (wheelbase + 0.68, 0.5), (wheelbase + 0.60, 0.28), (-0.72, 0.28),
        ];
        (double X, double Y)[] pitched = [.. body.Select(corner => (
            a + ((corner.X - a) * cos) - ((corner.Y - h) * sin), h + ((corner.X - a) * sin) + ((corner.Y - h) * cos)))];
        var figure = new FigureBuilder("lesson-free-body", units);
        figure.Title(rate > 0
                ? Invariant($"At a deceleration of {rate:0.00} g the road carries {loads.Front / model.Weight:0\u00a0%} of the car ")
                    + "through the front wheels"
                : "At rest only weight and axle loads act on the car")
            .Describe(
                $"The car cut free: all forces on it to one scale, the pitch enlarged. Both wheels of an axle together. {Invented}",
                $"The weight of {Whole(model.Weight, units)} pulls down and the inertia force of {Whole(inertia, units)} forward at the "
                    + $"centre of gravity. The road pushes up with {Whole(loads.Front, units)} at the front and "
                    + $"{Whole(loads.Rear, units)} at the rear, and back with {Whole(braking.Front, units)} and "
                    + $"{Whole(braking.Rear, units)}, shared as the loads are.")
            .ToScale()
            .X("Behind the front axle", "", Measure.Distance, -1.05, wheelbase + 1.5)
            .Y("Above the road", "", Measure.Distance, -1.15, 1.6)
            .Table(table => table
                .Words("Force", "weight m g", "inertia force z m g", "front axle load N₁", "rear axle load N₂",
                    "front braking force T₁", "rear braking force T₂")
                .Words("Way", "down", "forward", "up", "up", "back", "back")
                .Column("Size", Measure.BrakeForce,
                    new[] { model.Weight, inertia, loads.Front, loads.Rear, braking.Front, braking.Rear }))
            .Line("road", [-1.05, wheelbase + 1.5], [0, 0], Tone.Guide, Dash.Solid, 1, "")
            .Region("body", pitched.Select(corner => corner.X).ToArray(), pitched.Select(corner => corner.Y).ToArray(), Tone.Guide,
                Hatch.None, "")
            .Line("outline", pitched.Select(corner => corner.X).ToArray(), pitched.Select(corner => corner.Y).ToArray(), Tone.Guide,
                Dash.Solid, 1.5, "");
        foreach ((string name, double x) in new[] { ("front wheel", 0), ("rear wheel", wheelbase) })
        {
            double[] turn = [.. Enumerable.Range(0, 33).Select(i => i * Math.PI / 16)];
            figure.Line(name, turn.Select(at => x + (radius * Math.Sin(at))).ToArray(),
                turn.Select(at => radius * (1 - Math.Cos(at))).ToArray(), Tone.Guide, Dash.Solid, 1.5, "");
        }

        Arrow("m g", "weight", a, h, 0, -ForceScale, Tone.Main, 0.8);
        Arrow("z m g", "inertia force", a, h, -Drawn(inertia), 0, Tone.Other, 0.8);
        Arrow("N₁", "front axle load", 0, -Drawn(loads.Front), 0, Drawn(loads.Front), Tone.Front, 0.1);
        Arrow("N₂", "rear axle load", wheelbase, -Drawn(loads.Rear), 0, Drawn(loads.Rear), Tone.Rear, 0.1);
        Arrow("T₁", "front braking force", 0, 0, Drawn(braking.Front), 0, Tone.Front, 0.8);
        Arrow("T₂", "rear braking force", wheelbase, 0, Drawn(braking.Rear), 0, Tone.Rear, 0.8);
        return figure.Line("height", [wheelbase + 1.3, wheelbase + 1.3], [0, h], Tone.Guide, Dash.Dot, 1, "h", 0.7)
            .Line("to the centre of gravity", [a, wheelbase + 1.3], [h, h], Tone.Guide, Dash.Dot, 1, "")
            .Line("wheelbase", [0, wheelbase], [-1.08, -1.08], Tone.Guide, Dash.Dot, 1, "E", 0.5)
            .Points("centre of gravity", new[] { a }, new[] { h }, Tone.Main, label: "").Build();

        // One stroke: the shaft and, from its tip, both barbs.
        void Arrow(string label, string name, double x, double y, double along, double up, Tone tone, double labelAt)
        {
            double length = Math.Sqrt((along * along) + (up * up)), barb = Math.Min(0.12, 0.6 * length);
            if (length < 0.01)
            {
                return;
            }

            (double ux, double uy, double tipX, double tipY) = (barb * along / length, barb * up / length, x + along, y + up);
            figure.Line(name, [x, tipX, tipX - ux - (uy / 2), tipX, tipX - ux + (uy / 2)],
                [y, tipY, tipY - uy + (ux / 2), tipY, tipY - uy - (ux / 2)], tone, Dash.Solid, 3, label, labelAt);
        }
    }
}
