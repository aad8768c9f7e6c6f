using System.Globalization;
using System.Text.Json.Nodes;
using BrakeBalance.Vehicles.Files;
using FsCheck;
using FsCheck.Fluent;
using UnitsNet;

namespace BrakeBalance.Fuzz;

/// <summary>Values for the entries of a document, made from what the entries say of themselves.</summary>
internal static class FuzzValues
{
    private static readonly Gen<double> Share = Gen.Choose(0, 1000).Select(i => i / 1000.0);

    private static readonly string[] BadNumbers =
    [
        "NaN", "Infinity", "-Infinity", "1e308", "-1e308", "1e999", "1e-320", "1e15", "-0", "0", "-1", "４５", "٣", "1,5", "1_000",
            "0x10", "1/2", "1-1/8", "+", "1e", "..", "",
    ];

    private static readonly string[] BadTexts =
        ["", " ", "\u0000", "\u001b[31m", "=1+1", "<b>&", "a|b\nc", "ａ", "\"", "front", "none", new('x', 300)];

    /// <summary>A value that the entry by itself accepts: within its limits, at them, in any unit, or as a range.</summary>
    public static Gen<JsonNode?> Sound(FieldInfo field, JsonNode? now) => field.Shape switch
    {
        FieldShape.Document => Document(field.ValueType),
        FieldShape.List => List(field),
        _ => Scalar(field, field.Shape, now),
    };

    /// <summary>Any value at all.</summary>
    public static Gen<JsonNode?> Any(FieldInfo field, JsonNode? now) => field.Shape is FieldShape.Text or FieldShape.Choice
        ? Gen.Frequency((3, Sound(field, now)), (2, Gen.Elements(BadTexts).Select(Text)), (1, Gen.Choose(0, 8).Select(Junk)))
        : Gen.Frequency(
        (3, Sound(field, now)),
        (2, Outside(field)),
        (3, from number in Gen.Elements(BadNumbers) from unit in Gen.Elements(Units(field)) select Text($"{number} {unit}".Trim())),
        (1, from number in Gen.Choose(-5, 500)
            from unit in Gen.Elements("mm", "bar", "kg", "N", "°C", "km/h", "s", "", "furlong",
            "mm³")
            select Text($"{number} {unit}")),
        (1, Gen.Elements(BadTexts).Select(Text)),
        (1, Gen.Choose(0, 8).Select(Junk)));

    /// <summary>A document with everything required and some of the rest.</summary>
    public static Gen<JsonNode?> Document(Type type)
    {
        IReadOnlyList<KindAttribute> kinds = FieldMap.Kinds(type);
        return kinds.Count == 0
            ? Plain(type, null)
            : Gen.Elements<KindAttribute>(kinds).SelectMany(kind => Plain(kind.Document, kind.Name));
    }

    private static Gen<JsonNode?> Plain(Type type, string? kind) =>
        Gen.CollectToArray(FieldMap.Of(type), Entry).Select(entries =>
        {
            var made = new JsonObject();
            if (kind is not null)
            {
                made["type"] = kind;
            }

            foreach ((string key, JsonNode? value) in entries.OfType<(string, JsonNode?)>())
            {
                made[key] = value?.DeepClone();
            }

            return (JsonNode?)made;
        });

    private static Gen<(string Key, JsonNode? Value)?> Entry(FieldInfo field) =>
        from given in Gen.Choose(1, 100)
        from value in Sound(field, null)
        select field.About.Required || given <= 20 ? ((string, JsonNode?)?)(field.Key, value) : null;

    private static Gen<JsonNode?> List(FieldInfo field) =>
        from count in Gen.Choose(field.About.Fewest, field.About.Fewest + 2)
        from elements in Gen.ArrayOf(FieldMap.ShapeOf(field.ValueType) is (FieldShape.Document, var type)
            ? Document(type) : Scalar(field, FieldMap.ShapeOf(field.ValueType).Shape, null), count)
        select (JsonNode?)new JsonArray([.. elements.Select(element => element?.DeepClone())]);

    private static Gen<JsonNode?> Scalar(FieldInfo field, FieldShape shape, JsonNode? now)
    {
        switch (shape)
        {
            case FieldShape.Number:
                (double low, double high) = Limits(field);
                Gen<double> number = Between(low, high, Current(now) ?? Number(field.About.Example));
                if (field.About.Whole)
                {
                    return number.Select(value => (JsonNode?)JsonValue.Create(Math.Round(value)));
                }

                return Gen.Frequency(
                    (6, number.Select(value => (JsonNode?)JsonValue.Create(value))),
                    (1, from a in number from b in number select Text(Invariant($"{Math.Min(a, b):R} .. {Math.Max(a, b):R}"))));
            case FieldShape.Quantity:
                return Quantity(field, now);
            case FieldShape.Choice:
                return Gen.Elements<string>(field.Words.Select(known => known.Word)).Select(Text);
            case FieldShape.Flag:
                return Gen.Elements(true, false).Select(flag => (JsonNode?)JsonValue.Create(flag));
            case FieldShape.Text:
                return Gen.Constant(Text(field.About.Example));
            default:
                return Gen.Constant((JsonNode?)null);
        }
    }

