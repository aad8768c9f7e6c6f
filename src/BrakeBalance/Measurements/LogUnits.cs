using UnitsNet.Units;

namespace BrakeBalance.Measurements;

/// <summary>The units a log's header may name, and what they make of a number.</summary>
internal static class LogUnits
{
    public static readonly Dictionary<string, Func<double, Pressure>> Pressures = Table<Pressure, PressureUnit>(
        Pressure.From, ("bar", PressureUnit.Bar), ("psi", PressureUnit.PoundForcePerSquareInch), ("kpa", PressureUnit.Kilopascal),
            ("mpa", PressureUnit.Megapascal));

    public static readonly Dictionary<string, Func<double, Force>> Forces = Table<Force, ForceUnit>(
        Force.From, ("n", ForceUnit.Newton), ("lbf", ForceUnit.PoundForce), ("lb", ForceUnit.PoundForce), ("kgf", ForceUnit.KilogramForce),
            ("dan", ForceUnit.Decanewton));

    public static readonly Dictionary<string, Func<double, Speed>> Speeds = Table<Speed, SpeedUnit>(
        Speed.From, ("km/h", SpeedUnit.KilometerPerHour), ("kph", SpeedUnit.KilometerPerHour), ("mph", SpeedUnit.MilePerHour),
            ("m/s", SpeedUnit.MeterPerSecond), ("ft/s", SpeedUnit.FootPerSecond));

    public static readonly Dictionary<string, Func<double, Acceleration>> Accelerations = Table<Acceleration, AccelerationUnit>(
        Acceleration.From, ("m/s2", AccelerationUnit.MeterPerSecondSquared), ("m/s²", AccelerationUnit.MeterPerSecondSquared),
            ("m/s^2", AccelerationUnit.MeterPerSecondSquared), ("g", AccelerationUnit.StandardGravity),
            ("ft/s2", AccelerationUnit.FootPerSecondSquared), ("ft/s²", AccelerationUnit.FootPerSecondSquared));

    public static readonly Dictionary<string, Func<double, Temperature>> Temperatures = Table<Temperature, TemperatureUnit>(
        Temperature.From, ("°c", TemperatureUnit.DegreeCelsius), ("c", TemperatureUnit.DegreeCelsius),
            ("degc", TemperatureUnit.DegreeCelsius), ("°f", TemperatureUnit.DegreeFahrenheit), ("f", TemperatureUnit.DegreeFahrenheit),
            ("degf", TemperatureUnit.DegreeFahrenheit));

    public static readonly Dictionary<string, Func<double, Duration>> Durations = Table<Duration, DurationUnit>(
        Duration.From, ("s", DurationUnit.Second), ("ms", DurationUnit.Millisecond));

    public static readonly Dictionary<string, Func<double, double>> Turns = new()
    {
        ["turns"] = value => value,
        ["turn"] = value => value,
        [""] = value => value,
    };

    /// <summary>Units in which a number with three decimals is more likely a whole number of thousands.</summary>
    public static readonly string[] CoarseUnits = ["psi", "kpa", "n", "lbf", "lb"];

    private static Dictionary<string, Func<double, TQuantity>> Table<TQuantity, TUnit>(Func<UnitsNet.QuantityValue, TUnit, TQuantity> from,
        params (string Text, TUnit Unit)[] units)
        where TUnit : Enum =>
        units.ToDictionary(u => u.Text, u => (Func<double, TQuantity>)(value => from(value, u.Unit)));
}
