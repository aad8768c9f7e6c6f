using System.Text.Json.Nodes;

namespace BrakeBalance.Bench;

internal static class PartsMerge
{
    /// <summary>A copy of the vehicle with the entries of the parts in place of its own.</summary>
    /// <remarks>
    /// Objects are merged entry by entry; an object of another <c>type</c>, a list or a single value replaces the old one; null takes an
    /// entry away.
    /// </remarks>
    public static JsonObject Lay(JsonObject vehicle, JsonObject parts)
    {
        var merged = (JsonObject)vehicle.DeepClone();
        foreach ((string key, JsonNode? part) in parts)
        {
            if (part is null)
            {
                merged.Remove(key);
            }
            else if (part is JsonObject inner && merged[key] is JsonObject old
                && (inner["type"] is null || JsonNode.DeepEquals(inner["type"], old["type"])))
            {
                merged[key] = Lay(old, inner);
            }
            else
            {
                merged[key] = part.DeepClone();
            }
        }

        return merged;
    }
}
