using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace BrakeBalance.Vehicles.Files;

/// <summary>Writes the JSON Schema of a document type from the same descriptions that the reader uses.</summary>
internal static class DocumentSchema
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, NewLine = "\n" };

    /// <summary>The schema (JSON Schema, draft 2020-12) as text.</summary>
    /// <param name="type">The document type.</param>
    /// <param name="title">Title of the schema.</param>
    /// <param name="description">What such a file holds.</param>
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

        return root.ToJsonString(Indented) + "\n";
    }

    private static JsonObject Document(Type type)
    {
        IReadOnlyList<KindAttribute> kinds = FieldMap.Kinds(type);
        return kinds.Count == 0
            ? Plain(type, null)
            : new JsonObject { ["oneOf"] = new JsonArray([.. kinds.Select(kind => Plain(kind.Document, kind))]) };
    }

    private static JsonObject Plain(Type type, KindAttribute? kind)
    {
        var properties = new JsonObject();
        var required = new JsonArray();
        if (kind is not null)
        {
            properties["type"] = new JsonObject { ["const"] = kind.Name, ["description"] = kind.Description };
            required.Add("type");
        }

        foreach (FieldInfo field in FieldMap.Of(type))
        {
            JsonObject value = Value(field, field.Shape, field.ValueType);
            value["description"] = field.About.Description + ".";
            properties[field.Key] = value;
            if (field.About.Required)
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
                return Document(type);
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
                var number = new JsonObject { ["type"] = "number" };
                if (field.LowNumber is { } low)
                {
                    number["minimum"] = low;
                }

                if (field.HighNumber is { } high)
                {
                    number["maximum"] = high;
                }

                var range = new JsonObject { ["type"] = "string", ["pattern"] = @"^\s*[+-]?[\d.eE+-]+\s*\.\.\s*[+-]?[\d.eE+-]+\s*$" };
                return new JsonObject { ["anyOf"] = new JsonArray(number, range) };
            case FieldShape.Flag:
                return new JsonObject { ["type"] = "boolean" };
            case FieldShape.Json:
                return new JsonObject { ["type"] = "object" };
            case FieldShape.Quantity:
                return new JsonObject
                {
                    ["type"] = "string",
                    ["pattern"] = @"^\s*[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?\s*[^\d\s.,+-].*$|^.+\.\..+$",
                    ["examples"] = new JsonArray(field.About.Example.Length > 0 ? field.About.Example : field.About.Low),
                    ["$comment"] = "Units: " + QuantityText.Accepted(type),
                };
            default:
                return new JsonObject { ["type"] = "string", ["minLength"] = 1 };
        }
    }
}
