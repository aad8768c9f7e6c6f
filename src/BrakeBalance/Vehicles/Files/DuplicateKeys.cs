using System.Text;
using System.Text.Json;

namespace BrakeBalance.Vehicles.Files;

/// <summary>Finds entries that a JSON text gives twice, which a tree could not hold.</summary>
internal static class DuplicateKeys
{
    /// <summary>A problem for each entry that its object already has.</summary>
    /// <param name="text">Well-formed JSON; comments and trailing commas may stay.</param>
    public static IReadOnlyList<Problem> Of(string text)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        var reader = new Utf8JsonReader(bytes, new JsonReaderOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
        List<Problem> problems = [];
        Stack<HashSet<string>> open = new();
        while (reader.Read())
        {
            switch (reader.TokenType)
            {
                case JsonTokenType.StartObject:
                    open.Push(new(StringComparer.Ordinal));
                    break;
                case JsonTokenType.EndObject:
                    open.Pop();
                    break;
                case JsonTokenType.PropertyName when !open.Peek().Add(reader.GetString()!):
                    int line = bytes.AsSpan(0, (int)reader.TokenStartIndex).Count((byte)'\n') + 1;
                    problems.Add(new(reader.GetString()!, FormattableString.Invariant($"is there twice, the second time in line {line}."), "one entry of that name"));
                    break;
            }
        }

        return problems;
    }
}
