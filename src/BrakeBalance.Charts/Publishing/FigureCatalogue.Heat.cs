using BrakeBalance.Charts.Figures;

namespace BrakeBalance.Charts.Publishing;

public static partial class FigureCatalogue
{
    private static (string, string)[] HotMarks =>
    [
        ("front d*", "front brakes"), ("rear d*", "rear brakes"), ("front fluid", "fluid at the front"),
        ("wet boiling", "old fluid boils"),
    ];

    private static IEnumerable<CatalogueEntry> Heat() =>
    [
        new()
        {
            Name = "heat-stops", Needs = Press,
            Make = (car, units) => car.CanStop ? HeatFigures.TemperatureByStop(car.Heat.Result, car.Heat.Brakes, units) : null,
            Plain = new(
                Title: PlainHeat,
                Caption: "Brakes turn speed into heat. Over many stops they get hotter, "
                    + "and where the fluid boils the pedal goes to the floor.",
                X: Stop, Y: Degrees, Marks: HotMarks),
        },
        new()
        {
            Name = "heat-drift", Needs = Press,
            Make = (car, units) => car.CanStop ? HeatFigures.Drift(car.Heat.Result, units) : null,
            Plain = new(
                Title: (car, figure) =>
                    car.Heat.Result.Stops.Where(stop => stop.FrontShare is not null).ToArray() is [{ } first, .., { } last]
                    ? $"The front brakes do {Share(first.FrontShare!.Value, figure)} of the work when cold and "
                        + $"{Share(last.FrontShare!.Value, figure)} when hot" : "The front brakes' share of the work was read once",
                Caption: "Hot brakes grip differently. As front and rear change by different amounts, "
                    + "the balance of the car moves while it is being driven.",
                X: Stop, Y: new("Share"),
                Marks: [
                    ("front share of the work", "front share of the work"), ("front torque", "strength of the front brakes"),
                    ("rear torque", "strength of the rear brakes"), ("deceleration", "slowing of the car"),
                ]),
        },
        new()
        {
            Name = "heat-time", Needs = Press,
            Make = (car, units) => car.CanStop ? HeatFigures.OverTime(car.Heat.Result, units) : null,
            Plain = new(
                Title: PlainHeat,
                Caption: "The same stops over time, then the car stands. Discs and drums heat in seconds and cool in minutes; "
                    + "the fluid follows slowly and stays warm.",
                X: new("Time"), Y: Degrees, Marks: HotMarks),
        },
    ];

    private static string PlainHeat(CarStudy car, Figure figure)
    {
        HeatResult result = car.Heat.Result;
        string hottest = Finding.Capital(HeatFigures.Hottest(result, figure.Units));
        return result.FirstBoilingStop is { } stop ? Invariant.Text($"{hottest}; old fluid boils in stop {stop}")
            : result.WetBoilingMargin < TemperatureDelta.Zero ? $"{hottest}; old fluid boils in a pause or once the car stands"
            : $"{hottest}; even old fluid does not boil";
    }

    private static IEnumerable<CatalogueEntry> Bench() =>
    [
        new()
        {
            Name = "hose-bends", IsOfTheCar = false, Make = (_, units) => BenchFigures.Bends("EN 853 1SN", units: units),
            Plain = new(
                Title: (_, figure) => "A half turn takes from "
                    + $"{BenchMeasures.Cut.Text(figure.Layers.OfType<LineLayer>().Min(line => line.Y[^1]), figure.Units)} of thin hose to "
                    + $"{BenchMeasures.Cut.Text(figure.Layers.OfType<LineLayer>().Max(line => line.Y[^1]), figure.Units)} of thick hose",
                Caption: "Hose does not bend sharply. The further it turns, the longer it must be; thicker hose needs more. "
                    + "The maker's own chart comes first.",
                X: new("Angle that the hose turns"), Y: new("Hose needed for the bend"), Marks: [("-*", "size *")]),
        },
    ];
}
