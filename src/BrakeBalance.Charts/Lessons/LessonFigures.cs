using BrakeBalance.Charts.Exploring;
using static System.FormattableString;

namespace BrakeBalance.Charts.Lessons;

/// <summary>The figures to explore in the lessons: each shows the invented car of a sheet.</summary>
internal static partial class LessonFigures
{
    private const string Invented = "Invented exercise car; rigid, level road, no aerodynamics.";

    // The rear axle of a car with its engine in the rear brakes with half its weight and more.
    private const double RearTop = 0.55;

    // Layers of the figures to draw that show nothing but what a sheet says of its car, or what holds for every car.
    private static readonly string[] Given = ["no valve", "knee", "ideal, f = z", "rule's pedal force", "failed-assist rule"];

    private static readonly double[] Rates = [.. Enumerable.Range(0, 23).Select(i => i * 0.05)];

    /// <summary>The figure of a lesson.</summary>
    public static Explorable Of(Lesson lesson, ExerciseCar car, UnitSystem? units = null, bool isAsked = false)
    {
        UnitSystem shown = units ?? Display.Units;
        return lesson.Id switch
        {
            "static-load" => StaticLoad(car, shown),
            "load-transfer" => LoadTransfer(car, shown),
            "ideal-curve" => IdealCurve(car, shown),
            "fixed-ratio" => FixedRatioLine(car, shown, isAsked),
            "knee" => Knee(car, shown),
            "adhesion-utilisation" => Utilisation(car, shown, isAsked),
            "effort" => Effort(car, shown),
            "failed-assist" => FailedAssist(car, shown),
            "rear-lock" => RearLock(car, shown),
            "heat" => Heat(car, shown, isAsked),
            _ => throw new ArgumentException($"There is no figure for the lesson \"{lesson.Id}\".", nameof(lesson)),
        };
    }

    /// <summary>The figure of a lesson for those who are asked for its values: the picture moves, and tells no number of the car.</summary>
    public static Explorable ToCheckWith(Lesson lesson, ExerciseCar car, UnitSystem units) =>
        Of(lesson, car, units, isAsked: true).Shown(whole => new Frame(
            [.. whole.Figures.Select(figure => figure with
            {
                Title = "The car of your sheet",
                LongDescription = AskedFor,
                Table = new FigureTable(new Microsoft.Data.Analysis.DataFrame()),
            })],
            [], new Verdict(AskedFor)));

    private const string AskedFor = "The sheet asks for the values: work them out, then check them against the picture.";

    /// <summary>The figure of a lesson that a class draws: the first with axes of its own.</summary>
    public static Figure ToDraw(Lesson lesson, ExerciseCar car, UnitSystem units) =>
        Of(lesson, car, units).Start.Figures.First(figure => !figure.IsToScale);

    /// <summary>The same without what has to be found: its axes, and what a sheet gives.</summary>
    public static Figure ToDrawInto(Lesson lesson, ExerciseCar car, UnitSystem units)
    {
        Figure whole = ToDraw(lesson, car, units);
        return whole with
        {
            Title = "To draw into, with the car of this sheet",
            Caption = "",
            LongDescription = "Axes and what is given.",
            Layers = [.. whole.Layers.Where(layer => Given.Contains(layer.Name))],
        };
    }

    /// <summary>Settings with the car's own among them, in place of those that could be taken for it.</summary>
    private static double[] With(double own, double apart, IEnumerable<double> others) =>
        [.. others.Where(other => Math.Abs(other - own) > apart).Append(own).Order()];

    /// <summary>A slider of shares that begins with the car's own; where that is asked for, by steps from it.</summary>
    private static (double[] Shares, Control Slider) RearShares(ExerciseCar car, UnitSystem units, bool isAsked)
    {
        const string Label = "Rear share of the braking force";
        double own = car.RearForceShare;
        if (!isAsked)
        {
            double[] known = With(own, 0.012, Enumerable.Range(0, 19).Select(i => 0.14 + 0.02 * i));
            return (known, Control.Slider("share", Label, Measure.Percent, known, Array.IndexOf(known, own), units));
        }

        double[] steps = [.. Enumerable.Range(-5, 11).Select(i => 0.02 * i)];
        return ([.. steps.Select(step => own + step)], Control.Slider("share", Label,
            steps.Select(step => step == 0 ? "your car's" : Invariant($"your car's {step:+ 0.00;− 0.00}")), 5));
    }

