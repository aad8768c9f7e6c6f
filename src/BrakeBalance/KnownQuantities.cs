using UnitsNet.Units;

namespace BrakeBalance;

/// <summary>The kinds of quantity and the units that files, options and outputs use.</summary>
/// <remarks>
/// To set up all that UnitsNet knows takes a browser half a second before the first answer; only what is not here asks for it.
/// </remarks>
internal static class KnownQuantities
{
    private static readonly Dictionary<Type, Func<double, Enum, IQuantity>> Makers = new()
    {
        [typeof(LengthUnit)] = (value, unit) => Length.From(value, (LengthUnit)unit),
        [typeof(MassUnit)] = (value, unit) => Mass.From(value, (MassUnit)unit),
        [typeof(PressureUnit)] = (value, unit) => Pressure.From(value, (PressureUnit)unit),
        [typeof(ForceUnit)] = (value, unit) => Force.From(value, (ForceUnit)unit),
        [typeof(ForcePerLengthUnit)] = (value, unit) => ForcePerLength.From(value, (ForcePerLengthUnit)unit),
        [typeof(AreaUnit)] = (value, unit) => Area.From(value, (AreaUnit)unit),
        [typeof(SpeedUnit)] = (value, unit) => Speed.From(value, (SpeedUnit)unit),
        [typeof(AccelerationUnit)] = (value, unit) => Acceleration.From(value, (AccelerationUnit)unit),
        [typeof(VolumeUnit)] = (value, unit) => Volume.From(value, (VolumeUnit)unit),
        [typeof(VolumeFlowUnit)] = (value, unit) => VolumeFlow.From(value, (VolumeFlowUnit)unit),
        [typeof(TorqueUnit)] = (value, unit) => Torque.From(value, (TorqueUnit)unit),
        [typeof(DensityUnit)] = (value, unit) => Density.From(value, (DensityUnit)unit),
        [typeof(TemperatureUnit)] = (value, unit) => Temperature.From(value, (TemperatureUnit)unit),
        [typeof(TemperatureDeltaUnit)] = (value, unit) => TemperatureDelta.From(value, (TemperatureDeltaUnit)unit),
        [typeof(DurationUnit)] = (value, unit) => Duration.From(value, (DurationUnit)unit),
        [typeof(FrequencyUnit)] = (value, unit) => Frequency.From(value, (FrequencyUnit)unit),
        [typeof(EnergyUnit)] = (value, unit) => Energy.From(value, (EnergyUnit)unit),
        [typeof(PowerUnit)] = (value, unit) => Power.From(value, (PowerUnit)unit),
        [typeof(AngleUnit)] = (value, unit) => Angle.From(value, (AngleUnit)unit),
        [typeof(HeatTransferCoefficientUnit)] = (value, unit) => HeatTransferCoefficient.From(value, (HeatTransferCoefficientUnit)unit),
        [typeof(KinematicViscosityUnit)] = (value, unit) => KinematicViscosity.From(value, (KinematicViscosityUnit)unit),
        [typeof(MassMomentOfInertiaUnit)] = (value, unit) => MassMomentOfInertia.From(value, (MassMomentOfInertiaUnit)unit),
    };

