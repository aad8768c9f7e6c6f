using BrakeBalance.Charts.Figures;

namespace BrakeBalance.Charts.Publishing;

public static partial class FigureCatalogue
{
    private const string LongOrLight = "pedal too long or too light", HardPedal = "pedal too hard, or so without help";

    private static IEnumerable<CatalogueEntry> Foot() =>
    [
        new()
        {
            Name = "effort", Needs = "a pedal and master cylinder in the file",
            Make = (car, units) => car.Control is { } control
                ? FootFigures.Effort(car.Light, ControlVariants.Assists(control), units: units) : null,
            Plain = new(
                Title: PlainEffort,
                Caption: "How hard the foot must press. Where a booster helps, it does most of the work until its help ends; "
                    + "from there every step harder is the driver's own.",
                X: Braking, Y: new("Force of the foot on the pedal"),
                Marks: [
                    ("as it is, no assist", "this car, without a booster"), ("as it is*", "this car"),
                    ("no vacuum", "booster without vacuum"),
                    ("pump stopped", "booster without its pump"), ("run-out", "the booster's help ends"),
                ]),
        },
        new()
        {
            Name = "reserve", Needs = $"{Press}, {Volumes}, and a booster that stores help: a known vacuum chamber or an accumulator",
            Make = (car, units) => car.ControlWithVolumes is not null && EngineOffPresses.Of(new ControlForce(car.Light)).IsStored
                ? FootFigures.Reserve(new ControlForce(car.Light), units: units) : null,
            Plain = new(
                Title: PlainReserve,
                Caption: "When the engine stops, the booster has help left for a few presses of the pedal. "
                    + "Each press uses some, and the next one is helped less far.",
                X: new("Press of the pedal after the engine has stopped"), Y: new("How hard the car brakes while it is helped", "g"),
                Marks: [("helped up to", "helped up to"), ("stops of * g", "a stop at * g"), ("spent", "used up")]),
        },
        new()
        {
            Name = "travel", Needs = Volumes, Make = Travel,
            Plain = new(
                Title: (car, figure) => FootFigures.Hardest(TravelCases(car)) is var (rate, travel) && travel.LeftToFloor is { } left
                    ? $"Braking at {rate} leaves {FootFigures.AtMost(travel)}{Measure.Travel.Text(left, figure.Units)} between the pedal "
                        + "and the floor"
                    : $"The pedal is at its end after {Measure.Travel.Text(car.ControlWithVolumes!.Pedal.AvailableTravel, figure.Units)}, "
                        + "before the car brakes so hard",
                Caption: "Where the pedal's way goes: gaps that close before the brakes bite, and parts, hoses and fluid that give "
                    + "under pressure.",
                X: new("How hard the car brakes"), Y: new("Way of the pedal"),
                Marks: [
                    ("play", "gaps that close"), ("front contact", "gaps that close"), ("rear contact", "gaps that close"),
                    ("lost circuit", "gaps that close"), ("hoses", "parts that give"), ("compliance and fluid", "parts that give"),
                    ("air", "parts that give"), ("floor", "floor"), ("reserve wanted", "reserve wanted"),
                ]),
        },
        new()
        {
            Name = "bore-ratio", Needs = Volumes,
            Make = (car, units) => car.ControlWithVolumes is { } control
                ? FootFigures.ChoiceMap(car.Light, control.Assist is PoweredAssist ? "the present assist" : "no assist", control.Assist,
                    units: units) : null,
            Plain = new(
                Title: PlainChoice,
                Caption: "Choosing a pedal and a master cylinder. "
                    + "Too narrow a cylinder makes a long, light pedal, too wide a one a hard pedal; both must fit together.",
                X: new("Width of the master cylinder"), Y: new("Leverage of the pedal", "to 1"),
                Marks: [
                    ("fits", "fits"), ("pedal too long: bore too small", LongOrLight), ("touchy", LongOrLight),
                    ("pedal too hard: bore too big", HardPedal), ("too hard without assist", HardPedal), ("as it is", "this car"),
                ]),
        },
        new()
        {
            Name = "failures", Needs = Volumes,
            Make = (car, units) => car.ControlWithVolumes is not null
                ? FootFigures.FailureDistances(FailureAnalysis.Of(car.Car, car.Light.LoadCase), car.Car, units: units) : null,
            Plain = new(
                Title: PlainFailures,
                Caption: "How far the car goes before it stops when something has failed, from the moment the driver must react. "
                    + "No wheel is locked.",
                X: Case, Y: new("Distance to stop"),
                Marks: [
                    ("reaction", "before the brakes bite"), ("build-up", "before the brakes bite"), ("braking", "braking"),
                    ("sound", "all works"), ("engine off, *", "engine off, press *"), ("no assist", "no booster"),
                    ("load sensing", "load valve lost"), ("front lost", "front brakes lost"), ("rear lost", "rear brakes lost"),
                    ("front/no assist", "front and booster"), ("rear/no assist", "rear and booster"),
                    ("diagonal lost", "one diagonal lost"), ("diag./no assist", "diagonal and booster"),
                    ("all lost", "all brakes lost"),
                ]),
        },
    ];

