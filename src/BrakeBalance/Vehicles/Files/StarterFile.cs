using System.Text;

namespace BrakeBalance.Vehicles.Files;

/// <summary>Writes a commented vehicle file to start from, made from the same descriptions that the reader uses.</summary>
public static class StarterFile
{
    /// <summary>The starter file: a complete invented car; entries that may be left out are there as comments.</summary>
    /// <returns>JSON with comments and a final line break.</returns>
    public static string Text()
    {
        var text = new StringBuilder();
        text.Append("// Starter vehicle file. The numbers are invented: replace each by what you measured on your car.\n");
        text.Append("// A quantity is a text with its unit (\"2.60 m\", \"102.4 in\"), or a range of it (\"2.58 m .. 2.62 m\").\n");
        text.Append("// Entries behind // may be left out; take the // away to use them. A calculation is no approval of a brake.\n");
        Document(text, typeof(VehicleDocument), "", false, null);
        text.Append('\n');
        return text.ToString();
    }

    private static void Document(StringBuilder text, Type type, string indent, bool commented, string? kindName)
    {
        IReadOnlyList<KindAttribute> kinds = FieldMap.Kinds(type);
        KindAttribute? kind = kinds.Count == 0 ? null : kinds.FirstOrDefault(k => k.Name == kindName) ?? kinds[0];
        string start = indent + (commented ? "// " : "");
        text.Append("{\n");
        IReadOnlyList<FieldInfo> fields = FieldMap.Of(kind?.Document ?? type);
        if (kind is not null)
        {
            text.Append(start).Append("  // Kinds: ").AppendJoin(", ", kinds.Select(k => $"\"{k.Name}\" ({k.Description})")).Append(".\n");
            text.Append(start).Append("  \"type\": \"").Append(kind.Name).Append(fields.Any(IsShown) || commented ? "\",\n" : "\"\n");
        }

        int lastShown = fields.Select((field, i) => (field, i)).Where(pair => IsShown(pair.field)).Select(pair => pair.i).DefaultIfEmpty(-1).Last();
        for (int i = 0; i < fields.Count; i++)
        {
            FieldInfo field = fields[i];
            bool hidden = commented || !IsShown(field);
            text.Append(start).Append("  // ").Append(field.About.Description).Append('.');
            if (field.About.HowToMeasure.Length > 0)
            {
                text.Append(" How: ").Append(field.About.HowToMeasure).Append('.');
            }

            text.Append('\n').Append(indent).Append(hidden ? "// " : "").Append("  \"").Append(field.Key).Append("\": ");
            Value(text, field, indent + "  ", hidden);
            text.Append(i == lastShown && !commented ? "\n" : ",\n");
        }

        text.Append(start).Append('}');
    }

    // Required entries, and those of the alternatives that make the starter car complete.
    private static bool IsShown(FieldInfo field) =>
        field.About.Required || field.Key is "note" or "hydraulics" or "mass" or "frontShare" or "effectiveRadius" or "rearValves" or "brakeFactor";

    private static void Value(StringBuilder text, FieldInfo field, string indent, bool hidden)
    {
        switch (field.Shape)
        {
            case FieldShape.Document:
                Document(text, field.ValueType, indent, hidden, null);
                break;
            case FieldShape.List:
                (FieldShape shape, Type element) = FieldMap.ShapeOf(field.ValueType);
                text.Append('[');
                if (shape == FieldShape.Document)
                {
                    Document(text, element, indent, hidden, null);
                }
                else
                {
                    text.Append('"').Append(field.About.Example).Append('"');
                }

                text.Append(']');
                break;
            case FieldShape.Quantity or FieldShape.Text:
                text.Append('"').Append(field.About.Example).Append('"');
                break;
            default:
                text.Append(field.About.Example);
                break;
        }
    }
}
