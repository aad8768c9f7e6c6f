using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace BrakeBalance.Summaries;

/// <summary>JSON for people and scripts to read: two spaces of indent, LF, signs such as ° as they are.</summary>
internal static class IndentedJson
{
    private static readonly JsonSerializerOptions Written = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static string Text(JsonNode node) => node.ToJsonString(Written);
}
