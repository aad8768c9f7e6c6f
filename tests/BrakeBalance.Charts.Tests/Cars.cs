using System.Collections.Concurrent;
using BrakeBalance.Balance;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Measurements;
using BrakeBalance.Rules;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Charts.Tests;

/// <summary>The invented cars of the repository and all figures of each.</summary>
internal static class Cars
{
    private static readonly ConcurrentDictionary<(string, UnitSystem), IReadOnlyList<Figure>> Built = new();

    private static readonly ConcurrentDictionary<string, Setting> Answers = new();

    private static readonly ConcurrentDictionary<string, Vehicle> Fitted = new();

    public static IReadOnlyList<string> Names { get; } =
        [.. Directory.GetFiles(Path.Combine(Root(), "data", "vehicles"), "*.json").Select(path => Path.GetFileNameWithoutExtension(path)!)
            .Order(StringComparer.Ordinal)];

    public static Vehicle Load(string name) => VehicleFile.Load(Path.Combine(Root(), "data", "vehicles", name + ".json")).Vehicle;

    /// <summary>The car of every combination of parts that a starter file can be asked for.</summary>
    public static IReadOnlyList<Vehicle> Starters { get; } =
    [
        .. from assist in StarterFile.Assists
           from rear in StarterFile.Rears
           from valve in StarterFile.Valves
           select VehicleFile.Read(StarterFile.Text(assist, rear, valve), "starter").Vehicle with { Name = $"{assist} {rear} {valve}" },
    ];

    /// <summary>The answer for a car, found once.</summary>
    public static Setting Answer(string name) => Answers.GetOrAdd(name, key => Setting.Of(Load(key)));

    /// <summary>The car, the coupe with its invented logs as if its file named them, which are fitted once.</summary>
    public static Vehicle Measured(string name) => Fitted.GetOrAdd(name, Fit);

    private static Vehicle Fit(string name)
    {
        Vehicle car = Load(name);
        string Log(string log) => Path.Combine(Root(), "data", "logs", log);
        return name == "coupe-1960s"
            ? OwnMeasurements.Read(car, new(Log("invented-gauges.csv"), Log("invented-stops.csv"), null),
                allowLostRows: true).Own!.Attached()
            : car;
    }

    public static BalanceModel Model(string name) => Model(Load(name));

    public static BalanceModel Model(Vehicle car) => new(car, car.LoadCases[0]);

    /// <summary>All figures of a car, built once.</summary>
    public static IReadOnlyList<Figure> Figures(string name, UnitSystem units) =>
        Built.GetOrAdd((name, units), key => Build(key.Item1, key.Item2));

    /// <summary>All figures of a car, built anew.</summary>
    public static IReadOnlyList<Figure> Build(string name, UnitSystem units)
    {
        Vehicle car = Load(name);
        BalanceModel light = Model(car), laden = new(car, car.LoadCases[^1]);
        UtilisationCurve[] curves = [.. UtilisationCurve.Of(car)];
        Pressure[] knees = [.. Enumerable.Range(1, 8).Select(i => Pressure.FromBars(10 * i))];
        double[] slopes = [0, 0.2, 0.4, 0.6, 0.8];
        var conditions = new Conditions { AdhesionSteps = 8 };
        Setting setting = Answer(name);
        IReadOnlyList<SettingOutcome> outcomes = SettingSearch.Sweep(car, conditions, knees, slopes);
        BalanceModel changed = Model(car.WithRearKnee(Pressure.FromBars(70), 0.6));
        var safeKnees = new[] { 0, 0.1 }.Select(spread => (spread, (IReadOnlyList<(double, Pressure?)>)[.. slopes.Select(slope =>
            (slope, SettingSearch.Limit(car, conditions with { FrictionSpread = new(spread, spread) }, slope).Knee))])).ToList();
        return
        [
            BalanceFigures.BrakeForces(light, units: units),
            BalanceFigures.BrakeForces(laden, [0.2, 0.5, 1.1], units: units, id: "brake-forces-laden"),
            BalanceFigures.LinePressures(light, units: units),
            BalanceFigures.AdhesionUtilisation(curves[0], units, allLines: true),
            BalanceFigures.BrakingEfficiency(light, units: units),
            BalanceFigures.LoadCases(light, laden, units: units),
            SettingFigures.SafeSettings(outcomes, setting, units),
            SettingFigures.EfficiencyOfSettings(outcomes, setting, units: units),
            SettingFigures.SafeLimits(safeKnees, units),
            ComparisonFigures.BeforeAfter(light, changed, units: units),
            ComparisonFigures.Forces([("as it is", light), ("knee set anew", changed), ("laden", laden)], units),
            .. new[]
            {
                ComparisonFigures.SetUps([("as it is", light), ("knee set anew", changed)], units),
                ComparisonFigures.Effort([("as it is", light), ("laden", laden)], units),
            }.OfType<Figure>(),
            .. Foot(car, light, units),
            .. setting.Middle.Slope is null ? Array.Empty<Figure>() : [KneeFigure.Of(setting, units: units)],
            SettingExplorer.Of(setting, Pressure.FromBars(60), units).Start.Figures[0],
        ];
    }

    private static IEnumerable<Figure> Foot(Vehicle car, BalanceModel light, UnitSystem units)
    {
        if (car.Control is not { Circuits: not null } control)
        {
            yield break;
        }

        var force = new ControlForce(light);
        yield return FootFigures.Effort(light, ControlVariants.Assists(control), units: units);
        yield return FootFigures.Reserve(force, units: units);
        yield return FootFigures.Travel(
            [.. new[] { 0.7, 0.5, 0.3 }.Select(rate =>
                (FormattableString.Invariant($"{rate} g"), force.TravelAt(force.AtRate(rate)!.Balance.MasterPressure)!))],
            control.Pedal.AvailableTravel,
            car,
            light.LoadCase.Name,
            units: units);
        yield return FootFigures.ChoiceMap(light, "the present assist", control.Assist, units: units);
        yield return FootFigures.FailureDistances(FailureAnalysis.Of(car, light.LoadCase), car, units: units);
    }

    public static Explorable Explorable(string name, UnitSystem units) =>
        BalanceExplorables.SettingAndLoad(Answer(name), settings: 4, units: units);

    private static string Root()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Notebooks.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("The tests run from within the repository.");
    }
}
