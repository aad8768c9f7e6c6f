using System.Text;
using System.Text.Json;

namespace BrakeBalance.Vehicles.Files;

/// <summary>Finds entries that a JSON text gives twice, which a tree could not hold.</summary>
internal static class DuplicateKeys
{
    /// <summary>A problem for each entry that its object already has.</summary>
    /// <param name="text">JSON; comments and trailing commas may stay. It is looked at as far as it is well-formed.</param>
    public static IReadOnlyList<Problem> Of(string text)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        var reader = new Utf8JsonReader(bytes,
            new JsonReaderOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
        List<Problem> problems = [];
        Stack<HashSet<string>> open = new();
        while (IsMore(ref reader))
        {
            int at = (int)reader.TokenStartIndex;
            if (reader.TokenType is JsonTokenType.PropertyName or JsonTokenType.String && !IsReadable(ref reader))
            {
                problems.Add(new("", Invariant.Text($"Line {Line(at)}: a text has characters that cannot be seen."),
                    "letters, digits and signs"));
                continue;
            }

            switch (reader.TokenType)
            {
                case JsonTokenType.StartObject:
                    open.Push(new(StringComparer.Ordinal));
                    break;
                case JsonTokenType.EndObject:
                    open.Pop();
                    break;
                case JsonTokenType.PropertyName when !open.Peek().Add(reader.GetString()!):
                    string twice = Invariant.Text($"is there twice, the second time in line {Line(at)}.");
                    problems.Add(new(reader.GetString()!, twice, "one entry of that name"));
                    break;
            }
        }

        return problems;

        int Line(int end) => bytes.AsSpan(0, end).Count((byte)'\n') + 1;
    }

    private static bool IsMore(ref Utf8JsonReader reader)
    {
        try
        {
            return reader.Read();
        }
        catch (JsonException)
        {
            return false;
        }
    }

    // Half of a character pair cannot be decoded at all; a control character would reach terminals and spreadsheets.
    private static bool IsReadable(ref Utf8JsonReader reader)
    {
        try
        {
            return !Array.Exists(reader.GetString()!.ToCharArray(), c => char.IsControl(c) && c is not ('\n' or '\r' or '\t'));
        }
        catch (InvalidOperationException)
        {
            return false;
        }
    }
}
