using System.Collections.Concurrent;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace BrakeBalance.Vehicles.Files;

/// <summary>Turns JSON into a document record, noting every problem on the way.</summary>
internal sealed class DocumentReader
{
    private const double Rounding = 1e-12;

    // A slider reads the same file again and again; whoever reads a thousand files does not keep them all.
    private const int MostKnown = 1000;

    private static readonly ConcurrentDictionary<string, QuantityReading> Known = new();

    private readonly List<Problem> _problems = [];
    private readonly List<ValueRange> _ranges = [];

    public IReadOnlyList<Problem> Problems => _problems;

    public IReadOnlyList<ValueRange> Ranges => _ranges;

    /// <summary>Where in the document each range went, so that other values of it can be tried without reading again.</summary>
    public List<RangeTarget> Targets { get; } = [];

    public object? ReadDocument(Type type, JsonNode? node, string path)
    {
        if (node is not JsonObject json)
        {
            Add(path, $"{Show(node)} is not an object.", "entries between braces");
            return null;
        }

        IReadOnlyList<KindAttribute> kinds = FieldMap.Kinds(type);
        if (kinds.Count > 0)
        {
            string Names() => string.Join(", ", kinds.Select(kind => $"\"{kind.Name}\""));
            if (!json.TryGetPropertyValue("type", out JsonNode? typeNode))
            {
                Add(Join(path, "type"), "is missing.", Names());
                return null;
            }

            KindAttribute? kind = kinds.FirstOrDefault(k =>
                typeNode is JsonValue value && value.TryGetValue(out string? text) && text == k.Name);
            if (kind is null)
            {
                Add(Join(path, "type"), Renamed(typeNode, kinds) ?? $"{Show(typeNode)} is not known.", Names());
                return null;
            }

            type = kind.Document;
        }

        object document = Activator.CreateInstance(type)!;
        IReadOnlyList<FieldInfo> fields = FieldMap.Of(type);
        List<FieldInfo> given = [];
        foreach (FieldInfo field in fields)
        {
            if (!json.TryGetPropertyValue(field.Key, out JsonNode? value))
            {
                if (field.About.Required && !RenamedEntries.IsWrittenAsOld(field.Key, json.Select(entry => entry.Key)))
                {
                    _problems.Add(new(Join(path, field.Key), "is missing.", Accepted(field)) { Typed = Typed(field) });
                }

                continue;
            }

            given.Add(field);
            string fieldPath = Join(path, field.Key);
            int before = _ranges.Count;
            if (Read(field, value, fieldPath) is { } read)
            {
                field.Property.SetValue(document, read);
                KeepTargets(document, field, fieldPath, before);
            }
        }

        foreach (FieldInfo orphan in given
            .Where(field => field.About.Needs.Length > 0 && !json.ContainsKey(field.About.Needs)))
        {
            Add(Join(path, orphan.Key), $"says nothing without {orphan.About.Needs}.", $"{orphan.About.Needs} beside it, or neither");
        }

        if (given.Count + (kinds.Count > 0 ? 1 : 0) < json.Count)
        {
            FindUnknown(json, kinds.Count > 0, fields, path);
        }

        return document;
    }

    private void FindUnknown(JsonObject json, bool hasKinds, IReadOnlyList<FieldInfo> fields, string path)
    {
        string[] known = [.. fields.Select(field => field.Key)];
        foreach (string key in json.Select(entry => entry.Key).Where(key => !(key == "type" && hasKinds) && !known.Contains(key)))
        {
            string near = Nearest.Of(key, known) is { } guess ? $" Did you mean \"{guess}\"?" : "";
            Add(Join(path, key), RenamedEntries.Words(RenamedEntries.Keys, key, known) ?? "is not an entry known here." + near,
                string.Join(", ", known));
        }
    }

    private static string? Renamed(JsonNode? type, IReadOnlyList<KindAttribute> kinds) =>
        type is JsonValue value && value.TryGetValue(out string? old)
            && RenamedEntries.Words(RenamedEntries.Types, old, kinds.Select(kind => kind.Name)) is { } words ? $"\"{old}\" {words}" : null;

    private void KeepTargets(object document, FieldInfo field, string fieldPath, int before)
    {
        for (int i = before; i < _ranges.Count; i++)
        {
            string rest = _ranges[i].Path[fieldPath.Length..];
            int index = -1;
            if (rest.Length == 0 || (rest.EndsWith(']')
                && int.TryParse(rest[1..^1], NumberStyles.None, CultureInfo.InvariantCulture, out index)))
            {
                _ranges[i] = _ranges[i] with { HowToMeasure = field.About.HowToMeasure, Description = field.About.Description };
                Targets.Add(new RangeTarget(document, field, index, _ranges[i]));
            }
        }
    }

