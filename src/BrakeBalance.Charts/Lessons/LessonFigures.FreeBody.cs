using BrakeBalance.Charts.Figures;
using static System.FormattableString;

namespace BrakeBalance.Charts.Lessons;

internal static partial class LessonFigures
{
    /// <summary>A car at rest with the names of its lengths and of the forces on it; where its centre of gravity lies is for the reader to
    /// find, so it stands anywhere along the car, as every force is of any size.</summary>
    public static Figure Sketch(BalanceModel model, UnitSystem units)
    {
        const double Force = 0.55, Anywhere = 0.45;
        double wheelbase = model.Vehicle.Wheelbase.Meters, end = wheelbase + SideView.Behind - 0.2;
        double a = Anywhere * wheelbase, h = model.LoadCase.CentreOfGravityHeight.Meters;
        return new FigureBuilder("sketch", units)
            .Title("The names of your car's lengths and forces")
            .Describe("Wheelbase, tyres and height are to scale; a and the arrows are not.",
                "The weight pulls down at the centre of gravity; the road pushes up at both axles.")
            .Car(model, 0)
            .Arrow("m g", "weight", a, h, 0, -Force, Tone.Main, 0.8)
            .Arrow("N₁", "front axle load", 0, -Force, 0, Force, Tone.Front, 0.1)
            .Arrow("N₂", "rear axle load", wheelbase, -Force, 0, Force, Tone.Rear, 0.1)
            .Line("height", [end, end], [0, h], Tone.Guide, Dash.Dot, 1, "h", 0.7)
            .Line("to the centre of gravity", [a, end], [h, h], Tone.Guide, Dash.Dot, 1, "")
            .Line("front axle to centre of gravity", [0, a], [-0.8, -0.8], Tone.Guide, Dash.Dot, 1, "a", 0.5)
            .Line("wheelbase", [0, wheelbase], [-1.08, -1.08], Tone.Guide, Dash.Dot, 1, "E", 0.5)
            .Points("centre of gravity", new[] { a }, new[] { h }, Tone.Main, label: "").Build();
    }

    /// <summary>The car cut free, from the side: every force on it, and its pitch.</summary>
    private static Figure FreeBody(BalanceModel model, double rate, UnitSystem units)
    {
        double wheelbase = model.Vehicle.Wheelbase.Meters, end = wheelbase + SideView.Behind - 0.2;
        double a = model.LoadCase.FrontAxleToCentreOfGravity.Meters, h = model.LoadCase.CentreOfGravityHeight.Meters;
        PerAxle<Force> loads = model.NormalReactions(rate), braking = model.IdealForces(rate);
        Force inertia = model.Weight * rate;
        return new FigureBuilder("lesson-free-body", units, model.Vehicle)
            .Title(rate > 0
                ? Invariant($"At a deceleration of {rate:0.00} g the road carries {loads.Front / model.Weight:0\u00a0%} of the car ")
                    + "through the front wheels"
                : "At rest only weight and axle loads act on the car")
            .Describe(
                $"The car cut free: all forces on it to one scale, the pitch enlarged. Both wheels of an axle together. {Invented}",
                $"The weight of {Whole(model.Weight, units)} pulls down and the inertia force of {Whole(inertia, units)} forward at the "
                    + $"centre of gravity. The road pushes up with {Whole(loads.Front, units)} at the front and "
                    + $"{Whole(loads.Rear, units)} at the rear, and back with {Whole(braking.Front, units)} and "
                    + $"{Whole(braking.Rear, units)}, shared as the loads are.")
            .Table(table => table
                .Words("Force", "weight m g", "inertia force z m g", "front axle load N₁", "rear axle load N₂",
                    "front braking force T₁", "rear braking force T₂")
                .Words("Way", "down", "forward", "up", "up", "back", "back")
                .Column("Size", Measure.BrakeForce,
                    new[] { model.Weight, inertia, loads.Front, loads.Rear, braking.Front, braking.Rear }))
            .Car(model, rate)
            .Arrow("m g", "weight", a, h, 0, -model.Drawn(model.Weight), Tone.Main, 0.8)
            .Arrow("z m g", "inertia force", a, h, -model.Drawn(inertia), 0, Tone.Other, 0.8)
            .Arrow("N₁", "front axle load", 0, -model.Drawn(loads.Front), 0, model.Drawn(loads.Front), Tone.Front, 0.1)
            .Arrow("N₂", "rear axle load", wheelbase, -model.Drawn(loads.Rear), 0, model.Drawn(loads.Rear), Tone.Rear, 0.1)
            .Arrow("T₁", "front braking force", 0, 0, model.Drawn(braking.Front), 0, Tone.Front, 0.8)
            .Arrow("T₂", "rear braking force", wheelbase, 0, model.Drawn(braking.Rear), 0, Tone.Rear, 0.8)
            .Line("height", [end, end], [0, h], Tone.Guide, Dash.Dot, 1, "h", 0.7)
            .Line("to the centre of gravity", [a, end], [h, h], Tone.Guide, Dash.Dot, 1, "")
            .Line("wheelbase", [0, wheelbase], [-1.08, -1.08], Tone.Guide, Dash.Dot, 1, "E", 0.5)
            .Points("centre of gravity", new[] { a }, new[] { h }, Tone.Main, label: "").Build();
    }
}
