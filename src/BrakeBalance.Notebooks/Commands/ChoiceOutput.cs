using System.Text.Json.Nodes;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Tables;
using BrakeBalance.Choosing;
using BrakeBalance.Notebooks.Commands.Summaries;
using Spectre.Console;

namespace BrakeBalance.Notebooks.Commands;

internal sealed class ChoiceOutput(Choice choice, ChoiceResult result, UnitSystem units)
{
    private readonly ChoiceWords _words = new(choice, result, units);

    /// <summary>The sets shown, in the order of their numbers: the nearest miss alone when nothing fits.</summary>
    public IReadOnlyList<Proposal> Sets { get; } = result.Sets;

    /// <summary>The sets side by side.</summary>
    public void Write(IAnsiConsole console)
    {
        SettingOutput.Labelled(console, "Tried", _words.Tried);
        SettingOutput.Labelled(console, "Answer", _words.Answer);
        SettingOutput.Labelled(console, "Conditions", _words.Conditions);
        if (_words.LogsLeft.Length > 0)
        {
            SettingOutput.Labelled(console, "Measured", _words.LogsLeft);
        }

        TextTable.Of(ChoiceTables.Sets(choice, result, units)).Write(console);
        TextTable.Of(ChoiceTables.Answers(choice, result, units)).Write(console);
        SettingOutput.Labelled(console, "Met by", ChoiceWords.MetBy);
        Cautions(console);
    }

    /// <summary>All that there is to say of one set.</summary>
    public void Report(IAnsiConsole console, int number)
    {
        Proposal set = Sets[number - 1];
        SettingOutput.Labelled(console, "Set",
            $"{Number(number)}: {ChoiceWords.PartsOf(set)}{_words.PriceOf(set, ", ")}; breaks {_words.Broken(set)}.");
        CompareCommand.Write(console, ChoiceResult.Compare(choice.Car, set, units));
        ChangePlan plan = ChoiceResult.Change(choice.Car, set);
        TextTable.Write(console, BenchTables.Changes(plan, plan.Rows(), units));
        Heading(console, "On the bench");
        Steps(console, ChoiceResult.OnTheBench(set));
        TextTable.Write(console, ChoiceTables.Shopping(choice, result, set, units));
        Heading(console, $"{Checklist.FirstApplication.Title}: {Checklist.FirstApplication.Before}");
        Steps(console, Checklist.FirstApplication.Steps);
        console.WriteLine($"Then test stops from slow and light: '{CommandLine.Name} measure plan' on the file that --write puts down. "
            + "The page beside that file has the same with figures.");
        Cautions(console);
    }

    /// <summary>The same as JSON; with a number only that set, and its report.</summary>
    public JsonObject Json(int? number) => new()
    {
        ["combinations"] = result.Combinations,
        ["impossible"] = result.Impossible,
        ["meet_quick_targets"] = result.Cheap,
        ["answer"] = _words.Answer,
        ["load_case"] = _words.LoadCase,
        ["cautions"] = new JsonArray([.. ChoiceResult.Cautions.Select(line => (JsonNode)line)]),
        ["targets"] = new JsonArray([.. _words.Asked.Select(target => new JsonObject
        {
            ["key"] = Key(target),
            ["name"] = target.Name,
            ["unit"] = target.Measure.In(units).Symbol,
            [target.AtLeast ? "at_least" : "at_most"] = Shown(target, target.Limit),
            ["present"] = Shown(target, _words.Present[(int)target.Kind]),
            ["met_by"] = _words.Met(target).Length > 0 ? result.Met[(int)target.Kind] : null,
        })]),
        ["sets"] = new JsonArray([.. Sets.Index().Where(set => number is null || set.Index == number - 1).Select(set =>
            Json(set.Index, set.Item, number is not null))]),
    };

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
            ["answers"] = new JsonObject(_words.Asked.Select(target =>
                KeyValuePair.Create(Key(target), (JsonNode?)Shown(target, set.Values[(int)target.Kind])))),
            ["breaks"] = new JsonArray([.. set.Broken.Select(broken => new JsonObject
            {
                ["key"] = Key(broken.Target),
                ["over_limit"] = Math.Round(broken.Lacks, 6),
            })]),
            ["holds_for_drawn_cars"] = result.Nearest is null && _words.Holds[at] is { } holds
                ? new JsonObject { ["meet"] = holds.Meet, ["of"] = holds.Of } : null,
        };
        if (whole)
        {
            json["comparison"] = CompareCommand.Json(ChoiceResult.Compare(choice.Car, set, units), new ReportUnits(units));
            json["on_the_bench"] = new JsonArray([.. ChoiceResult.OnTheBench(set).Select(line => (JsonNode)line)]);
        }

        return json;
    }

    private static void Cautions(IAnsiConsole console)
    {
        foreach (string caution in ChoiceResult.Cautions)
        {
            SettingOutput.Labelled(console, "Caution", caution);
        }
    }

    private double? Shown(Target target, double value) => double.IsFinite(value) ? target.Measure.In(units).FromSi(value) : null;

    private static string Key(Target target) => System.Text.Json.JsonNamingPolicy.SnakeCaseLower.ConvertName(target.Kind.ToString());

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
