using System.Collections.Concurrent;
using System.Reflection;
using System.Text.Json.Nodes;

namespace BrakeBalance.Vehicles.Files;

/// <summary>What kind of JSON value an entry holds.</summary>
internal enum FieldShape
{
    Text,
    Number,
    Flag,
    Choice,
    Quantity,
    Document,
    List,
    Json,
}

/// <summary>One entry of a document type, worked out once by reflection.</summary>
internal sealed record FieldInfo(string Key, PropertyInfo Property, FieldAttribute About, FieldShape Shape, Type ValueType)
{
    // A page reads a few dozen entries of hundreds: what is told of one is worked out when it is asked for.
    private readonly Lazy<(IQuantity? Low, IQuantity? High)> _limits = new(() =>
        Limited(Shape, ValueType) is (FieldShape.Quantity, var kind) ? (Limit(About.Low, kind), Limit(About.High, kind)) : default);

    private readonly Lazy<UsualRange?> _usual = new(() => Property.GetCustomAttribute<UsualAttribute>(inherit: false) is { } usual
        ? new UsualRange(usual, About.Typical, Limited(Shape, ValueType).Type) : null);

    private readonly Lazy<IReadOnlyList<(string Word, object Value)>> _words = new(() => Shape == FieldShape.Choice
        ? KnownWords(ValueType, About) : []);

    /// <summary>Where the entry stands, by which it is told from those of other documents.</summary>
    public string Place { get; } = $"{Property.DeclaringType!.Name}.{Key}";

    public IQuantity? LowQuantity => _limits.Value.Low;

    public IQuantity? HighQuantity => _limits.Value.High;

    public double? LowNumber { get; init; }

    public double? HighNumber { get; init; }

    /// <summary>Where values begin that are more likely a slip than a car; null where nothing is known.</summary>
    public UsualRange? Usual => _usual.Value;

    /// <summary>The only words accepted, each with what the document holds for it; empty where the list is not closed.</summary>
    public IReadOnlyList<(string Word, object Value)> Words => _words.Value;

    /// <summary>Whether a file that names its car's class may leave the entry out though it is required.</summary>
    public bool MayComeFromClass => About.ByClass || About.Typical.Length > 0;

    /// <summary>All that a person is told of the entry: what it means, its words, its usual range and how it is found.</summary>
    public string Told => About.Description + "."
        + (Words.Count > 0 ? $" One of: {string.Join(", ", Words.Select(known => known.Word))}." : "")
        + (About.Typical.Length > 0 ? $" Usual: {About.Typical} (common practice)." : "")
        + (About.HowToMeasure.Length > 0 ? $" How: {About.HowToMeasure}." : "");

    /// <summary>Whether a wheel with such a brake can have the entry.</summary>
    public bool Fits(string brake) => About.OnlyFor.Length == 0 || About.OnlyFor == brake;

    /// <summary>Keys of the entries in whose place this one may stand.</summary>
    public IReadOnlyList<string> Replaces => About.InPlaceOf.Split(' ', StringSplitOptions.RemoveEmptyEntries);

    // The limits of a list are those of its elements.
    private static (FieldShape Shape, Type Type) Limited(FieldShape shape, Type type) =>
        shape == FieldShape.List ? FieldMap.ShapeOf(type) : (shape, type);

    private static IQuantity? Limit(string? text, Type quantity) =>
        text is null ? null
        : QuantityText.Read(text, quantity, out IQuantity? value, out _) is { } fault ? throw new InvalidOperationException(fault)
        : value;

    private static IReadOnlyList<(string Word, object Value)> KnownWords(Type type, FieldAttribute about) => about.Words is { } table
        ? [.. ((IReadOnlyList<string>)table.GetProperty(nameof(IWordTable.Words))!.GetValue(null)!).Select(word => (word, (object)word))]
        : [.. Enum.GetValues(type).Cast<object>().Select(value => (QuantityText.Words(value.ToString()!, about.WordBreak), value))];
}

/// <summary>A table of words that an entry may hold, and no others.</summary>
internal interface IWordTable
{
    static abstract IReadOnlyList<string> Words { get; }
}

internal static class FieldMap
{
    private static readonly ConcurrentDictionary<Type, IReadOnlyList<FieldInfo>> Maps = new();

    private static readonly ConcurrentDictionary<Type, IReadOnlyList<KindAttribute>> KindsOf = new();

    public static IReadOnlyList<FieldInfo> Of(Type document) => Maps.GetOrAdd(document, Build);

    public static IReadOnlyList<KindAttribute> Kinds(Type document) =>
        document.IsAbstract ? KindsOf.GetOrAdd(document, type => [.. type.GetCustomAttributes<KindAttribute>(inherit: false)]) : [];

    /// <summary>The document type of a kind; the type itself where it has no kinds, or none of that name.</summary>
    public static Type OfKind(Type document, string? kind) =>
        Kinds(document).FirstOrDefault(known => known.Name == kind)?.Document ?? document;

    public static (FieldShape Shape, Type ValueType) ShapeOf(Type type)
    {
        Type plain = Nullable.GetUnderlyingType(type) ?? type;
        return plain == typeof(string) ? (FieldShape.Text, plain)
            : plain == typeof(double) ? (FieldShape.Number, plain)
            : plain == typeof(bool) ? (FieldShape.Flag, plain)
            : plain.IsEnum ? (FieldShape.Choice, plain)
            : typeof(IQuantity).IsAssignableFrom(plain) ? (FieldShape.Quantity, plain)
            : plain == typeof(JsonObject) ? (FieldShape.Json, plain)
            : plain.IsGenericType && plain.GetGenericTypeDefinition() == typeof(IReadOnlyList<>)
                ? (FieldShape.List, plain.GetGenericArguments()[0])
            : (FieldShape.Document, plain);
    }

    /// <summary>The word of a closed list that a text means, capitals and spaces aside; null for none.</summary>
    public static (string Word, object Value)? Find(IReadOnlyList<(string Word, object Value)> words, string text)
    {
        static string Plain(string word) => word.Replace(" ", "", StringComparison.Ordinal);
        return words.Where(known => Plain(known.Word).Equals(Plain(text), StringComparison.OrdinalIgnoreCase))
            .Select(known => ((string, object)?)known).FirstOrDefault();
    }

    // Those of what it derives from come first.
    private static IReadOnlyList<FieldInfo> Build(Type document) =>
    [
        .. document.BaseType is { } above ? Of(above) : [],
        .. document.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
            .Select(property => property.GetCustomAttribute<FieldAttribute>(inherit: false) is { } about ? Describe(property, about) : null)
            .OfType<FieldInfo>(),
    ];

    private static FieldInfo Describe(PropertyInfo property, FieldAttribute about)
    {
        (FieldShape shape, Type valueType) = ShapeOf(property.PropertyType);
        string key = about.Key.Length > 0 ? about.Key : char.ToLowerInvariant(property.Name[0]) + property.Name[1..];
        bool isNumber = shape == FieldShape.Number || (shape == FieldShape.List && ShapeOf(valueType).Shape == FieldShape.Number);
        return new FieldInfo(key, property, about, about.Words is null ? shape : FieldShape.Choice, valueType)
        {
            LowNumber = isNumber ? Number(about.Low) : null,
            HighNumber = isNumber ? Number(about.High) : null,
        };
    }

    private static double? Number(string? text) =>
        text is null ? null : double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