    /// <summary>A force as near as a sheet asks for it.</summary>
    private static string Whole(Force force, UnitSystem units) =>
        units == UnitSystem.Us ? Invariant($"{force.PoundsForce:0} lbf") : Invariant($"{force.Newtons:0} N");

    private static string Three(double value) => Invariant($"{value:0.000}");

    private static Explorable StaticLoad(ExerciseCar car, UnitSystem units)
    {
        double[] boxes = [.. Enumerable.Range(0, 11).Select(i => i * 20.0)];
        (string Name, double Metres)[] places =
            [("on the front axle", 0), ("in the middle of the wheelbase", car.Vehicle.Wheelbase.Meters / 2),
            ("on the rear axle", car.Vehicle.Wheelbase.Meters),
                (InBoth.Only("0.5 m (20 in) behind the rear axle", units == UnitSystem.Us), car.Vehicle.Wheelbase.Meters + 0.5)];
        return Explorable.Of(
            "lesson-static-load",
            [Control.Slider("box", "Load added", Measure.Mass, boxes, 0, units),
                Control.Choice("place", "Where it lies", places.Select(place => place.Name), 2)],
            state =>
            {
                double box = boxes[state["box"]];
                double total = car.LoadCase.Mass.Kilograms + box;
                double a = ((car.LoadCase.Mass.Kilograms * car.LoadCase.FrontAxleToCentreOfGravity.Meters)
                    + (box * places[state["place"]].Metres)) / total;
                PerAxle<Force> loads = new BalanceModel(car.Vehicle, car.LoadCase with
                { Mass = Mass.FromKilograms(total), FrontAxleToCentreOfGravity = Length.FromMeters(a) }).StaticAxleLoads;
                PerAxle<Force> before = car.Balance.StaticAxleLoads;
                double share = loads.Front / (loads.Front + loads.Rear);
                Figure figure = new FigureBuilder("lesson-static-load-bars", units, car.Vehicle)
                    .Title(Invariant($"The front axle carries {share:0.0\u00a0%} of the weight"))
                    .Describe($"Axle loads at rest, before and with the added load. {Invented}",
                        $"Without the load the front axle carries {Measure.BrakeForce.Text(before.Front, units)} "
                            + $"and the rear {Measure.BrakeForce.Text(before.Rear, units)}; with it "
                            + $"{Measure.BrakeForce.Text(loads.Front, units)} and {Measure.BrakeForce.Text(loads.Rear, units)}.")
                    .Categories("Axle", "front axle", "rear axle")
                    .Y("Axle load at rest", "P₁, P₂", Measure.BrakeForce, 0, car.Balance.Weight.Newtons)
                    .Bars("before", new double[] { before.Front.Newtons, before.Rear.Newtons }, Tone.Guide, Hatch.Dots)
                    .Bars("with the load", new double[] { loads.Front.Newtons, loads.Rear.Newtons }, Tone.Main)
                    .Build();
                return new Frame([figure],
                [
                    new("Front axle", Whole(loads.Front, units)),
                    new("Rear axle", Whole(loads.Rear, units)),
                    new("Front share", Three(share)),
                ]);
            });
    }

