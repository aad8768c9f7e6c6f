using System.Globalization;
using System.Text.RegularExpressions;
using BrakeBalance.Balance;
using BrakeBalance.Summaries;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Tests.Vehicles;

/// <summary>The invented cars that come with the repository.</summary>
public partial class RepositoryCarTests
{
    public static TheoryData<string> Files => [.. RepositoryFiles.Vehicles.Select(path => Path.GetFileName(path))];

    [Theory]
    [MemberData(nameof(Files))]
    public void Car_loads_and_says_that_it_is_invented(string file)
    {
        Vehicle car = Load(file);
        Assert.Contains("invented", car.Name + " " + car.Note, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("invented", File.ReadLines(PathOf(file)).Take(3)
            .Last(line => line.Contains("//")), StringComparison.OrdinalIgnoreCase);
        Assert.True(car.LoadCases.Length >= 2);
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Car_loads_the_same_where_a_comma_is_usual(string file) =>
        VehicleFileTests.Under("de-DE", () => Assert.Equal(Numbers(BalanceSummary.Of(Load(file))), InvariantNumbers(file)));

    [Theory]
    [MemberData(nameof(Files))]
    public void Car_stops_on_dry_road_with_plausible_numbers(string file)
    {
        foreach (LoadCaseSummary part in BalanceSummary.Of(Load(file)).LoadCases)
        {
            LockUp dry = part.LockUps.Single(surface => surface.Adhesion == 0.8).LockUp!;
            Assert.InRange(dry.At.BrakingRate, 0.6, 0.83);
            Assert.InRange(dry.At.MasterPressure.Bars, 20, 120);
            Assert.InRange(part.RearLiftOffRate, 1.5, 6);
        }
    }

    // The same file with every quantity rewritten in inches, pounds and psi.
    [Theory]
    [MemberData(nameof(Files))]
    public void Car_written_in_US_units_gives_the_same_summary(string file)
    {
        string metric = File.ReadAllText(PathOf(file));
        string us = Quantities()
            .Replace(metric, match => "\"" + InUsUnits(match.Groups["number"].Value, match.Groups["unit"].Value) + "\"");
        Assert.NotEqual(metric, us);
        double[] expected = Numbers(BalanceSummary.Of(VehicleFile.Read(metric, file).Vehicle));
        double[] found = Numbers(BalanceSummary.Of(VehicleFile.Read(us, file).Vehicle));
        Assert.Equal(expected.Length, found.Length);
        for (int i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i], found[i], 1e-9 * Math.Max(1, Math.Abs(expected[i])));
        }
    }

    private static double[] InvariantNumbers(string file)
    {
        double[] numbers = [];
        VehicleFileTests.Under("", () => numbers = Numbers(BalanceSummary.Of(Load(file))));
        return numbers;
    }

    private static string InUsUnits(string number, string unit)
    {
        double value = double.Parse(number, CultureInfo.InvariantCulture);
        (double factor, string us) = unit switch
        {
            "m" => (1 / 0.0254, "in"),
            "mm" => (1 / 25.4, "in"),
            "kg" => (1 / 0.45359237, "lb"),
            "bar" => (1e5 / 6894.757293168361, "psi"),
            "N" => (1 / 4.4482216152605, "lbf"),
            "m²" => (1 / (0.0254 * 0.0254), "in²"),
            _ => (1, unit),
        };
        return (value * factor).ToString("R", CultureInfo.InvariantCulture) + " " + us;
    }

    private static double[] Numbers(BalanceSummary summary) =>
    [
        .. summary.LoadCases.SelectMany(part => (IEnumerable<double>)
        [
            part.StaticAxleLoads.Front.Newtons,
            part.RearLiftOffRate,
            .. part.Rates.SelectMany(rate => rate.Installed is { } at ? Of(at) : []),
            .. part.LockUps.SelectMany(surface =>
                surface.LockUp is { } lockUp
                ? (IEnumerable<double>)[.. Of(lockUp.At), lockUp.Efficiency, lockUp.First is { } first ? (int)first : -1] : []),
            .. part.IdealCrossings.Select(point => Math.Round(point.BrakingRate, 6)),
        ]),
        .. summary.Verdicts.Select(verdict => verdict.Margin ?? -9),
    ];

    private static IEnumerable<double> Of(BalancePoint at) =>
        [at.BrakingRate, at.BrakingForces.Front.Newtons, at.BrakingForces.Rear.Newtons, at.LinePressures.Front.Bars,
            at.LinePressures.Rear.Bars];

    private static Vehicle Load(string file) => VehicleFile.Load(PathOf(file)).Vehicle;

    private static string PathOf(string file) => Path.Combine(RepositoryFiles.Root, "data", "vehicles", file);

    [GeneratedRegex("\"(?<number>-?[0-9.]+) (?<unit>m|mm|kg|bar|N|m²)\"")]
    private static partial Regex Quantities();
}
