using UnitsNet.Units;

namespace BrakeBalance.Answers;

/// <summary>A kind of quantity an axis, a column or a readout shows: its SI unit and its display unit in either system.</summary>
/// <remarks>
/// Layers hold their numbers in the SI unit; the conversion to display units happens once, where a number meets an axis,
/// a column or a text. All conversion factors come from UnitsNet, which is asked when a measure is first shown: a page shows a few of them.
/// </remarks>
public sealed class Measure
{
    private readonly Lazy<DisplayUnit> _metric;
    private readonly Lazy<DisplayUnit> _customary;

    private Measure(string name, Enum? siUnit, Func<DisplayUnit> metric, Func<DisplayUnit> customary)
    {
        Name = name;
        SiUnit = siUnit;
        _metric = new(metric);
        _customary = new(customary);
    }

    /// <summary>A pure number, such as an adhesion [–].</summary>
    public static Measure Number { get; } = Pure("number", "", 1, 0.01);

    /// <summary>A fraction shown in per cent.</summary>
    public static Measure Percent { get; } = Pure("fraction", "%", 100, 1);

    /// <summary>Deceleration held as a multiple of g [–], shown in g.</summary>
    public static Measure InG { get; } = Pure("deceleration", "g", 1, 0.01).KeepingZeros();

    /// <summary>A count or an ordinal, shown without decimals [–].</summary>
    public static Measure Count { get; } = Pure("count", "", 1, 1);

    /// <summary>Line pressure, gauge: bar or psi; the SI unit is the pascal.</summary>
    public static Measure LinePressure { get; } =
        Of("line pressure", PressureUnit.Pascal, (PressureUnit.Bar, "bar", 0.5), (PressureUnit.PoundForcePerSquareInch, "psi", 10));

    /// <summary>Vacuum: kPa or inHg below ambient; the SI unit is the pascal.</summary>
    public static Measure Vacuum { get; } =
        Of("vacuum", PressureUnit.Pascal, (PressureUnit.Kilopascal, "kPa", 1), (PressureUnit.InchOfMercury, "inHg", 0.5));

    /// <summary>Braking force at an axle: kN or lbf; the SI unit is the newton.</summary>
    public static Measure BrakeForce { get; } =
        Of("braking force", ForceUnit.Newton, (ForceUnit.Kilonewton, "kN", 0.05), (ForceUnit.PoundForce, "lbf", 10));

    /// <summary>Force at the pedal or a rod: N or lbf; the SI unit is the newton.</summary>
    public static Measure ControlForce { get; } =
        Of("control force", ForceUnit.Newton, (ForceUnit.Newton, "N", 10), (ForceUnit.PoundForce, "lbf", 1));

    /// <summary>A short length: mm or in; the SI unit is the metre.</summary>
    public static Measure Travel { get; } =
        Of("length", LengthUnit.Meter, (LengthUnit.Millimeter, "mm", 0.5), (LengthUnit.Inch, "in", 0.02));

    /// <summary>A distance on the road: m or ft; the SI unit is the metre.</summary>
    public static Measure Distance { get; } =
        Of("distance", LengthUnit.Meter, (LengthUnit.Meter, "m", 0.1), (LengthUnit.Foot, "ft", 1)).KeepingZeros();

    /// <summary>Speed: km/h or mph; the SI unit is the metre per second.</summary>
    public static Measure Speed { get; } =
        Of("speed", SpeedUnit.MeterPerSecond, (SpeedUnit.KilometerPerHour, "km/h", 1), (SpeedUnit.MilePerHour, "mph", 1));

    /// <summary>Deceleration, shown in g; the SI unit is the metre per second squared.</summary>
    public static Measure Deceleration { get; } = Of(
        "deceleration",
        AccelerationUnit.MeterPerSecondSquared,
        (AccelerationUnit.StandardGravity, "g", 0.01),
        (AccelerationUnit.StandardGravity, "g", 0.01)).KeepingZeros();

    /// <summary>Temperature: °C or °F; the SI unit is the kelvin.</summary>
    public static Measure Temperature { get; } = Of(
        "temperature",
        TemperatureUnit.Kelvin,
        (TemperatureUnit.DegreeCelsius, "°C", 1),
        (TemperatureUnit.DegreeFahrenheit, "°F", 1));

    /// <summary>Time in seconds.</summary>
    public static Measure Time { get; } =
        Of("time", DurationUnit.Second, (DurationUnit.Second, "s", 0.01), (DurationUnit.Second, "s", 0.01));