    private static Gen<JsonNode?> Quantity(FieldInfo field, JsonNode? now)
    {
        Type type = FieldMap.ShapeOf(field.ValueType).ValueType;
        IQuantity? example = Parse(field.About.Example, type), current = now is JsonValue value && value.TryGetValue(out string? text)
            ? Parse(text, type) : null;
        IQuantity middle = current ?? example ?? field.HighQuantity ?? field.LowQuantity
            ?? UnitsNet.Quantity.From(1, UnitsNet.Quantity.Infos.First(info => info.ValueType == type).BaseUnitInfo.Value);
        double at = (double)middle.Value, low = field.LowQuantity?.As(middle.Unit) ?? 0.2 * at, high = field.HighQuantity?.As(middle.Unit)
            ?? 5 * at;
        Gen<double> number = Between(low, high, at);
        Gen<string> one = from v in number from unit in Gen.Elements(Units(field)) select In(v, middle.Unit, unit, type);
        return Gen.Frequency(
            (6, one.Select(Text)),
            (1, from a in number
                from b in number
                select Text(
                $"{In(Math.Min(a, b), middle.Unit, Units(field)[0], type)} .. {In(Math.Max(a, b), middle.Unit, Units(field)[0], type)}")));
    }

    // Mostly near what stands there, because only such cars get past the checks between entries.
    private static Gen<double> Between(double low, double high, double? near) => Gen.Frequency(
        (5, Share.Select(s => Math.Clamp((near ?? 0.5 * (low + high)) * (0.6 + 0.9 * s), low, high))),
        (3, Share.Select(s => low + s * (high - low))),
        (2, Gen.Elements(low, high)));

    private static Gen<JsonNode?> Outside(FieldInfo field)
    {
        Type type = FieldMap.ShapeOf(field.ValueType).ValueType;
        if (field.LowQuantity is { } lowest && field.HighQuantity is { } highest)
        {
            return from factor in Gen.Elements(1.001, 2.0, 1e3, 1e9)
                   from up in Gen.Elements(true, false)
                   select Text(In(up ? highest.As(lowest.Unit) * factor
                       : lowest.As(lowest.Unit) / factor - 1e-6, lowest.Unit, Units(field)[0], type));
        }

        (double low, double high) = Limits(field);
        return Gen.Elements(low - 1e-6, high * 1.001, -high, high * 1e9, 1e308).Select(value => (JsonNode?)JsonValue.Create(value));
    }

    private static (double Low, double High) Limits(FieldInfo field)
    {
        double example = Number(field.About.Example) ?? 1;
        return (field.LowNumber ?? 0.2 * example, field.HighNumber ?? 5 * example);
    }

    private static string[] Units(FieldInfo field)
    {
        Type type = FieldMap.ShapeOf(field.ValueType).ValueType;
        return typeof(IQuantity).IsAssignableFrom(type) ? QuantityText.Accepted(type).Split(", ") : [""];
    }

    private static string In(double value, Enum from, string unit, Type type)
    {
        IQuantity one = Parse("1 " + unit, type)
            ?? throw new InvalidOperationException($"The unit {unit} of {type.Name} is told but not read.");
        return Invariant($"{UnitsNet.Quantity.From(value, from).As(one.Unit):R} {unit}");
    }

    private static IQuantity? Parse(string text, Type type) =>
        QuantityText.Read(text, type, out IQuantity? value, out _) is null ? value : null;

    private static double? Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) ? value : null;

    private static double? Current(JsonNode? now) => now is JsonValue value && value.TryGetValue(out double number) ? number : null;

    private static JsonNode? Text(string text) => JsonValue.Create(text);

    private static JsonNode? Junk(int which) => which switch
    {
        0 => null,
        1 => new JsonArray(),
        2 => new JsonObject(),
        3 => JsonValue.Create(true),
        4 => JsonValue.Create(1e300),
        5 => new JsonArray(null, new JsonArray(new JsonObject { ["a"] = null })),
        6 => new JsonObject { ["type"] = 7 },
        7 => JsonValue.Create(-1),
        _ => JsonNode.Parse(string.Concat(Enumerable.Repeat("[", 40)) + string.Concat(Enumerable.Repeat("]", 40))),
    };

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
