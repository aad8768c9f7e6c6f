using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Vehicles;

/// <summary>Reads vehicle files: JSON with comments, one car a file, every quantity a text with its unit.</summary>
public static class VehicleFile
{
    private static readonly JsonDocumentOptions Options = new()
    {
        CommentHandling = JsonCommentHandling.Skip,
        AllowTrailingCommas = true,
        AllowDuplicateProperties = false,
    };

    /// <summary>Reads a vehicle file.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="overrides">Single values to take in place of the file's.</param>
    /// <returns>The vehicle, and which of its values are ranges.</returns>
    /// <exception cref="VehicleFileException">The file cannot be read or has problems; all of them are listed.</exception>
    public static VehicleReading Load(string path, params IEnumerable<ValueOverride> overrides)
    {
        string text;
        try
        {
            text = File.ReadAllText(path, Encoding.UTF8);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            string what = fault is FileNotFoundException or DirectoryNotFoundException ? "There is no such file." : "The file cannot be opened.";
            throw new VehicleFileException(path, [new("", what, "the path of a vehicle file (JSON)")]);
        }

        return Read(text, path, overrides);
    }

    /// <summary>Reads the text of a vehicle file.</summary>
    /// <param name="text">The text.</param>
    /// <param name="source">File name or other origin, for messages.</param>
    /// <param name="overrides">Single values to take in place of the text's.</param>
    /// <returns>The vehicle, and which of its values are ranges.</returns>
    /// <exception cref="VehicleFileException">The text has problems; all of them are listed.</exception>
    public static VehicleReading Read(string text, string source, params IEnumerable<ValueOverride> overrides)
    {
        (VehicleReading? reading, IReadOnlyList<Problem> problems) = TryRead(text, overrides);
        return reading ?? throw new VehicleFileException(source, problems);
    }

    /// <summary>Reads the text of a vehicle file, giving problems back instead of throwing.</summary>
    /// <param name="text">The text.</param>
    /// <param name="overrides">Single values to take in place of the text's.</param>
    /// <returns>The reading, or null and every problem found.</returns>
    public static (VehicleReading? Reading, IReadOnlyList<Problem> Problems) TryRead(string text, params IEnumerable<ValueOverride> overrides)
    {
        JsonNode? root;
        try
        {
            root = JsonNode.Parse(text, documentOptions: Options);
        }
        catch (JsonException fault)
        {
            string where = fault.LineNumber is { } line
                ? FormattableString.Invariant($"Line {line + 1}, column {fault.BytePositionInLine + 1}: ")
                : "";
            return (null, [new("", where + "this is not JSON: " + fault.Message.Split(" Path:", 2)[0].Split(" LineNumber:", 2)[0].TrimEnd('.') + ".", "JSON; comments and trailing commas may stay")]);
        }

        List<Problem> problems = [];
        if (root is JsonObject json)
        {
            problems.AddRange(overrides.Select(change => JsonPath.Set(json, change)).OfType<Problem>());
        }

        var reader = new DocumentReader();
        var document = (VehicleDocument?)reader.ReadDocument(typeof(VehicleDocument), root, "");
        problems.AddRange(reader.Problems);
        if (problems.Count > 0 || document is null)
        {
            return (null, problems);
        }

        var builder = new VehicleBuilder();
        return builder.Build(document) is { } vehicle
            ? (new VehicleReading(vehicle, reader.Ranges), [])
            : (null, builder.Problems);
    }
}

/// <summary>What came of reading a vehicle file.</summary>
/// <param name="Vehicle">The vehicle; a value given as a range stands at its middle.</param>
/// <param name="Ranges">The values given as ranges.</param>
public sealed record VehicleReading(Vehicle Vehicle, IReadOnlyList<ValueRange> Ranges);
