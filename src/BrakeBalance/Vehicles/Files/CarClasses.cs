using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace BrakeBalance.Vehicles.Files;

/// <summary>Typical ranges of five classes of car, which stand in for what a vehicle file leaves out.</summary>
/// <remarks>
/// All ranges are common practice, worked into diameters and radii from the piston areas and disc sizes usual in each class (effective
/// radius: disc radius less 20 to 28 mm). They make bands, never a setting for a car.
/// </remarks>
internal static partial class CarClasses
{
    private static readonly Dictionary<string, string> Templates = new(StringComparer.OrdinalIgnoreCase)
    {
        ["1960s coupe"] = """
            {
              "wheelbase": "2.80 m .. 2.97 m",
              "loadCases": [{ "name": "driver only", "mass": "1550 kg .. 1850 kg",
                "frontShare": "0.54 .. 0.58", "centreOfGravityHeight": "0.51 m .. 0.58 m" }],
              "front": {
                "tyre": { "loadedRadius": "305 mm .. 335 mm" },
                "brake": { "type": "disc", "pistonDiameters": ["69.6 mm .. 74.8 mm"],
                  "effectiveRadius": "114 mm .. 129 mm", "friction": "0.33 .. 0.42" }
              },
              "rear": {
                "tyre": { "loadedRadius": "305 mm .. 335 mm" },
                "brake": { "type": "drum", "shoes": "duo-servo", "drumRadius": "121 mm .. 140 mm",
                  "wheelCylinderDiameter": "21 mm .. 24 mm", "friction": "0.33 .. 0.42", "thresholdPressure": "2 bar .. 7 bar" }
              },
              "valve": { "knee": "250 psi .. 600 psi", "slope": "0.25 .. 0.45" }
            }
            """,
        ["track coupe"] = """
            {
              "wheelbase": "2.45 m .. 2.70 m",
              "loadCases": [{ "name": "driver only", "mass": "950 kg .. 1300 kg",
                "frontShare": "0.50 .. 0.56", "centreOfGravityHeight": "0.43 m .. 0.50 m" }],
              "front": {
                "tyre": { "loadedRadius": "300 mm .. 325 mm" },
                "brake": { "type": "disc", "pistonDiameters": ["50 mm .. 66 mm"],
                  "effectiveRadius": "128 mm .. 148 mm", "friction": "0.42 .. 0.55" }
              },
              "rear": {
                "tyre": { "loadedRadius": "300 mm .. 325 mm" },
                "brake": { "type": "disc", "pistonDiameters": ["40.7 mm .. 51.7 mm"],
                  "effectiveRadius": "115 mm .. 135 mm", "friction": "0.42 .. 0.55" }
              },
              "valve": { "knee": "300 psi .. 800 psi", "slope": "0.4 .. 0.5" }
            }
            """,
        ["small sports car"] = """
            {
              "wheelbase": "2.10 m .. 2.35 m",
              "loadCases": [{ "name": "driver only", "mass": "850 kg .. 1080 kg",
                "frontShare": "0.48 .. 0.54", "centreOfGravityHeight": "0.43 m .. 0.50 m" }],
              "front": {
                "tyre": { "loadedRadius": "275 mm .. 305 mm" },
                "brake": { "type": "disc", "pistonDiameters": ["43.7 mm .. 56.4 mm"],
                  "effectiveRadius": "90 mm .. 113 mm", "friction": "0.33 .. 0.40" }
              },
              "rear": {
                "tyre": { "loadedRadius": "275 mm .. 305 mm" },
                "brake": { "type": "drum", "shoes": "leading-trailing", "drumRadius": "101 mm .. 127 mm",
                  "wheelCylinderDiameter": "15.9 mm .. 22.2 mm", "friction": "0.33 .. 0.40", "thresholdPressure": "2 bar .. 7 bar" }
              },
              "valve": { "knee": "250 psi .. 600 psi", "slope": "0.25 .. 0.5" }
            }
            """,
        ["rear-engined car"] = """
            {
              "wheelbase": "2.15 m .. 2.50 m",
              "loadCases": [{ "name": "driver only", "mass": "780 kg .. 1350 kg",
                "frontShare": "0.37 .. 0.44", "centreOfGravityHeight": "0.46 m .. 0.54 m" }],
              "front": {
                "tyre": { "loadedRadius": "280 mm .. 315 mm" },
                "brake": { "type": "disc", "pistonDiameters": ["41 mm .. 56 mm"],
                  "effectiveRadius": "96 mm .. 128 mm", "friction": "0.35 .. 0.45" }
              },
              "rear": {
                "tyre": { "loadedRadius": "280 mm .. 315 mm" },
                "brake": { "type": "disc", "pistonDiameters": ["33 mm .. 44 mm"],
                  "effectiveRadius": "96 mm .. 126 mm", "friction": "0.35 .. 0.45" }
              },
              "valve": { "knee": "400 psi .. 900 psi", "slope": "0.3 .. 0.5" }
            }
            """,
        ["pickup"] = """
            {
              "wheelbase": "2.90 m .. 3.45 m",
              "loadCases": [{ "name": "driver only", "mass": "1750 kg .. 2200 kg",
                "frontShare": "0.55 .. 0.60", "centreOfGravityHeight": "0.65 m .. 0.75 m" }],
              "front": {
                "tyre": { "loadedRadius": "345 mm .. 385 mm" },
                "brake": { "type": "disc", "pistonDiameters": ["70.5 mm .. 81.4 mm"],
                  "effectiveRadius": "122 mm .. 135 mm", "friction": "0.33 .. 0.40" }
              },
              "rear": {
                "tyre": { "loadedRadius": "345 mm .. 385 mm" },
                "brake": { "type": "drum", "shoes": "duo-servo", "drumRadius": "127 mm .. 152 mm",
                  "wheelCylinderDiameter": "22.2 mm .. 28.6 mm", "friction": "0.33 .. 0.40", "thresholdPressure": "2 bar .. 7 bar" }
              },
              "valve": { "knee": "200 psi .. 500 psi", "slope": "0.25 .. 0.4" }
            }
            """,
    };

