using BrakeBalance.Charts.Figures;

namespace BrakeBalance.Charts.Publishing;

public static partial class FigureCatalogue
{
    private static (string, string)[] Locks => [("front locks", "front wheels lock"), ("rear locks", "rear wheels lock")];
    private static (string, string)[] Three =>
        [("front axle locked", "front wheels locked"), ("rear axle locked", "rear wheels locked"), ("wheels rolling", "wheels rolling")];

    private static IEnumerable<CatalogueEntry> Stops() =>
    [
        new()
        {
            Name = "stop-speed", Needs = Press,
            Make = (car, units) => car.CanStop ? StopFigures.SpeedOverTime(car.Emergency, units: units) : null,
            Plain = new(
                Title: (car, figure) => $"From {Measure.Speed.Text(car.Emergency.InitialSpeed, figure.Units)} the car stops in "
                    + Measure.Distance.Text(car.Emergency.Distance, figure.Units),
                Caption: "An emergency stop on a dry road, second by second: "
                    + "the speed of the car and of its wheels. A locked wheel no longer turns.",
                X: Seconds, Y: new("Speed"),
                Marks: [
                    ("car", "car"), ("front tyres", "front wheels"), ("rear tyres", "rear wheels"), .. Locks,
                ]),
        },
        new()
        {
            Name = "stop-deceleration", Needs = Press,
            Make = (car, units) => car.CanStop ? StopFigures.DecelerationOverTime(car.Emergency, units: units) : null,
            Plain = new(
                Title: (car, _) => $"The car slows at up to "
                    + G(car.Emergency.Trace.Max(s => s.DecelerationMetresPerSecondSquared) / Gravity.StandardMetresPerSecondSquared),
                Caption: "How strongly the car slows down during an emergency stop. "
                    + "It takes a moment for the pressure to rise, and locked wheels slow the car less.",
                X: Seconds, Y: new("How strongly the car slows down"), Marks: [("deceleration", "slowing of the car"), .. Locks]),
        },
        new()
        {
            Name = "stop-loads", Needs = Press,
            Make = (car, units) => car.CanStop ? StopFigures.LoadsOverTime(car.Emergency, units: units) : null,
            Plain = new(
                Title: (car, figure) => "Braking presses the front wheels down with up to "
                    + Measure.BrakeForce.Text(car.Emergency.Trace.Max(s => s.NormalReactionNewtons.Front), figure.Units),
                Caption: "Braking presses the front wheels down and lifts the rear. "
                    + "That is why the rear brakes must do less the harder the car slows.",
                X: Seconds, Y: new("Force"),
                Marks: [("load, front", "weight on the front wheels"), ("load, rear", "weight on the rear wheels"), .. Locks]),
        },
        new()
        {
            Name = "force-course", Needs = Press,
            Make = (car, units) => car.CanStop ? StopFigures.ForceCourse(car.Light, car.Emergency, CarStudy.Dry, units: units) : null,
            Plain = new(
                Title: (car, figure) => car.Emergency is { FirstLock: { } first } stop
                    ? $"Stamped on, {Wheels(first)}, after {At(stop, first)}"
                    : "No wheel locks: the brakes pull with up to " + Measure.BrakeForce.Text(
                        car.Emergency.Trace.Max(s => s.BrakingForceNewtons.Front + s.BrakingForceNewtons.Rear), figure.Units),
                Caption: "The path of one emergency stop in the picture of front and rear braking. "
                    + "Where it lies below the perfect split the front wheels are nearer to locking.",
                X: FrontForce, Y: RearForce, Marks: [("ideal", "perfect split"), ("this stop", "this stop"), .. Locks]),
        },
        new()
        {
            Name = "plan", Needs = Press,
            Make = (car, units) => car.CanStop
                ? StopFigures.PlanView(car.YawStops, car.Car.Wheelbase, car.PlanMoment, units) : null,
            Plain = new(
                Title: (car, _) => PlainTurn(car),
                Caption: "Three stops seen from above on a road that falls off slightly to one side, the steering held still: "
                    + "front wheels locked, rear wheels locked, all wheels rolling.",
                X: new("Way along the road"), Y: new("Across the road, one lane for each case"),
                Marks: [.. Three, ("*", "")]),
        },
        new()
        {
            Name = "headings", Needs = Press,
            Make = (car, units) => car.CanStop ? StopFigures.Headings(car.YawStops, units) : null,
            Plain = new(
                Title: (car, _) => PlainTurn(car),
                Caption: "How far the car has turned from its way, with the steering held still. At ninety degrees it slides sideways.",
                X: Seconds, Y: new("How far the car has turned"), Marks: [("square to the road", "across the road"), .. Three]),
        },
        new()
        {
            Name = "distances", Needs = Press,
            Make = (car, units) => car.CanStop ? StopFigures.Distances(car.Comparison, units) : null,
            Plain = new(
                Title: PlainDistances,
                Caption: "Stopping distance of set-ups of one car, with full pressure, with wheels kept just short of locking, and the "
                    + "best any system could do. One that stops shorter may still lock its rear wheels first, and spin.",
                X: new("Set-up"), Y: new("Distance to stop"),
                Marks: [
                    ("full pressure, wheels locked", "full pressure"), ("just below lock-up", "just short of locking"),
                    ("anti-lock bound", "best possible"), ("Present setting", "as it is"),
                    ("Without the rear valve", "without the rear valve"),
                    ("Rear friction 15 % up", "rear pads 15 % stronger"),
                ]),
        },
        new()
        {
            Name = "slip-curves",
            Make = (_, units) => StopFigures.SlipCurves(
                [PublishedSlipCurves.DryAsphalt, PublishedSlipCurves.WetAsphalt, PublishedSlipCurves.Snow, PublishedSlipCurves.Ice],
                    Force.FromKilonewtons(3.5), units),
            Plain = new(
                Title: (_, figure) => figure.Layers.OfType<LineLayer>().First() is { } dry
                    ? $"Locked, a tyre on dry asphalt keeps {Share(dry.Y[^1] / dry.Y.Max(), figure)} of its best grip" : "",
                Caption: "On a road a tyre grips best while it slides a little. Locked, it grips less and no longer steers.",
                X: new("Sliding of the wheel, from rolling to locked"), Y: new("Grip of the tyre", "share of weight"),
                Marks: [("peak adhesion", ""), ("*", "*")]),
        },
    ];

