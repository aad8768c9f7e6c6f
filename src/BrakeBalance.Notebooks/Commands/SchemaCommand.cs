using System.CommandLine;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>schema</c>: prints the JSON Schema of vehicle files.</summary>
internal static class SchemaCommand
{
    public static Command Create(Terminal terminal)
    {
        var command = new Command("schema", "Print the JSON Schema of vehicle files, which gives completion in editors.");
        command.SetAction(_ =>
        {
            terminal.Output.WriteLine(VehicleSchema.Text().TrimEnd());
            return ExitCode.Success;
        });
        return command;
    }
}
