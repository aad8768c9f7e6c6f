using BrakeBalance.Charts.Figures;

namespace BrakeBalance.Charts.Publishing;

public static partial class FigureCatalogue
{
    private static (string, string)[] SharingMarks =>
    [
        ("rear axle locks first", "rear wheels lock first"), ("ideal distribution", "perfect split"), ("installed", "this car"),
        ("knee", "bend of the valve"),
    ];

    private static readonly double[] RoadsLaden = [0.2, 0.5, 1.1];

    private static IEnumerable<CatalogueEntry> Balance() =>
    [
        new()
        {
            Name = "brake-forces", Make = (car, units) => BalanceFigures.BrakeForces(car.Light, units: units),
            Plain = new(
                Title: (car, _) => Finding.Capital(PlainOrder(car.Light, BalanceFigures.DefaultAdhesions)),
                Caption: "How a car shares its braking between front and rear. "
                    + "Above the curve of the perfect split the rear wheels lock first, and the car can spin.",
                X: FrontForce, Y: RearForce, Marks: SharingMarks),
        },
        new()
        {
            Name = "brake-forces-laden", Needs = "two load cases", Make = (car, units) => car.Car.LoadCases.Length > 1
                ? BalanceFigures.BrakeForces(car.Laden, RoadsLaden, units: units, id: "brake-forces-laden") : null,
            Plain = new(
                Title: (car, _) =>
                    $"{Finding.Capital(PlainText.Load(car.Laden.LoadCase.Name))}: {PlainOrder(car.Laden, RoadsLaden)}",
                Caption: "The same sharing of the braking with the car's heaviest load. "
                    + "A load presses the rear wheels down, so they may brake more before they lock.",
                X: FrontForce, Y: RearForce, Marks: SharingMarks),
        },
        new()
        {
            Name = "line-pressures", Make = (car, units) => BalanceFigures.LinePressures(car.Light, units: units),
            Plain = new(
                Title: (car, figure) => PlainPressures(car.Light, figure),
                Caption: "Fluid pressure at the rear brakes against the front brakes. "
                    + "A proportioning valve lets the rear brakes have less once the pressure passes its bend.",
                X: FrontPressure, Y: RearPressure,
                Marks: [("equal pressures", "equal pressures"), ("installed", "this car"), ("knee", "bend of the valve")]),
        },
        new()
        {
            Name = "adhesion-utilisation", Make = (car, units) => BalanceFigures.AdhesionUtilisation(car.Curve, units),
            Plain = new(
                Title: (car, _) => Finding.Capital(BalanceFigures.Order(
                    car.Curve, "the front wheels need more grip than the rear wheels",
                    "the rear wheels need more grip than the front wheels")),
                Caption: "How much grip each pair of wheels needs as the car brakes harder. "
                    + "The pair with the higher curve locks first; rules for new cars ask for the front on top.",
                X: Braking, Y: new("Grip needed", "share of weight"),
                Marks: [("f = z", "perfect split"), ("front axle", "front wheels"), ("rear axle", "rear wheels")]),
        },
        new()
        {
            Name = "braking-efficiency", Make = (car, units) => BalanceFigures.BrakingEfficiency(car.Light, units: units),
            Plain = new(
                Title: (_, figure) => "Before the first wheel locks the car uses at least "
                    + $"{Share(figure.Layers.OfType<LineLayer>().Min(line => line.Y.Min()), figure)} of the road's grip",
                Caption: "How much of the road's grip the car can use before the first wheels lock. "
                    + "A hundred per cent would mean that all four wheels lock together.",
                X: Grip, Y: GripUsed,
                Marks: [("front locks first", "front wheels lock first"), ("rear locks first", "rear wheels lock first")]),
        },
        new()
        {
            Name = "load-cases", Needs = "two load cases", Make = (car, units) =>
                car.Car.LoadCases.Length > 1 ? BalanceFigures.LoadCases(car.Light, car.Laden, units: units) : null,
            Plain = new(
                Title: (car, _) => PlainLoads(car.Light, car.Laden),
                Caption: "One car with its lightest and its heaviest load. The load moves the curve of the perfect split; "
                    + "the brakes stay as they are, unless a valve feels the load.",
                X: FrontForce, Y: RearForce,
                Marks: [
                    ("ideal, *", "perfect split, *"), ("installed", "this car"), ("installed, *", "this car, *"),
                    ("first lock-up, *", "this car's wheels lock, *"),
                ]),
        },
    ];

    private static string PlainOrder(BalanceModel model, IReadOnlyList<double> adhesions)
    {
        double top = ForceWindow.Of(model, adhesions).RateShown(model);
        IReadOnlyList<(double From, double To)> led = Finding.RearLed(model, top);
        bool fromStart = led.Count > 0 && led[0].From <= 0.1 + 1e-9;
        bool toEnd = led.Count > 0 && led[^1].To >= Math.Min(top, model.RearLiftOffRate * 0.999) - 1e-9;
        return (led.Count, fromStart, toEnd) switch
        {
            (0, _, _) => $"the front wheels lock first up to {G(top)}, the hardest braking shown",
            (1, true, true) => $"the rear wheels lock first up to {G(top)}, the hardest braking shown{Spins}",
            (1, true, false) => $"the rear wheels lock first up to {G(led[0].To)}, in harder braking the front wheels",
            (1, false, true) => $"the front wheels lock first up to {G(led[0].From)}, in harder braking the rear wheels{Spins}",
            _ => "the rear wheels lock first from " + string.Join(" and from ",
                led.Select(part => $"{Finding.Rate(part.From)} to {G(part.To)}")) + ", otherwise the front wheels",
        };
    }

    private static string PlainPressures(BalanceModel model, Figure figure)
    {
        IReadOnlyList<BalancePoint> points = InstalledLine.Of(model, InstalledLine.Beyond(model, BalanceFigures.DefaultAdhesions));
        string share = Share(points[^1].LinePressures.Rear / points[^1].LinePressures.Front, figure);
        return model.RearKnees() is [{ } knee, ..]
            ? $"From {SettingWords.Knee(knee.LinePressures.Rear, figure.Units)} at the rear on the valve passes on only part of any "
                + "further pressure"
            : BalanceFigures.IsEven(points) ? $"The rear brakes get {share} of the front pressure all the way"
            : $"No valve holds the rear pressure back: it ends at {share} of the front pressure";
    }

    private static string PlainLoads(BalanceModel light, BalanceModel laden)
    {
        (string one, string two) = (PlainText.Load(light.LoadCase.Name), PlainText.Load(laden.LoadCase.Name));
        return (light.FirstLockUp(CarStudy.Dry), laden.FirstLockUp(CarStudy.Dry)) switch
        {
            ({ } a, { } b) when a.First == b.First =>
                $"On a dry road {Wheels(a.First)} with either load: at {G(a.At.BrakingRate)} {one}, at {G(b.At.BrakingRate)} {two}",
            ({ } a, { } b) => $"On a dry road {Wheels(a.First)} {one}, at {G(a.At.BrakingRate)}, but {Wheels(b.First)} {two}, "
                + $"at {G(b.At.BrakingRate)}",
            ({ } a, null) => $"On a dry road {Wheels(a.First)} {one}, at {G(a.At.BrakingRate)}; {two} no wheel locks",
            (null, { } b) => $"On a dry road {Wheels(b.First)} {two}, at {G(b.At.BrakingRate)}; {one} no wheel locks",
            _ => $"On a road with a grip of {Finding.Rate(CarStudy.Dry)} no wheel locks with either load",
        };
    }
}
