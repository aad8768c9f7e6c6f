using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using UnitsNet;

namespace BrakeBalance.Vehicles.Files;

/// <summary>Typical ranges of five classes of car, which stand in for what a vehicle file leaves out.</summary>
/// <remarks>
/// All ranges are common practice, worked into diameters and radii from the piston areas and disc sizes usual in each class (effective radius: disc radius
/// less 20 to 28 mm). They make bands, never a setting for a car.
/// </remarks>
internal static partial class CarClasses
{
    private static readonly Dictionary<string, string> Templates = new(StringComparer.OrdinalIgnoreCase)
    {
        ["1960s coupe"] = """
            {
              "wheelbase": "2.80 m .. 2.97 m",
              "loadCases": [{ "name": "driver only", "mass": "1550 kg .. 1850 kg", "frontShare": "0.54 .. 0.58", "centreOfGravityHeight": "0.51 m .. 0.58 m" }],
              "front": {
                "tyre": { "loadedRadius": "305 mm .. 335 mm" },
                "brake": { "type": "disc", "pistonDiameters": ["69.6 mm .. 74.8 mm"], "effectiveRadius": "114 mm .. 129 mm", "friction": "0.33 .. 0.42" }
              },
              "rear": {
                "tyre": { "loadedRadius": "305 mm .. 335 mm" },
                "brake": { "type": "drum", "shoes": "duo-servo", "drumRadius": "121 mm .. 140 mm", "wheelCylinderDiameter": "21 mm .. 24 mm", "friction": "0.33 .. 0.42", "thresholdPressure": "2 bar .. 7 bar" }
              },
              "valve": { "knee": "250 psi .. 600 psi", "slope": "0.25 .. 0.45" }
            }
            """,
        ["track coupe"] = """
            {
              "wheelbase": "2.45 m .. 2.70 m",
              "loadCases": [{ "name": "driver only", "mass": "1150 kg .. 1450 kg", "frontShare": "0.50 .. 0.56", "centreOfGravityHeight": "0.43 m .. 0.50 m" }],
              "front": {
                "tyre": { "loadedRadius": "300 mm .. 325 mm" },
                "brake": { "type": "disc", "pistonDiameters": ["57.5 mm .. 70.5 mm"], "effectiveRadius": "128 mm .. 148 mm", "friction": "0.42 .. 0.55" }
              },
              "rear": {
                "tyre": { "loadedRadius": "300 mm .. 325 mm" },
                "brake": { "type": "disc", "pistonDiameters": ["40.7 mm .. 51.7 mm"], "effectiveRadius": "115 mm .. 135 mm", "friction": "0.42 .. 0.55" }
              },
              "valve": { "knee": "300 psi .. 800 psi", "slope": "0.4 .. 0.6" }
            }
            """,
        ["small sports car"] = """
            {
              "wheelbase": "2.10 m .. 2.35 m",
              "loadCases": [{ "name": "driver only", "mass": "850 kg .. 1080 kg", "frontShare": "0.48 .. 0.54", "centreOfGravityHeight": "0.43 m .. 0.50 m" }],
              "front": {
                "tyre": { "loadedRadius": "275 mm .. 305 mm" },
                "brake": { "type": "disc", "pistonDiameters": ["43.7 mm .. 56.4 mm"], "effectiveRadius": "90 mm .. 113 mm", "friction": "0.33 .. 0.40" }
              },
              "rear": {
                "tyre": { "loadedRadius": "275 mm .. 305 mm" },
                "brake": { "type": "drum", "shoes": "leading-trailing", "drumRadius": "101 mm .. 127 mm", "wheelCylinderDiameter": "15.9 mm .. 22.2 mm", "friction": "0.33 .. 0.40", "thresholdPressure": "2 bar .. 7 bar" }
              },
              "valve": { "knee": "250 psi .. 600 psi", "slope": "0.25 .. 0.6" }
            }
            """,
        ["rear-engined car"] = """
            {
              "wheelbase": "2.20 m .. 2.30 m",
              "loadCases": [{ "name": "driver only", "mass": "1000 kg .. 1300 kg", "frontShare": "0.37 .. 0.43", "centreOfGravityHeight": "0.46 m .. 0.52 m" }],
              "front": {
                "tyre": { "loadedRadius": "295 mm .. 320 mm" },
                "brake": { "type": "disc", "pistonDiameters": ["43.7 mm .. 57.5 mm"], "effectiveRadius": "106 mm .. 126 mm", "friction": "0.35 .. 0.45" }
              },
              "rear": {
                "tyre": { "loadedRadius": "295 mm .. 320 mm" },
                "brake": { "type": "disc", "pistonDiameters": ["33.9 mm .. 43.7 mm"], "effectiveRadius": "103 mm .. 126 mm", "friction": "0.35 .. 0.45" }
              },
              "valve": { "knee": "500 psi .. 900 psi", "slope": "0.4 .. 0.5" }
            }
            """,
        ["pickup"] = """
            {
              "wheelbase": "2.90 m .. 3.45 m",
              "loadCases": [{ "name": "driver only", "mass": "1750 kg .. 2200 kg", "frontShare": "0.55 .. 0.60", "centreOfGravityHeight": "0.65 m .. 0.75 m" }],
              "front": {
                "tyre": { "loadedRadius": "345 mm .. 385 mm" },
                "brake": { "type": "disc", "pistonDiameters": ["70.5 mm .. 81.4 mm"], "effectiveRadius": "122 mm .. 135 mm", "friction": "0.33 .. 0.40" }
              },
              "rear": {
                "tyre": { "loadedRadius": "345 mm .. 385 mm" },
                "brake": { "type": "drum", "shoes": "duo-servo", "drumRadius": "127 mm .. 152 mm", "wheelCylinderDiameter": "22.2 mm .. 28.6 mm", "friction": "0.33 .. 0.40", "thresholdPressure": "2 bar .. 7 bar" }
              },
              "valve": { "knee": "200 psi .. 500 psi", "slope": "0.25 .. 0.4" }
            }
            """,
    };

