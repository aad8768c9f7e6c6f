using System.Text.Json;
using System.Text.Json.Nodes;

namespace BrakeBalance.Summaries;

/// <summary>Puts the lowest and highest of a number beside it, over the cars drawn from a file's ranges.</summary>
internal static class JsonBands
{
    /// <summary>Ends the key of the lowest.</summary>
    public const string Low = "_low";

    /// <summary>Ends the key of the highest.</summary>
    public const string High = "_high";

    /// <summary>Ends the key of the words that a text may also be.</summary>
    public const string Also = "_in_ranges";

    private const int LongestWord = 16;

    /// <summary>The keys that bands add, and what each means.</summary>
    public static IReadOnlyList<(string Path, string Meaning)> Keys { get; } =
    [
        ("…" + Low, "lowest of the number beside it over a dozen cars drawn from the file's ranges; only where they differ"),
        ("…" + High, "highest of the same"),
        ("…" + Also + "[]", "the words or flags that the key beside it has among those cars; only where they differ"),
    ];

    /// <summary>An answer with its bands.</summary>
    /// <param name="middle">The answer with every range at its middle; taken apart.</param>
    /// <param name="drawn">The same answer for each car that the ranges allow.</param>
    /// <returns>The answer; what no range moves stands as before.</returns>
    public static JsonObject With(JsonObject middle, IReadOnlyList<JsonObject> drawn)
    {
        JsonObject banded = [];
        foreach ((string key, JsonNode? value) in middle.ToArray())
        {
            middle.Remove(key);
            JsonNode?[] others = [.. drawn.Where(other => other.ContainsKey(key)).Select(other => other[key])];
            banded[key] = value switch
            {
                JsonObject part => With(part, [.. others.OfType<JsonObject>()]),
                JsonArray list => With(list, [.. others.OfType<JsonArray>()]),
                _ => value,
            };
            if (value is JsonObject or JsonArray)
            {
                continue;
            }

            double[] numbers = [.. others.Append(value).Where(IsNumber).Select(Value)];
            if (numbers.Length > 0 && numbers.Min() < numbers.Max())
            {
                banded[key + Low] = numbers.Min();
                banded[key + High] = numbers.Max();
            }

            if (IsText(value))
            {
                banded[key] = BandText.Of(value!.GetValue<string>(), others.Where(IsText).Select(text => text!.GetValue<string>()), []);
            }

            JsonNode?[] words = [.. others.Append(value).Where(IsWord).DistinctBy(word => word!.ToJsonString())
                .OrderBy(word => word!.ToJsonString(), StringComparer.Ordinal)];
            if (words.Length > 1)
            {
                banded[key + Also] = new JsonArray([.. words.Select(word => word!.DeepClone())]);
            }
        }

        return banded;
    }

    private static JsonArray With(JsonArray middle, IReadOnlyList<JsonArray> drawn)
    {
        JsonNode?[] parts = [.. middle];
        middle.Clear();
        if (parts.Length > 0 && parts.All(part => IsText(part) || IsWord(part)))
        {
            IReadOnlyList<string> Texts(IEnumerable<JsonNode?> list) => [.. list.Select(text => text!.ToString())];
            return new([.. BandText.Each(Texts(parts), drawn.Select(Texts), []).Select(text => (JsonNode)text)]);
        }

        return new([.. parts.Select((part, i) => part is JsonObject item
            ? With(item, [.. drawn.Where(list => list.Count > i).Select(list => list[i]).OfType<JsonObject>()])
            : part)]);
    }

    private static bool IsNumber(JsonNode? node) => node?.GetValueKind() == JsonValueKind.Number;

    private static double Value(JsonNode? number) => double.Parse(number!.ToJsonString(), CultureInfo.InvariantCulture);

    private static bool IsText(JsonNode? node) =>
        node?.GetValueKind() == JsonValueKind.String && node.GetValue<string>().Length > LongestWord;

    private static bool IsWord(JsonNode? node) => node?.GetValueKind() is JsonValueKind.True or JsonValueKind.False
        || (node?.GetValueKind() == JsonValueKind.String && node.GetValue<string>().Length <= LongestWord);
}
