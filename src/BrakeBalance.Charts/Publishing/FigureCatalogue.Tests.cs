using BrakeBalance.Charts.Figures;

namespace BrakeBalance.Charts.Publishing;

public static partial class FigureCatalogue
{
    private const string Valve = "a proportioning valve in the rear line";

    /// <summary>Figures of measurements; the measurements are made up from the car, and their captions say so.</summary>
    private static IEnumerable<CatalogueEntry> Tests() =>
    [
        new()
        {
            Name = "gauge-readings", Needs = Valve,
            Make = (car, units) => car.Tests.Gauges is { } gauges ? Invented(GaugeFigures.Readings(car.Tests.Readings, gauges, units)) : null,
            Plain = new(
                "Two pressure gauges, one at the front brakes, one at the rear, while the pedal is pressed and let up. Where the points bend off, the valve starts to hold back. Invented readings.",
                "Readings of two gauges as points that bend away from equal pressures at the valve's bend point.",
                new("Fluid pressure at the front brakes"), new("Fluid pressure at the rear brakes")),
        },
        new()
        {
            Name = "knee-against-turns", Needs = Valve + " with a knob",
            Make = (car, units) => car.Tests.Gauges is { Calibration: not null } gauges ? Invented(GaugeFigures.Knob(gauges, units)) : null,
            Plain = new(
                "What the knob of the valve does, as measured: each turn lets the rear brakes have more pressure before the valve holds back. Invented readings.",
                "A straight line through measured points, rising with the turns of the knob, with a band for doubt.",
                new("Turns of the knob, counted inwards", "turns"), BendPoint),
        },
        new()
        {
            Name = "measured-rates",
            Make = (car, units) => Invented(MeasuredCarFigures.BrakingRates(car.Tests.Estimate, car.Tests.Stops, car.Car.LoadCases[0], units)),
            Plain = new(
                "How hard the car braked in test stops, and the car that fits them best. The band is what the stops leave open. Invented stops.",
                "Points of test stops along a rising line with a narrow band for doubt.", new("Fluid pressure at the front brakes"), Braking),
        },
        new()
        {
            Name = "lock-events",
            Make = (car, units) => Invented(MeasuredCarFigures.LockEvents(car.Tests.Estimate, car.Car, car.Tests.Stops, car.Car.LoadCases[0], units: units)),
            Plain = new(
                "Every test stop, marked by which wheels locked, over the car as it was thought to be and as the stops show it. Invented stops.",
                "Test stops as marks in the picture of front and rear braking, with the car before and after the tests.", FrontForce, RearForce),
        },
        new()
        {
            Name = "setting-trade-off", Needs = "a valve or a balance bar to set",
            Make = (car, units) => car.Tests.Answer.Chance.TradeOff.Count > 0 ? Invented(RobustSettingFigures.TradeOff(car.Tests.Answer, units)) : null,
            Plain = new(
                "A bargain: the further the setting goes, the better the car brakes on average, and the likelier the rear wheels lock first. Invented stops.",
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
                "Hose does not bend sharply. The further it turns, the longer it must be; thicker hose needs more. The maker's own chart comes first.",
                "Straight lines from zero: hose needed over the angle it turns, one line for each size.", new("Angle that the hose turns"), new("Hose needed for the bend")),
        },
    ];

    private static Figure Invented(Figure figure) => figure with { Caption = figure.Caption + " Invented measurements." };
}
