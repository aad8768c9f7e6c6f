using System.CommandLine;
using BrakeBalance.Choosing;
using BrakeBalance.Notebooks.Publishing;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>choose FILE</c>: which parts give the pedal and the balance that are wanted.</summary>
internal static class ChooseCommand
{
    public static Command Create(Terminal terminal)
    {
        Argument<string?> file = Options.File();
        var targets = Options.Of<string?>("--targets",
            "What is wanted; common practice when left out ('choose starter targets' writes it out)", "FILE");
        var parts = Options.Of<string?>("--parts", "The parts to choose among, a CSV of your own ('choose starter parts' begins one)",
            "FILE");
        var show = Options.Of<int>("--show", "Sets that each view shows at most", "N", 3);
        var report = Options.Of<int?>("--report", "All that there is to say of the set of this number", "N");
        var write = Options.Of<string?>("--write",
            "Writes each set shown into this folder: a copy of the vehicle file with the new parts, and a page of all that "
                + "there is to say of it", "FOLDER");
        var json = Options.Of<bool>("--json", "Writes JSON for scripts; each target says its unit");
        var schema = Options.Of<bool>("--schema", "Prints the JSON Schema of targets, and does nothing else");
        Option<string> units = VehicleOptions.Units();
        Option<bool> force = OutputFiles.Force();
        var kind = new Argument<string>("KIND") { Description = "parts or targets" };
        kind.AcceptOnlyFromAmong("parts", "targets");
        var about = Options.Of<string?>("--vehicle", "Your own vehicle file, about whose sizes the list of parts is made", "FILE");
        var command = new Command("choose", "Search among parts for those that meet targets: every combination, proven.")
        {
            file, targets, parts, show, report, write, json, schema, units, force,
            StarterCommand.Writing(
                terminal, "starter", "Write a commented file of parts or targets to begin with.",
                "Put your own in, then '" + CommandLine.Name + " choose my-car.json --targets FILE --parts FILE'.",
                StarterCommand.InUnits(out Option<string> written, (parsed, system) => parsed.GetRequiredValue(kind) == "parts"
                    ? PartsList.Starter(About(parsed.GetValue(about)), system) : Targets.Starter()),
                kind, about, written),
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
                    problems.Add(Invariant.Text($"--show: {each} sets. Accepted: 1 to 20."));
                }

                Choice choice = ChoiceAsk.Read(terminal, parsed.GetValue(file), parsed.GetValue(targets), parsed.GetValue(parts), problems);
                ChoiceResult result = Search(terminal, parsed.GetValue(file)!, choice, each, cancellation);
                UnitSystem system = VehicleOptions.UnitsOf(parsed, units);
                var output = new ChoiceOutput(choice, result, system);
                int? chosen = parsed.GetValue(report);
                if (chosen is { } number && (number < 1 || number > output.Sets.Count))
                {
                    throw new BadInputException(Invariant.Text(
                        $"--report: there is no set {number}. Accepted: 1 to {output.Sets.Count}, as the sets are shown without it."));
                }

                if (folder is not null)
                {
                    Write(folder, choice, result, system, parsed.GetValue(force));
                }

                return terminal.Answer(parsed.GetValue(json), () => output.Json(chosen), console =>
                {
                    if (chosen is { } one)
                    {
                        output.Report(console, one);
                    }
                    else
                    {
                        output.Write(console);
                    }
                });
            },
            cancellation));
        return command;
    }

    private static string? About(string? path)
    {
        if (path is null)
        {
            return null;
        }

        List<string> problems = [];
        VehicleOptions.Read(path, [], problems);
        BadInputException.ThrowIfAny(problems);
        return File.ReadAllText(path);
    }

    private static ChoiceResult Search(Terminal terminal, string path, Choice choice, int each, CancellationToken cancellation) =>
        PartFault.Refused(path, () => terminal.Work.Do("trying combinations", (int)choice.Parts.Count,
            progress => ChoiceResult.Of(choice, each, progress, cancellation)));

    private static void Write(string folder, Choice choice, ChoiceResult result, UnitSystem units, bool force)
    {
        List<string> problems = [];
        var files = new OutputFiles(problems, force);
        string Named(int number, string ending) => files.File(Path.Combine(folder, Invariant.Text($"set-{number}.{ending}")), "--write");
        (string Path, string Text)[] all =
        [
            .. result.Sets.Select((set, i) => (Named(i + 1, "json"), set.Text)),
            .. result.Sets.Select((set, i) => (Named(i + 1, "html"), ChoicePage.Html(choice, result, i, units))),
        ];
        BadInputException.ThrowIfAny(problems);
        Directory.CreateDirectory(folder);
        foreach ((string path, string text) in all)
        {
            AtomicFile.Write(path, text);
        }
    }
}