    private static IEnumerable<CatalogueEntry> Bends() =>
    [
        new()
        {
            Name = "bend", Needs = "a foot that brings pressure to brakes that can lock a wheel", Make = (car, units) =>
                car.CanStop && car.Light.FirstLockUp(CarStudy.Dry) is not null ? BendFigures.Braking(car.Bends, units) : null,
            Plain = new(
                Title: (car, _) =>
                    car.Bends.Points.Where(point => point.Course.FirstAxle is not null).ToArray() is not { Length: > 0 } lost
                    ? "In none of these bends does braking take one end of the car away"
                    : lost.Any(point => point.RearLetsGo)
                        ? $"At {BendFigures.RearLed(car.Bends)} g of sideways pull the rear wheels let go first{Spins}"
                        : $"Up to {G(lost[^1].Course.LateralAcceleration.StandardGravity)} of sideways pull the front wheels let go first",
                Caption: "A tyre that is busy cornering has less grip left for braking. The faster the bend, the sooner a wheel slides, "
                    + "and the sooner one end of the car lets go.",
                X: new("Sideways pull in the bend", "g"), Y: new("Braking at that moment", "g"),
                Marks: [
                    ("first wheel slides", "first wheel slides"), ("front lets go: runs wide", "front lets go: runs wide"),
                    ("rear lets go: spins", "rear lets go: spins"),
                ]),
        },
        new()
        {
            Name = "bend-knee", Needs = "a foot that brings pressure to brakes that can lock a wheel", Make = (car, units) =>
                car.CanStop && car.Light.FirstLockUp(CarStudy.Dry) is not null ? BendFigures.SafeKnee(car.Bends, units) : null,
            Plain = new(
                Title: (car, _) => car.Bends.Points.Any(point => point.RearLetsGo)
                    ? $"As it is, the rear wheels let go first at {BendFigures.RearLed(car.Bends)} g of sideways pull"
                    : "As it is, the front wheels let go first up to "
                        + $"{G(car.Bends.Points[^1].Course.LateralAcceleration.StandardGravity)} of sideways pull",
                Caption: "What the rear wheels allow while the car corners: the highest setting of its valve with which the front lets go "
                    + "first, or, without a valve to set, the side grip that is left.",
                X: new("Sideways pull in the bend", "g"), Y: new("Limit of the rear wheels"),
                Marks: [
                    ("rear lets go first: spins", "rear lets go first: spins"),
                    ("highest knee with the front first", "highest safe setting"), ("any knee", "any setting"),
                    ("present knee", "as it is"), ("could give", "side grip left"), ("bend needs", "what the bend needs"),
                ]),
        },
    ];

    private static string At(StopResult stop, Axle first) =>
        $"{Finding.Rate((first == Axle.Front ? stop.Locks.Front : stop.Locks.Rear)!.Time.Seconds)} s";

    private static string PlainTurn(CarStudy car)
    {
        (string name, YawResult worst) = car.YawStops.MaxBy(one => one.Stop.GreatestHeading);
        return worst.SquareToRoadAt is { } square
            ? $"{Finding.Capital(Three.First(one => one.Item1 == name).Item2)}: the car stands across the road after "
                + $"{Finding.Rate(square.Seconds)} s"
            : $"The car turns by at most {worst.GreatestHeading.Degrees.ToString("0", CultureInfo.InvariantCulture)} degrees";
    }

    private static string PlainDistances(CarStudy car, Figure figure)
    {
        StopComparisonRow row = car.Comparison[0];
        Length rolling = (row.Threshold ?? row.Emergency).Distance;
        return $"As it is, the car needs {Measure.Distance.Text(row.Emergency.Distance, figure.Units)} with full pressure, "
            + $"{Measure.Distance.Text(rolling, figure.Units)} just short of locking";
    }
}
