using System.Text.Json.Nodes;
using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts;

/// <summary>What the script that reads values from a drawing cannot see in it: names, units, steps of rounding.</summary>
internal static class FigureReading
{
    /// <summary>The names of axes and layers, the latter in the order in which they are drawn.</summary>
    public static string Json(Figure figure) => PlainJson.Text(new JsonObject
    {
        ["x"] = Of(figure.XAxis, figure.Units),
        ["y"] = Of(figure.YAxis, figure.Units),
        ["layers"] = new JsonArray([.. figure.Layers.Select(layer => (JsonNode)Of(layer, figure.Units))]),
    });

    private static JsonArray Of(Axis axis, UnitSystem units)
    {
        DisplayUnit unit = axis.Measure.In(units);
        var words = new JsonArray(axis.Quantity, unit.Symbol, PlainJson.Number(unit.RoundTo));
        if (axis.Categories is { } names)
        {
            words.Add(Words(names));
        }

        return words;
    }

    private static JsonArray Of(Layer layer, UnitSystem units) => layer switch
    {
        LineLayer => ["line", layer.Name],
        ReferenceLayer => ["across", layer.Name],
        MarkerLayer => ["mark", layer.Name],
        BarLayer => ["bar", layer.Name],
        MapLayer map => ["map", layer.Name,
            Words(map.Classes.Where((_, i) => MapRuns.Of(map, i).Any()).Select(one => one.Label))],
        HeatLayer heat => ["heat", layer.Name, Words(heat.Values.SelectMany(row => row).OfType<double>()
            .Select(value => $"{layer.Name} {heat.Measure.Text(value, units)}"))],
        _ => ["area", layer.Name],
    };

    private static JsonArray Words(IEnumerable<string> words) => new([.. words.Select(word => (JsonNode)word)]);
}
