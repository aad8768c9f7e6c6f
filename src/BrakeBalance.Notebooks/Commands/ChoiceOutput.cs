using System.Text.Json.Nodes;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Choosing;
using BrakeBalance.Notebooks.Commands.Summaries;
using Spectre.Console;
using UnitsNet.Units;

namespace BrakeBalance.Notebooks.Commands;

/// <summary>A choice of parts on the terminal and in JSON.</summary>
internal sealed class ChoiceOutput(ChoiceAsk ask, ChoiceResult result, UnitSystem units)
{
    private static readonly Measure PartMass =
        Measure.Of("mass of a part", MassUnit.Kilogram, (MassUnit.Kilogram, "kg", 0.1), (MassUnit.Pound, "lb", 0.1));

    private readonly Lazy<(int Meet, int Of)?[]> _holds = new(() =>
        [.. (result.Nearest is null ? result.Shown.Select(shown => shown.Set) : []).Select(set => set.Holds())]);

    /// <summary>The sets shown, in the order of their numbers: the nearest miss alone when nothing fits.</summary>
    public IReadOnlyList<Proposal> Sets { get; } =
        result.Nearest is { } nearest ? [nearest] : [.. result.Shown.Select(shown => shown.Set)];

    private IEnumerable<Target> Asked => ask.Targets.All.Where(target => target.IsAsked);

    private string Tried => $"{Count(result.Combinations)} combinations tried, none left out; {Count(result.Cheap)} meet the targets "
        + "asked of each"
        + (result.Impossible > 0 ? $", in {Count(result.Impossible)} the parts do not go together" : "") + ".";

    private string Conditions => $"Pedal, travel and line pressure: load case {LoadCase}, the pressure with "
        + $"{Measure.ControlForce.Text(ask.Targets.HighestPedalForce, units)} on the pedal. Front first, margin and efficiency: every load "
        + "case and condition of the file. Rules: as 'summary' holds them."
        + (ask.Targets.Use is { } use ? $" Heat: {use.Name}, load case {LoadCase}." : "")
        + (ask.Car.Uncertainty is null ? "" : " Ranges of the file stand at their middles, but not for the front first.");

    private string LoadCase => ask.Targets.LoadCaseOf(ask.Car).Name;

    private string Conclusion => result.Shown.Count > 0
        ? $"The smallest change that works: {PartsOf(result.Shown[0].Set)}{PriceOf(result.Shown[0].Set, ", ")}."
        : result.Nearest is not { } nearest ? "None of them makes a car that can be computed."
        : $"Nothing fits. The nearest miss: {PartsOf(nearest)}{PriceOf(nearest, ", ")}; it breaks {Broken(nearest)}. The hardest target: "
            + Hardest(nearest);

    /// <summary>The sets side by side.</summary>
    public void Write(IAnsiConsole console)
    {
        SettingOutput.Labelled(console, "Tried", Tried);
        SettingOutput.Labelled(console, "Answer", Conclusion);
        SettingOutput.Labelled(console, "Conditions", Conditions);
        if (ask.LogsLeft)
        {
            SettingOutput.Labelled(console, "Measured", "Logs of the present parts are left aside: they say nothing of new ones.");
        }

        var sets = new TextTable("Set", "Shown for", "New parts", "Price", "Mass", "Breaks", "Holds for");
        foreach ((int i, Proposal set) in Sets.Index())
        {
            sets.Row(Number(i + 1), result.Nearest is null ? string.Join("; ", result.Shown[i].For) : "nearest miss", PartsOf(set),
                PriceOf(set, ""), MassOf(set), set.Broken.Count == 0 ? "nothing" : Broken(set), HoldsFor(i));
        }

        sets.Write(console);
        string[] names = [.. Sets.Select((_, i) => $"Set {Number(i + 1)}")];
        var table = new TextTable(["Target", "Wanted", "Met by", "Present", .. names]);
        double[] present = Present;
        foreach (Target target in Asked)
        {
            table.Row([target.Name, Wanted(target), ChosenCar.IsCheap(target.Kind) ? Count(result.Met[(int)target.Kind]) : "",
                target.Text(present[(int)target.Kind], units), .. Sets.Select(set => target.Text(set.Values[(int)target.Kind], units))]);
        }

        table.Write(console);
        SettingOutput.Labelled(console, "Met by", "combinations, each target by itself. Targets without a number are asked only of sets "
            + "that meet those with one; room is to the tightest of these.");
        foreach (string caution in ChoiceResult.Cautions)
        {
            SettingOutput.Labelled(console, "Caution", caution);
        }
    }

