namespace BrakeBalance.Notebooks.Commands.Stopping;

/// <summary>The units of one report on stops: what they are called in a table and at the end of a key.</summary>
internal sealed record StopUnits(UnitSystem System)
{
    public bool Us => System == UnitSystem.Us;

    public string Distance => Us ? "ft" : "m";

    public string Speed => Us ? "mph" : "km/h";

    public string Pressure => Us ? "psi" : "bar";

    public string Force => Us ? "lbf" : "N";

    public string Moment => Us ? "ft·lbf" : "N·m";

    public string Temperature => Us ? "°F" : "°C";

    public double Of(Length length) => Us ? length.Feet : length.Meters;

    public double Of(Speed speed) => Us ? speed.MilesPerHour : speed.KilometersPerHour;

    public double Of(Pressure pressure) => Us ? pressure.PoundsForcePerSquareInch : pressure.Bars;

    public double Of(Force force) => Us ? force.PoundsForce : force.Newtons;

    public double Of(Torque moment) => Us ? moment.PoundForceFeet : moment.NewtonMeters;

    public double Of(Temperature temperature) => Us ? temperature.DegreesFahrenheit : temperature.DegreesCelsius;

    public double Of(TemperatureDelta difference) => Us ? difference.DegreesFahrenheit : difference.Kelvins;

    public double Of(Acceleration acceleration) => Us ? acceleration.FeetPerSecondSquared : acceleration.MetersPerSecondSquared;

    /// <summary>A key with its unit at its end, written as the keys of the balance summary are.</summary>
    public string Key(string stem, string unit) => stem + "_" + unit switch
    {
        "km/h" => "km_h",
        "°C" => "c",
        "°F" => "f",
        "N" => "n",
        "N·m" => "n_m",
        "ft·lbf" => "ft_lbf",
        _ => unit,
    };

    public string DecelerationKey(string stem) => stem + (Us ? "_ft_s2" : "_m_s2");

    public string DifferenceKey(string stem) => stem + (Us ? "_f" : "_k");
}
