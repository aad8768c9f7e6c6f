using BrakeBalance.Charts.Figures;

namespace BrakeBalance.Charts.Publishing;

public static partial class FigureCatalogue
{
    private const string OwnGauges = "own gauge readings (entry measurements.gauges of the vehicle file)";
    private const string OwnStops = "own test stops (entry measurements.stops of the vehicle file)";

    /// <summary>Figures of what was measured on the car itself; without its logs there are none.</summary>
    private static IEnumerable<CatalogueEntry> Tests() =>
    [
        new()
        {
            Name = "gauge-readings", Needs = OwnGauges, IsMeasured = true,
            Make = (car, units) => car.Own is { Valve.Positions.Count: > 0 } own
                ? GaugeFigures.Readings(own.Gauges!.Rows, own.Valve, units) : null,
            Plain = new(
                Title: PlainReadings,
                Caption: "Two pressure gauges, one at the front brakes, one at the rear, while the pedal is pressed and let up. "
                    + "Where the points bend off, the valve starts to hold back.",
                X: FrontPressure, Y: RearPressure,
                Marks: [("equal pressures", "equal pressures"), ("as it is", "fitted line"), ("*", "*")]),
        },
        new()
        {
            Name = "knee-against-turns", Needs = OwnGauges + " at two turns of the adjuster or more", IsMeasured = true,
            Make = (car, units) => car.Own?.Valve is { Calibration: not null } valve ? GaugeFigures.Adjuster(valve, units) : null,
            Plain = new(
                Title: (car, figure) => "A turn of the adjuster moves the bend by "
                    + SettingWords.Knee(car.Own!.Valve!.Calibration!.KneePerTurn.Estimate, figure.Units),
                Caption: "What the adjuster of the valve does, as measured: each turn inwards moves the pressure at which "
                    + "the valve starts to hold the rear brakes back.",
                X: new("Turns of the adjuster, counted inwards", "turns"), Y: BendPoint,
                Marks: [("90 % interval", "room for doubt"), ("knee", "fitted line"), ("single positions", "measured")]),
        },
        new()
        {
            Name = "measured-rates", Needs = OwnStops, IsMeasured = true,
            Make = (car, units) => car.Own is { Estimate: { } estimate } own
                ? MeasuredCarFigures.BrakingRates(estimate, own.Stops!.Rows, car.Car.LoadCases[0], units) : null,
            Plain = new(
                Title: (_, figure) => figure.Layers.FirstOrDefault(layer => layer.Name == "measured stops") is MarkerLayer stops
                    ? Invariant.Text($"{stops.X.Count} test stops and the car that fits them: at most {G(stops.Y.Max())}")
                    : "No test stop without a locked wheel was made with this load",
                Caption: "How hard the car braked in test stops, and the car that fits them best. The band is what the stops leave open.",
                X: FrontPressure, Y: Braking,
                Marks: [("90 % interval", "room for doubt"), ("estimated car*", "fitted car"), ("measured stops", "test stops"),
                    ("estimated, own turns", "fitted car as set then")]),
        },
        new()
        {
            Name = "lock-events", Needs = OwnStops, IsMeasured = true,
            Make = (car, units) => car.Own is { Estimate: { } estimate } own
                ? MeasuredCarFigures.LockEvents(estimate, car.Car, own.Stops!.Rows, car.Car.LoadCases[0], units: units)
                : null,
            Plain = new(
                Title: (_, figure) => Invariant.Text(
                    $"Of {Stops(figure, "")} test stops the front wheels locked first in {Stops(figure, "front")}, "
                        + $"the rear wheels in {Stops(figure, "rear")}"),
                Caption: "Every test stop with the light load, marked by which wheels locked, over the car as the stops show it.",
                X: FrontForce, Y: RearForce,
                Marks: [
                    ("ideal distribution", "perfect split"), ("estimated", "this car, fitted"), ("nothing locked", ""),
                    ("front locked first", "front locked first"), ("rear locked first", "rear locked first"),
                ]),
        },
        new()
        {
            Name = "setting-trade-off", Needs = OwnStops + " and a valve or a balance bar to set", IsMeasured = true,
            Make = (car, units) => car.Answer is { MostRearFirst: not null, Chance.TradeOff.Count: > 0 } answer
                ? RobustSettingFigures.TradeOff(answer, units)
                : null,
            Plain = new(
                Title: (car, figure) => car.Answer.Recommended is { } set
                    ? $"At {SettingWords.Number(set, figure.Units)} the rear wheels lock first with a chance below "
                        + Share(car.Answer.Conditions.RearFirstChance, figure)
                    : $"No setting keeps the chance of the rear wheels first below {Share(car.Answer.Conditions.RearFirstChance, figure)}",
                Caption: "A bargain: the setting that uses more of the grip is also the likelier one to let the rear wheels lock first.",
                X: new("Setting of the valve or the bar"), Y: new("Chance, or share of grip used"),
                Marks: [
                    ("mean efficiency", "average share of grip used"), ("rear first, worst case", "chance of rear wheels first"),
                    ("recommended", "recommended"), ("present", "as it is"),
                ]),
        },
    ];

    private static string PlainReadings(CarStudy car, Figure figure)
    {
        Pressure[] knees = [.. car.Own!.Valve!.Positions.Select(position => position.Apply?.Knee?.Estimate).OfType<Pressure>()];
        return car.Own.Valve.Findings.Any(finding => finding.Kind == GaugeFindingKind.Swapped) ? "Front and rear gauges are swapped"
            : knees.Length == 0 ? $"No bend shows up to {Bar(car.Own.Gauges!.Rows.Max(row => row.Front), figure)} at the front"
            : knees.Length == 1 ? $"The gauges show the valve's bend at {SettingWords.Knee(knees[0], figure.Units)}"
            : $"The gauges show the valve's bend at {SettingWords.Knee(knees.Min(), figure.Units)} to "
                + $"{SettingWords.Knee(knees.Max(), figure.Units)}, by its adjuster";
    }

    private static int Stops(Figure figure, string locked) => figure.Layers.OfType<MarkerLayer>()
        .Where(layer => layer.Name.StartsWith(locked, StringComparison.Ordinal)).Sum(layer => layer.X.Count);
}
