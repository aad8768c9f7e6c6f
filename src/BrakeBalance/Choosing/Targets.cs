using System.Text.Json.Nodes;
using BrakeBalance.Answers;
using BrakeBalance.Hydraulics;
using BrakeBalance.Pedals;
using BrakeBalance.Stops;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet.Units;

namespace BrakeBalance.Choosing;

/// <summary>What is wanted of the brakes; what a file leaves out is common practice.</summary>
public sealed class Targets
{
    private static readonly Measure Light = Measure.Of("pedal force", ForceUnit.Newton, (ForceUnit.Newton, "N", 1),
        (ForceUnit.PoundForce, "lbf", 1));

    private static readonly Measure Way = Measure.Of("length", LengthUnit.Meter, (LengthUnit.Millimeter, "mm", 0.5),
        (LengthUnit.Inch, "in", 0.01));

    private readonly TargetsDocument _said;

    private Targets(TargetsDocument said)
    {
        _said = said;
        double Newtons(Force? force, double usual) => force?.Newtons ?? usual;
        List<Target> all =
        [
            new(TargetKind.PedalForceHalf, "Pedal force at 0.50 g", Light, Newtons(said.PedalForceHalf, 200)),
            new(TargetKind.PedalForceFull, "Pedal force at 1.00 g", Light, Newtons(said.PedalForceFull, 400)),
            new(TargetKind.LightPedal, "Pedal force at 1.00 g, not touchy", Light,
                Newtons(said.LightPedal, FootForce.Touchy.Newtons), AtLeast: true),
            new(TargetKind.PedalForceHalfNoAssist, "Pedal force at 0.50 g, no assist", Light, Newtons(said.PedalForceHalfNoAssist, 1000)),
            new(TargetKind.PedalForceFullNoAssist, "Pedal force at 1.00 g, no assist", Light,
                Newtons(said.PedalForceFullNoAssist, double.PositiveInfinity)),
            new(TargetKind.PedalTravelFull, "Pedal travel at 1.00 g", Way, said.PedalTravelFull?.Meters ?? 0.100),
            new(TargetKind.TravelLeftAtLock, "Travel left at lock-up, dry road", Way,
                (said.TravelLeftAtLock ?? PedalTravel.WantedReserve).Meters, AtLeast: true),
            new(TargetKind.FrontFirst, "Front first in all conditions", Measure.Number, said.FrontFirst == false ? 0 : 1, AtLeast: true),
            new(TargetKind.RearMargin, "Margin of the rear brakes", Measure.Percent, said.RearMargin ?? 0.10, AtLeast: true),
            new(TargetKind.Efficiency, "Mean braking efficiency", Measure.Percent, said.Efficiency ?? 0.75, AtLeast: true),
            new(TargetKind.LinePressure, "Line pressure against the parts' rating", Measure.Percent, 1),
            new(TargetKind.StoredStops, "Presses from the store", Measure.Count, said.StoredStops ?? 2, AtLeast: true),
            new(TargetKind.DiscTemperature, "Hottest disc or drum", Measure.Temperature,
                said.Use is { } use ? (use.Hottest ?? Temperature.FromDegreesCelsius(450)).Kelvins : double.PositiveInfinity),
            new(TargetKind.Failures, "Distance left to the rules, sound or failed", Measure.Percent,
                said.Failures == false ? double.NegativeInfinity : 0, AtLeast: true),
        ];
        All = [.. all];
    }

    /// <summary>Every target, by its kind; the cheap ones first.</summary>
    public ImmutableArray<Target> All { get; }

    /// <summary>The target of a kind.</summary>
    /// <param name="kind">What it asks of.</param>
    public Target this[TargetKind kind] => All[(int)kind];

    /// <summary>Force of the foot at which the pressure is held against the rating.</summary>
    public Force HighestPedalForce => _said.HighestPedalForce ?? StopConditions.UsualPedalForce;

    /// <summary>The load case of a car in which pedal and travel are judged.</summary>
    /// <param name="car">The car.</param>
    /// <returns>The load case named; the car's first when none is.</returns>
    /// <exception cref="ArgumentException">The car has no load case of that name.</exception>
    public LoadCase LoadCaseOf(Vehicle car) => _said.LoadCase is { } name ? car.LoadCase(name) : car.LoadCases[0];

    /// <summary>Line pressure that the parts which stay are rated for; null when it is not said.</summary>
    public Pressure? Rating => _said.Rating;

    /// <summary>The use over which the discs are heated; null when none is described.</summary>
    public HeatCycle? Use => _said.Use is not { } use ? null : HeatCycle.Repeated(
        (int)use.Stops!.Value, use.From!.Value, use.To ?? Speed.Zero, Acceleration.FromStandardGravity(use.Deceleration ?? 0.5),
        use.Interval!.Value, samePressure: false);

