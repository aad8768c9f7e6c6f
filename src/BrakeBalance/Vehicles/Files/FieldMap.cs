using System.Collections.Concurrent;
using System.Reflection;
using System.Text.Json.Nodes;
using UnitsNet;

namespace BrakeBalance.Vehicles.Files;

/// <summary>What kind of JSON value an entry holds.</summary>
internal enum FieldShape
{
    Text,
    Number,
    Flag,
    Quantity,
    Document,
    List,
    Json,
}

/// <summary>One entry of a document type, worked out once by reflection.</summary>
internal sealed record FieldInfo(string Key, PropertyInfo Property, FieldAttribute About, FieldShape Shape, Type ValueType)
{
    public IQuantity? LowQuantity { get; init; }

    public IQuantity? HighQuantity { get; init; }

    public double? LowNumber { get; init; }

    public double? HighNumber { get; init; }

    public UsualRange? Usual { get; init; }
}

/// <summary>The entries of each document type.</summary>
internal static class FieldMap
{
    private static readonly ConcurrentDictionary<Type, IReadOnlyList<FieldInfo>> Maps = new();

    public static IReadOnlyList<FieldInfo> Of(Type document) => Maps.GetOrAdd(document, Build);

    public static IReadOnlyList<KindAttribute> Kinds(Type document) => [.. document.GetCustomAttributes<KindAttribute>()];

    public static (FieldShape Shape, Type ValueType) ShapeOf(Type type)
    {
        Type plain = Nullable.GetUnderlyingType(type) ?? type;
        return plain == typeof(string) ? (FieldShape.Text, plain)
            : plain == typeof(double) ? (FieldShape.Number, plain)
            : plain == typeof(bool) ? (FieldShape.Flag, plain)
            : typeof(IQuantity).IsAssignableFrom(plain) ? (FieldShape.Quantity, plain)
            : plain == typeof(JsonObject) ? (FieldShape.Json, plain)
            : plain.IsGenericType && plain.GetGenericTypeDefinition() == typeof(IReadOnlyList<>) ? (FieldShape.List, plain.GetGenericArguments()[0])
            : (FieldShape.Document, plain);
    }

    private static IReadOnlyList<FieldInfo> Build(Type document) =>
        [.. document.GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Select(property => (property, about: property.GetCustomAttribute<FieldAttribute>()))
            .Where(pair => pair.about is not null)
            .OrderBy(pair => Depth(pair.property.DeclaringType!))
            .Select(pair => Describe(pair.property, pair.about!))];

    private static int Depth(Type type) => type.BaseType is null ? 0 : 1 + Depth(type.BaseType);

    private static FieldInfo Describe(PropertyInfo property, FieldAttribute about)
    {
        (FieldShape shape, Type valueType) = ShapeOf(property.PropertyType);
        string key = char.ToLowerInvariant(property.Name[0]) + property.Name[1..];
        (FieldShape limited, Type limitedType) = shape == FieldShape.List ? ShapeOf(valueType) : (shape, valueType);
        var field = new FieldInfo(key, property, about, shape, valueType)
        {
            Usual = property.GetCustomAttribute<UsualAttribute>() is { } usual ? new UsualRange(usual, limitedType) : null,
        };
        return limited switch
        {
            FieldShape.Quantity => field with { LowQuantity = Limit(about.Low, limitedType), HighQuantity = Limit(about.High, limitedType) },
            FieldShape.Number => field with { LowNumber = Number(about.Low), HighNumber = Number(about.High) },
            _ => field,
        };
    }

    private static IQuantity? Limit(string? text, Type quantity) =>
        text is null ? null
        : QuantityText.Read(text, quantity, out IQuantity? value, out _) is { } fault ? throw new InvalidOperationException(fault)
        : value;

    private static double? Number(string? text) =>
        text is null ? null : double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