    private static Explorable LoadTransfer(ExerciseCar car, UnitSystem units)
    {
        double own = car.LoadCase.CentreOfGravityHeight.Meters;
        double[] heights = With(own, 0.02, [0.40, 0.45, 0.50, 0.55, 0.60, 0.65, 0.70]);
        double[] rates = Rates[..21];
        return Explorable.Of(
            "lesson-load-transfer",
            [Control.Slider("rate", "Deceleration", Measure.InG, rates, 12, units),
                Control.Slider("height", "Height of the centre of gravity", Measure.Travel, heights, Array.IndexOf(heights, own), units)],
            state =>
            {
                var model = new BalanceModel(car.Vehicle,
                    car.LoadCase with { CentreOfGravityHeight = Length.FromMeters(heights[state["height"]]) });
                double rate = rates[state["rate"]];
                PerAxle<Force> at = model.NormalReactions(rate);
                double shift = at.Front.Newtons - model.StaticAxleLoads.Front.Newtons;
                Figure figure = new FigureBuilder("lesson-load-transfer-lines", units, car.Vehicle)
                    .Title(Invariant($"At a deceleration of {rate:0.00} g the rear axle keeps {at.Rear / model.Weight:0\u00a0%} ")
                        + "of the weight")
                    .Describe($"Normal reactions of both axles against deceleration. {Invented}",
                        $"The front load rises from {Measure.BrakeForce.Text(model.StaticAxleLoads.Front, units)} at rest to "
                            + $"{Measure.BrakeForce.Text(at.Front, units)} at the deceleration chosen; the rear load falls by the "
                            + $"same {Measure.BrakeForce.Text(shift, units)}.")
                    .X("Deceleration", "z", Measure.InG, 0, 1)
                    .Y("Normal reaction", "N₁, N₂", Measure.BrakeForce, 0, model.Weight.Newtons)
                    .Line("front axle", rates, rates.Select(z => model.NormalReactions(z).Front.Newtons).ToArray(), Tone.Front)
                    .Line("rear axle", rates, rates.Select(z => model.NormalReactions(z).Rear.Newtons).ToArray(), Tone.Rear, Dash.Dash)
                    .Points("at the deceleration chosen", new double[] { rate, rate }, new double[] { at.Front.Newtons, at.Rear.Newtons },
                        Tone.Main, label: "")
                    .Build();
                return new Frame([FreeBody(model, rate, units), figure],
                [
                    new("Load moved", Whole(Force.FromNewtons(shift), units)),
                    new("Front axle", Whole(at.Front, units)),
                    new("Rear axle", Whole(at.Rear, units)),
                    new("Both", Whole(model.Weight, units)),
                ]);
            });
    }

    private static Explorable IdealCurve(ExerciseCar car, UnitSystem units)
    {
        double own = car.LoadCase.CentreOfGravityHeight.Meters;
        double[] heights = With(own, 0.03, [0.40, 0.475, 0.55, 0.625, 0.70]);
        double[] shares = With(car.FrontShare, 0.03, [0.40, 0.48, 0.56, 0.64]);
        double[] rates = [.. Enumerable.Range(0, 21).Select(i => i * 0.05)];
        double top = car.Balance.Weight.Newtons;
        return Explorable.Of(
            "lesson-ideal-curve",
            [
                Control.Slider("rate", "Deceleration", Measure.InG, rates, 14, units),
                Control.Slider("height", "Height of the centre of gravity", Measure.Travel, heights, Array.IndexOf(heights, own), units),
                Control.Slider("share", "Weight on the front axle at rest", Measure.Percent, shares,
                    Array.IndexOf(shares, car.FrontShare), units),
            ],
            state =>
            {
                var model = new BalanceModel(car.Vehicle, car.LoadCase with
                {
                    CentreOfGravityHeight = Length.FromMeters(heights[state["height"]]),
                    FrontAxleToCentreOfGravity = car.Vehicle.Wheelbase * (1 - shares[state["share"]]),
                });
                double rate = rates[state["rate"]];
                PerAxle<Force> at = model.IdealForces(rate);
                double rear = rate > 0 ? at.Rear / (at.Front + at.Rear) : 1 - shares[state["share"]];
                return new Frame([
                    new FigureBuilder("lesson-ideal-curve-plane", units, car.Vehicle)
                        .Title(Invariant($"At a deceleration of {rate:0.00} g the rear axle should do {rear:0\u00a0%} of the braking"))
                        .Describe($"Ideal rear against front braking force up to a deceleration of 1.0 g. {Invented}",
                            $"At the deceleration chosen the ideal forces are {Measure.BrakeForce.Text(at.Front, units)} in front and "
                                + $"{Measure.BrakeForce.Text(at.Rear, units)} at the rear.")
                        .X("Front braking force", "T₁", Measure.BrakeForce, 0, top)
                        .Y("Rear braking force", "T₂", Measure.BrakeForce, 0, RearTop * top)
                        .Line("ideal curve", rates.Select(z => model.IdealForces(z).Front.Newtons)
                            .ToArray(), rates.Select(z => model.IdealForces(z).Rear.Newtons).ToArray(), Tone.Ideal)
                        .Line("equal deceleration", new double[] { Math.Max(0, (rate - RearTop) * top), rate * top },
                            new double[] { Math.Min(rate, RearTop) * top, 0 }, Tone.Guide, Dash.Dot, label: "")
                        .Points("at the deceleration chosen", new double[] { at.Front.Newtons }, new double[] { at.Rear.Newtons },
                            Tone.Main, label: "")
                        .Build(),
                ],
                [
                    new("Front, ideally", Whole(at.Front, units)),
                    new("Rear, ideally", Whole(at.Rear, units)),
                    new("Rear share", Three(rear)),
                ]);
            });
    }

