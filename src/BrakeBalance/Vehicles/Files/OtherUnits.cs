using System.Text.RegularExpressions;
using UnitsNet.Units;

namespace BrakeBalance.Vehicles.Files;

/// <summary>What a file's entries are in the other system of units.</summary>
internal static partial class OtherUnits
{
    private const int FewestDigits = 3, MostDigits = 6;

    // The first pair that has a unit says what stands for it.
    private static readonly (Enum Metric, Enum Customary)[] Pairs =
    [
        (LengthUnit.Millimeter, LengthUnit.Inch), (LengthUnit.Centimeter, LengthUnit.Inch), (LengthUnit.Meter, LengthUnit.Inch),
        (LengthUnit.Meter, LengthUnit.Foot),
        (MassUnit.Kilogram, MassUnit.Pound),
        (PressureUnit.Bar, PressureUnit.PoundForcePerSquareInch), (PressureUnit.Kilopascal, PressureUnit.PoundForcePerSquareInch),
        (PressureUnit.Megapascal, PressureUnit.PoundForcePerSquareInch), (PressureUnit.Kilopascal, PressureUnit.InchOfMercury),
        (ForceUnit.Newton, ForceUnit.PoundForce), (ForceUnit.Kilonewton, ForceUnit.PoundForce),
        (ForcePerLengthUnit.NewtonPerMillimeter, ForcePerLengthUnit.PoundForcePerInch),
        (ForcePerLengthUnit.NewtonPerMeter, ForcePerLengthUnit.PoundForcePerInch),
        (AreaUnit.SquareCentimeter, AreaUnit.SquareInch), (AreaUnit.SquareMillimeter, AreaUnit.SquareInch),
        (AreaUnit.SquareMeter, AreaUnit.SquareFoot),
        (SpeedUnit.KilometerPerHour, SpeedUnit.MilePerHour), (SpeedUnit.MeterPerSecond, SpeedUnit.MilePerHour),
        (VolumeUnit.CubicCentimeter, VolumeUnit.CubicInch), (VolumeUnit.Liter, VolumeUnit.CubicInch),
        (TorqueUnit.NewtonMeter, TorqueUnit.PoundForceFoot),
        (DensityUnit.KilogramPerCubicMeter, DensityUnit.PoundPerCubicFoot),
        (TemperatureUnit.DegreeCelsius, TemperatureUnit.DegreeFahrenheit),
        (VolumeFlowUnit.LiterPerMinute, VolumeFlowUnit.UsGallonPerMinute),
        (VolumeFlowUnit.MilliliterPerSecond, VolumeFlowUnit.UsGallonPerMinute),
        (MassMomentOfInertiaUnit.KilogramSquareMeter, MassMomentOfInertiaUnit.PoundSquareFoot),
    ];

    /// <summary>The unit in which an entry is shown.</summary>
    /// <param name="field">The entry: a vacuum is inches of mercury, a height feet; null for any.</param>
    /// <param name="unit">The unit in which the file gives it.</param>
    /// <param name="units">The system of units that was chosen.</param>
    /// <returns>The unit that stands for it there; the same where it is of that system, or of both.</returns>
    public static Enum In(FieldInfo? field, Enum unit, UnitSystem units) => (unit, units) switch
    {
        (PressureUnit.Bar or PressureUnit.Kilopascal, UnitSystem.Us)
            when field?.LowQuantity?.Unit is PressureUnit.InchOfMercury => PressureUnit.InchOfMercury,
        (LengthUnit.Meter, UnitSystem.Us) when field?.HighQuantity?.As(LengthUnit.Meter) > 100 => LengthUnit.Foot,
        (_, UnitSystem.Us) => Array.Find(Pairs, pair => pair.Metric.Equals(unit)).Customary ?? unit,
        _ => Array.Find(Pairs, pair => pair.Customary.Equals(unit)).Metric ?? unit,
    };

    /// <summary>A value or a range, or a list of such, in the chosen system of units, as precise as it is given.</summary>
    /// <returns>Such as <c>24.1 bar</c>; empty where the entry is in units of that system, or is no quantity.</returns>
    public static string Text(FieldInfo field, string value, UnitSystem units)
    {
        (FieldShape shape, Type type) = field.Shape == FieldShape.List ? FieldMap.ShapeOf(field.ValueType) : (field.Shape, field.ValueType);
        string[] parts = value.Split(',', StringSplitOptions.TrimEntries);
        string[] texts = shape != FieldShape.Quantity || value.Length > 1000 ? []
            : [.. parts.Select(part => One(field, part, type, units)).Where(text => text.Length > 0)];
        return texts.Length == parts.Length ? string.Join(", ", texts) : "";
    }

    /// <summary>The same of a value or a range of any entry; as it is written where it is in units of that system.</summary>
    public static string Text(string value, UnitSystem units, FieldInfo? field = null) =>
        value.Split(' ', 3) is [_, var word, ..] && KnownQuantities.FindWord(word) is { } unit
            && One(field, value, KnownQuantities.From(0, unit).GetType(), units) is { Length: > 0 } other ? other : value;

    /// <summary>A text with each quantity in it in the chosen system of units; series of inches stay what they are.</summary>
    public static string Within(string text, UnitSystem units, FieldInfo? field = null) =>
        Quantity().Replace(InBoth.Only(text, units == UnitSystem.Us), written => Text(written.Value, units, field));

    private const string Number = @"(\d+-)?\d+([./]\d+)?", Unit = @" [^\s"",.;:)]+";

    [GeneratedRegex(@"(?<![\w./-]|inch series [^,;""]*)-?" + Number + "(" + Unit + @" \.\. " + Number + ")?" + Unit,
        RegexOptions.CultureInvariant)]
    private static partial Regex Quantity();

    /// <summary>A quantity in another unit, to so many digits.</summary>
    public static string Written(IQuantity quantity, Enum unit, int digits) => QuantityText.Write(KnownQuantities.From(
        decimal.ToDouble(Rounded((decimal)quantity.As(unit), digits)), unit));

    private static string One(FieldInfo? field, string text, Type type, UnitSystem units)
    {
        if (QuantityText.Read(text, type, out IQuantity? low, out IQuantity? high) is not null
            || In(field, low!.Unit, units) is var unit && unit.Equals(low.Unit))
        {
            return "";
        }

        int digits = Math.Clamp(text.Split("..").Max(end => end.Count(char.IsAsciiDigit)), FewestDigits, MostDigits);
        string first = Written(low, unit, digits);
        return ReferenceEquals(low, high) ? first : $"{first} .. {Written(high!, unit, digits)}";
    }

    private static decimal Rounded(decimal value, int digits)
    {
        int whole = value == 0 ? 1 : (int)Math.Floor(Math.Log10((double)Math.Abs(value))) + 1;
        decimal step = (decimal)Math.Pow(10, Math.Max(0, whole - digits));
        return Math.Round(value / step, Math.Clamp(digits - whole, 0, 12), MidpointRounding.AwayFromZero) * step;
    }
}
