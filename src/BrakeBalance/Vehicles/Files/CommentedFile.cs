using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace BrakeBalance.Vehicles.Files;

/// <summary>Writes a file with what each entry means as comments, made from the same descriptions that the reader uses.</summary>
/// <remarks>What the sample holds is written as it stands; an entry that may be left out is a line of its own behind <c>//~</c>.</remarks>
/// <param name="rearBrake">Kind of the rear brake, disc or drum, for entries that only one of them has; the front has a disc.</param>
internal sealed class CommentedFile(string rearBrake)
{
    /// <summary>What stands before an entry that may be taken in.</summary>
    public const string Optional = "//~ ";

    /// <summary>What a reader of the file has to know of such lines.</summary>
    public const string HowToTakeIn = "A line that begins with //~ holds an entry that may be left out; take the //~ away to use it.";

    private const string Indent = "  ", FrontBrake = "disc";

    public static readonly JsonSerializerOptions Relaxed = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The file.</summary>
    /// <returns>JSON with comments and a final line break.</returns>
    public string Text(IEnumerable<string> head, Type type, JsonObject sample) =>
        string.Concat(head.Select(line => "// " + line).Concat(Document(type, sample, FrontBrake)).Select(line => line + "\n"));

    private List<string> Document(Type type, JsonObject sample, string brake)
    {
        List<string> lines = ["{"];
        IReadOnlyList<KindAttribute> kinds = FieldMap.Kinds(type);
        if (kinds.Count > 0)
        {
            lines.Add($"{Indent}// Kinds: {string.Join(", ", kinds.Select(kind => $"\"{kind.Name}\" ({kind.Description})"))}.");
            lines.Add($"{Indent}\"type\": {Json(sample["type"])},");
            type = kinds.First(kind => kind.Name == sample["type"]!.ToString()).Document;
        }

        foreach (FieldInfo field in FieldMap.Of(type))
        {
            string wheel = field.Key == "rear" ? rearBrake : brake;
            bool given = sample.TryGetPropertyValue(field.Key, out JsonNode? value);
            bool apart = field.About.Needs.Length == 0 || sample[field.About.Needs] is not null;
            if (given ? value is not null : field.Fits(brake) && apart)
            {
                FieldInfo[] followers = [.. FieldMap.Of(type).Where(other => other.About.Needs == field.Key)];
                lines.AddRange(Entry(field, value, wheel, followers).Select(line => Indent + line));
            }
        }

        lines.Add("}");
        return lines;
    }

    // What says nothing without the entry goes with it on its line.
    private IEnumerable<string> Entry(FieldInfo field, JsonNode? value, string brake, FieldInfo[] followers)
    {
        string told = "// " + field.Told, name = $"\"{field.Key}\": ";
        if (value is null && field.Shape == FieldShape.Document && NothingRequired(field.ValueType))
        {
            value = new JsonObject();
        }

        switch (value)
        {
            case JsonObject part when field.Shape == FieldShape.Document:
                return [told, .. Named(name, Document(field.ValueType, part, brake))];
            case JsonArray list when FieldMap.ShapeOf(field.ValueType) is (FieldShape.Document, var element):
                IEnumerable<string> elements = list.SelectMany(one => Named("", Document(element, (JsonObject)one!, brake)))
                    .Select(line => Indent + line);
                return [told, name + "[", .. elements, "],"];
            case not null:
                return [told, name + Json(value) + ","];
            default:
                string example = string.Join(", ", followers.Prepend(field).Select(one => $"\"{one.Key}\": {Example(one, brake)}"));
                IEnumerable<string> inside = followers.Select(one => $"//   {one.Key}: {one.Told}").Concat(Inside(field, brake));
                return field.Replaces.Count > 0
                    ? [$"// In place of {string.Join(" and ", field.Replaces)}: {example}", told, .. inside]
                    : [told, .. inside, Optional + example + ","];
        }
    }

    private static IEnumerable<string> Named(string name, List<string> lines) => [name + lines[0], .. lines[1..^1], lines[^1] + ","];

    // A part that may be left out is one line; what its entries mean stands above it.
    private static IEnumerable<string> Inside(FieldInfo field, string brake) =>
        Part(field) is not { } part ? [] : FieldMap.Of(part.Document).Where(inner => inner.Fits(brake))
            .SelectMany(inner => Inside(inner, brake).Prepend($"//   {inner.Key}: {inner.Told}"));

    private static string Example(FieldInfo field, string brake)
    {
        if (Part(field) is not var (document, kind))
        {
            FieldShape shape = field.Shape == FieldShape.List ? FieldMap.ShapeOf(field.ValueType).Shape : field.Shape;
            string one = shape is FieldShape.Number or FieldShape.Flag
                ? field.About.Example
                : $"\"{field.About.Example}\"";
            return field.Shape == FieldShape.List ? $"[{one}]" : one;
        }

        IEnumerable<string> entries = FieldMap.Of(document).Where(inner => inner.Fits(brake) && inner.Replaces.Count == 0)
            .Select(inner => $"\"{inner.Key}\": {Example(inner, brake)}");
        string made = "{ " + string.Join(", ", kind is null ? entries : entries.Prepend($"\"type\": \"{kind}\"")) + " }";
        return field.Shape == FieldShape.List ? $"[{made}]" : made;
    }

    private static (Type Document, string? Kind)? Part(FieldInfo field)
    {
        (FieldShape shape, Type type) = field.Shape == FieldShape.List ? FieldMap.ShapeOf(field.ValueType) : (field.Shape, field.ValueType);
        if (shape != FieldShape.Document)
        {
            return null;
        }

        IReadOnlyList<KindAttribute> kinds = FieldMap.Kinds(type);
        KindAttribute? kind = kinds.FirstOrDefault(kind => kind.Name == field.About.Example) ?? kinds.FirstOrDefault();
        return kind is null ? (type, null) : (kind.Document, kind.Name);
    }

    private static bool NothingRequired(Type type) =>
        FieldMap.Kinds(type).Count == 0 && FieldMap.Of(type).All(field => !field.About.Required);

    private static string Json(JsonNode? value) => value is JsonArray list
        ? $"[{string.Join(", ", list.Select(Json))}]"
        : value!.ToJsonString(Relaxed);
}
