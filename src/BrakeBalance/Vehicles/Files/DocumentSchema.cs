using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace BrakeBalance.Vehicles.Files;

/// <summary>Writes the JSON Schema of a document type from the same descriptions that the reader uses.</summary>
internal static class DocumentSchema
{
    private const string ClassKey = "carClass";
    private const string Number = @"^\s*[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?\s*[^\d\s.,/+-].*$";
    private const string Fraction = @"^\s*[+-]?(\d+(\s*-\s*|\s+))?\d+\s*/\s*\d+\s*(in|inch|""|″|”)\s*$";
    private const string Range = @"^.+\.\..+$";

    private static readonly JsonSerializerOptions Indented = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        NewLine = "\n",
    };

    /// <summary>The schema (JSON Schema, draft 2020-12) as text.</summary>
    /// <returns>Indented JSON with a final line break.</returns>
    public static string Text(Type type, string title, string description)
    {
        JsonObject schema = Document(type);
        var root = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = title,
            ["description"] = description,
        };
        foreach ((string key, JsonNode? value) in schema)
        {
            root[key] = value?.DeepClone();
        }

        if (OnlyWithoutClass(type, null, false) is { } strict)
        {
            root["if"] = new JsonObject { ["not"] = new JsonObject { ["required"] = new JsonArray(ClassKey) } };
            root["then"] = strict;
        }

        return root.ToJsonString(Indented) + "\n";
    }

    // A class may say of which kind a part is: then more than one kind can fit what the file says.
    private static JsonObject Document(Type type, bool kindFromClass = false)
    {
        IReadOnlyList<KindAttribute> kinds = FieldMap.Kinds(type);
        return kinds.Count == 0
            ? Plain(type, null, false)
            : new JsonObject
            {
                [kindFromClass ? "anyOf" : "oneOf"] = new JsonArray([.. kinds.Select(kind => Plain(kind.Document, kind, kindFromClass))]),
            };
    }

    // What is required of a file that names no class beyond what is required of every file; null for nothing.
    private static JsonObject? OnlyWithoutClass(Type type, KindAttribute? kind, bool kindFromClass)
    {
        var made = new JsonObject();
        var required = new JsonArray();
        var properties = new JsonObject();
        IReadOnlyList<KindAttribute> kinds = FieldMap.Kinds(type);
        if (kind is null && kinds.Count > 0)
        {
            if (kindFromClass)
            {
                made["required"] = new JsonArray("type");
            }

            JsonNode[] each =
            [
                .. kinds.Select(one => (one.Name, Strict: OnlyWithoutClass(one.Document, one, kindFromClass)))
                    .Where(one => one.Strict is not null)
                    .Select(one => new JsonObject
                    {
                        ["if"] = new JsonObject { ["properties"] = new JsonObject { ["type"] = new JsonObject { ["const"] = one.Name } } },
                        ["then"] = one.Strict,
                    }),
            ];
            if (each.Length > 0)
            {
                made["allOf"] = new JsonArray(each);
            }

            return made.Count > 0 ? made : null;
        }

        foreach (FieldInfo field in FieldMap.Of(type))
        {
            if (field.About.Required && field.MayComeFromClass)
            {
                required.Add(field.Key);
            }

            (FieldShape shape, Type inner) = field.Shape == FieldShape.List
                ? FieldMap.ShapeOf(field.ValueType) : (field.Shape, field.ValueType);
            if (shape == FieldShape.Document && OnlyWithoutClass(inner, null, field.About.ByClass) is { } part)
            {
                properties[field.Key] = field.Shape == FieldShape.List ? new JsonObject { ["items"] = part } : part;
            }
        }

        if (required.Count > 0)
        {
            made["required"] = required;
        }

        if (properties.Count > 0)
        {
            made["properties"] = properties;
        }

        return made.Count > 0 ? made : null;
    }

    private static JsonObject Plain(Type type, KindAttribute? kind, bool kindFromClass)
    {
        var properties = new JsonObject();
        var required = new JsonArray();
        if (kind is not null)
        {
            properties["type"] = new JsonObject { ["const"] = kind.Name, ["description"] = kind.Description };
            if (!kindFromClass)
            {
                required.Add("type");
            }
        }

        foreach (FieldInfo field in FieldMap.Of(type))
        {
            JsonObject value = Value(field, field.Shape, field.ValueType);
            value["description"] = field.Told;
            properties[field.Key] = value;
            if (field.About.Required && !field.MayComeFromClass)
            {
                required.Add(field.Key);
            }
        }

        return new JsonObject
        {
            ["type"] = "object",
            ["properties"] = properties,
            ["required"] = required,
            ["additionalProperties"] = false,
        };
    }

    private static JsonObject Value(FieldInfo field, FieldShape shape, Type type)
    {
        switch (shape)
        {
            case FieldShape.Document:
                return Document(type, field.About.ByClass);
            case FieldShape.List:
                (FieldShape elementShape, Type elementType) = FieldMap.ShapeOf(type);
                var list = new JsonObject { ["type"] = "array", ["items"] = Value(field, elementShape, elementType) };
                list["maxItems"] = field.About.Most;
                if (field.About.Fewest > 0)
                {
                    list["minItems"] = field.About.Fewest;
                }

                return list;
            case FieldShape.Number:
                var number = new JsonObject { ["type"] = field.About.Whole ? "integer" : "number" };
                if (field.LowNumber is { } low)
                {
                    number["minimum"] = low;
                }

                if (field.HighNumber is { } high)
                {
                    number["maximum"] = high;
                }

                if (field.About.Whole)
                {
                    return number;
                }

                var range = new JsonObject { ["type"] = "string", ["pattern"] = @"^\s*[+-]?[\d.eE+-]+\s*\.\.\s*[+-]?[\d.eE+-]+\s*$" };
                return new JsonObject { ["anyOf"] = new JsonArray(number, range) };
            case FieldShape.Choice:
                return new JsonObject
                {
                    ["type"] = "string",
                    ["enum"] = new JsonArray([.. field.Words.Select(known => (JsonNode)known.Word)]),
                };
            case FieldShape.Flag:
                return new JsonObject { ["type"] = "boolean" };
            case FieldShape.Json:
                return new JsonObject { ["type"] = "object" };
            case FieldShape.Quantity:
                return new JsonObject
                {
                    ["type"] = "string",
                    ["pattern"] = Number + (type == typeof(Length) ? "|" + Fraction : "") + "|" + Range,
                    ["examples"] = new JsonArray(field.About.Example.Length > 0 ? field.About.Example : field.About.Low),
                    ["$comment"] = "Units: " + QuantityText.Accepted(type),
                };
            default:
                return new JsonObject { ["type"] = "string", ["minLength"] = 1 };
        }
    }
}
