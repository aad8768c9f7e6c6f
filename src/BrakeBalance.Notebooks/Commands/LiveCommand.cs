using System.CommandLine;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Publishing;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>your-car</c>: the page that answers for any car by itself.</summary>
internal static class LiveCommand
{
    public static Command Create(Terminal terminal)
    {
        Argument<string?> file = Options.File("The vehicle file with which the page begins; the invented car of the notebooks unless said");
        Option<string> output = Options.Folder("out");
        Option<bool> force = OutputFiles.Force();
        var command = new Command("your-car", "Write the page that works out any car by itself: one file for phone or laptop, no network.")
        {
            file, output, force,
        };
        command.SetAction(parsed =>
        {
            List<string> problems = [];
            string path = parsed.GetValue(file) ?? Repository.Folder(NotebookInput.DefaultVehicle);
            VehicleReading? reading = VehicleOptions.Read(terminal, path, [], problems);
            string target = new OutputFiles(problems, parsed.GetValue(force))
                .File(Path.Combine(parsed.GetRequiredValue(output), LivePage.FileName), "--output");
            BadInputException.ThrowIfAny(problems);
            AtomicFile.Write(target, LivePage.Render(File.ReadAllText(path), SourceText.Of(reading!.Vehicle)?.Logs).Html);
            terminal.Output.WriteLine($"{target}: the page of your car, one file that needs nothing else.");
            return ExitCode.Success;
        });
        return command;
    }
}