    private static Explorable FixedRatioLine(ExerciseCar car, UnitSystem units, bool isAsked)
    {
        (double[] shares, Control slider) = RearShares(car, units, isAsked);
        double weight = car.Balance.Weight.Newtons;
        double[] rates = Rates[..21];
        return Explorable.Of(
            "lesson-fixed-ratio",
            [slider],
            state =>
            {
                double share = shares[state["share"]];
                FixedRatio ratio = car.WithShare(share);
                double? critical = ratio.CriticalRate;
                FigureBuilder figure = new FigureBuilder("lesson-fixed-ratio-plane", units, car.Vehicle)
                    .Title(critical is { } z
                        ? Invariant($"Below a deceleration of {z:0.00} g the front axle leads, above it the rear")
                        : "The rear axle leads at every deceleration")
                    .Describe($"A fixed share against the ideal curve, up to a deceleration of 1.0 g. {Invented}",
                        critical is { } crossing
                            ? Invariant($"The straight line lies below the ideal curve up to a deceleration of {crossing:0.00} g ")
                                + "and above it from there on." : "The straight line lies above the ideal curve everywhere.")
                    .X("Front braking force", "T₁", Measure.BrakeForce, 0, weight)
                    .Y("Rear braking force", "T₂", Measure.BrakeForce, 0, RearTop * weight)
                    .Line("ideal curve", rates.Select(r => car.Balance.IdealForces(r).Front.Newtons)
                        .ToArray(), rates.Select(r => car.Balance.IdealForces(r).Rear.Newtons).ToArray(), Tone.Ideal, Dash.Dash)
                    .Line("fixed share", new double[] { 0, (1 - share) * weight }, new double[] { 0, share * weight }, Tone.Main);
                if (critical is { } meets)
                {
                    figure.Points("crossing", new double[] { meets * (1 - share) * weight }, new double[] { meets * share * weight },
                        Tone.Rear, Marker.Diamond);
                }

                return new Frame([figure.Build()],
                [
                    new("Both use the same at", critical is { } rate ? $"z = {Three(rate)}" : "no deceleration"),
                    new("Efficiency at adhesion 0.3", Measure.Percent.Text(ratio.Efficiency(0.3), units)),
                    new("Efficiency at adhesion 0.8", Measure.Percent.Text(ratio.Efficiency(0.8), units)),
                    new("Locks first at 0.8", ratio.FrontLockRate(0.8) is { } front && front < ratio.RearLockRate(0.8)
                        ? "front axle" : "rear axle"),
                ]);
            });
    }

