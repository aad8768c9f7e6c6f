namespace BrakeBalance.Charts.Outputs;

/// <summary>Numbers and quantities as short text, the same in every culture.</summary>
public static class NumberText
{
    private const int SignificantDigits = 6;
    private const double LongestTravelMetres = 3, SlowestCar = 5;

    /// <summary>A number with at most six significant digits; powers of ten only where plain digits would hide it.</summary>
    /// <param name="value">The number.</param>
    /// <returns>Such as <c>0.8125</c>, <c>1234570</c> or <c>2.5E-07</c>.</returns>
    public static string Of(double value)
    {
        string text = value.ToString("G" + SignificantDigits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return Signed(text.Contains('E') && Math.Abs(value) is >= 1 and < 1e15
            ? ((decimal)double.Parse(text, CultureInfo.InvariantCulture)).ToString("0", CultureInfo.InvariantCulture)
            : text);
    }

    /// <summary>A number's text with a minus sign in place of a leading hyphen.</summary>
    internal static string Signed(string number) => number.StartsWith('-') ? "−" + number[1..] : number;

    /// <summary>A number with four significant digits.</summary>
    internal static string Short(double value) =>
        Of(double.Parse(value.ToString("G4", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture));

    /// <summary>A quantity as a cell shows it: in the unit it is held in, if that was chosen, else as <see cref="Shown"/>.</summary>
    /// <param name="quantity">The quantity; results of the calculation are held in the SI unit, which nobody chose.</param>
    /// <returns>Such as <c>38.55 bar</c>; the number alone where the unit has no symbol.</returns>
    public static string Of(IQuantity quantity)
    {
        ArgumentNullException.ThrowIfNull(quantity);
        if (quantity.Unit.Equals(quantity.QuantityInfo.BaseUnitInfo.Value))
        {
            return Shown(quantity);
        }

        string symbol = KnownQuantities.Symbol(quantity.Unit);
        return symbol.Length == 0 ? Of((double)quantity.Value) : $"{Of((double)quantity.Value)} {symbol}";
    }

    /// <summary>A quantity in the unit in which its kind is shown, with four significant digits.</summary>
    internal static string Shown(IQuantity quantity, UnitSystem? units = null)
    {
        UnitSystem system = units ?? Display.Units;
        bool us = system == UnitSystem.Us;
        Measure? measure = quantity switch
        {
            Force => Measure.ControlForce,
            Pressure => Measure.LinePressure,
            Length length => Math.Abs(length.Meters) < LongestTravelMetres ? Measure.Travel : Measure.Distance,
            Speed speed when Math.Abs(speed.MetersPerSecond) >= SlowestCar => Measure.Speed,
            Mass => Measure.Mass,
            Area => Measure.Area,
            Energy => Measure.Energy,
            Temperature => Measure.Temperature,
            _ => null,
        };
        (double value, string symbol) = quantity switch
        {
            Torque torque => us ? (torque.PoundForceFeet, "lbf·ft") : (torque.NewtonMeters, "N·m"),
            Acceleration rate => us ? (rate.FeetPerSecondSquared, "ft/s²") : (rate.MetersPerSecondSquared, "m/s²"),
            Speed flow when measure is null => us ? (flow.FeetPerSecond, "ft/s") : (flow.MetersPerSecond, "m/s"),
            Volume volume => us ? (volume.CubicInches, "in³") : (volume.CubicCentimeters, "cm³"),
            TemperatureDelta rise => us ? (rise.DegreesFahrenheit, "°F") : (rise.Kelvins, "K"),
            Power power when us => ((double)power.MechanicalHorsepower, "hp"),
            _ when measure?.In(system) is { } unit => (unit.FromSi(measure.Si(quantity)), unit.Symbol),
            _ => OtherUnits.In(null, quantity.Unit, system) is var other ? (quantity.As(other), KnownQuantities.Symbol(other)) : default,
        };
        return symbol.Length == 0 ? Short(value) : $"{Short(value)} {symbol}";
    }
}
