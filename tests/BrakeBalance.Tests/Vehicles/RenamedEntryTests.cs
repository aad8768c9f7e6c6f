using BrakeBalance.Bench.Files;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Tests.Vehicles;

/// <summary>Names that files no longer use are refused, once and with the new name.</summary>
public class RenamedEntryTests
{
    private static readonly string Coupe = File.ReadAllText(Path.Combine(RepositoryFiles.Root, "data", "vehicles", "coupe-1960s.json"));

    public static TheoryData<string, string, string> InVehicleFiles => new()
    {
        { "adjuster", "knob", "hydraulics.rearValves[0].knob" },
        { "kneeBackedOff", "kneeFullyOut", "hydraulics.rearValves[0].adjuster.kneeFullyOut" },
        { "clearance", "takeUp", "fluid.front.takeUp" },
        { "compliance", "give", "fluid.front.give" },
        { "complianceAt", "giveAt", "fluid.front.giveAt" },
        { "emergencyForce", "panicForce", "pedal.panicForce" },
        { "emergencyRiseTime", "panicRiseTime", "dynamics.panicRiseTime" },
        { "metering", "hold-off", "hydraulics.frontValves[0].type" },
    };

    [Theory]
    [MemberData(nameof(InVehicleFiles))]
    public void A_vehicle_file_with_the_old_name_is_told_the_new_one(string name, string old, string path)
    {
        string text = Coupe
            .Replace("\"compliance\": \"2.6", "\"complianceAt\": \"100 bar\", \"compliance\": \"2.6", StringComparison.Ordinal)
            .Replace("\"freePlay\"", "\"emergencyForce\": \"500 N\", \"freePlay\"", StringComparison.Ordinal);
        Assert.NotNull(VehicleFile.TryRead(text).Reading);
        int at = text.IndexOf($"\"{name}\"", StringComparison.Ordinal);
        text = text[..at] + $"\"{old}\"" + text[(at + name.Length + 2)..];
        (VehicleReading? reading, IReadOnlyList<Problem> problems) = VehicleFile.TryRead(text);
        Assert.Null(reading);
        Problem problem = Assert.Single(problems);
        Assert.Equal(path, problem.Path);
        Assert.Contains($"is called \"{name}\" now", problem.What, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bench_file_with_the_old_name_is_told_the_new_one()
    {
        string file = Path.Combine(RepositoryFiles.Root, "data", "bench", "booster-swap.json");
        string text = File.ReadAllText(file).Replace("\"deceleration\"", "\"brakingRate\"", StringComparison.Ordinal);
        Problem problem = Assert.Single(Assert.Throws<BenchFileException>(() =>
            BenchFile.Read(text, file, Path.GetDirectoryName(file)!)).Problems);
        Assert.Equal("change.brakingRate", problem.Path);
        Assert.Contains("is called \"deceleration\" now", problem.What, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_old_name_is_tried_here() =>
        Assert.Equal(
            [.. RenamedEntries.Keys.Concat(RenamedEntries.Types).Select(pair => (pair.Value, pair.Key)).Order()],
            InVehicleFiles.Select(row => ((string)row[0], (string)row[1])).Append(("deceleration", "brakingRate")).Order());

    [Fact]
    public void An_override_with_the_old_name_is_told_the_new_one()
    {
        (_, IReadOnlyList<Problem> problems) = VehicleFile.TryRead(Coupe,
            ValueOverride.Parse("hydraulics.rearValves[0].knob.turns=5")!);
        Assert.Contains("is called \"adjuster\" now", Assert.Single(problems).What, StringComparison.Ordinal);
    }

    [Fact]
    public void An_old_name_is_no_clue_where_the_new_one_is_unknown()
    {
        (_, IReadOnlyList<Problem> problems) = VehicleFile.TryRead(Coupe
            .Replace("\"wheelbase\"", "\"knob\": 1, \"wheelbase\"", StringComparison.Ordinal));
        Assert.Contains("is not an entry known here", Assert.Single(problems).What, StringComparison.Ordinal);
    }
}
