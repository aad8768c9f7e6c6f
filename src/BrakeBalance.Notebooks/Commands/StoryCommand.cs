using System.CommandLine;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Notebooks.Publishing;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>story</c>: the story "What the knee does" as one page.</summary>
internal static class StoryCommand
{
    public static Command Create(Terminal terminal)
    {
        Argument<string?> file = Options.File("The vehicle file; the invented car of the notebooks unless said");
        Option<string> units = VehicleOptions.Units();
        Option<string[]> set = VehicleOptions.Set();
        Option<string> output = Options.Folder("out");
        Option<bool> force = OutputFiles.Force();
        var command = new Command("story",
            "Write the story \"What the knee does\": one page with figures to move, for readers who do not know the trade.") { file, units,
            set, output, force };
        command.SetAction(parsed =>
        {
            List<string> problems = [];
            string path = parsed.GetValue(file) ?? Repository.Folder(NotebookInput.DefaultVehicle);
            VehicleReading? reading = VehicleOptions.Read(
                terminal, path, VehicleOptions.Overrides(parsed.GetRequiredValue(set), problems), problems);
            string target = new OutputFiles(problems, parsed.GetValue(force))
                .File(Path.Combine(parsed.GetRequiredValue(output), StoryPage.FileName), "--output");
            BadInputException.ThrowIfAny(problems, reading);
            UnitSystem shown = VehicleOptions.UnitsOf(parsed, units);
            AtomicFile.Write(target, terminal.Work.Do("writing the story", _ => StoryPage.Render(reading.Vehicle, shown,
                [new("Vehicle file", Path.GetFileName(path)), PageShell.Units(shown)]).Html));
            terminal.Output.WriteLine($"{target}: the story, one file that needs nothing else.");
            return ExitCode.Success;
        });
        return command;
    }
}