    private static Figure? Travel(CarStudy car, UnitSystem units) =>
        car.ControlWithVolumes is { } control && TravelCases(car) is { Length: > 0 } cases
            ? FootFigures.Travel(cases, control.Pedal.AvailableTravel, car.Car, car.Light.LoadCase.Name, units: units) : null;

    private static (string Name, PedalTravel Travel)[] TravelCases(CarStudy car)
    {
        var force = new ControlForce(car.Light);
        return [.. new[] { 0.7, 0.5, 0.3 }
            .Select(rate => (Rate: rate, Travel: force.AtRate(rate) is { } at ? force.TravelAt(at.Balance.MasterPressure) : null))
            .Where(item => item.Travel is not null)
            .Select(item => (Invariant.Text($"{item.Rate:0.0} g"), item.Travel!))];
    }

    private static string PlainEffort(CarStudy car, Figure figure)
    {
        var control = new ControlForce(car.Light);
        string hard = control.AtRate(FootFigures.HardStop) is { } point
            ? $"braking at {G(FootFigures.HardStop)} takes {Measure.ControlForce.Text(point.PedalForce, figure.Units)} of the foot"
            : $"braking at {G(FootFigures.HardStop)} is not reached";
        return control.RunOut() is { } end && end.Balance.BrakingRate < FootFigures.HardStop
            ? $"The booster's help ends at {G(end.Balance.BrakingRate)}; {hard}" : Finding.Capital(hard);
    }

    private static string PlainReserve(CarStudy car, Figure figure)
    {
        var presses = EngineOffPresses.Of(new ControlForce(car.Light), 0.5, applications: 6);
        string limit = Measure.ControlForce.Text(presses.GreatestPedalForce, figure.Units);
        return presses.Count is not { } count ? $"With the engine off, braking at 0.50 g takes no more than {limit} even without help"
            : count == 0 ? $"With the engine off, braking at 0.50 g takes more than {limit} from the first press on"
            : Invariant.Text($"With the engine off, {count} press{(count == 1 ? "" : "es")} of the pedal at 0.50 g "
                + $"take{(count == 1 ? "s" : "")} no more than {limit}");
    }

    private static string PlainChoice(CarStudy car, Figure figure)
    {
        MapLayer map = figure.Layers.OfType<MapLayer>().Single();
        double[] fitting = [.. map.Cells.SelectMany(row => row.Index().Where(cell => cell.Item == 0).Select(cell => map.X[cell.Index]))];
        string with = car.Control!.Assist is PoweredAssist ? "With the present booster" : "Without a booster";
        string Width(double metres) => FootFigures.Bore.Text(metres, figure.Units);
        return fitting.Length == 0
            ? $"{with} no cylinder from {Width(map.X[0])} to {Width(map.X[^1])} fits every wish"
            : $"{with} cylinders from {Width(fitting.Min())} to {Width(fitting.Max())} can fit, each with its own pedal";
    }

    private static string PlainFailures(CarStudy car, Figure figure)
    {
        IReadOnlyList<FailureOutcome> outcomes = FailureAnalysis.Of(car.Car, car.Light.LoadCase);
        FailureOutcome? worst = outcomes.Where(one => one.Distance is not null).MaxBy(one => one.Distance!.Whole.Meters);
        return worst?.Distance is not { } longest || outcomes[0].Distance is not { } sound ? "Nothing brakes in some of these cases"
            : $"{Finding.Capital(Lost(worst.Case))}: {Measure.Distance.Text(longest.Whole, figure.Units)} to stop, "
                + $"{(longest.Whole / sound.Whole).ToString("0.0", CultureInfo.InvariantCulture)} times that of the sound car"
                + (outcomes.All(one => one.Distance is not null) ? "" : "; in one case nothing brakes");
    }

    private static string Lost(FailureCase failure) => string.Join(" and ", new[]
    {
        failure.LostCircuit switch
        {
            LostCircuit.Front => "front brakes lost",
            LostCircuit.Rear => "rear brakes lost",
            LostCircuit.Diagonal => "one diagonal lost",
            LostCircuit.All => "all brakes lost",
            _ => null,
        },
        failure.AssistLost ? "no booster" : null,
        failure.ReserveApplication is { } press ? Invariant.Text($"engine off, press {press}") : null,
        failure.LoadSensingLost ? "load valve lost" : null,
    }.OfType<string>().DefaultIfEmpty("all works"));
}
