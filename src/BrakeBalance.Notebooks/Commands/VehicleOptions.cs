using System.CommandLine;
using BrakeBalance.Charts;

namespace BrakeBalance.Notebooks.Commands;

/// <summary>The options that say which car, with which values, in which units.</summary>
internal static class VehicleOptions
{
    /// <summary>Single values that replace those in the vehicle file.</summary>
    public static Option<string[]> Set() => Options.Of<string[]>("--set", "Takes one value in place of the file's, by its path in it; "
        + "may be given several times: --set \"hydraulics.rearValves[0].knee=40 bar\"", "PATH=VALUE", []);

    /// <summary>The display units.</summary>
    public static Option<string> Units()
    {
        var units = Options.Of<string>("--units", "Units of what is shown: si (bar, kN, mm) or us (psi, lbf, in)", "si|us", "si");
        units.AcceptOnlyFromAmong(StringComparer.OrdinalIgnoreCase, "si", "us");
        return units;
    }

    /// <summary>The display units that were chosen.</summary>
    public static UnitSystem UnitsOf(ParseResult parsed, Option<string> units) =>
        Display.Parse(parsed.GetRequiredValue(units)) ?? UnitSystem.Si;

    /// <summary>Reads overrides; those that are not <c>path=value</c> are added to the problems.</summary>
    public static IReadOnlyList<ValueOverride> Overrides(IReadOnlyList<string> texts, List<string> problems)
    {
        problems.AddRange(texts.Where(text => ValueOverride.Parse(text) is null)
            .Select(text => $"--set {text}: this is not PATH=VALUE, such as hydraulics.rearValves[0].knee=\"40 bar\"."));
        return [.. texts.Select(ValueOverride.Parse).OfType<ValueOverride>()];
    }

    /// <summary>
    /// Says on the error output, in one line, that a file has warnings: answers and what scripts read stay as they are, and whoever
    /// knows of them is not told the whole again. A value tried on the command line is meant as it is and counts for nothing.
    /// </summary>
    public static void TellOfWarnings(Terminal terminal, string path, VehicleReading reading, IReadOnlyList<ValueOverride> overrides)
    {
        if (reading.Warnings.Count(warning => overrides.All(change => change.Path != warning.Path)) is > 0 and var count)
        {
            terminal.Error.WriteLine($"{path}: {CountOf(count)}; '{CommandLine.Name} check' tells more.");
        }
    }

    /// <summary>A number of warnings in words.</summary>
    public static string CountOf(int warnings) => Invariant.Text($"{warnings} warning{(warnings == 1 ? "" : "s")}");

    /// <summary>Reads numbers separated by commas; those that are not accepted, as the range says in words, are problems.</summary>
    public static double[] Numbers(string option, string text, Func<double, bool> accepted, string range, List<string> problems)
    {
        List<double> numbers = [];
        foreach (string part in text.Split(',', StringSplitOptions.TrimEntries))
        {
            if (double.TryParse(part, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && accepted(number))
            {
                numbers.Add(number);
            }
            else
            {
                problems.Add($"{option}: '{part}' is not a number {range}, such as 0.5.");
            }
        }

        return [.. numbers];
    }

    /// <summary>The load case of a name, or all; a name that the car does not have is added to the problems.</summary>
    public static IReadOnlyList<LoadCase> Loads(Vehicle? vehicle, string? name, List<string> problems)
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

    /// <summary>Reads a speed, as the entries of a file are read.</summary>
    /// <returns>The speed; null when it cannot be used.</returns>
    public static Speed? SpeedOf(string text, double low, double high, List<string> problems)
    {
        (Speed? speed, string? fault) = QuantityOption.Read<Speed>(text);
        if (speed is { } read && read.KilometersPerHour >= low && read.KilometersPerHour <= high)
        {
            return speed;
        }

        problems.Add(Invariant.Text(
            $"--speed: '{text}' is not a speed from {low:0} to {high:0} km/h{(fault is null ? "" : $" ({fault.TrimEnd('.')})")}. "
                + $"Accepted: such as \"100 km/h\" or \"60 mph\"."));
        return null;
    }

    /// <summary>Reads the vehicle file that a command was given, overrides applied; a missing name is a problem too.</summary>
    public static VehicleReading? ReadNamed(Terminal terminal, string? path, IReadOnlyList<string> set, List<string> problems)
    {
        if (path is not null)
        {
            return Read(terminal, path, Overrides(set, problems), problems);
        }

        problems.Add($"No vehicle file is named; '{CommandLine.Name} starter FILE' writes one to begin with.");
        return null;
    }

    /// <summary>Reads a vehicle file; its problems are added to the others, and that it has warnings is told.</summary>
    public static VehicleReading? Read(
        Terminal terminal, string path, IReadOnlyList<ValueOverride> overrides, List<string> problems, bool allowLostRows = false)
    {
        VehicleReading? reading = Read(path, overrides, problems, allowLostRows);
        if (reading is not null)
        {
            TellOfWarnings(terminal, path, reading, overrides);
        }

        return reading;
    }

    /// <summary>Reads a vehicle file and the logs that it names; their problems are added to the others.</summary>
    public static VehicleReading? Read(string path, IReadOnlyList<ValueOverride> overrides, List<string> problems,
        bool allowLostRows = false)
    {
        try
        {
            (VehicleReading? reading, IReadOnlyList<string> lost) =
                OwnMeasurements.Attach(VehicleFile.Load(path, overrides), allowLostRows);
            problems.AddRange(lost);
            return reading;
        }
        catch (VehicleFileException exception)
        {
            problems.AddRange(exception.Problems.Select(problem => $"{path}: {problem}"));
            return null;
        }
    }
}
