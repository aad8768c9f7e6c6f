using System.CommandLine;
using System.Globalization;
using System.Text.RegularExpressions;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;
using UnitsNet.Units;

namespace BrakeBalance.Notebooks.Commands;

/// <summary>The options that say which car, with which values, in which units.</summary>
internal static partial class VehicleOptions
{
    private const double FastestNumber = 1e6;

    /// <summary>Single values that replace those in the vehicle file.</summary>
    public static Option<string[]> Set() => new("--set")
    {
        Description = "Takes one value in place of the file's, by its path in it; may be given several times: --set \"hydraulics.rearValves[0].knee=40 bar\"",
        HelpName = "PATH=VALUE",
        DefaultValueFactory = _ => [],
    };

    /// <summary>The display units.</summary>
    public static Option<string> Units()
    {
        var units = new Option<string>("--units")
        {
            Description = "Units of what is shown: si (bar, kN, mm) or us (psi, lbf, in)",
            HelpName = "si|us",
            DefaultValueFactory = _ => "si",
        };
        units.AcceptOnlyFromAmong(StringComparer.OrdinalIgnoreCase, "si", "us");
        return units;
    }

    /// <summary>Reads a speed: a number in ASCII digits and its unit; null when it is none.</summary>
    public static Speed? ReadSpeed(string text) =>
        SpeedShape().Match(text) is { Success: true } match
        && double.TryParse(match.Groups["number"].ValueSpan, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && number < FastestNumber
        && Speed.TryParseUnit(match.Groups["unit"].Value, CultureInfo.InvariantCulture, out SpeedUnit unit)
            ? Speed.From(number, unit)
            : null;

    /// <summary>Reads overrides; those that are not <c>path=value</c> are added to the problems.</summary>
    public static IReadOnlyList<ValueOverride> Overrides(IEnumerable<string> texts, List<string> problems)
    {
        List<ValueOverride> overrides = [];
        foreach (string text in texts)
        {
            if (ValueOverride.Parse(text) is { } change)
            {
                overrides.Add(change);
            }
            else
            {
                problems.Add($"--set {text}: this is not PATH=VALUE, such as hydraulics.rearValves[0].knee=\"40 bar\".");
            }
        }

        return overrides;
    }

    /// <summary>Reads the vehicle file that a command was given, overrides applied; a missing name is a problem too.</summary>
    public static VehicleReading? ReadNamed(string? path, IEnumerable<string> set, List<string> problems)
    {
        if (path is not null)
        {
            return Read(path, Overrides(set, problems), problems);
        }

        problems.Add("No vehicle file is named; 'starter FILE' writes one to begin with.");
        return null;
    }

    /// <summary>Reads a vehicle file; its problems are added to the others.</summary>
    public static VehicleReading? Read(string path, IReadOnlyList<ValueOverride> overrides, List<string> problems)
    {
        try
        {
            return VehicleFile.Load(path, overrides);
        }
        catch (VehicleFileException exception)
        {
            problems.AddRange(exception.Problems.Select(problem => $"{path}: {problem}"));
            return null;
        }
    }

    [GeneratedRegex(@"^(?<number>[0-9]+(\.[0-9]*)?)\s*(?<unit>[^0-9\s].*)$", RegexOptions.ExplicitCapture)]
    private static partial Regex SpeedShape();
}
