using System.CommandLine;
using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>starter FILE</c>: writes a commented vehicle file to begin with.</summary>
internal static class StarterCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "The file to write; - writes to the terminal" };
        Option<bool> force = OutputFiles.Force();
        var command = new Command("starter", "Write a commented vehicle file of an invented car to begin with.") { file, force };
        command.SetAction(parsed =>
        {
            string path = parsed.GetRequiredValue(file);
            if (path == "-")
            {
                terminal.Output.Write(StarterFile.Text());
                return ExitCode.Success;
            }

            List<string> problems = [];
            new OutputFiles(problems, parsed.GetValue(force)).File(path);
            BadInputException.ThrowIfAny(problems);
            AtomicFile.Write(path, StarterFile.Text());
            terminal.Output.WriteLine($"{path} is written. Put your car's values in, then '{CommandLine.Name} check {path}'.");
            return ExitCode.Success;
        });
        return command;
    }
}