    /// <summary>Names of the classes.</summary>
    public static IReadOnlyList<string> Names => [.. Templates.Keys];

    /// <summary>The range that a class has for an entry, as a file writes it; null when class or range is not known.</summary>
    /// <param name="name">Name of the class; null for none.</param>
    /// <param name="path">Path of the entry.</param>
    public static string? Range(string? name, string path)
    {
        JsonNode? node = name is not null && Templates.TryGetValue(name.Trim(), out string? template) ? JsonNode.Parse(template) : null;
        foreach (string step in InTemplate().Replace(path, match => match.Value.StartsWith('h') ? "valve" : "loadCases[0]").Split('.', '['))
        {
            node = step.EndsWith(']') ? (node as JsonArray)?.FirstOrDefault() : (node as JsonObject)?[step];
        }

        return (node as JsonValue)?.ToString();
    }

    /// <summary>Whether a value lies in the range that a class has for an entry.</summary>
    /// <param name="name">Name of the class; null for none.</param>
    /// <param name="path">Path of the entry.</param>
    /// <param name="value">A number or a quantity.</param>
    /// <param name="slack">How far beyond either end a number may lie.</param>
    public static bool Covers(string? name, string path, object value, double slack = 0)
    {
        if (Range(name, path) is not { } range)
        {
            return false;
        }

        if (value is double number)
        {
            return range.Split("..") is [var from, var to]
                && number >= double.Parse(from, CultureInfo.InvariantCulture) - slack
                && number <= double.Parse(to, CultureInfo.InvariantCulture) + slack;
        }

        var quantity = (IQuantity)value;
        return QuantityText.Read(range, quantity.GetType(), out IQuantity? low, out IQuantity? high) is null
            && quantity.As(low!.Unit) >= low.Value && quantity.As(high!.Unit) <= high.Value;
    }