    public static IReadOnlyList<string> Names => [.. Templates.Keys];

    /// <summary>The range that a class has for an entry, as a file writes it; null when class or range is not known.</summary>
    public static string? Range(string? name, string path)
    {
        JsonNode? node = name is not null && Templates.TryGetValue(name.Trim(), out string? template) ? JsonNode.Parse(template) : null;
        string[] steps = node is null ? []
            : InTemplate().Replace(path, match => match.Value.StartsWith('h') ? "valve" : "loadCases[0]").Split('.', '[');
        foreach (string step in steps)
        {
            node = step.EndsWith(']') ? (node as JsonArray)?.FirstOrDefault() : (node as JsonObject)?[step];
        }

        return (node as JsonValue)?.ToString();
    }

    /// <summary>Whether a value lies in the range that a class has for an entry.</summary>
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
    public static void Fill(JsonObject json, List<string> filled)
    {
        if (json["carClass"] is not JsonValue named || !named.TryGetValue(out string? name)
            || FieldMap.Find([.. Names.Select(known => (known, (object)known))], name) is not { } carClass)
        {
            return;
        }

        var typical = (JsonObject)JsonNode.Parse(Templates[carClass.Word])!;
        JsonObject valve = Taken(typical, "valve"), load = Taken(typical, "loadCases");
        if (json["loadCases"] is JsonArray loads)
        {
            load.Remove("name");
            Each(loads, "loadCases", (one, path) => Merge(one, load, typeof(LoadCaseDocument), path, filled));
        }
        else
        {
            typical["loadCases"] = new JsonArray(load);
        }

        Merge(json, typical, typeof(VehicleDocument), "", filled);
        Each((json["hydraulics"] as JsonObject)?["rearValves"] as JsonArray ?? [], "hydraulics.rearValves", (one, path) =>
        {
            if (one["type"]?.ToString() == "proportioning")
            {
                Merge(one, valve, typeof(Hydraulics.ProportioningValve), path, filled);
            }
        });
        Usual(json, typeof(VehicleDocument), "", filled);
    }

    private static JsonObject Taken(JsonObject typical, string key)
    {
        JsonNode part = typical[key]!;
        typical.Remove(key);
        if (part is not JsonArray list)
        {
            return (JsonObject)part;
        }

        JsonNode first = list[0]!;
        list.RemoveAt(0);
        return (JsonObject)first;
    }

    private static void Each(JsonArray list, string path, Action<JsonObject, string> fill)
    {
        for (int i = 0; i < list.Count; i++)
        {
            if (list[i] is JsonObject one)
            {
                fill(one, Invariant.Text($"{path}[{i}]"));
            }
        }
    }

    private static void Merge(JsonObject json, JsonObject typical, Type type, string path, List<string> filled)
    {
        // Of another kind of brake only the friction is typical; sizes are not.
        bool otherKind = json["type"] is { } kind && typical["type"] is { } usual && kind.ToString() != usual.ToString();
        foreach ((string key, JsonNode? value) in typical)
        {
            if (json[key] is JsonObject inner && value is JsonObject typicalInner)
            {
                Type of = FieldMap.Of(type).First(field => field.Key == key).ValueType;
                string? name = (inner["type"] ?? typicalInner["type"])?.ToString();
                Merge(inner, typicalInner, FieldMap.OfKind(of, name), DocumentReader.Join(path, key), filled);
            }
            else if (!otherKind || key == "friction")
            {
                Add(json, type, path, key, value!, filled);
            }
        }
    }

    // Ranges that are usual for any class, in the parts that the file has.
    private static void Usual(JsonObject json, Type type, string path, List<string> filled)
    {
        foreach (FieldInfo field in FieldMap.Of(FieldMap.OfKind(type, json["type"]?.ToString())))
        {
            string here = DocumentReader.Join(path, field.Key);
            switch (json[field.Key])
            {
                case JsonObject part when field.Shape == FieldShape.Document:
                    Usual(part, field.ValueType, here, filled);
                    break;
                case JsonArray list when FieldMap.ShapeOf(field.ValueType) is (FieldShape.Document, var element):
                    Each(list, here, (one, at) => Usual(one, element, at, filled));
                    break;
                case null when field.About.Typical.Length > 0 && !field.About.ByClass:
                    Add(json, type, path, field.Key, field.About.Typical, filled);
                    break;
            }
        }
    }

    private static void Add(JsonObject json, Type type, string path, string key, JsonNode value, List<string> filled)
    {
        bool saidOtherwise = FieldMap.Of(FieldMap.OfKind(type, json["type"]?.ToString()))
            .Any(other => other.Replaces.Contains(key) && json.ContainsKey(other.Key));
        if (!saidOtherwise && !json.ContainsKey(key))
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