    /// <summary>All that there is to say of one set.</summary>
    public void Report(IAnsiConsole console, int number)
    {
        Proposal set = Sets[number - 1];
        SettingOutput.Labelled(console, "Set", $"{Number(number)}: {PartsOf(set)}{PriceOf(set, ", ")}; breaks "
            + (set.Broken.Count == 0 ? "nothing" : Broken(set)) + ".");
        CompareCommand.Write(console, Compared(set));
        ChangePlan plan = ChoiceResult.Change(ask.Car, set);
        TextTable.Write(console, BenchTables.Changes(plan, plan.Rows(), units));
        Heading(console, "On the bench");
        Steps(console, ChoiceResult.OnTheBench(set));
        Heading(console, "Shopping list");
        var list = new TextTable("Part", "Name", "Price", "Mass", "Rated for", "Sets");
        foreach (Part part in set.Parts)
        {
            list.Row(part.Place, part.Name, Price(part.Price), part.Mass is { } mass ? PartMass.Text(mass, units) : "",
                part.Rating is { } rating ? Measure.LinePressure.Text(rating, units) : "not said",
                string.Join("; ", part.Sets.Select(one => $"{one.Path} = {one.Value}")));
        }

        list.Row("together", "", PriceOf(set, ""), MassOf(set), "", "");
        list.Write(console);
        Heading(console, $"{Checklist.FirstApplication.Title}: {Checklist.FirstApplication.Before}");
        Steps(console, Checklist.FirstApplication.Steps);
        console.WriteLine($"Then test stops from slow and light: '{CommandLine.Name} measure plan' on the file that --write puts down.");
        foreach (string caution in ChoiceResult.Cautions)
        {
            SettingOutput.Labelled(console, "Caution", caution);
        }
    }

    /// <summary>The same as JSON; with a number only that set, and its report.</summary>
    public JsonObject Json(int? number) => new()
    {
        ["combinations"] = result.Combinations,
        ["impossible"] = result.Impossible,
        ["meet_quick_targets"] = result.Cheap,
        ["answer"] = Conclusion,
        ["load_case"] = LoadCase,
        ["targets"] = new JsonArray([.. Asked.Select(target => new JsonObject
        {
            ["key"] = Key(target),
            ["name"] = target.Name,
            ["unit"] = target.Measure.In(units).Symbol,
            [target.AtLeast ? "at_least" : "at_most"] = Shown(target, target.Limit),
            ["present"] = Shown(target, Present[(int)target.Kind]),
            ["met_by"] = ChosenCar.IsCheap(target.Kind) ? result.Met[(int)target.Kind] : null,
        })]),
        ["sets"] = new JsonArray([.. Sets.Index().Where(set => number is null || set.Index == number - 1).Select(set =>
            Json(set.Index, set.Item, number is not null))]),
    };

    private double[] Present => field ??= ChosenCar.Answers(ask.Car, ask.Targets, null);

