using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Tests.Vehicles;

/// <summary>Files of ordinary cars: every entry of a class drawn from its range, calipers of one to three pistons a side.</summary>
internal static partial class OrdinaryCar
{
    /// <summary>The least that a file of a class says.</summary>
    public static JsonObject OfClass(string carClass, bool valve) => (JsonObject)JsonNode.Parse($$"""
        {
          "name": "Invented ordinary car", "carClass": "{{carClass}}",
          "loadCases": [{ "name": "driver only" }],
          "front": { "tyre": {}, "brake": { "type": "disc" } },
          "rear": { "tyre": {}, "brake": { "type": "{{(carClass is "track coupe" or "rear-engined car" ? "disc" : "drum")}}" } },
          "hydraulics": { "rearValves": [{{(valve ? """{ "type": "proportioning" }""" : "")}}] }
        }
        """)!;

    /// <summary>Cars as their owners would write them after measuring everything; every other one still names its class.</summary>
    /// <param name="count">How many.</param>
    public static IEnumerable<string> Measured(int count)
    {
        var random = new Random(2026);
        return [.. Enumerable.Range(0, count).Select(number => Measured(number, random))];
    }

    private static string Measured(int number, Random random)
    {
        JsonObject car = OfClass(CarClasses.Names[number % CarClasses.Names.Count], valve: random.Next(2) == 0);
        CarClasses.Fill(car, []);
        if (number % 2 == 0)
        {
            car.Remove("carClass");
        }

        Draw(car, random);
        foreach (JsonObject brake in ((string[])["front", "rear"]).Select(axle => (JsonObject)car[axle]!["brake"]!))
        {
            if (brake["pistonDiameters"] is JsonArray and [var piston])
            {
                int pistons = random.Next(1, 4);
                double millimetres = double.Parse(piston!.ToString().Split(' ')[0], CultureInfo.InvariantCulture) / Math.Sqrt(pistons);
                brake["pistonDiameters"] = new JsonArray([.. Enumerable.Repeat(Invariant($"{millimetres:0.0} mm"), pistons)
                    .Select(diameter => JsonValue.Create(diameter))]);
            }
        }

        return car.ToJsonString();
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);

    private static void Draw(JsonNode node, Random random)
    {
        switch (node)
        {
            case JsonObject json:
                foreach (string key in json.Select(entry => entry.Key).ToArray())
                {
                    if (json[key] is JsonValue)
                    {
                        json[key] = Drawn(json[key]!, random);
                    }
                    else
                    {
                        Draw(json[key]!, random);
                    }
                }

                break;
            case JsonArray array:
                for (int i = 0; i < array.Count; i++)
                {
                    if (array[i] is JsonValue)
                    {
                        array[i] = Drawn(array[i]!, random);
                    }
                    else
                    {
                        Draw(array[i]!, random);
                    }
                }

                break;
        }
    }

    private static JsonNode Drawn(JsonNode value, Random random)
    {
        if (Range().Match(value.ToString()) is not { Success: true } range)
        {
            return value.DeepClone();
        }

        double low = double.Parse(range.Groups[1].Value, CultureInfo.InvariantCulture);
        double high = double.Parse(range.Groups[3].Value, CultureInfo.InvariantCulture);
        double drawn = Math.Round(low + (high - low) * random.NextDouble(), 3);
        string unit = range.Groups[4].Value;
        return unit.Length > 0 ? JsonValue.Create(Invariant($"{drawn} {unit}")) : JsonValue.Create(drawn);
    }

    [GeneratedRegex(@"^([0-9.]+) ?(\S*) \.\. ([0-9.]+) ?(\S*)$")]
    private static partial Regex Range();
}