    /// <summary>Fills in what a file leaves out, when it names its class.</summary>
    /// <param name="json">The file.</param>
    /// <param name="filled">Paths of the entries added.</param>
    /// <returns>A problem when the class is not known.</returns>
    public static IEnumerable<Problem> Fill(JsonObject json, List<string> filled)
    {
        if (json["carClass"] is not JsonValue named || !named.TryGetValue(out string? name))
        {
            return [];
        }

        if (!Templates.TryGetValue(name.Trim(), out string? template))
        {
            return [new Problem("carClass", $"\"{name}\" is not known.", string.Join(", ", Templates.Keys.Select(k => $"\"{k}\"")))];
        }

        var typical = (JsonObject)JsonNode.Parse(template)!;
        var valve = (JsonObject)typical["valve"]!;
        typical.Remove("valve");
        Loads(json, typical, filled);
        Merge(json, typical, "", filled);
        foreach ((JsonNode? element, int i) in ((json["hydraulics"] as JsonObject)?["rearValves"] as JsonArray ?? []).Select((element, i) => (element, i)))
        {
            if (element is JsonObject proportioning && proportioning["type"]?.ToString() == "proportioning")
            {
                Merge(proportioning, valve, $"hydraulics.rearValves[{i}]", filled);
            }
        }

        return [];
    }

    private static void Loads(JsonObject json, JsonObject typical, List<string> filled)
    {
        if (json["loadCases"] is not JsonArray loads)
        {
            return;
        }

        var usual = (JsonObject)((JsonArray)typical["loadCases"]!)[0]!;
        for (int i = 0; i < loads.Count; i++)
        {
            if (loads[i] is not JsonObject load)
            {
                continue;
            }

            bool weighed = load.ContainsKey("frontAxleMass") || load.ContainsKey("rearAxleMass");
            bool placed = weighed || load.ContainsKey("frontShare") || load.ContainsKey("frontAxleToCentreOfGravity");
            Add(load, usual, $"loadCases[{i}]", filled, "centreOfGravityHeight");
            if (!weighed)
            {
                Add(load, usual, $"loadCases[{i}]", filled, "mass");
            }

            if (!placed)
            {
                Add(load, usual, $"loadCases[{i}]", filled, "frontShare");
            }
        }
    }

    private static void Merge(JsonObject json, JsonObject typical, string path, List<string> filled)
    {
        // Of another kind of brake only the friction is typical; sizes are not.
        bool otherKind = json["type"] is { } kind && typical["type"] is { } usual && kind.ToString() != usual.ToString();
        foreach ((string key, JsonNode? value) in typical)
        {
            bool saidOtherwise = key == "effectiveRadius" && json.ContainsKey("padInnerRadius");
            if (json[key] is JsonObject inner && value is JsonObject typicalInner)
            {
                Merge(inner, typicalInner, DocumentReader.Join(path, key), filled);
            }
            else if (!json.ContainsKey(key) && !saidOtherwise && (!otherKind || key == "friction"))
            {
                Add(json, typical, path, filled, key);
            }
        }
    }

    private static void Add(JsonObject json, JsonObject typical, string path, List<string> filled, string key)
    {
        if (!json.ContainsKey(key) && typical[key] is { } value)
        {
            json[key] = value.DeepClone();
            Note(json[key]!, DocumentReader.Join(path, key), filled);
        }
    }

    private static void Note(JsonNode node, string path, List<string> filled)
    {
        switch (node)
        {
            case JsonObject json:
                foreach ((string key, JsonNode? value) in json)
                {
                    Note(value!, DocumentReader.Join(path, key), filled);
                }

                break;
            case JsonArray array:
                for (int i = 0; i < array.Count; i++)
                {
                    Note(array[i]!, $"{path}[{i}]", filled);
                }

                break;
            default:
                filled.Add(path);
                break;
        }
    }

    [GeneratedRegex(@"^(hydraulics\.rearValves|loadCases)\[\d+\]")]
    private static partial Regex InTemplate();
}
