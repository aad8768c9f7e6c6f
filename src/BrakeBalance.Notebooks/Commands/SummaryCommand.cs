using System.CommandLine;
using BrakeBalance.Notebooks.Commands.Summaries;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>summary FILE</c>: the balance of a car as tables or as JSON, without notebooks.</summary>
internal static class SummaryCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string?>("FILE") { Description = "The vehicle file", Arity = ArgumentArity.ZeroOrOne };
        var json = new Option<bool>("--json") { Description = "Writes JSON for scripts; keys carry their unit" };
        var keys = new Option<bool>("--keys")
        {
            Description = "Lists the keys of the JSON and what each means, and does nothing else; "
                + "--units us ends them in _psi, _lbf, _lb, _in or _ft and _mph",
        };
        Option<string[]> set = VehicleOptions.Set();
        Option<string> units = VehicleOptions.Units();
        Option<string?> adhesions =
            Numbers("--adhesion", "Surfaces to try, as coefficients of adhesion above 0 up to 2, separated by commas: 0.2,0.5,1.0");
        Option<string?> rates = Numbers("--braking-rate",
            "Decelerations to show, as deceleration over g above 0 up to 2, separated by commas: 0.3,0.6");
        var speed = new Option<string?>("--speed")
        {
            Description = "Speed at which drag, lift and downforce act, with its unit; standstill when left out: --speed \"120 km/h\"",
            HelpName = "SPEED",
        };
        var load = new Option<string?>("--load-case") { Description = "Only the load case of this name", HelpName = "NAME" };
        var all = new Option<bool>("--all") { Description = "Shows every table" };
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
                parsed.GetValue(speed) is { } text ? VehicleOptions.SpeedOf("--speed", text, 0, 400, problems) ?? Speed.Zero : Speed.Zero,
                parsed.GetValue(load),
                problems);
            var shown = new SummaryUnits(VehicleOptions.UnitsOf(parsed, units));
            if (parsed.GetValue(json))
            {
                terminal.Output.WriteLine(new SummaryJson(shown).Text(summary));
            }
            else
            {
                new SummaryTables(shown, terminal.Rich()).Write(summary, parsed.GetValue(all));
            }

            return ExitCode.Success;
        });
        return command;
    }

    private static BalanceSummary Compute(
        Terminal terminal,
        string? path,
        string[] set,
        IReadOnlyList<double>? adhesions,
        IReadOnlyList<double>? rates,
        Speed speed,
        string? load,
        List<string> problems)
    {
        VehicleReading? reading = VehicleOptions.ReadNamed(terminal, path, set, problems);
        if (load is not null && reading is not null)
        {
            try
            {
                reading.Vehicle.LoadCase(load);
            }
            catch (ArgumentException exception)
            {
                problems.Add($"--load-case: {Problem.WordsOf(exception)}");
            }
        }

        if (problems.Count > 0 || reading is null)
        {
            throw new BadInputException(problems);
        }

        try
        {
            return BalanceSummary.Of(reading.Vehicle, rates, adhesions, load, speed);
        }
        catch (Exception exception) when (PartFault.Said(exception) is { } words)
        {
            throw new BadInputException($"{path}: {words}");
        }
    }

    private static Option<string?> Numbers(string name, string description) => new(name)
    {
        Description = description,
        HelpName = "NUMBERS",
    };

    private static double[]? Read(ParseResult parsed, Option<string?> option, List<string> problems)
    {
        if (parsed.GetValue(option) is not { } text)
        {
            return null;
        }

        List<double> numbers = [];
        foreach (string part in text.Split(',', StringSplitOptions.TrimEntries))
        {
            if (double.TryParse(part, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && number is > 0 and <= 2)
            {
                numbers.Add(number);
            }
            else
            {
                problems.Add($"{option.Name}: '{part}' is not a number above 0 up to 2, such as 0.5.");
            }
        }

        return [.. numbers];
    }
}