    /// <summary>Mass: kg or lb; the SI unit is the kilogram.</summary>
    public static Measure Mass { get; } = Of("mass", MassUnit.Kilogram, (MassUnit.Kilogram, "kg", 1), (MassUnit.Pound, "lb", 5));

    /// <summary>Energy: kJ or thousands of foot pounds-force; the SI unit is the joule.</summary>
    public static Measure Energy { get; } =
        Of("energy", EnergyUnit.Joule, (EnergyUnit.Kilojoule, "kJ", 1), (EnergyUnit.FootPound, "ft·lbf", 100));

    /// <summary>Area: cm² or in²; the SI unit is the square metre.</summary>
    public static Measure Area { get; } =
        Of("area", AreaUnit.SquareMeter, (AreaUnit.SquareCentimeter, "cm²", 0.1), (AreaUnit.SquareInch, "in²", 0.01));

    /// <summary>Angle in degrees; the SI unit is the radian.</summary>
    public static Measure Angle { get; } = Of("angle", AngleUnit.Radian, (AngleUnit.Degree, "°", 0.1), (AngleUnit.Degree, "°", 0.1));

    /// <summary>What is measured, in words.</summary>
    public string Name { get; }

    /// <summary>The UnitsNet unit in which layers hold this measure; null for a pure number.</summary>
    public Enum? SiUnit { get; }

    /// <summary>A measure of one's own.</summary>
    /// <param name="name">What is measured, in words.</param>
    /// <param name="siUnit">The UnitsNet unit in which layers hold the numbers.</param>
    /// <param name="metric">Metric display unit, its symbol, and the step to which running text rounds.</param>
    /// <param name="customary">The same for United States customary units.</param>
    public static Measure Of(
        string name, Enum siUnit, (Enum Unit, string Symbol, double RoundTo) metric, (Enum Unit, string Symbol, double RoundTo) customary)
    {
        return new Measure(name, siUnit, () => Unit(metric), () => Unit(customary));

        DisplayUnit Unit((Enum Unit, string Symbol, double RoundTo) of)
        {
            double offset = KnownQuantities.From(0, siUnit).As(of.Unit);
            return new DisplayUnit(of.Symbol, KnownQuantities.From(1, siUnit).As(of.Unit) - offset, offset, of.RoundTo);
        }
    }

    /// <summary>A measure that is a pure number in both systems of units.</summary>
    /// <param name="name">What is measured, in words.</param>
    /// <param name="symbol">A symbol shown behind the number, such as <c>%</c>; may be empty.</param>
    /// <param name="scale">Shown number per number held [–].</param>
    /// <param name="roundTo">The step to which running text rounds, as shown.</param>
    public static Measure Pure(string name, string symbol, double scale, double roundTo)
    {
        var unit = new DisplayUnit(symbol, scale, 0, roundTo);
        return new Measure(name, null, () => unit, () => unit);
    }

    private Measure KeepingZeros() => new(Name, SiUnit,
        () => _metric.Value with { KeepsZeros = true }, () => _customary.Value with { KeepsZeros = true });

    /// <summary>The display unit in one system of units.</summary>
    /// <param name="units">The system of units.</param>
    public DisplayUnit In(UnitSystem units) => units == UnitSystem.Us ? _customary.Value : _metric.Value;

    /// <summary>An SI value as running text in display units.</summary>
    /// <param name="si">The value in <see cref="SiUnit"/>.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>Such as <c>38.5 bar</c>.</returns>
    public string Text(double si, UnitSystem units) => In(units).Text(si);

    /// <summary>A quantity as running text in display units.</summary>
    /// <param name="quantity">The quantity; of this measure's kind.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>Such as <c>38.5 bar</c>.</returns>
    public string Text(IQuantity quantity, UnitSystem units) => Text(Si(quantity), units);

    /// <summary>The SI value of a quantity.</summary>
    /// <param name="quantity">The quantity; of this measure's kind.</param>
    /// <returns>The value in <see cref="SiUnit"/>.</returns>
    /// <exception cref="ArgumentException">The quantity is of another kind.</exception>
    public double Si(IQuantity quantity) =>
        SiUnit is not null && quantity.QuantityInfo.UnitType == SiUnit.GetType()
            ? quantity.As(SiUnit)
            : throw new ArgumentException($"A {quantity.QuantityInfo.Name} does not fit the measure '{Name}'.", nameof(quantity));
}
