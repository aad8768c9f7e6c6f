using System.CommandLine;
using System.Globalization;
using BrakeBalance.Notebooks.Commands.Stopping;
using BrakeBalance.Stops;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>stops FILE</c>: stops, stability and heat of a car as tables or as JSON, without notebooks.</summary>
internal static class StopsCommand
{
    public static Command Create(Terminal terminal)
    {
        var file = new Argument<string?>("FILE") { Description = "The vehicle file", Arity = ArgumentArity.ZeroOrOne };
        var json = new Option<bool>("--json") { Description = "Writes JSON for scripts; keys carry their unit" };
        var keys = new Option<bool>("--keys") { Description = "Lists the keys of the JSON and what each means, and does nothing else" };
        Option<string[]> set = VehicleOptions.Set();
        Option<string> units = VehicleOptions.Units();
        var adhesion = new Option<string>("--adhesion")
        {
            Description = "Surfaces to stop on, as peak coefficients of adhesion from 0.05 to 2, parted by commas",
            HelpName = "NUMBERS",
            DefaultValueFactory = _ => "0.3,0.6,0.9",
        };
        var speed = new Option<string>("--speed") { Description = "Speed when the foot touches the pedal: \"100 km/h\", \"60 mph\"", HelpName = "SPEED", DefaultValueFactory = _ => "100 km/h" };
        var load = new Option<string?>("--load-case") { Description = "Only the load case of this name", HelpName = "NAME" };
        var study = new Option<int?>("--study") { Description = "Also so many panic stops with adhesion, load and friction drawn at random, on all processors", HelpName = "NUMBER" };
        var seed = new Option<int>("--seed") { Description = "Seed of the study's draws", HelpName = "NUMBER", DefaultValueFactory = _ => 1 };
        var lap = new Option<string?>("--lap") { Description = "Also the heat of laps: CSV with the columns time_s and speed_km_h (or speed_mph, speed_m_s)", HelpName = "FILE" };
        var laps = new Option<int>("--laps") { Description = "How often the lap is driven, 1 to 200", HelpName = "NUMBER", DefaultValueFactory = _ => 5 };
        var command = new Command("stops", "Stop a car: distance, lock order, whether it swaps ends, brake heat and fade.")
        {
            file, json, keys, set, units, adhesion, speed, load, study, seed, lap, laps,
        };
        command.SetAction((parsed, cancellation) => Task.Run(
            () =>
            {
                if (parsed.GetValue(keys))
                {
                    WriteKeys(terminal);
                    return ExitCode.Success;
                }

                List<string> problems = [];
                Vehicle? vehicle = VehicleOptions.ReadNamed(parsed.GetValue(file), parsed.GetRequiredValue(set), problems)?.Vehicle;
                double[] surfaces = Surfaces(parsed.GetRequiredValue(adhesion), problems);
                Speed? initial = InitialSpeed(parsed.GetRequiredValue(speed), problems);
                IReadOnlyList<LoadCase> loads = Loads(vehicle, parsed.GetValue(load), problems);
                SpeedTrace? trace = Lap(parsed.GetValue(lap), problems);
                Demand(parsed.GetRequiredValue(laps) is >= 1 and <= 200, "--laps: must lie between 1 and 200.", problems);
                Demand(parsed.GetValue(study) is null or (>= 1 and <= 1_000_000), "--study: must lie between 1 and 1000000.", problems);
                if (problems.Count > 0 || vehicle is null || initial is null)
                {
                    throw new BadInputException(problems);
                }

                StopStudyResult? many = parsed.GetValue(study) is { } count
                    ? StudyProgress.Show(terminal, count, progress => StopStudy.Run(
                        vehicle, new StopStudyPlan { Stops = count, Seed = parsed.GetRequiredValue(seed), InitialSpeed = initial.Value }, progress, cancellation))
                    : null;
                var shown = new StopUnits(string.Equals(parsed.GetRequiredValue(units), "us", StringComparison.OrdinalIgnoreCase));
                StopReport report = Compute(vehicle, initial.Value, surfaces, loads, trace, parsed.GetRequiredValue(laps), many);
                Write(terminal, report, shown, parsed.GetValue(json));
                return ExitCode.Success;
            },
            cancellation));
        return command;
    }

    private static StopReport Compute(
        Vehicle vehicle, Speed speed, double[] adhesions, IReadOnlyList<LoadCase> loads, SpeedTrace? lap, int laps, StopStudyResult? study)
    {
        try
        {
            return StopReport.Of(vehicle, speed, adhesions, loads, lap, laps, study);
        }
        catch (Exception exception) when (PartFault.Said(exception) is { } words)
        {
            throw new BadInputException($"{vehicle.Name}: {words}");
        }
    }

    private static void Write(Terminal terminal, StopReport report, StopUnits units, bool json)
    {
        if (json)
        {
            terminal.Output.WriteLine(new StopJson(units).Text(report));
        }
        else
        {
            new StopReportTables(units, terminal.Rich()).Write(report);
        }
    }

    private static double[] Surfaces(string text, List<string> problems)
    {
        List<double> numbers = [];
        foreach (string part in text.Split(',', StringSplitOptions.TrimEntries))
        {
            if (double.TryParse(part, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && number is >= 0.05 and <= 2)
            {
                numbers.Add(number);
            }
            else
            {
                problems.Add($"--adhesion: '{part}' is not a number from 0.05 to 2, such as 0.5.");
            }
        }

        return [.. numbers];
    }

    private static Speed? InitialSpeed(string text, List<string> problems)
    {
        if (VehicleOptions.ReadSpeed(text) is { KilometersPerHour: >= 10 and <= 450 } speed)
        {
            return speed;
        }

        problems.Add($"--speed: '{text}' is not a speed from 10 km/h to 450 km/h, such as \"100 km/h\" or \"60 mph\".");
        return null;
    }

    private static IReadOnlyList<LoadCase> Loads(Vehicle? vehicle, string? name, List<string> problems)
    {
        if (vehicle is null || name is null)
        {
            return vehicle?.LoadCases ?? [];
        }

        try
        {
            return [vehicle.LoadCase(name)];
        }
        catch (ArgumentException exception)
        {
            problems.Add($"--load-case: {Problem.WordsOf(exception)}");
            return [];
        }
    }

    private static SpeedTrace? Lap(string? path, List<string> problems)
    {
        if (path is null)
        {
            return null;
        }

        try
        {
            SpeedTrace trace = SpeedTrace.Load(path);
            return trace;
        }
        catch (FormatException exception)
        {
            problems.Add($"--lap {path}: {exception.Message}");
            return null;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            problems.Add($"--lap {path}: the log cannot be opened. Accepted: the path of a CSV file.");
            return null;
        }
    }

    private static void Demand(bool holds, string problem, List<string> problems)
    {
        if (!holds)
        {
            problems.Add(problem);
        }
    }

    private static void WriteKeys(Terminal terminal)
    {
        int width = StopKeys.All.Max(key => key.Path.Length);
        foreach ((string path, string meaning) in StopKeys.All)
        {
            terminal.Output.WriteLine($"{path.PadRight(width)}  {meaning}");
        }
    }
}
