namespace BrakeBalance.Summaries;

/// <summary>The units of one report: what they are called in a table and at the end of a key.</summary>
internal sealed record ReportUnits(UnitSystem System)
{
    public bool Us => System == UnitSystem.Us;

    public string Pressure => Us ? "psi" : "bar";

    public string Force => Us ? "lbf" : "N";

    public string Moment => Us ? "ft·lbf" : "N·m";

    public string Mass => Us ? "lb" : "kg";

    public string Length => Us ? "in" : "m";

    public string Travel => Us ? "in" : "mm";

    public string Distance => Us ? "ft" : "m";

    public string Speed => Us ? "mph" : "km/h";

    public string Temperature => Us ? "°F" : "°C";

    public double Of(Pressure pressure) => Us ? pressure.PoundsForcePerSquareInch : pressure.Bars;

    public double? Of(Pressure? pressure) => pressure is { } known ? Of(known) : null;

    public double Of(Force force) => Us ? force.PoundsForce : force.Newtons;

    public double? Of(Force? force) => force is { } known ? Of(known) : null;

    public double Of(Torque moment) => Us ? moment.PoundForceFeet : moment.NewtonMeters;

    public double Of(Mass mass) => Us ? mass.Pounds : mass.Kilograms;

    public double Of(Length length) => Us ? length.Inches : length.Meters;

    public double? OfTravel(Length? travel) => Us ? travel?.Inches : travel?.Millimeters;

    public double OfDistance(Length distance) => Us ? distance.Feet : distance.Meters;

    public double Of(Speed speed) => Us ? speed.MilesPerHour : speed.KilometersPerHour;

    public double? Of(Acceleration? rate) => Us ? rate?.FeetPerSecondSquared : rate?.MetersPerSecondSquared;

    public double Of(Temperature temperature) => Us ? temperature.DegreesFahrenheit : temperature.DegreesCelsius;

    public double Of(TemperatureDelta difference) => Us ? difference.DegreesFahrenheit : difference.Kelvins;

    /// <summary>A force in a table; a dash for none.</summary>
    public string Text(Force? force) => force is { } known ? Of(known).ToString("0", CultureInfo.InvariantCulture) : "–";

    /// <summary>A pressure in a table; a dash for none.</summary>
    public string Text(Pressure? pressure) =>
        pressure is { } known ? Of(known).ToString(Us ? "0" : "0.0", CultureInfo.InvariantCulture) : "–";

    /// <summary>A key with its unit at its end.</summary>
    public string Key(string stem, string unit) => stem + "_" + unit switch
    {
        "km/h" => "km_h",
        "°C" => "c",
        "°F" => "f",
        "N·m" => "n_m",
        "ft·lbf" => "ft_lbf",
        _ => unit.ToLowerInvariant(),
    };

    public string DecelerationKey(string stem) => stem + (Us ? "_ft_s2" : "_m_s2");

    public string DifferenceKey(string stem) => stem + (Us ? "_f" : "_k");
}
