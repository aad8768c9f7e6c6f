using System.CommandLine;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Sheets;
using BrakeBalance.Notebooks.Commands.Benches;
using Spectre.Console;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>bench FILE</c>: what was measured before the car moves, as tables, as JSON or as a sheet to print.</summary>
internal static class BenchCommand
{
    public static Command Create(Terminal terminal)
    {
        Argument<string?> file = Options.File("The bench file; an example stands in data/bench");
        Option<bool> json = Options.Json();
        var schema = Options.Of<bool>("--schema", "Prints the JSON Schema of bench files, and does nothing else");
        var sheet = Options.Of<string?>("--sheet", "Writes a sheet to print (HTML, A4 or Letter) to this file", "FILE");
        var threads = Options.Of<string?>("--threads",
            "Looks words up in the table of threads and seats, such as \"inverted 3/16\", and does nothing else", "WORDS");
        Option<string[]> set = VehicleOptions.Set();
        Option<string> units = VehicleOptions.Units();
        Option<bool> force = OutputFiles.Force();
        var command = new Command("bench", "Work out hoses, plumbing, push rod and a change of parts from a bench file.")
        {
            file, json, schema, sheet, threads, set, units, force,
            StarterCommand.Writing(
                terminal, "starter", "Write a commented bench file of an invented job to begin with.",
                    "Put your readings in, then '" + CommandLine.Name + " bench {0}'.",
                StarterCommand.InUnits(out Option<string> written, (_, _) => BenchStarter.Text()), written),
        };
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(schema))
            {
                terminal.Output.WriteLine(BenchFile.Schema().TrimEnd());
                return ExitCode.Success;
            }

            if (parsed.GetValue(threads) is { } words)
            {
                return Threads(terminal, words, VehicleOptions.UnitsOf(parsed, units));
            }

            List<string> problems = [];
            string? target = parsed.GetValue(sheet) is { } asked
                ? new OutputFiles(problems, parsed.GetValue(force)).File(asked, "--sheet") : null;
            UnitSystem system = VehicleOptions.UnitsOf(parsed, units);
            BenchReport report = Compute(parsed.GetValue(file), parsed.GetRequiredValue(set), problems);
            if (target is not null)
            {
                AtomicFile.Write(target, BenchPrintSheet.Html(report, system));
            }

            return terminal.Answer(parsed.GetValue(json), () => new BenchJson(new ReportUnits(system)).Of(report),
                console => Write(console, report, system));
        });
        return command;
    }

    private static BenchReport Compute(string? path, string[] set, List<string> problems)
    {
        IReadOnlyList<ValueOverride> overrides = VehicleOptions.Overrides(set, problems);
        if (path is null)
        {
            problems.Add("No bench file is named; data/bench holds an example, --schema says what may stand in one.");
        }

        BenchSheet? sheet = null;
        try
        {
            sheet = path is null ? null : BenchFile.Load(path, overrides);
        }
        catch (BenchFileException exception)
        {
            problems.AddRange(exception.Problems.Select(problem => $"{path}: {problem}"));
        }

        BadInputException.ThrowIfAny(problems, sheet);
        return PartFault.Refused(path!, () => BenchReport.Of(sheet));
    }

    private static int Threads(Terminal terminal, string words, UnitSystem units)
    {
        IReadOnlyList<ThreadFact> rows = ThreadFact.Search(words);
        if (rows.Count == 0)
        {
            throw new BadInputException(
                $"--threads {words}: no row of the table holds all of these words. "
                    + $"Families: {string.Join(", ", ThreadFact.All.Select(row => row.Family).Distinct())}.");
        }

        TextTable.Write(terminal.Rich(), BenchTables.Threads(rows, units));
        return ExitCode.Success;
    }

    private static void Write(IAnsiConsole console, BenchReport report, UnitSystem units)
    {
        console.WriteLine(report.Sheet.Name);
        console.WriteLine(report.Sheet.Note);
        if (!report.Sheet.Hoses.IsEmpty)
        {
            TextTable.Write(console, BenchTables.CutList(report, units));
            TextTable.Write(console, BenchTables.Purchase(report, units));
        }

        if (report.Sheet.Change is not null)
        {
            TextTable.Write(console, BenchTables.Changes(report, units));
        }

        TextTable.Write(console, BenchTables.Findings(report.Findings, units));
        console.WriteLine("Pressures are gauge. A calculation is no approval: brake work is for competent people, under the car's "
            + "service manual.");
    }
}
