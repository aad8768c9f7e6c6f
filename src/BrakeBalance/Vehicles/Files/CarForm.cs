using System.Text.Json.Nodes;

namespace BrakeBalance.Vehicles.Files;

/// <summary>A vehicle file as a form: its parts and entries with what a person has to know of each.</summary>
/// <remarks>Made from the descriptions that reader, schema and starter use, so an entry added there is in the form too.</remarks>
internal static class CarForm
{
    private const string BarePart = "The car";

    /// <summary>The classes of car that a file may name.</summary>
    public static IReadOnlyList<string> Classes => CarClasses.Names;

    /// <summary>The form of a file.</summary>
    /// <returns>The parts in the order of the file's description, or what keeps the text from being read at all.</returns>
    public static (IReadOnlyList<FormPart> Parts, Problem? Problem) Of(string text, UnitSystem units = UnitSystem.Si)
    {
        (JsonNode? root, Problem? problem) = DocumentFile.Parse(text);
        if (root is not JsonObject car)
        {
            return ([], problem ?? new("", "The file is no object.", "entries between braces"));
        }

        var full = (JsonObject)car.DeepClone();
        CarClasses.Fill(full, []);
        var wheel = new Wheel("disc", KindOf(full["rear"]?["brake"]) ?? "disc", units);
        FormPart whole = Part(typeof(VehicleDocument), BarePart, "", "", car, full, wheel);
        return ([whole with { Parts = [] }, .. whole.Parts], null);
    }

    /// <summary>What a value, or that of the file where nothing is filled in, is in a system of units.</summary>
    /// <returns>Such as <c>24.1 bar</c>; empty where it is in these units, or no quantity yet.</returns>
    public static string Beside(string text, string path, string value, UnitSystem units) =>
        VehicleText.Entry(text, path) is var (field, present)
            ? OtherUnits.Text(field, value.Trim().Length > 0 ? value : Text(present), units) : "";

    /// <summary>How far an entry can be moved, and where it stands.</summary>
    /// <returns>The slide; null when the entry is no single number.</returns>
    public static Slide? SlideAt(string text, string path, string value, UnitSystem units) =>
        VehicleText.Entry(text, path) is var (field, present) && Slide.Of(field, Text(present), units) is { } slide
            ? slide with { Value = Slide.Of(field, value, units)?.Value ?? slide.Value } : null;

    /// <summary>A key in words: <c>centreOfGravityHeight</c> is "Centre of gravity height".</summary>
    internal static string Label(string key)
    {
        string words = QuantityText.Words(key);
        return Invariant.Capital(words);
    }

    private sealed record Wheel(string Front, string Rear, UnitSystem Units)
    {
        public string At(string path) =>
            path.StartsWith("rear", StringComparison.Ordinal) || path.StartsWith("fluid.rear", StringComparison.Ordinal) ? Rear : Front;
    }

    private static string? KindOf(JsonNode? node) => (node as JsonObject)?["type"] is JsonValue type ? type.ToString() : null;

    private static FormPart Part(Type type, string label, string about, string path, JsonObject? own, JsonObject? full, Wheel wheel)
    {
        IReadOnlyList<KindAttribute> kinds = FieldMap.Kinds(type);
        string? kind = kinds.Count == 0 ? null : KindOf(own) ?? KindOf(full);
        Type document = FieldMap.OfKind(type, kind);
        List<FormField> fields = [];
        List<FormPart> parts = [];
        foreach (FieldInfo field in FieldMap.Of(document).Where(field => field.Fits(wheel.At(path))))
        {
            string here = DocumentReader.Join(path, field.Key);
            JsonNode? mine = own?[field.Key], all = full?[field.Key];
            if (field.Shape == FieldShape.Document)
            {
                string meaning = field.About.Description;
                parts.Add(Part(field.ValueType, Label(field.Key), meaning, here, mine as JsonObject, all as JsonObject, wheel));
            }
            else if (field.Shape == FieldShape.List && FieldMap.ShapeOf(field.ValueType) is (FieldShape.Document, var element))
            {
                parts.Add(List(field, element, here, mine as JsonArray, all as JsonArray, wheel));
            }
            else if (field.Shape != FieldShape.Json)
            {
                fields.Add(Field(field, here, mine, all, wheel.Units));
            }
        }

        return new FormPart
        {
            Path = path,
            Label = label,
            Description = about,
            IsGiven = own is not null,
            IsThere = full is not null,
            Kind = kind,
            Kinds = [.. kinds.Select(known => (known.Name, known.Description))],
            Fields = fields,
            Parts = full is null ? [] : parts,
        };
    }

    private static FormPart List(FieldInfo field, Type element, string path, JsonArray? own, JsonArray? full, Wheel wheel)
    {
        int count = Math.Max(own?.Count ?? 0, full?.Count ?? 0);
        string one = Label(field.Key).TrimEnd('s');
        return new FormPart
        {
            Path = path,
            Label = Label(field.Key),
            Description = field.About.Description,
            IsGiven = own is not null,
            IsThere = full is not null,
            MayGrow = count < field.About.Most,
            Parts =
            [
                .. Enumerable.Range(0, count).Select(i => Part(
                    element, (count == 1 ? one : Invariant.Text($"{one} {i + 1}")) + Named(own?.ElementAtOrDefault(i)), "",
                    Invariant.Text($"{path}[{i}]"), own?.ElementAtOrDefault(i) as JsonObject, full?.ElementAtOrDefault(i) as JsonObject,
                    wheel)),
            ],
        };
    }

    private static string Named(JsonNode? element) => Text((element as JsonObject)?["name"]) is { Length: > 0 } name ? $", {name}" : "";

    private static FormField Field(FieldInfo field, string path, JsonNode? own, JsonNode? full, UnitSystem units)
    {
        string value = Text(own), shown = value.Length > 0 ? value : Text(full);
        string In(string text) => OtherUnits.Text(field, text, units) is { Length: > 0 } converted ? converted : text;
        return new(path, field, value, OtherUnits.Text(field, value, units), own is null ? In(Text(full)) : "", In(field.About.Typical),
            Slide.Of(field, shown, units), units);
    }

    internal static string Text(JsonNode? node) => node switch
    {
        null => "",
        JsonArray list => string.Join(", ", list.Select(Text)),
        JsonObject => "",
        _ => node.ToString(),
    };
}