    internal static string Join(string path, string key) => path.Length == 0 ? key : path + "." + key;

    internal static string Accepted(FieldInfo field) => Accepted(field, field.Shape);

    /// <summary>What a form accepts: the values of a list as they are typed.</summary>
    internal static string Typed(FieldInfo field) => field.Shape != FieldShape.List ? Accepted(field)
        : "values separated by commas, each "
            + Accepted(field, FieldMap.ShapeOf(field.ValueType).Shape).Replace("\"", "", StringComparison.Ordinal);

    private static string Accepted(FieldInfo field, FieldShape shape) => shape switch
    {
        FieldShape.Quantity => QuantityWords(field),
        FieldShape.Number => (field.About.Whole ? "a whole number" : "a number") + Limits(field) + Example(field),
        FieldShape.Choice => string.Join(", ", field.Words.Select(known => $"\"{known.Word}\"")),
        FieldShape.Flag => "true or false",
        FieldShape.Text => "text" + Example(field),
        FieldShape.List => "a list in square brackets",
        _ => "entries between braces",
    };

    private static string Example(FieldInfo field) => field.About.Example.Length > 0 ? $", such as {field.About.Example}" : "";

    private static string QuantityWords(FieldInfo field)
    {
        Type quantity = FieldMap.ShapeOf(field.ValueType).ValueType;
        string example = field.About.Example.Length > 0 ? $", such as \"{field.About.Example}\"" : "";
        string words = QuantityText.Words(quantity.Name);
        return $"{("aeiou".Contains(words[0]) ? "an" : "a")} {words}{Limits(field)} in {QuantityText.Accepted(quantity)}{example}";
    }

    private static string Limits(FieldInfo field) => (field.About.Low, field.About.High) switch
    {
        ({ } low, { } high) => $" from {low} to {high}",
        ({ } low, null) => $" not below {low}",
        (null, { } high) => $" not above {high}",
        _ => "",
    };

    private static string Show(JsonNode? node) => node is null ? "null" : node.GetValueKind() switch
    {
        JsonValueKind.Object => "an object",
        JsonValueKind.Array => "a list",
        _ => node.ToJsonString(CommentedFile.Relaxed),
    };

    private object? Read(FieldInfo field, JsonNode? value, string path) => field.Shape switch
    {
        FieldShape.Document => ReadDocument(field.ValueType, value, path),
        FieldShape.List => ReadList(field, value, path),
        FieldShape.Json when value is JsonObject => value,
        _ => ReadScalar(field, field.Shape, field.ValueType, value, path),
    };

    private object? ReadList(FieldInfo field, JsonNode? value, string path)
    {
        if (value is not JsonArray array)
        {
            Add(path, $"{Show(value)} is not a list.", "a list in square brackets");
            return null;
        }

        if (array.Count < field.About.Fewest)
        {
            Add(path, $"has {array.Count} element{(array.Count == 1 ? "" : "s")}.", $"at least {field.About.Fewest}");
        }

        if (array.Count > field.About.Most)
        {
            Add(path, $"has {array.Count} element{(array.Count == 1 ? "" : "s")}.", $"at most {field.About.Most}");
            return null;
        }

        (FieldShape shape, Type elementType) = FieldMap.ShapeOf(field.ValueType);
        var list = (System.Collections.IList)Activator.CreateInstance(typeof(List<>).MakeGenericType(field.ValueType))!;
        for (int i = 0; i < array.Count; i++)
        {
            string elementPath = Invariant.Text($"{path}[{i}]");
            object? element = shape == FieldShape.Document
                ? ReadDocument(elementType, array[i], elementPath)
                : ReadScalar(field, shape, elementType, array[i], elementPath);

            // A part that could not be read keeps its place, so that the others keep their index.
            if (element is not null || shape == FieldShape.Document)
            {
                list.Add(element);
            }
        }

        return list;
    }

