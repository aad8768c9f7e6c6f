using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace BrakeBalance.Vehicles.Files;

/// <summary>Reads files of any document type: JSON with comments, every quantity a text with its unit.</summary>
internal static class DocumentFile
{
    /// <summary>The most characters of a file: no car and no job on the bench needs a tenth of it.</summary>
    public const int MostCharacters = 1_000_000;

    private static readonly JsonDocumentOptions Options = new()
    {
        CommentHandling = JsonCommentHandling.Skip,
        AllowTrailingCommas = true,
        AllowDuplicateProperties = false,
    };

    /// <summary>The text of a file.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="kind">What the file should be, with its article, for the message.</param>
    /// <returns>The text, or null and what is wrong.</returns>
    public static (string? Text, Problem? Problem) Load(string path, string kind)
    {
        try
        {
            return (File.ReadAllText(path, Encoding.UTF8), null);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            string what = fault is FileNotFoundException or DirectoryNotFoundException
                ? "There is no such file." : "The file cannot be opened.";
            return (null, new("", what, $"the path of {kind} (JSON)"));
        }
    }

    /// <summary>The JSON tree of a text.</summary>
    /// <returns>The tree (null also for the JSON value null), or what is wrong.</returns>
    public static (JsonNode? Root, Problem? Problem) Parse(string text)
    {
        if (text.Length > MostCharacters)
        {
            return (null, new("", Invariant.Text($"The file has {text.Length} characters."),
                Invariant.Text($"at most {MostCharacters}")));
        }

        try
        {
            // What cannot be seen is written with an escape, what stands twice stops the reading: other texts are read but once.
            return text.Contains("\\u", StringComparison.Ordinal) && DuplicateKeys.Of(text) is [var hidden, ..]
                ? (null, hidden) : (JsonNode.Parse(text, documentOptions: Options), null);
        }
        catch (JsonException fault)
        {
            if (DuplicateKeys.Of(text) is [var twice, ..])
            {
                return (null, twice);
            }

            // The line itself rather than the framework's words for it, which browsers do not have.
            int line = (int)(fault.LineNumber ?? 0);
            string there = text.Split('\n').ElementAtOrDefault(line)?.Trim() ?? "";
            return (null, new("", Invariant.Text($"Line {line + 1}, column {fault.BytePositionInLine + 1}: this is not JSON: ")
                + (there.Length == 0 ? "the file ends too early." : there[..Math.Min(there.Length, 60)]),
                "JSON; comments and trailing commas may stay"));
        }
    }

    /// <summary>Reads a document.</summary>
    /// <typeparam name="T">The document type, its entries marked with <see cref="FieldAttribute"/>.</typeparam>
    /// <param name="text">The text of the file.</param>
    /// <param name="overrides">Single values to take in place of the text's.</param>
    /// <returns>The document, complete as far as its entries by themselves go, or every problem found.</returns>
    public static DocumentReading<T> Read<T>(string text, params IEnumerable<ValueOverride> overrides) where T : class =>
        Read<T>(text, null, overrides);

    /// <summary>Reads a document after something was done to its JSON.</summary>
    /// <typeparam name="T">The document type, its entries marked with <see cref="FieldAttribute"/>.</typeparam>
    /// <param name="text">The text of the file.</param>
    /// <param name="prepare">Changes the JSON before the overrides; null for nothing.</param>
    /// <param name="overrides">Single values to take in place of the text's.</param>
    /// <returns>The document, complete as far as its entries by themselves go, or every problem found.</returns>
    public static DocumentReading<T> Read<T>(string text, Action<JsonObject>? prepare, IEnumerable<ValueOverride> overrides) where T : class
    {
        (JsonNode? root, Problem? fault) = Parse(text);
        if (fault is not null)
        {
            return new(null, [], fault.Path.Length > 0 ? DuplicateKeys.Of(text) : [fault]);
        }

        List<Problem> problems = [];
        if (root is JsonObject json)
        {
            prepare?.Invoke(json);
            problems.AddRange(overrides.Select(change => JsonPath.Set(json, change, Optional)).OfType<Problem>());
        }

        static bool Optional(string key) =>
            FieldMap.Of(typeof(T)).FirstOrDefault(field => field.Key == key) is { Shape: FieldShape.Document, About.Required: false } part
            && !part.ValueType.IsAbstract && FieldMap.Of(part.ValueType).All(field => !field.About.Required);
        var reader = new DocumentReader();
        var document = (T?)reader.ReadDocument(typeof(T), root, "");
        problems.AddRange(reader.Problems);
        return problems.Count > 0
            ? new(null, [], problems) { Partial = document }
            : new(document, reader.Ranges, []) { Partial = document, Targets = reader.Targets };
    }
}

/// <summary>What came of reading a document.</summary>
/// <param name="Document">The document; null when there are problems.</param>
/// <param name="Ranges">The entries given as ranges.</param>
/// <param name="Problems">Every problem found.</param>
internal sealed record DocumentReading<T>(T? Document, IReadOnlyList<ValueRange> Ranges, IReadOnlyList<Problem> Problems) where T : class
{
    /// <summary>The document as far as it could be read, for checks that do not need the rest; null when nothing could.</summary>
    public T? Partial { get; init; }

    /// <summary>Where in the document each range went.</summary>
    public IReadOnlyList<RangeTarget> Targets { get; init; } = [];
}
