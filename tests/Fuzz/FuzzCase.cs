using BrakeBalance.Bench.Files;
using BrakeBalance.Charts;
using BrakeBalance.Vehicles.Files;
using FsCheck;
using FsCheck.Fluent;

namespace BrakeBalance.Fuzz;

/// <summary>A file to try.</summary>
/// <param name="Kind">vehicle, bench, gauges, stops, series, lap or answers.</param>
/// <param name="Text">The file's text.</param>
/// <param name="What">What was changed.</param>
internal sealed record FuzzCase(string Kind, string Text, string What)
{
    private static readonly Lazy<Gen<FuzzCase>> Cases = new(Everything);

    /// <summary>The case of a number: the same seed and number give the same case.</summary>
    public static FuzzCase Of(int seed, int number) => Cases.Value.Sample(1, new Rnd((ulong)seed * 1_000_003UL + (ulong)number), 50).Single();

    private static Gen<FuzzCase> Everything()
    {
        string Read(string path) => File.ReadAllText(RepositoryRoot.File(path));
        string[] cars = [.. Directory.EnumerateFiles(RepositoryRoot.File("data/vehicles"), "*.json").Order(StringComparer.Ordinal).Select(File.ReadAllText), StarterFile.Text()];
        return Gen.Frequency(
            (11, FuzzDocuments.Of("vehicle", typeof(VehicleDocument), cars)),
            (3, FuzzDocuments.Of("bench", typeof(BenchDocument), [Read("data/bench/booster-swap.json").Replace("../vehicles", RepositoryRoot.File("data/vehicles"), StringComparison.Ordinal)])),
            (1, FuzzTables.Of("gauges", [Read("data/logs/invented-gauges.csv")])),
            (1, FuzzTables.Of("stops", [Read("data/logs/invented-stops.csv")])),
            (1, FuzzTables.Of("series", [Read("data/logs/invented-telephone.csv"), Series])),
            (2, FuzzTables.Of("lap", [Read("data/cycles/invented-lap.csv")])),
            (1, FuzzTables.Of("answers", [Answers])));
    }

    private const string Answers =
        "student,exercise,answer\n1,load-transfer-1,4520 N\n1,load-transfer-2,6100 N\n1,ideal-curve-1,0.29\n1,knee-1,30 bar\n2,knee-1,435 psi\n2,load-transfer-1,4.5 kN\n3,static-load-1,-1000 lbf\n";

    private static string Series { get; } = "time [s];speed [km/h]\n"
        + string.Concat(Enumerable.Range(0, 120).Select(i => FormattableString.Invariant($"{i * 0.1:0.0};{Math.Clamp(80 - Math.Max(0, i - 20) * 2.2, 0, 80):0.0}\n")));
}