    /// <summary>Reads the text of a file of targets for a car.</summary>
    /// <param name="text">The text; <c>{}</c> for common practice.</param>
    /// <param name="car">The car whose load cases they may name; null for none.</param>
    /// <returns>The targets; null with every problem found.</returns>
    public static (Targets? Targets, IReadOnlyList<Problem> Problems) Read(string text, Vehicle? car)
    {
        DocumentReading<TargetsDocument> reading = DocumentFile.Read<TargetsDocument>(text);
        List<Problem> problems = [.. reading.Problems,
            .. reading.Ranges.Select(range => new Problem(range.Path, "is a range.", "one value: a target is a limit"))];
        if (reading.Partial is not { } document)
        {
            return (null, problems);
        }

        var targets = new Targets(document);
        void Attempt(string path, Action action)
        {
            try
            {
                action();
            }
            catch (ArgumentException fault)
            {
                problems.Add(new(path, Problem.WordsOf(fault)));
            }
        }

        if (car is not null)
        {
            Attempt("loadCase", () => targets.LoadCaseOf(car));
        }

        if (reading.Problems.All(problem => !problem.Path.StartsWith("use", StringComparison.Ordinal)))
        {
            Attempt("use", () => _ = targets.Use);
        }

        if (document is { PedalForceFull: { } full, PedalForceHalf: { } half } && half > full)
        {
            problems.Add(new("pedalForceHalf", "is more than pedalForceFull.", "less force at 0.5 g than at 1.0 g"));
        }

        return (problems.Count > 0 ? null : targets, problems);
    }

    /// <summary>The JSON Schema (draft 2020-12) of files of targets.</summary>
    public static string Schema() => DocumentSchema.Text(
        typeof(TargetsDocument), "Targets", "What is wanted of the brakes when parts are chosen; every quantity is a text with its unit.");

    /// <summary>A file of targets to begin with: the common practice written out.</summary>
    /// <returns>The file, with comments.</returns>
    public static string Starter() => new CommentedFile("disc").Text(
        [
            "Targets for choosing parts. The numbers are common practice, none of them a rule: change those that you want otherwise.",
            CommentedFile.HowToTakeIn,
            "A calculation is no approval of a brake.",
        ],
        typeof(TargetsDocument), (JsonObject)JsonNode.Parse("""
        {
          "pedalForceHalf": "200 N", "pedalForceFull": "400 N", "lightPedal": "20 lbf", "pedalForceHalfNoAssist": "1000 N",
          "pedalTravelFull": "100 mm", "travelLeftAtLock": "50 mm", "frontFirst": true, "rearMargin": 0.10, "efficiency": 0.75,
          "failures": true, "storedStops": 2, "highestPedalForce": "500 N"
        }
        """)!);
}

/// <summary>What a target asks of; the order is that of <see cref="Targets.All"/>.</summary>
public enum TargetKind
{
    /// <summary>Pedal force at 0.5 g, assisted.</summary>
    PedalForceHalf,

    /// <summary>Pedal force at 1.0 g, assisted.</summary>
    PedalForceFull,

    /// <summary>The same, not to be touchy.</summary>
    LightPedal,

    /// <summary>Pedal force at 0.5 g without assist.</summary>
    PedalForceHalfNoAssist,

    /// <summary>Pedal force at 1.0 g without assist.</summary>
    PedalForceFullNoAssist,

    /// <summary>Travel of the pad at 1.0 g.</summary>
    PedalTravelFull,

    /// <summary>Travel left to the floor at the first lock-up on a dry road.</summary>
    TravelLeftAtLock,

    /// <summary>The front locks first in all conditions of the file; 1 where it does.</summary>
    FrontFirst,

    /// <summary>How much stronger the rear brakes could be before the rear locks first [–].</summary>
    RearMargin,

    /// <summary>Mean braking efficiency over the conditions [–].</summary>
    Efficiency,

    /// <summary>Line pressure over the parts' rating [–].</summary>
    LinePressure,

    /// <summary>Presses left after the engine has stopped.</summary>
    StoredStops,

    /// <summary>Highest temperature of a disc or drum over the use described.</summary>
    DiscTemperature,

    /// <summary>What is left to the rules, sound or with something failed, over their limit [–].</summary>
    Failures,
}

/// <summary>One thing wanted.</summary>
/// <param name="Kind">What it asks of.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Measure">How its number is shown.</param>
/// <param name="Limit">The limit, in the SI unit of the measure or [–]; infinite when nothing is asked.</param>
/// <param name="AtLeast">Whether the limit is the least, not the most.</param>
public sealed record Target(TargetKind Kind, string Name, Measure Measure, double Limit, bool AtLeast = false)
{
    /// <summary>What never reaches its target misses it by this many times the limit, so that misses can be added up.</summary>
    public const double Hopeless = 10;

    /// <summary>Whether anything is asked.</summary>
    public bool IsAsked => double.IsFinite(Limit);

    /// <summary>
    /// What is left to the limit over the limit [–]: negative where it is broken; not a number where nothing is asked or the file cannot
    /// tell.
    /// </summary>
    /// <param name="value">The value, in the SI unit of the measure or [–].</param>
    /// <returns>The room [–].</returns>
    public double Room(double value)
    {
        if (!IsAsked || double.IsNaN(value))
        {
            return double.NaN;
        }

        double room = (AtLeast ? value - Limit : Limit - value) / (Limit == 0 ? 1 : Math.Abs(Limit));
        return Math.Clamp(room, -Hopeless, Hopeless);
    }

    /// <summary>A value as people read it.</summary>
    /// <param name="value">The value, in the SI unit of the measure or [–].</param>
    /// <param name="units">The system of units.</param>
    public string Text(double value, UnitSystem units) => double.IsNaN(value) ? "–"
        : double.IsInfinity(value) ? AtLeast == value > 0 ? "no limit" : "not reached"
        : Kind == TargetKind.FrontFirst ? value >= 1 ? "yes" : "NO"
        : Measure.Text(value, units);
}