    private static readonly Dictionary<Type, (string Word, Enum Unit)[]> UnitsOf = new()
    {
        [typeof(Length)] =
        [
            ("mm", LengthUnit.Millimeter), ("cm", LengthUnit.Centimeter), ("m", LengthUnit.Meter), ("in", LengthUnit.Inch),
            ("ft", LengthUnit.Foot),
        ],
        [typeof(Mass)] = [("kg", MassUnit.Kilogram), ("lb", MassUnit.Pound)],
        [typeof(Pressure)] =
        [
            ("bar", PressureUnit.Bar), ("psi", PressureUnit.PoundForcePerSquareInch), ("kPa", PressureUnit.Kilopascal),
            ("MPa", PressureUnit.Megapascal), ("inHg", PressureUnit.InchOfMercury),
        ],
        [typeof(Force)] = [("N", ForceUnit.Newton), ("kN", ForceUnit.Kilonewton), ("lbf", ForceUnit.PoundForce)],
        [typeof(ForcePerLength)] = [("N/mm", ForcePerLengthUnit.NewtonPerMillimeter), ("N/m", ForcePerLengthUnit.NewtonPerMeter)],
        [typeof(Area)] =
        [
            ("mm²", AreaUnit.SquareMillimeter), ("cm²", AreaUnit.SquareCentimeter), ("m²", AreaUnit.SquareMeter),
            ("in²", AreaUnit.SquareInch),
        ],
        [typeof(Speed)] = [("km/h", SpeedUnit.KilometerPerHour), ("mph", SpeedUnit.MilePerHour), ("m/s", SpeedUnit.MeterPerSecond)],
        [typeof(Volume)] = [("cm³", VolumeUnit.CubicCentimeter), ("l", VolumeUnit.Liter), ("in³", VolumeUnit.CubicInch)],
        [typeof(Torque)] = [("N·m", TorqueUnit.NewtonMeter), ("lbf·ft", TorqueUnit.PoundForceFoot)],
        [typeof(Density)] = [("kg/m³", DensityUnit.KilogramPerCubicMeter)],
        [typeof(Temperature)] =
            [("°C", TemperatureUnit.DegreeCelsius), ("°F", TemperatureUnit.DegreeFahrenheit), ("K", TemperatureUnit.Kelvin)],
        [typeof(VolumeFlow)] =
        [
            ("l/min", VolumeFlowUnit.LiterPerMinute), ("US gal/min", VolumeFlowUnit.UsGallonPerMinute),
            ("cm³/s", VolumeFlowUnit.MilliliterPerSecond),
        ],
        [typeof(Duration)] = [("s", DurationUnit.Second), ("ms", DurationUnit.Millisecond), ("min", DurationUnit.Minute)],
        [typeof(Frequency)] = [("Hz", FrequencyUnit.Hertz)],
        [typeof(HeatTransferCoefficient)] = [("W/m²·K", HeatTransferCoefficientUnit.WattPerSquareMeterKelvin)],
        [typeof(Angle)] = [("°", AngleUnit.Degree), ("rad", AngleUnit.Radian)],
        [typeof(KinematicViscosity)] = [("mm²/s", KinematicViscosityUnit.Centistokes), ("cSt", KinematicViscosityUnit.Centistokes)],
        [typeof(MassMomentOfInertia)] = [("kg·m²", MassMomentOfInertiaUnit.KilogramSquareMeter)],
    };

    private static readonly Lazy<Dictionary<Enum, string>> Symbols = new(() =>
        UnitsOf.Values.SelectMany(units => units).DistinctBy(unit => unit.Unit).ToDictionary(unit => unit.Unit, unit => unit.Word));

    /// <summary>A quantity by its number and unit.</summary>
    public static IQuantity From(double value, Enum unit) =>
        Makers.TryGetValue(unit.GetType(), out Func<double, Enum, IQuantity>? make) ? make(value, unit) : Quantity.From(value, unit);

    /// <summary>The units named in messages for a kind of quantity.</summary>
    public static string Accepted(Type quantity) => string.Join(", ", UnitsOf[quantity].Select(unit => unit.Word));

    /// <summary>The unit of a kind of quantity that files use by this very word; null for none.</summary>
    public static Enum? FindWord(Type quantity, string text) =>
        UnitsOf.TryGetValue(quantity, out (string Word, Enum Unit)[]? units) ? Array.Find(units, unit => unit.Word == text).Unit : null;

    /// <summary>The unit that files use by this very word; null for none.</summary>
    public static Enum? FindWord(string text) =>
        UnitsOf.Keys.Select(quantity => FindWord(quantity, text)).FirstOrDefault(unit => unit is not null);

    /// <summary>The unit of a kind of quantity that a text abbreviates; null for none.</summary>
    public static Enum? Find(Type quantity, string text) =>
        FindWord(quantity, text) ?? (UnitParser.Default.TryParse(
            text, Quantity.Infos.First(info => info.ValueType == quantity).UnitType, CultureInfo.InvariantCulture, out Enum? unit)
            ? unit : null);

    /// <summary>A quantity in the unit in which UnitsNet holds its kind.</summary>
    public static double Si(IQuantity quantity) => quantity.As(quantity.QuantityInfo.BaseUnitInfo.Value);

    /// <summary>The usual abbreviation of a unit, as <see cref="Accepted"/> has it where it is there.</summary>
    public static string Symbol(Enum unit) => Symbols.Value.TryGetValue(unit, out string? word)
        ? word
        : UnitAbbreviationsCache.Default.GetDefaultAbbreviation(
            unit.GetType(), Convert.ToInt32(unit, CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
