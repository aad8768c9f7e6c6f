using BrakeBalance.Charts.Figures;

namespace BrakeBalance.Charts.Publishing;

public static partial class FigureCatalogue
{
    private static IEnumerable<CatalogueEntry> Settings() =>
    [
        new()
        {
            Name = "knee-setting", Needs = "a proportioning valve in the rear line",
            Make = (car, units) => car.Car.Hydraulics.RearProportioningValve is null ? null : KneeFigure.Of(car.Answer, units: units),
            Plain = new(
                Title: PlainKnee,
                Caption: "A valve that holds the rear brakes back early gives grip away. "
                    + "One that does so late lets the rear wheels lock first on some road, and the car can spin.",
                X: BendPoint, Y: GripUsed,
                Marks: [
                    ("rear first somewhere", "rear wheels lock first somewhere"), ("rear first too often", "rear wheels first too often"),
                    ("mean of all cases", "average of all roads and loads"), ("safe limit", "safe limit"), ("present", "as it is"),
                ]),
        },
        new()
        {
            Name = "safe-settings", Needs = Set,
            Make = (car, units) => CanBeSet(car) ? SettingFigures.SafeSettings(car.Settings, car.Answer, units) : null,
            Plain = new(
                Title: (car, figure) => car.Answer is { SafeLimit: { Knee: not null } limit, Middle.Slope: { } slope }
                    ? $"If the valve passes on {Share(slope, figure)} above its bend, the bend may stand at "
                        + (car.Answer.HoldsAtAnySetting ? "any pressure" : "up to " + SettingWords.Number(limit, figure.Units))
                    : $"{SettingFigures.Safe(car.Settings, car.Answer).Count()} of {car.Settings.Count} settings of the valve "
                        + "keep the front wheels first",
                Caption: "Settings of the rear valve, each tried with every load and on every road. "
                    + "Where nothing is hatched the front wheels lock first in all of them.",
                X: BendPoint, Y: Passed,
                Marks: [
                    ("front first in every case", "front wheels always first"),
                    ("rear first in up to a tenth of the cases", "rear wheels first somewhere"),
                    ("rear first in more cases", "rear wheels first somewhere"), ("safe limit", "safe limit"),
                    ("recommended setting", "recommended setting"),
                    .. BeyondLimit,
                ]),
        },
        new()
        {
            Name = "setting-efficiency", Needs = Set,
            Make = (car, units) => CanBeSet(car) ? SettingFigures.EfficiencyOfSettings(car.Settings, car.Answer, units: units) : null,
            Plain = new(
                Title: (car, figure) => SettingFigures.Safe(car.Settings, car.Answer).Select(one => one.MeanEfficiency).ToArray() is
                    { Length: > 0 } used ? $"All loads, {Roads(car.Answer.Conditions.Adhesions)}: safe settings use "
                        + $"{Share(used.Min(), figure)} to {Share(used.Max(), figure)} of it"
                    : $"None of {car.Settings.Count} settings tried keeps the front wheels first everywhere",
                Caption: "What a safe setting costs: the average share of the road's grip that the brakes use. "
                    + "Darker is better; where it is blank the rear wheels lock first on some road.",
                X: BendPoint, Y: Passed,
                Marks: [
                    ("mean braking efficiency", "average share of the grip used"),
                    ("blank: the rear locks first in some case", "blank: rear wheels first somewhere"), ("safe limit", "safe limit"),
                    ("recommended setting", "recommended setting"), .. BeyondLimit,
                ]),
        },
        new()
        {
            Name = "safe-limits", Needs = Set + ", and a slope at which some knee is safe",
            Make = (car, units) => CanBeSet(car) && car.Knees.Any(curve => curve.Item2.Any(point => point.Item2 is not null))
                ? SettingFigures.SafeLimits(car.Knees, units, car: car.Car) : null,
            Plain = new(
                Title: PlainCost,
                Caption: "Brake pads never grip exactly as promised. "
                    + "The less they can be trusted, the earlier the valve must start to hold the rear brakes back.",
                X: Passed, Y: new("Highest safe pressure at its bend"), Marks: [("friction *", "pads *")]),
        },
        new()
        {
            Name = "before-after", Needs = "a valve or balance bar that can be set safely",
            Make = (car, units) => car.AtAdvice is { } advised ? ComparisonFigures.BeforeAfter(car.Light, advised, units: units) : null,
            Plain = new(
                Title: (car, figure) => $"{Finding.Capital(PlainText.Load(car.Light.LoadCase.Name))}, {Roads(Line(figure, "before").X)}: "
                    + $"the car uses {Mean(figure, "before")} of it as it is, {Mean(figure, "after")} as recommended{RearFirst(figure)}",
                Caption: "Before: the car as it is. After: the recommended setting. "
                    + "Triangles mark roads where the rear wheels lock first, which is dangerous.",
                X: Grip, Y: GripUsed,
                Marks: [
                    ("before", "before"), ("after", "after"), ("rear locks first, before", "rear first, before"),
                    ("rear locks first, after", "rear first, after"),
                ]),
        },
    ];

    private static bool CanBeSet(CarStudy car) => car.Answer.Reach != SettingReach.NotNeeded;

    private static (string, string)[] BeyondLimit =>
    [
        ("front first by the file, beyond*", "more than the test stops allow"),
        ("front first at the ranges*", "more than the ranges allow"),
    ];

    private static string PlainKnee(CarStudy car, Figure figure)
    {
        Setting answer = car.Answer;
        return answer.SafeLimit is not { } limit ? "No setting of the valve keeps the front wheels first"
            : answer.Rule == SettingRule.Chance
                ? (limit.Knee >= SettingMap.Highest(answer)
                    ? "At every setting shown" : $"Up to {SettingWords.Number(limit, figure.Units)}")
                    + $" the rear wheels lock first with a chance of at most {Share(answer.Conditions.RearFirstChance, figure)}"
            : limit.Knee >= SettingMap.Highest(answer) ? "Every setting shown keeps the front wheels first, "
                + $"up to {Bar(SettingMap.Highest(answer), figure)}"
            : $"Up to {SettingWords.Number(limit, figure.Units)} the front wheels lock first on every road and with every load";
    }

    private static string PlainCost(CarStudy car, Figure figure)
    {
        if (SettingFigures.Cost(car.Knees) is not { } cost)
        {
            Pressure most = car.Knees.SelectMany(curve => curve.Item2).Max(point => point.Item2)!.Value;
            return $"Where the valve may bend depends on how much it passes on: {Bar(most, figure)} at most";
        }

        string down = cost.Lost is { } lost ? $"move the highest safe bend down by {Bar(lost, figure)}"
            : "do not move the highest safe bend";
        return $"Pads that may be off by {Share(cost.Wide, figure)} instead of {Share(cost.Narrow, figure)} {down}";
    }

    private static string Roads(IReadOnlyList<double> grips) => $"grip {Finding.Rate(grips[0])} to {Finding.Rate(grips[^1])}";

    private static LineLayer Line(Figure figure, string name) => figure.Layers.OfType<LineLayer>().Single(layer => layer.Name == name);

    private static string Mean(Figure figure, string line) => Share(Line(figure, line).Y.Average(), figure);

    private static string RearFirst(Figure figure)
    {
        bool Has(string when) => figure.Layers.Any(layer => layer.Name == "rear locks first, " + when);
        return (Has("before"), Has("after")) switch
        {
            (true, false) => ", and the rear wheels no longer lock first",
            (false, true) => ", but the rear wheels lock first on some roads",
            (true, true) => "; the rear wheels lock first on some roads in both",
            _ => "",
        };
    }
}
