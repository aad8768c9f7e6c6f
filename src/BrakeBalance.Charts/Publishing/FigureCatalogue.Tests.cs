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
                "Two pressure gauges, one at the front brakes, one at the rear, while the pedal is pressed and let up. "
                    + "Where the points bend off, the valve starts to hold back.",
                "Readings of two gauges as points that bend away from equal pressures at the valve's bend point.",
                new("Fluid pressure at the front brakes"), new("Fluid pressure at the rear brakes")),
        },
        new()
        {
            Name = "knee-against-turns", Needs = OwnGauges + " at two turns of the adjuster or more", IsMeasured = true,
            Make = (car, units) => car.Own?.Valve is { Calibration: not null } valve ? GaugeFigures.Adjuster(valve, units) : null,
            Plain = new(
                "What the adjuster of the valve does, as measured: each turn lets the rear brakes have more pressure before the valve "
                    + "holds back.",
                "A straight line through measured points, rising with the turns of the adjuster, with a band for doubt.",
                new("Turns of the adjuster, counted inwards", "turns"), BendPoint),
        },
        new()
        {
            Name = "measured-rates", Needs = OwnStops, IsMeasured = true,
            Make = (car, units) => car.Own is { Estimate: { } estimate } own
                ? MeasuredCarFigures.BrakingRates(estimate, own.Stops!.Rows, car.Car.LoadCases[0], units) : null,
            Plain = new(
                "How hard the car braked in test stops, and the car that fits them best. The band is what the stops leave open.",
                "Points of test stops along a rising line with a narrow band for doubt.", new("Fluid pressure at the front brakes"),
                    Braking),
        },
        new()
        {
            Name = "lock-events", Needs = OwnStops, IsMeasured = true,
            Make = (car, units) => car.Own is { Estimate: { } estimate } own
                ? MeasuredCarFigures.LockEvents(estimate, car.Car, own.Stops!.Rows, car.Car.LoadCases[0], units: units)
                : null,
            Plain = new(
                "Every test stop, marked by which wheels locked, over the car as it was thought to be and as the stops show it.",
                "Test stops as marks in the picture of front and rear braking, with the car before and after the tests.", FrontForce,
                    RearForce),
        },
        new()
        {
            Name = "setting-trade-off", Needs = OwnStops + " and a valve or a balance bar to set", IsMeasured = true,
            Make = (car, units) => car.Answer is { Rule: SettingRule.Chance, Chance.TradeOff.Count: > 0 } answer
                ? RobustSettingFigures.TradeOff(answer, units)
                : null,
            Plain = new(
                "A bargain: the further the setting goes, "
                    + "the better the car brakes on average, and the likelier the rear wheels lock first.",
                "Curves of risk and of the average share of grip used over the setting, with the risk allowed and the recommended setting.",
                new("Setting of the valve or the bar"), new("Chance, or share of grip used")),
        },
    ];

    /// <summary>Figures of bench work.</summary>
    private static IEnumerable<CatalogueEntry> Bench() =>
    [
        new()
        {
            Name = "hose-bends", Make = (_, units) => BenchFigures.Bends("EN 853 1SN", units: units),
            Plain = new(
                "Hose does not bend sharply. The further it turns, the longer it must be; thicker hose needs more. "
                    + "The maker's own chart comes first.",
                "Straight lines from zero: hose needed over the angle it turns, one line for each size.", new("Angle that the hose turns"),
                    new("Hose needed for the bend")),
        },
    ];
}
