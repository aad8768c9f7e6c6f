namespace BrakeBalance.Vehicles.Files;

/// <summary>Writes a commented vehicle file to start from, made from the same descriptions that the reader uses.</summary>
public static class StarterFile
{
    private const string Indent = "  ";

    /// <summary>The starter file: a complete invented car; entries that may be left out are there as comments.</summary>
    /// <returns>JSON with comments and a final line break.</returns>
    public static string Text()
    {
        List<string> lines =
        [
            "// Starter vehicle file. The numbers are invented: replace each by what you measured on your car.",
            "// A quantity is a text with its unit (\"2.60 m\", \"102.4 in\"), or a range of it (\"2.58 m .. 2.62 m\").",
            "// Lines that begin with //~ hold entries that may be left out; take the //~ away to use them (a second //~ in such a line marks one within).",
            "// A calculation is no approval of a brake.",
            .. Document(typeof(VehicleDocument), rear: false),
        ];
        return string.Join('\n', lines) + "\n";
    }

    private static List<string> Document(Type type, bool rear)
    {
        IReadOnlyList<KindAttribute> kinds = FieldMap.Kinds(type);
        List<string> lines = ["{"];
        if (kinds.Count > 0)
        {
            lines.Add($"{Indent}// Kinds: {string.Join(", ", kinds.Select(kind => $"\"{kind.Name}\" ({kind.Description})"))}.");
            lines.Add($"{Indent}\"type\": \"{kinds[0].Name}\",");
        }

        foreach (FieldInfo field in FieldMap.Of(kinds.Count > 0 ? kinds[0].Document : type))
        {
            string how = field.About.HowToMeasure.Length > 0 ? $" How: {field.About.HowToMeasure}." : "";
            lines.Add($"{Indent}// {field.About.Description}.{how}");
            List<string> entry = Value(field, rear || field.Key == "rear");
            entry[0] = $"\"{field.Key}\": {entry[0]}";
            entry[^1] += ",";
            lines.AddRange(entry.Select(line => Indent + (IsShown(field) ? line : "//~ " + line)));
        }

        lines.Add("}");
        return lines;
    }

    // Required entries, and those of the alternatives that make the starter car complete.
    private static bool IsShown(FieldInfo field) =>
        field.About.Required || field.Key is "note" or "hydraulics" or "mass" or "frontShare" or "effectiveRadius" or "rearValves" or "brakeFactor" or "ratio" or "caliper";

    private static List<string> Value(FieldInfo field, bool rear)
    {
        string example = rear && field.About.RearExample.Length > 0 ? field.About.RearExample : field.About.Example;
        switch (field.Shape)
        {
            case FieldShape.Document:
                return Document(field.ValueType, rear);
            case FieldShape.List when FieldMap.ShapeOf(field.ValueType) is (FieldShape.Document, var element):
                List<string> lines = [.. Document(element, rear).Select(line => Indent + line)];
                return ["[", .. lines, "]"];
            case FieldShape.List:
                return [$"[\"{example}\"]"];
            case FieldShape.Quantity or FieldShape.Text:
                return [$"\"{example}\""];
            default:
                return [example];
        }
    }
}
