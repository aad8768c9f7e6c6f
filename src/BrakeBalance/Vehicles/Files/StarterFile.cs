using System.Text.Json.Nodes;

namespace BrakeBalance.Vehicles.Files;

/// <summary>Writes a commented vehicle file to start from: an invented car with the parts asked for, and no entries of others.</summary>
public static class StarterFile
{
    private static readonly Dictionary<string, string> AssistParts = new()
    {
        ["pump"] = """
            { "pedal": { "ratio": 4.0 }, "masterCylinder": { "bore": "23.8 mm" },
              "assist": { "type": "hydraulic", "boostRatio": 4, "reliefPressure": "95 bar",
                "pumpFlow": "7 l/min", "powerPiston": "35 mm" } }
            """,
        ["vacuum"] = """
            { "pedal": { "ratio": 4.0 }, "masterCylinder": { "bore": "23.8 mm" },
              "assist": { "type": "vacuum", "boostRatio": 4, "vacuum": "18 inHg",
                "diaphragmDiameter": "9 in", "vacuumChamber": "2.6 l", "applyChamber": "0.5 l" } }
            """,
        ["none"] = """{ "pedal": { "ratio": 6.0 }, "masterCylinder": { "bore": "19.05 mm" }, "assist": { "type": "none" } }""",
    };

    private static readonly Dictionary<string, string> RearParts = new()
    {
        ["drum"] = """
            { "rear": { "brake": {
                "type": "drum", "friction": 0.38, "shoes": "leading-trailing", "drumRadius": "114 mm", "wheelCylinderDiameter": "17.5 mm",
                  "brakeFactor": 2.2, "brakeFactorFriction": 0.38 } },
              "fluid": { "rear": { "clearance": "1.3 mm" } } }
            """,
        ["disc"] = """
            { "rear": { "brake": { "type": "disc", "friction": 0.42, "pistonDiameters": ["38 mm"], "effectiveRadius": "125 mm" } },
              "fluid": { "rear": { "caliper": "sliding", "clearance": "0.4 mm" } } }
            """,
    };

    private static readonly Dictionary<string, string> ValveParts = new()
    {
        ["adjustable"] = """
            { "hydraulics": { "rearValves": [{
                "type": "proportioning", "knee": "27 bar", "slope": 0.4, "adjuster": { "kneeBackedOff": "7 bar", "kneePerTurn": "10 bar",
                  "turns": 6 } }] } }
            """,
        ["load-sensing"] = """
            { "hydraulics": { "rearValves": [{
                "type": "load-sensing", "kneeAtReference": "30 bar", "referenceLoad": "6 kN",
                  "kneePerKilonewton": "8 bar", "slope": 0.35 }] } }
            """,
        ["balance-bar"] = """
            { "hydraulics": { "split": { "type": "balance bar", "frontBore": "19.05 mm",
              "rearBore": "20.64 mm", "frontForceShare": 0.58 }, "rearValves": null },
              "masterCylinder": { "type": "balance bar", "stroke": "30 mm" } }
            """,
        ["limiting"] = """{ "hydraulics": { "rearValves": [{ "type": "limiting", "limit": "30 bar" }] } }""",
        ["none"] = """{ "hydraulics": { "rearValves": null }, "rear": { "brake": { "pistonDiameters": ["30 mm"] } } }""",
    };

    private const string Car = """
        {
          "name": "My coupe",
          "note": "Weighed on 12 May, driver aboard, half a tank",
          "wheelbase": "2.60 m",
          "loadCases": [{ "name": "driver only", "mass": "1350 kg", "frontShare": 0.53, "centreOfGravityHeight": "0.47 m" }],
          "front": {
            "tyre": { "loadedRadius": "315 mm" },
            "brake": { "type": "disc", "friction": 0.42, "pistonDiameters": ["54 mm"], "effectiveRadius": "125 mm" }
          },
          "rear": { "tyre": { "loadedRadius": "315 mm" } },
          "hydraulics": { "split": null },
          "masterCylinder": { "type": "tandem", "stroke": "36 mm" },
          "fluid": { "front": { "caliper": "sliding", "clearance": "0.4 mm" } }
        }
        """;

    /// <summary>Kinds of assist that a starter file can have.</summary>
    public static IReadOnlyList<string> Assists => [.. AssistParts.Keys];

    /// <summary>Kinds of rear brake that a starter file can have.</summary>
    public static IReadOnlyList<string> Rears => [.. RearParts.Keys];

    /// <summary>What may limit the rear brakes of a starter file's car.</summary>
    public static IReadOnlyList<string> Valves => [.. ValveParts.Keys];

    /// <summary>The starter file; entries that may be left out are there as comments, each on a line of its own.</summary>
    /// <returns>JSON with comments and a final line break.</returns>
    /// <exception cref="ArgumentException">A word is none of those.</exception>
    public static string Text(string assist = "none", string rear = "disc", string valve = "adjustable")
    {
        var car = (JsonObject)JsonNode.Parse(Car)!;
        foreach ((Dictionary<string, string> parts, string word) in new[] { (AssistParts, assist), (RearParts, rear), (ValveParts, valve) })
        {
            Lay(car, parts.TryGetValue(word, out string? part)
                ? (JsonObject)JsonNode.Parse(part)!
                : throw new ArgumentException($"\"{word}\" is none of {string.Join(", ", parts.Keys)}."));
        }

        return new CommentedFile(rear).Text(
            [
                "Starter vehicle file. The numbers are invented: replace each by what you measured on your car.",
                "A quantity is a text with its unit (\"2.60 m\", \"102.4 in\", \"1-1/8 in\"), or a range of it (\"2.58 m .. 2.62 m\").",
                CommentedFile.HowToTakeIn,
                "A calculation is no approval of a brake.",
            ],
            typeof(VehicleDocument), car);
    }

    private static void Lay(JsonObject car, JsonObject part)
    {
        foreach ((string key, JsonNode? value) in part)
        {
            if (car[key] is JsonObject inner && value is JsonObject over)
            {
                Lay(inner, over);
            }
            else
            {
                car[key] = value?.DeepClone();
            }
        }
    }
}
