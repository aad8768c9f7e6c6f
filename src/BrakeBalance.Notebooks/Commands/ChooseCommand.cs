using System.CommandLine;
using BrakeBalance.Choosing;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>choose FILE</c>: which parts give the pedal and the balance that are wanted.</summary>
internal static class ChooseCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string?>("FILE") { Description = "The vehicle file", Arity = ArgumentArity.ZeroOrOne };
        var targets = new Option<string?>("--targets")
        {
            Description = "What is wanted; common practice when left out ('choose starter targets' writes it out)",
            HelpName = "FILE",
        };
        var parts = new Option<string?>("--parts")
        {
            Description = "The parts to choose among, a CSV of your own ('choose starter parts' begins one)",
            HelpName = "FILE",
        };
        var show = new Option<int>("--show")
        {
            Description = "Sets that each view shows at most",
            HelpName = "N",
            DefaultValueFactory = _ => 3,
        };
        var report = new Option<int?>("--report") { Description = "All that there is to say of the set of this number", HelpName = "N" };
        var write = new Option<string?>("--write")
        {
            Description = "Writes each set shown into this folder, as a copy of the vehicle file with the new parts",
            HelpName = "FOLDER",
        };
        var json = new Option<bool>("--json") { Description = "Writes JSON for scripts; each target says its unit" };
        var schema = new Option<bool>("--schema") { Description = "Prints the JSON Schema of targets, and does nothing else" };
        Option<string> units = VehicleOptions.Units();
        Option<bool> force = OutputFiles.Force();
        var kind = new Argument<string>("KIND") { Description = "parts or targets" };
        kind.AcceptOnlyFromAmong("parts", "targets");
        var command = new Command("choose", "Search among parts for those that meet targets: every combination, proven.")
        {
            file, targets, parts, show, report, write, json, schema, units, force,
            StarterCommand.Writing(
                terminal, "starter", "Write a commented file of parts or targets to begin with.",
                "Put your own in, then '" + CommandLine.Name + " choose my-car.json --targets FILE --parts FILE'.",
                parsed => parsed.GetRequiredValue(kind) == "parts" ? PartsList.Starter() : Targets.Starter(), kind),
        };
        command.SetAction((parsed, cancellation) => Task.Run(
            () =>
            {
                if (parsed.GetValue(schema))
                {
                    terminal.Output.WriteLine(Targets.Schema().TrimEnd());
                    return ExitCode.Success;
                }

                List<string> problems = [];
                string? folder = parsed.GetValue(write) is { } asked
                    ? new OutputFiles(problems, parsed.GetValue(force)).Folder(asked, "--write") : null;
                int each = parsed.GetValue(show);
                if (each is < 1 or > 20)
                {
                    problems.Add(FormattableString.Invariant($"--show: {each} sets. Accepted: 1 to 20."));
                }

                ChoiceAsk ask = ChoiceAsk.Read(
                    terminal, parsed.GetValue(file), parsed.GetValue(targets), parsed.GetValue(parts), problems);
                ChoiceResult result = Search(terminal, ask, each, cancellation);
                var output = new ChoiceOutput(ask, result, VehicleOptions.UnitsOf(parsed, units));
                int? chosen = parsed.GetValue(report);
                if (chosen is { } number && (number < 1 || number > output.Sets.Count))
                {
                    throw new BadInputException(FormattableString.Invariant(
                        $"--report: there is no set {number}. Accepted: 1 to {output.Sets.Count}, as the sets are shown without it."));
                }

                if (folder is not null)
                {
                    Write(folder, output, parsed.GetValue(force));
                }

                if (parsed.GetValue(json))
                {
                    terminal.Output.WriteLine(IndentedJson.Text(output.Json(chosen)));
                }
                else if (chosen is { } one)
                {
                    output.Report(terminal.Rich(), one);
                }
                else
                {
                    output.Write(terminal.Rich());
                }

                return ExitCode.Success;
            },
            cancellation));
        return command;
    }

    private static ChoiceResult Search(Terminal terminal, ChoiceAsk ask, int each, CancellationToken cancellation)
    {
        try
        {
            var search = new ChoiceSearch(ask.Text, ask.Targets, ask.Parts);
            return terminal.Work.Do("trying combinations", (int)search.Count,
                progress => ChoiceResult.Of(search, each, progress, cancellation));
        }
        catch (Exception exception) when (PartFault.Said(exception) is { } words)
        {
            throw new BadInputException($"{ask.Path}: {words}");
        }
    }

    private static void Write(string folder, ChoiceOutput output, bool force)
    {
        List<string> problems = [];
        var files = new OutputFiles(problems, force);
        (string Path, string Text)[] all = [.. output.Sets.Select((set, i) => (files.File(
            System.IO.Path.Combine(folder, FormattableString.Invariant($"set-{i + 1}.json")), "--write"), set.Text))];
        BadInputException.ThrowIfAny(problems);
        Directory.CreateDirectory(folder);
        foreach ((string path, string text) in all)
        {
            AtomicFile.Write(path, text);
        }
    }
}
