using System.CommandLine;

namespace BrakeBalance.Notebooks.Commands;

/// <summary>
/// <c>check FILE</c>: reads a vehicle file and its own logs and lists every problem in them, or else what is implausible.
/// </summary>
internal static class CheckCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "The vehicle file" };
        Option<string[]> set = VehicleOptions.Set();
        var strict = Options.Of<bool>("--strict", "Refuses warnings too");
        var command = new Command("check", "Read a vehicle file and the logs it names, list every problem; warn of the implausible.")
        {
            file, set, strict,
        };
        command.SetAction(parsed =>
        {
            List<string> problems = [];
            string path = parsed.GetRequiredValue(file);
            IReadOnlyList<ValueOverride> overrides = VehicleOptions.Overrides(parsed.GetRequiredValue(set), problems);
            VehicleReading? reading = VehicleOptions.Read(path, overrides, problems);
            var own = reading?.Vehicle.Measured as OwnMeasurements;
            string[] warnings =
            [
                .. (reading?.Warnings ?? []).Select(warning => $"{path}: warning: {warning}"),
                .. own?.LeftOut.Select(line => $"warning: {line}") ?? [],
                .. own?.Estimate?.NotUsed.Where(stop => stop.Reason != StopModel.LockUpWasUsed)
                    .Select(stop => $"warning: {own.Logs.Stops}: {stop}") ?? [],
                .. own?.Doubts.Select(doubt => $"{path}: warning: {doubt}") ?? [],
            ];
            problems.AddRange(parsed.GetValue(strict) ? warnings : []);
            BadInputException.ThrowIfAny(problems);
            string found = warnings.Length > 0 ? VehicleOptions.CountOf(warnings.Length) : "no problem found";
            terminal.Output.WriteLine($"{path}: {found}. {reading!.Vehicle.Name}: load cases {reading.Vehicle.LoadCaseNames}.");
            Array.ForEach(warnings, terminal.Output.WriteLine);
            return ExitCode.Success;
        });
        return command;
    }
}
