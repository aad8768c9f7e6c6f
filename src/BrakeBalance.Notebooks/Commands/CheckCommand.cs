using System.CommandLine;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>check FILE</c>: reads a vehicle file and lists every problem in it.</summary>
internal static class CheckCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "The vehicle file" };
        Option<string[]> set = VehicleOptions.Set();
        var command = new Command("check", "Read a vehicle file and list every problem in it.") { file, set };
        command.SetAction(parsed =>
        {
            List<string> problems = [];
            string path = parsed.GetRequiredValue(file);
            VehicleReading? reading = VehicleOptions.Read(path, VehicleOptions.Overrides(parsed.GetRequiredValue(set), problems), problems);
            if (problems.Count > 0)
            {
                throw new BadInputException(problems);
            }

            terminal.Output.WriteLine($"{path}: no problem found. {reading!.Vehicle.Name}: load cases {string.Join(", ", reading.Vehicle.LoadCases.Select(load => load.Name))}.");
            return ExitCode.Success;
        });
        return command;
    }
}
