using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Unicode;

namespace BrakeBalance.Charts.Rendering;

/// <summary>JSON in one canonical form: shortest numbers, no white space, nothing that could end a script element.</summary>
internal static class PlainJson
{
    private static readonly JsonSerializerOptions Options = new() { Encoder = JavaScriptEncoder.Create(UnicodeRanges.All) };

    public static string Text(JsonNode? node) => node?.ToJsonString(Options) ?? "null";

    /// <summary>A number in its shortest form.</summary>
    public static JsonValue Number(double value) =>
        value == Math.Floor(value) && Math.Abs(value) < 1e15 ? JsonValue.Create((long)value) : JsonValue.Create(value);
}
