using System.Security.Cryptography;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace BrakeBalance.Notebooks.Documents;

/// <summary>The one form in which a notebook is kept in git: no outputs, no counts, no editor's notes, stable order.</summary>
/// <remarks>
/// Works on the file's own JSON. Format 4.5; keys in alphabetical order and one space of indent, as Jupyter writes
/// them; LF; of the metadata only the C# kernel's name and the cells' tags stay.
/// </remarks>
internal static partial class CanonicalNotebook
{
    /// <summary>The name of the kernel that the notebooks ask for and that <c>jupyter install</c> sets up.</summary>
    public const string KernelName = "brake-balance-csharp";

    /// <summary>The kernel's name as Jupyter clients show it.</summary>
    public const string KernelTitle = "C# (brake balance)";

    private static readonly JsonSerializerOptions Written = new()
    {
        WriteIndented = true,
        IndentCharacter = ' ',
        IndentSize = 1,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Brings a notebook into canonical form.</summary>
    /// <returns>The text to keep; applying this again changes nothing.</returns>
    /// <exception cref="NotebookFormatException">The text is no notebook of version 4.</exception>
    public static string Text(string json, string path) => Node(json, path).ToJsonString(Written) + "\n";

    internal static JsonObject Of(IEnumerable<NotebookCell> cells) => new()
    {
        ["cells"] = new JsonArray([.. cells.Select(cell => Cell(new JsonObject
        {
            ["cell_type"] = cell.IsCode ? "code" : "markdown",
            ["id"] = cell.Id,
            ["metadata"] = new JsonObject { ["tags"] = new JsonArray([.. cell.Tags.Select(tag => JsonValue.Create(tag))]) },
            ["source"] = cell.Source,
        }, []))]),
        ["metadata"] = Metadata(),
        ["nbformat"] = 4,
        ["nbformat_minor"] = 5,
    };

    internal static JsonObject Node(string json, string path)
    {
        try
        {
            JsonNode root = JsonNode.Parse(json) ?? throw new FormatException("it is empty");
            if (root is not JsonObject || root["nbformat"] is not JsonValue version || !version.TryGetValue(out int format) || format != 4)
            {
                throw new FormatException("its nbformat is not 4");
            }

            if (Language(root["metadata"]) is { } language)
            {
                throw new FormatException($"it is written in {language}; C# notebooks are run here");
            }

            HashSet<string> ids = [];
            JsonNode?[] cells = [.. root["cells"]?.AsArray() ?? throw new FormatException("it has no list of cells")];
            return new JsonObject
            {
                ["cells"] = new JsonArray([.. cells.Select(cell => Cell(cell!.AsObject(), ids))]),
                ["metadata"] = Metadata(),
                ["nbformat"] = 4,
                ["nbformat_minor"] = 5,
            };
        }
        catch (FormatException exception)
        {
            throw new NotebookFormatException($"'{path}' is not a notebook of format 4: {exception.Message}.");
        }
        catch (JsonException exception)
        {
            throw new NotebookFormatException(
                Invariant.Text($"'{path}' is not a notebook of format 4: it is not JSON from line {(exception.LineNumber ?? 0) + 1} on."));
        }
        catch (Exception exception) when (exception is InvalidOperationException or NullReferenceException or ArgumentException)
        {
            // What the JSON reader says of a value of another kind speaks of the code.
            throw new NotebookFormatException(
                $"'{path}' is not a notebook of format 4: an entry is of another kind than the format has there.");
        }
    }

    private static JsonObject Cell(JsonObject cell, HashSet<string> ids)
    {
        string type = (string?)cell["cell_type"] ?? throw new FormatException("a cell has no cell_type");
        string source = Source(cell["source"]);
        var kept = new JsonObject();
        if (cell["attachments"] is JsonObject attachments && attachments.Count > 0)
        {
            kept["attachments"] = attachments.DeepClone();
        }

        kept["cell_type"] = type;
        if (type == "code")
        {
            kept["execution_count"] = null;
        }

        kept["id"] = Id((string?)cell["id"], source, ids);
        if ((cell["metadata"]?["tags"] as JsonArray)?.Any(tag => tag?.GetValueKind() != JsonValueKind.String) == true)
        {
            throw new FormatException("a cell has a tag that is no text");
        }

        kept["metadata"] = cell["metadata"]?["tags"] is JsonArray { Count: > 0 } tags
            ? new JsonObject { ["tags"] = tags.DeepClone() } : new JsonObject();
        if (type == "code")
        {
            kept["outputs"] = new JsonArray();
        }

        kept["source"] = new JsonArray([.. Lines(source).Select(line => JsonValue.Create(line))]);
        return kept;
    }

    /// <summary>The language of a notebook that is not C#; null for C# or none named.</summary>
    private static string? Language(JsonNode? metadata) =>
        new[] { metadata?["language_info"]?["name"], metadata?["kernelspec"]?["language"] }
            .Select(name => (string?)name).OfType<string>()
            .FirstOrDefault(name => name.ToLowerInvariant() is not ("c#" or "csharp" or "polyglot-notebook"));

    private static string Source(JsonNode? source)
    {
        string text = source is JsonArray lines ? string.Concat(lines.Select(line => (string?)line)) : (string?)source ?? "";
        return text.ReplaceLineEndings("\n").TrimEnd('\n');
    }

    private static IEnumerable<string> Lines(string source)
    {
        string[] lines = source.Split('\n');
        return source.Length == 0 ? [] : lines.Select((line, index) => index < lines.Length - 1 ? line + "\n" : line);
    }

    /// <summary>Keeps a cell's id; one that is missing, malformed or taken becomes one that follows from the cell's text.</summary>
    private static string Id(string? id, string source, HashSet<string> taken)
    {
        string stem = id is not null && ValidId().IsMatch(id)
            ? id
            : Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(source)))[..8];
        string free = stem;
        for (int count = 2; !taken.Add(free); count++)
        {
            free = Invariant.Text($"{stem}-{count}");
        }

        return free;
    }

    private static JsonObject Metadata() => new()
    {
        ["kernelspec"] = new JsonObject { ["display_name"] = KernelTitle, ["language"] = "C#", ["name"] = KernelName },
        ["language_info"] = new JsonObject
        {
            ["file_extension"] = ".cs",
            ["mimetype"] = "text/x-csharp",
            ["name"] = "C#",
            ["pygments_lexer"] = "csharp",
        },
    };

    [GeneratedRegex("^[a-zA-Z0-9_-]{1,60}$")]
    private static partial Regex ValidId();
}
