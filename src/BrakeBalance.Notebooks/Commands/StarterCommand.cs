using System.CommandLine;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>starter FILE</c>: writes a commented vehicle file to begin with.</summary>
internal static class StarterCommand
{
    public static Command Create(Terminal terminal)
    {
        Option<string> assist = Choice("--assist", "What helps the foot", StarterFile.Assists, "none");
        Option<string> rear = Choice("--rear", "Kind of rear brake", StarterFile.Rears, "disc");
        Option<string> valve = Choice("--valve", "What limits the rear brakes", StarterFile.Valves, "adjustable");
        return Writing(
            terminal, "starter", "Write a commented vehicle file of an invented car with the parts that yours has.",
            "Put your car's values in, then '" + CommandLine.Name + " check {0}'.",
            InUnits(out Option<string> units, (parsed, _) => StarterFile.Text(
                parsed.GetRequiredValue(assist), parsed.GetRequiredValue(rear), parsed.GetRequiredValue(valve))),
            assist, rear, valve, units);
    }

    /// <summary>
    /// The text below its head in the system of units that is asked for; as it stands, in the units of the trade, where none is.
    /// </summary>
    public static Func<ParseResult, string> InUnits(out Option<string> units, Func<ParseResult, UnitSystem?, string> text)
    {
        Option<string> chosen = units = VehicleOptions.Units();
        return parsed =>
        {
            UnitSystem? asked = parsed.GetResult(chosen) is null or { Implicit: true } ? null : VehicleOptions.UnitsOf(parsed, chosen);
            string all = text(parsed, asked);
            int head = all.IndexOf("\n{", StringComparison.Ordinal) + 1;
            return asked is not { } system || head == 0 ? all : all[..head] + OtherUnits.Within(all[head..], system);
        };
    }

    /// <summary>A command that writes a file to fill in, or shows it in the terminal.</summary>
    public static Command Writing(
        Terminal terminal, string name, string description, string next, Func<ParseResult, string> text, params Symbol[] options)
    {
        var command = new Command(name, description);
        options.OfType<Argument>().ToList().ForEach(command.Arguments.Add);
        var file = new Argument<string>("FILE")
        {
            Description = "The file to write; - writes to the terminal",
            DefaultValueFactory = _ => "-",
        };
        Option<bool> force = OutputFiles.Force();
        command.Arguments.Add(file);
        command.Options.Add(force);
        options.OfType<Option>().ToList().ForEach(command.Options.Add);
        command.SetAction(parsed =>
        {
            string path = parsed.GetRequiredValue(file);
            if (path == "-")
            {
                terminal.Output.Write(text(parsed));
                return ExitCode.Success;
            }

            List<string> problems = [];
            new OutputFiles(problems, parsed.GetValue(force)).File(path);
            BadInputException.ThrowIfAny(problems);
            AtomicFile.Write(path, text(parsed));
            terminal.Output.WriteLine($"{path} is written. {string.Format(System.Globalization.CultureInfo.InvariantCulture, next, path)}");
            return ExitCode.Success;
        });
        return command;
    }

    private static Option<string> Choice(string name, string description, IReadOnlyList<string> words, string usual)
    {
        var option = Options.Of<string>(name, description, null, usual);
        option.AcceptOnlyFromAmong([.. words]);
        return option;
    }
}