    private object? ReadScalar(FieldInfo field, FieldShape shape, Type type, JsonNode? node, string path)
    {
        JsonValueKind kind = node?.GetValueKind() ?? JsonValueKind.Null;
        switch (shape)
        {
            case FieldShape.Text when kind == JsonValueKind.String && node!.GetValue<string>().Trim().Length > 0:
                return node.GetValue<string>();
            case FieldShape.Flag when kind is JsonValueKind.True or JsonValueKind.False:
                return kind == JsonValueKind.True;
            case FieldShape.Number when kind == JsonValueKind.Number:
                return WithinLimits(field, node!.GetValue<double>(), path, node);
            case FieldShape.Choice when kind == JsonValueKind.String:
                return Choose(field, node!.GetValue<string>(), path);
            case FieldShape.Number when !field.About.Whole && kind == JsonValueKind.String
                && NumberRange(node!.GetValue<string>()) is var (low, high):
                if (low != high)
                {
                    _ranges.Add(new(path, low.ToString(CultureInfo.InvariantCulture), high.ToString(CultureInfo.InvariantCulture)));
                }

                return WithinLimits(field, low, path, node) is null || WithinLimits(field, high, path, node) is null
                    ? null
                    : 0.5 * (low + high);
            case FieldShape.Quantity when kind == JsonValueKind.String:
                return ReadQuantity(field, type, node!.GetValue<string>(), path);
            case FieldShape.Quantity when kind == JsonValueKind.Number:
                Add(path, $"{Show(node)} has no unit.", QuantityWords(field));
                return null;
            default:
                bool comma = shape == FieldShape.Number && kind == JsonValueKind.String
                    && QuantityText.DecimalComma().IsMatch(node!.GetValue<string>());
                Add(path, $"{Show(node)} {(comma ? "has a decimal comma; write a point" : "does not fit")}.", Accepted(field, shape));
                return null;
        }
    }

    private object? Choose(FieldInfo field, string text, string path)
    {
        if (FieldMap.Find(field.Words, text) is { } known)
        {
            return known.Value;
        }

        string near = Nearest.Of(text, field.Words.Select(word => word.Word)) is { } guess ? $" Did you mean \"{guess}\"?" : "";
        Add(path, $"\"{text}\" is not known.{near}", Accepted(field));
        return null;
    }

    private IQuantity? ReadQuantity(FieldInfo field, Type type, string text, string path)
    {
        string key = string.Concat(field.Place, " ", text);
        if (!Known.TryGetValue(key, out QuantityReading? reading))
        {
            reading = ReadWithin(field, type, text);
            if (Known.Count > MostKnown)
            {
                Known.Clear();
            }

            Known[key] = reading;
        }

        if (reading.Fault is not null)
        {
            Add(path, reading.Fault, QuantityWords(field));
        }
        else if (reading.Range is var (low, high))
        {
            _ranges.Add(new(path, low, high));
        }

        return reading.Value;
    }

    private static QuantityReading ReadWithin(FieldInfo field, Type type, string text)
    {
        if (QuantityText.Read(text, type, out IQuantity? low, out IQuantity? high) is { } fault)
        {
            return new(fault, null);
        }

        bool single = ReferenceEquals(low, high);
        (low, high) = (WithinLimits(field, low!), WithinLimits(field, high!));
        return low is null || high is null ? new($"\"{text}\" is outside the range accepted.", null)
            : single ? new(null, low)
            : new(null, KnownQuantities.From(0.5 * ((double)low.Value + high.As(low.Unit)), low.Unit),
                (QuantityText.Write(low), QuantityText.Write(high)));
    }

    /// <summary>What a text says to an entry: a value, the middle of a range, or what is wrong.</summary>
    private sealed record QuantityReading(string? Fault, IQuantity? Value, (string Low, string High)? Range = null);

    // The limit itself may be written in another unit, which rounds: it is taken for the limit.
    private static IQuantity? WithinLimits(FieldInfo field, IQuantity given)
    {
        double value = (double)given.Value, low = field.LowQuantity?.As(given.Unit) ?? value, high = field.HighQuantity?.As(given.Unit)
            ?? value;
        return value < low - Rounding * Math.Abs(low) || value > high + Rounding * Math.Abs(high) ? null
            : value <= low && field.LowQuantity is { } lowest ? lowest
            : value >= high && field.HighQuantity is { } highest ? highest
            : given;
    }

    private double? WithinLimits(FieldInfo field, double value, string path, JsonNode shown)
    {
        if (field.About.Whole && value != Math.Floor(value))
        {
            Add(path, $"{shown.ToJsonString()} is not a whole number.", Accepted(field));
            return null;
        }

        if (value < field.LowNumber || value > field.HighNumber || !double.IsFinite(value))
        {
            Add(path, $"{shown.ToJsonString()} is outside the range accepted.", Accepted(field));
            return null;
        }

        return value;
    }

    private static (double Low, double High)? NumberRange(string text)
    {
        string[] ends = text.Split("..", StringSplitOptions.TrimEntries);
        return ends.Length == 2
            && double.TryParse(ends[0], NumberStyles.Float, CultureInfo.InvariantCulture, out double low)
            && double.TryParse(ends[1], NumberStyles.Float, CultureInfo.InvariantCulture, out double high)
            && low <= high ? (low, high) : null;
    }

    private void Add(string path, string what, string accepted) => _problems.Add(new(path, what, accepted));
}