    private JsonObject Json(int at, Proposal set, bool whole)
    {
        var json = new JsonObject
        {
            ["set"] = at + 1,
            ["shown_for"] = new JsonArray([.. (result.Nearest is null ? result.Shown[at].For : ["nearest miss"])
                .Select(why => (JsonNode)why)]),
            ["fits"] = set.Broken.Count == 0,
            ["parts"] = new JsonArray([.. set.Parts.Select(part => new JsonObject
            {
                ["part"] = part.Place,
                ["name"] = part.Name,
                ["price"] = part.Price,
                ["sets"] = new JsonObject(part.Sets.Select(one => KeyValuePair.Create(one.Path, (JsonNode?)one.Value))),
            })]),
            ["price"] = set.Price,
            ["answers"] = new JsonObject(Asked.Select(target =>
                KeyValuePair.Create(Key(target), (JsonNode?)Shown(target, set.Values[(int)target.Kind])))),
            ["breaks"] = new JsonArray([.. set.Broken.Select(broken => new JsonObject
            {
                ["key"] = Key(broken.Target),
                ["over_limit"] = Math.Round(broken.Lacks, 6),
            })]),
            ["holds_for_drawn_cars"] = result.Nearest is null && _holds.Value[at] is { } holds
                ? new JsonObject { ["meet"] = holds.Meet, ["of"] = holds.Of } : null,
        };
        if (whole)
        {
            json["comparison"] = CompareCommand.Json(Compared(set), new SummaryUnits(units));
            json["on_the_bench"] = new JsonArray([.. ChoiceResult.OnTheBench(set).Select(line => (JsonNode)line)]);
            json["cautions"] = new JsonArray([.. ChoiceResult.Cautions.Select(line => (JsonNode)line)]);
        }

        return json;
    }

    private SetUpComparison Compared(Proposal set) => SetUpComparison.Of(
        [("present", ask.Car), ("new parts", set.Vehicle)], units, ChoiceResult.Change(ask.Car, set).Conditions);

    private string Hardest(Proposal nearest)
    {
        Target fewest = Asked.Where(one => ChosenCar.IsCheap(one.Kind)).MinBy(one => result.Met[(int)one.Kind])!;
        Target target = nearest.Broken.Count > 0 && result.Met[(int)fewest.Kind] > 0 ? nearest.Broken[0].Target : fewest;
        return $"{Lowered(target.Name)}, {Wanted(target)}"
            + (ChosenCar.IsCheap(target.Kind) ? $", met by {Count(result.Met[(int)target.Kind])} of {Count(result.Combinations)}" : "")
            + ".";
    }

    private string Broken(Proposal set) => string.Join("; ", set.Broken.Select(broken =>
        $"{Lowered(broken.Target.Name)}: {broken.Target.Text(set.Values[(int)broken.Target.Kind], units)}, "
            + $"wanted {Wanted(broken.Target)}"));

    private string Wanted(Target target) => target.Kind == TargetKind.FrontFirst ? "yes"
        : (target.AtLeast ? "at least " : "at most ") + target.Measure.Text(target.Limit, units);

    private string HoldsFor(int at) => result.Nearest is not null ? "–"
        : _holds.Value[at] is not { } holds ? "the file's numbers"
        : $"{Number(holds.Meet)} of {Number(holds.Of)} cars of the file's ranges";

    private static string PartsOf(Proposal set) =>
        set.Parts.Count == 0 ? "the car as it is" : string.Join(", ", set.Parts.Select(part => $"{part.Place}: {part.Name}"));

    private string PriceOf(Proposal set, string before) => set.Price > 0 ? before + Price(set.Price) : "";

    private string Price(double price) => string.Create(CultureInfo.InvariantCulture, $"{price:#,0.##} {ask.Parts.Money}").Trim();

    private string MassOf(Proposal set) => set.Parts.Any(part => part.Mass is not null)
        ? PartMass.Text(set.Parts.Sum(part => part.Mass?.Kilograms ?? 0), units) : "";

    private double? Shown(Target target, double value) => double.IsFinite(value) ? target.Measure.In(units).FromSi(value) : null;

    private static string Key(Target target) => System.Text.Json.JsonNamingPolicy.SnakeCaseLower.ConvertName(target.Kind.ToString());

    private static string Lowered(string name) => char.ToLowerInvariant(name[0]) + name[1..];

    private static string Count(long number) => number.ToString("#,0", CultureInfo.InvariantCulture);

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static void Heading(IAnsiConsole console, string text)
    {
        console.WriteLine("");
        console.WriteLine(text);
    }

    private static void Steps(IAnsiConsole console, IEnumerable<string> steps)
    {
        foreach ((int i, string step) in steps.Index())
        {
            SettingOutput.Labelled(console, $" {Number(i + 1)}", step);
        }
    }
}
