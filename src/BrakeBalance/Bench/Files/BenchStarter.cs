using System.Text.Json.Nodes;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Bench.Files;

/// <summary>Writes a commented bench file to start from: an invented job of hose, plumbing of a pump-fed booster and push rod.</summary>
public static class BenchStarter
{
    private const string Job = """
        {
          "name": "Booster swap",
          "note": "Measured on 12 May, car on stands",
          "hoses": [{
            "name": "pump to booster", "class": "EN 853 1SN", "dash": "-6", "overallLength": "610 mm",
            "first": { "fitting": "-6 female swivel 37°, straight", "cutOff": "28 mm" },
            "second": { "fitting": "-6 female swivel 37°, straight", "cutOff": "28 mm" },
            "side": "pressure", "highestPressure": "95 bar"
          }],
          "plumbing": {
            "reliefPressure": "95 bar", "pumpFlow": "9 l/min", "oilTemperature": "60 °C",
            "parts": [
              { "name": "pump", "part": "pump with reservoir" }, { "name": "booster",
                "part": "booster" }, { "name": "box", "part": "steering gear" }
            ],
            "lines": [
              { "from": "pump.outlet", "to": "booster.pressure", "bore": "9.5 mm", "length": "0.61 m" },
              { "from": "booster.gear", "to": "box.pressure", "bore": "9.5 mm", "length": "0.55 m" },
              { "from": "box.return", "to": "pump.return1", "bore": "9.5 mm", "length": "1.3 m" },
              { "from": "booster.return", "to": "pump.return2", "bore": "9.5 mm", "length": "0.8 m" }
            ]
          },
          "pushRod": { "seatDepth": ["28.10 mm", "28.15 mm"], "spigotHeight": ["4.00 mm",
            "4.05 mm"], "rodProjection": ["23.60 mm", "23.65 mm"] },
          "change": null
        }
        """;

    /// <summary>The starter file; entries that may be left out are there as comments.</summary>
    /// <returns>JSON with comments and a final line break.</returns>
    public static string Text() => new CommentedFile("disc").Text(
        [
            "Starter bench file. The numbers are invented: replace each by what you measured, and delete the parts that your job has not.",
            "A quantity is a text with its unit (\"610 mm\", \"24 in\", \"1-1/8 in\").",
            CommentedFile.HowToTakeIn,
            "To compare old parts with new ones, add an entry that names your vehicle file and the entries of it that change, such as",
            "  \"change\": { \"vehicle\": \"my-car.json\", \"newParts\": { \"masterCylinder\": { \"bore\": \"7/8 in\" } } }",
            "A calculation is no approval of a brake.",
        ],
        typeof(BenchDocument), (JsonObject)JsonNode.Parse(Job)!);
}
