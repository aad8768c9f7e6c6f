using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace BrakeBalance.Vehicles.Files;

/// <summary>Sets single values of a JSON tree by their path.</summary>
internal static partial class JsonPath
{
    /// <summary>Sets a value.</summary>
    /// <param name="root">The tree.</param>
    /// <param name="change">Path and value.</param>
    /// <param name="begins">Whether a part that is not there may be begun, by its name; one that needs other entries may not.</param>
    /// <returns>Null when set; else the problem.</returns>
    public static Problem? Set(JsonObject root, ValueOverride change, Func<string, bool> begins)
    {
        JsonNode node = root;
        string walked = "";
        string[] parts = Points().Split(change.Path);
        for (int i = 0; i < parts.Length; i++)
        {
            Match match = Part().Match(parts[i]);
            if (!match.Success)
            {
                return new(change.Path, $"\"{parts[i]}\" cannot be read as part of a path.",
                    "names separated by points, list elements as name[0] or name[driver only]");
            }

            string key = match.Groups["key"].Value;
            if (node is not JsonObject json)
            {
                return new(change.Path, $"\"{walked}\" has no entries.", "a path to a single value");
            }

            bool last = i == parts.Length - 1;
            walked = DocumentReader.Join(walked, key);
            if (!match.Groups["index"].Success)
            {
                if (last)
                {
                    if (json[key] is JsonObject or JsonArray)
                    {
                        return new(change.Path, "is not a single value.", "a path to a single value, such as " + walked
                            + (json[key] is JsonArray ? "[0]" : "") + ".…");
                    }

                    json[key] = Value(change.Value, json[key]);
                    return null;
                }

                if (json[key] is null && i == 0 && begins(key))
                {
                    json[key] = new JsonObject();
                }

                if (json[key] is null)
                {
                    return Missing(change.Path, walked, key, json);
                }

                node = json[key]!;
                continue;
            }

            if (json[key] is not JsonArray array)
            {
                return json[key] is null
                    ? Missing(change.Path, walked, key, json)
                    : new(change.Path, $"\"{walked}\" is not a list.", "a path without brackets there");
            }

            string index = match.Groups["index"].Value;
            int at = IndexOf(array, index);
            if (at < 0 || at >= array.Count)
            {
                return new(change.Path, $"\"{walked}\" has no element [{index}].", array.Count == 0
                    ? "none, the list is empty" : $"0 to {array.Count - 1}, or the name of an element");
            }

            walked += $"[{at}]";
            if (last)
            {
                if (array[at] is JsonObject or JsonArray)
                {
                    return new(change.Path, "is not a single value.", "a path to a single value, such as " + walked + ".…");
                }

                array[at] = Value(change.Value, array[at]);
                return null;
            }

            node = array[at]!;
        }

        return null;
    }

    /// <summary>A path whose list elements stand by their number, also those that were named.</summary>
    /// <param name="root">The tree.</param>
    /// <param name="path">The path; what of it the tree does not have stays as it is.</param>
    public static string Indexed(JsonObject root, string path)
    {
        JsonNode? node = root;
        return string.Join('.', Points().Split(path).Select(part =>
        {
            Match match = Part().Match(part);
            node = (node as JsonObject)?[match.Groups["key"].Value];
            if (!match.Groups["index"].Success || node is not JsonArray array
                || IndexOf(array, match.Groups["index"].Value) is not (>= 0 and var at) || at >= array.Count)
            {
                return part;
            }

            node = array[at];
            return Invariant.Text($"{match.Groups["key"].Value}[{at}]");
        }));
    }

    private static int IndexOf(JsonArray array, string index) =>
        int.TryParse(index, NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            ? number
            : array.ToList().FindIndex(element =>
                element is JsonObject named && named["name"] is JsonValue name
                && string.Equals(name.ToString(), index, StringComparison.OrdinalIgnoreCase));

    private static Problem Missing(string path, string walked, string key, JsonObject json)
    {
        string[] known = [.. json.Select(entry => entry.Key)];
        if (RenamedEntries.Words(RenamedEntries.Keys, key, known) is { } renamed)
        {
            return new(path, $"\"{walked}\" {renamed}", string.Join(", ", known));
        }

        string near = Nearest.Of(key, known) is { } guess ? $" Did you mean \"{guess}\"?" : "";
        return new(path, $"\"{walked}\" is not in the file.{near}", string.Join(", ", known));
    }

    // A text stays a text, so that a car may be named 1960; in place of a quantity or a range a number is taken for one.
    private static JsonNode Value(string text, JsonNode? present)
    {
        bool staysText = present is JsonValue value && value.TryGetValue(out string? written) && !QuantityOrRange().IsMatch(written);
        return !staysText && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number)
            && double.IsFinite(number) ? JsonValue.Create(number)
            : !staysText && text is ("true" or "false") ? JsonValue.Create(text == "true")
            : JsonValue.Create(text);
    }

    [GeneratedRegex(@"^\s*[+-]?(\d+\.?\d*|\.\d+)\s*([^\d\s.]|\.\.)", RegexOptions.ExplicitCapture)]
    private static partial Regex QuantityOrRange();

    // Points inside brackets belong to a name.
    [GeneratedRegex(@"\.(?![^\[]*\])", RegexOptions.ExplicitCapture)]
    private static partial Regex Points();

    [GeneratedRegex(@"^(?<key>\w+)(\[(?<index>[^\]]+)\])?$", RegexOptions.ExplicitCapture)]
    private static partial Regex Part();
}
