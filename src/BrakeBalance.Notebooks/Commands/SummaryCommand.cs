using System.CommandLine;
using BrakeBalance.Notebooks.Commands.Summaries;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>summary FILE</c>: the balance of a car as tables or as JSON, without notebooks.</summary>
internal static class SummaryCommand
{
    public static Command Create(Terminal terminal)
    {
        // The reader meets its entries for the first time while the rest of the command is made and read.
        _ = Task.Run(() => VehicleFile.Read("""{ "name": "any", "carClass": "small sports car" }""", ""));
        Argument<string?> file = Options.File();
        Option<bool> json = Options.Json();
        var keys = Options.Of<bool>("--keys", "Lists the keys of the JSON and what each means, and does nothing else; "
            + "--units us ends them in _psi, _lbf, _lb, _in or _ft and _mph");
        Option<string[]> set = VehicleOptions.Set();
        Option<string> units = VehicleOptions.Units();
        var adhesions = Options.Of<string?>("--adhesion",
            "Surfaces to try, as coefficients of adhesion above 0 up to 2, separated by commas: 0.2,0.5,1.0", "NUMBERS");
        var rates = Options.Of<string?>("--braking-rate",
            "Decelerations to show, as deceleration over g above 0 up to 2, separated by commas: 0.3,0.6", "NUMBERS");
        var speed = Options.Of<string?>("--speed",
            "Speed at which drag, lift and downforce act, with its unit; standstill when left out: --speed \"120 km/h\"", "SPEED");
        var load = Options.Of<string?>("--load-case", "Only the load case of this name", "NAME");
        var all = Options.Of<bool>("--all", "Shows every table");
        var command = new Command("summary", "Print which axle locks first and where to set the valve, then what that rests on.")
        {
            file, all, json, keys, set, units, adhesions, rates, speed, load,
        };
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(keys))
            {
                TextTable.Keys(terminal.Rich(), SummaryKeys.All);
                return ExitCode.Success;
            }

            List<string> problems = [];
            BalanceSummary summary = Compute(
                terminal,
                parsed.GetValue(file),
                parsed.GetRequiredValue(set),
                Read(parsed, adhesions, problems),
                Read(parsed, rates, problems),
                parsed.GetValue(speed) is { } text ? VehicleOptions.SpeedOf(text, 0, 400, problems) ?? Speed.Zero : Speed.Zero,
                parsed.GetValue(load),
                problems);
            var shown = new ReportUnits(VehicleOptions.UnitsOf(parsed, units));
            return terminal.Answer(parsed.GetValue(json), () => new SummaryJson(shown).Node(summary),
                console => new SummaryTables(shown, console).Write(summary, parsed.GetValue(all)));
        });
        return command;
    }

    private static BalanceSummary Compute(Terminal terminal, string? path, string[] set, IReadOnlyList<double>? adhesions,
        IReadOnlyList<double>? rates, Speed speed, string? load, List<string> problems)
    {
        VehicleReading? reading = VehicleOptions.ReadNamed(terminal, path, set, problems);
        VehicleOptions.Loads(reading?.Vehicle, load, problems);
        BadInputException.ThrowIfAny(problems, reading);
        return PartFault.Refused(path!, () => BalanceSummary.Of(reading.Vehicle, rates, adhesions, load, speed));
    }

    private static double[]? Read(ParseResult parsed, Option<string?> option, List<string> problems) =>
        parsed.GetValue(option) is { } text
            ? VehicleOptions.Numbers(option.Name, text, one => one is > 0 and <= 2, "above 0 up to 2", problems) : null;
}
