using System.Globalization;
using System.Text.RegularExpressions;
using BrakeBalance.Summaries;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Tests.Summaries;

public partial class SetUpComparisonTests
{
    [Theory]
    [InlineData(UnitSystem.Si)]
    [InlineData(UnitSystem.Us)]
    public void What_is_shown_of_two_set_ups_and_how_far_they_lie_apart_add_up(UnitSystem units)
    {
        (string Name, Vehicle Car)[] cars =
        [
            .. Directory.EnumerateFiles(Path.Combine(RepositoryFiles.Root, "data/vehicles"), "*.json").Order(StringComparer.Ordinal)
                .Select(path => (Path.GetFileNameWithoutExtension(path), VehicleFile.Load(path).Vehicle)),
            ("ranges", VehicleFile.Read(File.ReadAllText(Path.Combine(RepositoryFiles.Root, "data/vehicles/big-cam-saloon.json"))
                .Replace("\"ratio\": 4.1", "\"ratio\": \"3.9 .. 4.3\"", StringComparison.Ordinal), "ranges").Vehicle),
        ];
        int looked = 0;
        foreach (ComparisonRow row in SetUpComparison.Of(cars, units).Rows)
        {
            for (int i = 1; i < cars.Length; i++)
            {
                if (row.Differences[i].Length == 0 || Shown(row.Texts[0]) is not { } first || Shown(row.Texts[i]) is not { } other)
                {
                    continue;
                }

                looked++;
                Assert.True(Math.Abs(first + Shown(row.Differences[i])!.Value - other) < 1e-9,
                    $"{row.Label}: {row.Texts[0]}, then {row.Texts[i]}; {row.Differences[i]}");
            }
        }

        Assert.True(looked > 20, $"Only {looked} differences were found.");
    }

    private static double? Shown(string text) => Number().Match(text) is { Success: true, Value: var number }
        ? double.Parse(number.Replace('−', '-'), NumberStyles.Float, CultureInfo.InvariantCulture) : null;

    [GeneratedRegex(@"^[+−]?[0-9]+(\.[0-9]+)?")]
    private static partial Regex Number();
}
