using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace BrakeBalance.Vehicles.Files;

/// <summary>Changes single entries in the text of a vehicle file; comments and layout stay.</summary>
/// <remarks>
/// Nothing is invented: a part that is added is empty until its entries are filled in, and reading it says which those are.
/// </remarks>
internal static class VehicleText
{
    private const int KeptDigits = 5;

    private static readonly JsonSerializerOptions Relaxed = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>A file that says only of which class a car is.</summary>
    public static string New(string? carClass) =>
        "{\n  \"name\": \"My car\"" + (carClass is null ? "" : $",\n  \"carClass\": {Json(carClass)}") + "\n}\n";

    /// <summary>Puts a value, a list parted by commas, into an entry; an empty one takes it out. Elements go by number or name.</summary>
    /// <returns>The new text; the old one where the path is none of a vehicle file.</returns>
    public static string Set(string text, string path, string value)
    {
        if (value.Trim().Length == 0)
        {
            return Remove(text, path);
        }

        JsonObject root = Filled(text);
        path = JsonPath.Indexed(root, path);
        return Written(root, path, value) is { } json ? Put(text, root, path, json) : text;
    }

    /// <summary>Puts a value where a slider left it into an entry, in the unit that the entry has.</summary>
    public static string Keep(string text, string path, string value) =>
        Entry(text, path) is var (field, present) && field.Shape == FieldShape.Quantity
            && QuantityText.Read(CarForm.Text(present), field.ValueType, out IQuantity? own, out _) is null
            && QuantityText.Read(value, field.ValueType, out IQuantity? moved, out _) is null && !moved!.Unit.Equals(own!.Unit)
            ? Set(text, path, OtherUnits.Written(moved, own.Unit, KeptDigits)) : Set(text, path, value);

    /// <summary>A quantity's entry, and what the file or the car's class says there.</summary>
    /// <returns>Null for a path that is none of a vehicle file.</returns>
    internal static (FieldInfo Field, JsonNode? Present)? Entry(string text, string path)
    {
        JsonObject root = Filled(text);
        path = JsonPath.Indexed(root, path);
        return At(root, path) is { } field ? (field, Node(root, path)) : null;
    }

    /// <summary>Puts values into entries; kinds of parts, which end with <c>.type</c>, first: they say which entries a part has.</summary>
    /// <returns>The new text; what is none of a vehicle file's is left out, as <see cref="Lacking"/> tells.</returns>
    public static string With(string text, IEnumerable<ValueOverride> sets) =>
        sets.OrderBy(set => PartOf(set.Path) is null).Aggregate(text, (file, set) =>
            PartOf(set.Path) is { } part ? ChangeKind(file, part, set.Value) : Set(file, set.Path, set.Value));

    /// <summary>
    /// What a file says beside name, pedal, assist and the knee that is set, to tell whether two files differ in more than these.
    /// </summary>
    /// <returns>JSON that is equal for files that do not.</returns>
    public static string WithoutControlAndKnee(string text)
    {
        JsonObject root = Filled(text);
        var valves = (root["hydraulics"] as JsonObject)?["rearValves"] as JsonArray ?? [];
        Array.ForEach(["name", "note", "pedal", "assist"], part => root.Remove(part));
        valves.OfType<JsonObject>().FirstOrDefault(valve => valve["type"]?.ToString() == "proportioning")?.Remove("knee");
        return root.ToJsonString();
    }

    /// <summary>The values that a text does not hold, after they were put there.</summary>
    /// <returns>Those of whose entry the car of the file has none, or which another set has taken away.</returns>
    public static IEnumerable<ValueOverride> Lacking(string text, IEnumerable<ValueOverride> sets)
    {
        JsonObject root = Filled(text);
        return sets.Where(set => JsonPath.Indexed(root, set.Path) is var path
            && ((PartOf(path) is null ? Written(root, path, set.Value) : Json(set.Value)) is not { } json
                || !JsonNode.DeepEquals(Node(root, path), JsonNode.Parse(json))));
    }

    /// <summary>The kinds that an entry of a kind may name; none for any other entry.</summary>
    public static IEnumerable<string> Kinds(string text, string path) =>
        PartOf(path) is { } part && TypeAt(Filled(text), part) is { } type ? FieldMap.Kinds(type).Select(kind => kind.Name) : [];

    /// <summary>Takes an entry or a part out.</summary>
    public static string Remove(string text, string path)
    {
        var file = new JsonText(text);
        file.Remove(path);
        return file.ToString();
    }

    /// <summary>Adds an empty part, or an empty element to a list.</summary>
    public static string Add(string text, string path)
    {
        JsonObject root = Filled(text);
        FieldInfo? field = At(root, path);
        var file = new JsonText(text);
        if (field?.Shape == FieldShape.List && file.Has(path))
        {
            file.Append(path, "{}");
        }
        else
        {
            file.Set(path, field?.Shape == FieldShape.List ? "[{}]" : "{}", part => Keys(root, part));
        }

        return file.ToString();
    }