    private static Explorable Knee(ExerciseCar car, UnitSystem units)
    {
        double own = car.Valve.Knee.Pascals;
        double[] knees = With(own, 2e5, Enumerable.Range(1, 20).Select(i => i * 3e5));
        double[] slopes = With(car.Valve.Slope, 0.06, [0, 0.15, 0.30, 0.45, 0.60, 1]);
        double[] inlets = [.. Enumerable.Range(0, 41).Select(i => i * 2.5e5)];
        double weight = car.Balance.Weight.Newtons;
        double[] rates = Rates[..21];
        return Explorable.Of(
            "lesson-knee",
            [Control.Slider("knee", "Knee pressure", Measure.LinePressure, knees, Array.IndexOf(knees, own), units),
                Control.Slider("slope", "Slope above the knee", Measure.Number, slopes, Array.IndexOf(slopes, car.Valve.Slope), units)],
            state =>
            {
                var valve = new ProportioningValve { Knee = Pressure.FromPascals(knees[state["knee"]]), Slope = slopes[state["slope"]] };
                var model = new BalanceModel(car.Vehicle.WithRearKnee(valve.Knee, valve.Slope), car.LoadCase);
                BalancePoint atKnee = model.At(valve.Knee);
                Figure pressures = new FigureBuilder("lesson-knee-pressures", units, car.Vehicle)
                    .Title($"Up to {Measure.LinePressure.Text(valve.Knee, units)} both lines agree; "
                        + Invariant($"then the rear rises {valve.Slope:0.00} as fast"))
                    .Describe("Rear against front line pressure, gauge.",
                        $"The knee lies at {Measure.LinePressure.Text(valve.Knee, units)}; "
                            + Invariant($"the slope above it is {valve.Slope:0.00}."))
                    .X("Front line pressure", "p₁", Measure.LinePressure, 0, 1e7)
                    .Y("Rear line pressure", "p₂", Measure.LinePressure, 0, 1e7)
                    .Line("no valve", new double[] { 0, 1e7 }, new double[] { 0, 1e7 }, Tone.Guide, Dash.Dot)
                    .Line("with the valve", inlets, inlets.Select(p => valve.OutletPascals(p, 0)).ToArray(), Tone.Rear)
                    .Points("knee", new double[] { valve.Knee.Pascals }, new double[] { valve.Knee.Pascals }, Tone.Main)
                    .Build();
                BalanceState[] states = [.. inlets.Select(model.StateAt).Where(s => s.FrontForceNewtons < weight)];
                Figure forces = new FigureBuilder("lesson-knee-forces", units, car.Vehicle)
                    .Title(Invariant($"The installed line bends at a deceleration of {atKnee.BrakingRate:0.00} g"))
                    .Describe($"Rear against front braking force with the ideal curve. {Invented}",
                        Invariant($"The bend lies at a deceleration of {atKnee.BrakingRate:0.00} g."))
                    .X("Front braking force", "T₁", Measure.BrakeForce, 0, weight)
                    .Y("Rear braking force", "T₂", Measure.BrakeForce, 0, RearTop * weight)
                    .Line("ideal curve", rates.Select(r => model.IdealForces(r).Front.Newtons)
                        .ToArray(), rates.Select(r => model.IdealForces(r).Rear.Newtons).ToArray(), Tone.Ideal, Dash.Dash)
                    .Line("installed", states.Select(s => s.FrontForceNewtons).ToArray(), states.Select(s => s.RearForceNewtons)
                        .ToArray(), Tone.Main)
                    .Points("knee", new double[] { atKnee.BrakingForces.Front.Newtons }, new double[] { atKnee.BrakingForces.Rear.Newtons },
                        Tone.Main)
                    .Build();
                double? rearLed = model.FirstRearLedRate(0.1, 1.0);
                return new Frame([pressures, forces],
                [
                    new("Knee reached at", $"z = {Three(atKnee.BrakingRate)}"),
                    new("Rear leads from", rearLed is { } rate ? $"z = {Measure.Number.Text(rate, units)}" : "no deceleration up to 1.0"),
                ],
                rearLed is null ? new Verdict("The front axle leads up to a deceleration of 1.0 g.", VerdictKind.Good)
                    : new Verdict("Somewhere below a deceleration of 1.0 g the rear axle leads: it would lock first there.",
                        VerdictKind.Caution));
            });
    }
}
