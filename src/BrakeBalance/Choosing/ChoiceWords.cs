using BrakeBalance.Answers;
using UnitsNet.Units;

namespace BrakeBalance.Choosing;

/// <summary>A choice of parts in words: the same on the terminal, in pages and in notebooks.</summary>
/// <param name="choice">What was asked.</param>
/// <param name="result">What the search has to show.</param>
/// <param name="units">The system of units.</param>
internal sealed class ChoiceWords(Choice choice, ChoiceResult result, UnitSystem units)
{
    /// <summary>What stands below the table of targets.</summary>
    public const string MetBy = "combinations, each target by itself. Targets without a number are asked only of sets that meet those with "
        + "one; room is to the tightest of these.";

    private static readonly Measure PartMass =
        Measure.Of("mass of a part", MassUnit.Kilogram, (MassUnit.Kilogram, "kg", 0.1), (MassUnit.Pound, "lb", 0.1));

    private readonly Lazy<(int Meet, int Of)?[]> _holds = new(() =>
        result.Held?.ToArray() ?? [.. (result.Nearest is null ? result.Sets : []).Select(set => set.Holds())]);

    /// <summary>The targets that ask for something.</summary>
    public IReadOnlyList<Target> Asked { get; } = [.. choice.Targets.All.Where(target => target.IsAsked)];

    /// <summary>What the car as it is answers to every target.</summary>
    public IReadOnlyList<double> Present => field ??= ChosenCar.Answers(choice.Car, choice.Targets, null);

    /// <summary>For how many of the cars drawn from the file's ranges each set holds; null without ranges.</summary>
    public IReadOnlyList<(int Meet, int Of)?> Holds => _holds.Value;

    /// <summary>How many combinations were tried, and what came of them.</summary>
    public string Tried => $"{Count(result.Combinations)} combinations tried, none left out; {Count(result.Cheap)} meet the targets "
        + "asked of each"
        + (result.Impossible > 0 ? $", in {Count(result.Impossible)} the parts do not go together" : "") + ".";

    /// <summary>In what states the car is judged.</summary>
    public string Conditions => $"Pedal, travel and line pressure: load case {LoadCase}, the pressure with "
        + $"{Measure.ControlForce.Text(choice.Targets.HighestPedalForce, units)} on the pedal. Front first, margin and efficiency: every "
        + "load case and condition of the file. Rules: as 'summary' holds them."
        + (choice.Targets.Use is { } use ? $" Heat: {use.Name}, load case {LoadCase}." : "")
        + (choice.Car.Uncertainty is null ? "" : " Ranges of the file stand at their middles, but not for the front first.");

    /// <summary>What became of logs that the file names; empty when it names none.</summary>
    public string LogsLeft => choice.LogsLeft ? "Logs of the present parts are left aside: they say nothing of new ones." : "";

    /// <summary>The load case in which pedal and travel are judged.</summary>
    public string LoadCase => choice.Targets.LoadCaseOf(choice.Car).Name;

    /// <summary>The answer: the smallest change that works, or the nearest miss with the hardest target.</summary>
    public string Answer => result.Shown.Count > 0
        ? $"The smallest change that works: {PartsOf(result.Shown[0].Set)}{PriceOf(result.Shown[0].Set, ", ")}."
        : result.Nearest is not { } nearest ? "None of them makes a car that can be computed."
        : $"Nothing fits. The nearest miss: {PartsOf(nearest)}{PriceOf(nearest, ", ")}; it breaks {Broken(nearest)}. The hardest target: "
            + Hardest(nearest);

    public string ShownFor(int at) => result.Nearest is null ? string.Join("; ", result.Shown[at].For) : "nearest miss";

    /// <summary>Of which cars a set holds what was asked.</summary>
    public string HoldsFor(int at) => result.Nearest is not null ? "–"
        : Holds[at] is not { } holds ? "the file's numbers"
        : $"{Count(holds.Meet)} of {Count(holds.Of)} cars of the file's ranges";

    /// <summary>What a set breaks of the targets, and by how much.</summary>
    public string Broken(Proposal set) => set.Broken.Count == 0 ? "nothing" : string.Join("; ", set.Broken.Select(broken =>
        $"{Lowered(broken.Target.Name)}: {broken.Target.Text(set.Values[(int)broken.Target.Kind], units)}, "
            + $"wanted {Wanted(broken.Target)}"));

    public string Wanted(Target target) => target.Kind == TargetKind.FrontFirst ? "yes"
        : (target.AtLeast ? "at least " : "at most ") + target.Measure.Text(target.Limit, units);

    /// <summary>How many combinations meet a target by itself; empty where not every one was asked.</summary>
    public string Met(Target target) => ChosenCar.IsCheap(target.Kind) ? Count(result.Met[(int)target.Kind]) : "";

    /// <summary>The new parts of a set.</summary>
    public static string PartsOf(Proposal set) =>
        set.Parts.Count == 0 ? "the car as it is" : string.Join(", ", set.Parts.Select(part => $"{part.Place}: {part.Name}"));

    /// <summary>What the new parts of a set cost; empty when nothing.</summary>
    public string PriceOf(Proposal set, string before) => set.Price > 0 ? before + Price(set.Price) : "";

    public string Price(double price) => Invariant.Text($"{price:#,0.##} {choice.Parts.Money}").Trim();

    /// <summary>What the new parts of a set weigh, as far as the list says; empty when it says nothing.</summary>
    public string MassOf(Proposal set) => set.Parts.Any(part => part.Mass is not null)
        ? PartMass.Text(set.Parts.Sum(part => part.Mass?.Kilograms ?? 0), units) : "";

    /// <summary>The mass of a part; empty when the list does not say it.</summary>
    public string MassOf(Part part) => part.Mass is { } mass ? PartMass.Text(mass, units) : "";

    private string Hardest(Proposal nearest)
    {
        Target fewest = Asked.Where(one => ChosenCar.IsCheap(one.Kind)).MinBy(one => result.Met[(int)one.Kind])!;
        Target target = nearest.Broken.Count > 0 && result.Met[(int)fewest.Kind] > 0 ? nearest.Broken[0].Target : fewest;
        return $"{Lowered(target.Name)}, {Wanted(target)}"
            + (ChosenCar.IsCheap(target.Kind) ? $", met by {Count(result.Met[(int)target.Kind])} of {Count(result.Combinations)}" : "")
            + ".";
    }

    private static string Lowered(string name) => char.ToLowerInvariant(name[0]) + name[1..];

    private static string Count(long number) => number.ToString("#,0", CultureInfo.InvariantCulture);
}