    /// <summary>Makes a part one of another kind; entries that the new kind has too stay.</summary>
    /// <returns>The new text; the old one where there is no such kind.</returns>
    public static string ChangeKind(string text, string path, string kind)
    {
        JsonObject root = Filled(text);
        if (TypeAt(root, path) is not { } type
            || FieldMap.Kinds(type).FirstOrDefault(known => known.Name == kind) is not { } chosen)
        {
            return text;
        }

        IEnumerable<string> stay = (Node(DocumentFile.Parse(text).Root, path) as JsonObject ?? [])
            .Where(entry => FieldMap.Of(chosen.Document).Any(field => field.Key == entry.Key))
            .Select(entry => $"{Json(entry.Key)}: {entry.Value?.ToJsonString(Relaxed)}");
        return Put(text, root, path, "{ " + string.Join(", ", stay.Prepend($"\"type\": {Json(kind)}")) + " }");
    }

    // An element that only the class has is begun under the name it has there, so that an entry of it can be set.
    private static string Put(string text, JsonObject root, string path, string json)
    {
        for (int at = path.IndexOf("[0]", StringComparison.Ordinal); at > 0; at = path.IndexOf("[0]", at + 1, StringComparison.Ordinal))
        {
            var list = new JsonText(text);
            if (!list.Has(path[..at]))
            {
                string? name = (Node(root, path[..(at + 3)]) as JsonObject)?["name"]?.ToString();
                list.Set(path[..at], name is null ? "[{}]" : $"[{{ \"name\": {Json(name)} }}]", part => Keys(root, part));
                text = list.ToString();
            }
        }

        var file = new JsonText(text);
        file.Set(path, json, part => Keys(root, part));
        return file.ToString();
    }

    private static string[] Keys(JsonObject root, string part) => TypeAt(root, part) is { } type
        ? ["type", .. FieldMap.Of(OfKind(type, root, part)).Select(field => field.Key)] : [];

    // The part whose kind a path says; null for any other entry.
    private static string? PartOf(string path) => path.EndsWith(".type", StringComparison.Ordinal) ? path[..^".type".Length] : null;

    private static string? Written(JsonObject root, string path, string value)
    {
        if (At(root, path) is not { } field)
        {
            return null;
        }

        (FieldShape shape, bool list) = field.Shape == FieldShape.List
            ? (FieldMap.ShapeOf(field.ValueType).Shape, true) : (field.Shape, false);
        return shape is FieldShape.Document or FieldShape.Json ? null
            : !list || path.EndsWith(']') ? Written(shape, value.Trim())
            : $"[{string.Join(", ", value.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
                .Select(part => Written(shape, part)))}]";
    }

    // What is no number stays a text, and reading the file says what is wrong with it.
    private static string Written(FieldShape shape, string value) => shape switch
    {
        FieldShape.Number when IsJsonNumber(value) => value,
        FieldShape.Flag when value is "true" or "false" => value,
        _ => Json(value),
    };

    private static bool IsJsonNumber(string value)
    {
        try
        {
            return JsonNode.Parse(value) is JsonValue number && number.GetValueKind() == JsonValueKind.Number;
        }
        catch (JsonException)
        {
            return false;
        }
    }

    private static string Json(string value) => JsonSerializer.Serialize(value, Relaxed);

    private static FieldInfo? At(JsonObject root, string path)
    {
        int dot = path.LastIndexOf('.');
        string part = dot < 0 ? "" : path[..dot], key = path[(dot + 1)..].Split('[')[0];
        return TypeAt(root, part) is { } type ? FieldMap.Of(OfKind(type, root, part)).FirstOrDefault(field => field.Key == key) : null;
    }

    // The document type at a path; parts on the way are of the kind that the file or the car's class says.
    private static Type? TypeAt(JsonObject root, string path)
    {
        Type type = typeof(VehicleDocument);
        string walked = "";
        foreach (string step in path.Split('.', StringSplitOptions.RemoveEmptyEntries))
        {
            if (FieldMap.Of(OfKind(type, root, walked)).FirstOrDefault(field => field.Key == step.Split('[')[0]) is not { } field)
            {
                return null;
            }

            type = field.ValueType;
            walked = DocumentReader.Join(walked, step);
        }

        return type;
    }

    private static Type OfKind(Type type, JsonObject root, string path) =>
        FieldMap.OfKind(type, (Node(root, path) as JsonObject)?["type"]?.ToString());

    private static JsonObject Filled(string text)
    {
        JsonObject root = DocumentFile.Parse(text).Root as JsonObject ?? [];
        CarClasses.Fill(root, []);
        return root;
    }

    private static JsonNode? Node(JsonNode? root, string path)
    {
        foreach (string step in path.Split('.', StringSplitOptions.RemoveEmptyEntries))
        {
            string[] parts = step.Split('[', ']');
            root = (root as JsonObject)?[parts[0]];
            root = parts.Length > 1 && int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out int index)
                ? (root as JsonArray)?.ElementAtOrDefault(index) : root;
        }

        return root;
    }
}
