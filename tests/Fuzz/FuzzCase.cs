using System.Text.Json;
using System.Text.Json.Nodes;
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

    /// <summary>The sound vehicle files that are changed.</summary>
    public static IReadOnlyList<string> Cars =>
    [
        .. Directory.EnumerateFiles(RepositoryRoot.File("data/vehicles"), "*.json").Order(StringComparer.Ordinal).Select(File.ReadAllText),
        StarterFile.Text(), .. Variants(Read("data/vehicles/coupe-1960s.json")), ClassFilled, ClassFilledControl,
            StarterFile.Text("pump", "drum", "load-sensing"), StarterFile.Text("vacuum", "disc", "balance-bar"),
    ];

    /// <summary>The case of a number: the same seed and number give the same case.</summary>
    public static FuzzCase Of(int seed, int number) =>
        Cases.Value.Sample(1, new Rnd((ulong)seed * 1_000_003UL + (ulong)number), 50).Single();

    private static Gen<FuzzCase> Everything()
    {
        return Gen.Frequency(
            (11, FuzzDocuments.Of("vehicle", typeof(VehicleDocument), Cars)),
            (3, FuzzDocuments.Of("bench", typeof(BenchDocument),
                [Read("data/bench/booster-swap.json")
                .Replace("../vehicles", RepositoryRoot.File("data/vehicles"), StringComparison.Ordinal)])),
            (1, FuzzTables.Of("gauges", [Read("data/logs/invented-gauges.csv")])),
            (1, FuzzTables.Of("stops", [Read("data/logs/invented-stops.csv")])),
            (1, FuzzTables.Of("series", [Read("data/logs/invented-phone.csv"), Series, .. Exports])),
            (2, FuzzTables.Of("lap", [Read("data/cycles/invented-lap.csv"), .. Exports])),
            (1, FuzzTables.Of("answers", [Answers])));
    }

    private static IEnumerable<string> Exports => ((string[])["03-diagnostics.log", "04-wheels.csv", "08-two-rates.csv", "10-noise.csv"])
        .Select(name => Read("data/logs/invented-export-" + name));

    private static string Read(string path) => File.ReadAllText(RepositoryRoot.File(path));

    private const string ClassFilled = """{ "name": "What is known", "carClass": "1960s coupe", "wheelbase": "2.70 m .. 2.75 m" }""";

    private const string ClassFilledControl = """
        { "name": "What is known", "carClass": "small sports car", "pedal": {}, "assist": { "type": "hydraulic" },
          "masterCylinder": { "type": "tandem" }, "aerodynamics": {}, "engineBraking": { "drivenAxle": "rear" },
          "hydraulics": { "rearValves": [{ "type": "proportioning" }] } }
        """;

    // The coupe with other parts, so that those are changed too.
    private static IEnumerable<string> Variants(string coupe)
    {
        string With(params (string Path, string Json)[] parts)
        {
            var car = (JsonObject)JsonNode.Parse(coupe,
                documentOptions: new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true })!;
            foreach ((string path, string json) in parts)
            {
                string[] steps = path.Split('.');
                JsonNode parent = steps.SkipLast(1).Aggregate((JsonNode)car, (node, step) => node[step]!);
                parent[steps[^1]] = JsonNode.Parse(json);
            }

            return car.ToJsonString();
        }

        const string Linkage = """
            { "geometry": { "pivotToPad": "300 mm", "pivotToPin": "62 mm", "linkLength": "80 mm",
              "rodAxisDepth": "60 mm", "pinAngleAtRest": "-15 °" } }
            """;
        const string Pump = """
            { "type": "hydraulic", "reliefPressure": "95 bar", "pumpFlow": "6 l/min", "powerPiston": "22 mm", "boostRatio": 3.2 }
            """;
        const string Lever = """
            [{ "type": "load-sensing", "kneeAtReference": "30 bar", "referenceLoad": "6 kN", "kneePerKilonewton": "8 bar", "slope": 0.35 }]
            """;
        yield return With(("hydraulics.rearValves", Lever));
        yield return With(("pedal", Linkage));
        yield return With(("assist", Pump),
            ("hydraulics.frontValves", """[{ "type": "metering", "openingPressure": "7 bar", "blendPressure": "20 bar" }]"""));
    }

    private const string Answers =
        "student,exercise,answer\n1,load-transfer-1,4520 N\n1,load-transfer-2,6100 N\n"
            + "1,ideal-curve-1,0.29\n1,knee-1,30 bar\n2,knee-1,435 psi\n2,load-transfer-1,4.5 kN\n3,static-load-1,-1000 lbf\n";

    private static string Series { get; } = "time [s];speed [km/h]\n"
        + string.Concat(Enumerable.Range(0, 120)
            .Select(i => FormattableString.Invariant($"{i * 0.1:0.0};{Math.Clamp(80 - Math.Max(0, i - 20) * 2.2, 0, 80):0.0}\n")));
}
