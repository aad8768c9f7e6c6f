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
        Speed.From, ("km/h", SpeedUnit.KilometerPerHour), ("mph", SpeedUnit.MilePerHour), ("m/s", SpeedUnit.MeterPerSecond),
            ("ft/s", SpeedUnit.FootPerSecond), ("knots", SpeedUnit.Knot));

    public static readonly Dictionary<string, Func<double, Acceleration>> Accelerations = Table<Acceleration, AccelerationUnit>(
        Acceleration.From, ("m/s2", AccelerationUnit.MeterPerSecondSquared), ("g", AccelerationUnit.StandardGravity),
            ("mg", AccelerationUnit.MillistandardGravity), ("ft/s2", AccelerationUnit.FootPerSecondSquared));

    public static readonly Dictionary<string, Func<double, Temperature>> Temperatures = Table<Temperature, TemperatureUnit>(
        Temperature.From, ("°c", TemperatureUnit.DegreeCelsius), ("°f", TemperatureUnit.DegreeFahrenheit));

    public static readonly Dictionary<string, Func<double, Duration>> Durations = Table<Duration, DurationUnit>(
        Duration.From, ("s", DurationUnit.Second), ("ms", DurationUnit.Millisecond), ("us", DurationUnit.Microsecond),
            ("min", DurationUnit.Minute));

    public static readonly Dictionary<string, Func<double, double>> Turns = new() { ["turns"] = value => value, [""] = value => value };

    /// <summary>Degrees of latitude or longitude.</summary>
    public static readonly Dictionary<string, Func<double, double>> Degrees = new() { ["deg"] = value => value };

    /// <summary>Units in which a number with three decimals is more likely a whole number of thousands.</summary>
    public static readonly string[] CoarseUnits = ["psi", "kpa", "n", "lbf", "lb"];

    // Other spellings of the units above; none may mean two units of one quantity.
    private static readonly Dictionary<string, string> Spellings = Spelt(
        ("km/h", "km_h kmh kph kmph km/hr kmhr kmh-1 km·h-1"), ("mph", "mi/h milesperhour mileshour miles/h"),
        ("m/s", "m_s mps ms-1 m·s-1 mpers meterspersecond metrespersecond"),
        ("ft/s", "ft_s fps feetpersecond"), ("knots", "kn kt kts knot"),
        ("m/s2", "m_s2 m_s^2 m/s^2 m/s/s mps2 ms-2 m·s-2 m/sec2 m/sec^2 ms2 mss"), ("g", "gs gee standardgravity"),
            ("ft/s2", "ft/s^2 ft/s/s"),
        ("s", "sec secs second seconds"), ("ms", "msec millis millisecond milliseconds"), ("us", "µs μs usec microseconds"),
        ("min", "mins minutes"), ("deg", "° degree degrees"), ("°c", "c degc"), ("°f", "f degf"),
        ("turns", "turn"), ("kpa", "kilopascal"), ("n", "newton"), ("psi", "psig lbf/in2 lb/in2"), ("bar", "barg bars"));

    private static readonly HashSet<string> Others =
        ["%", "rpm", "1/min", "hz", "v", "mv", "a", "nm", "n·m", "m", "mm", "km", "deg/s", "°/s", "rad/s", "bool", "-", "–", "", "#",
            "count",
            "0/1", "on/off", "hh:mm:ss", "hh:mm:ss.fff", "clock", "%rh", "hpa", "gauss", "µt"];

    /// <summary>A unit as the tables above write it, brackets and other spellings taken off.</summary>
    public static string Plain(string unit)
    {
        string bare = unit.Trim().Trim('[', ']', '(', ')', '{', '}').Trim().ToLowerInvariant().Replace('²', '2').Replace("⁻¹", "-1")
            .Replace("⁻2", "-2").Replace(" ", "", StringComparison.Ordinal).TrimEnd('.');
        return Spellings.GetValueOrDefault(bare, bare);
    }

    /// <summary>Whether all words of a line are units, and one of them is a unit of this program.</summary>
    public static bool AreUnits(IReadOnlyList<string> cells)
    {
        string[] units = [.. cells.Select(Plain)];
        return units.All(unit => IsKnown(unit) || Others.Contains(unit)) && units.Any(IsKnown);
    }

    private static bool IsKnown(string unit) => unit.Length > 0 && (Pressures.ContainsKey(unit) || Forces.ContainsKey(unit)
        || Speeds.ContainsKey(unit) || Accelerations.ContainsKey(unit) || Temperatures.ContainsKey(unit) || Durations.ContainsKey(unit)
        || Degrees.ContainsKey(unit));

    private static Dictionary<string, string> Spelt(params (string Unit, string Others)[] spellings) =>
        spellings.SelectMany(s => s.Others.Split(' ').Select(other => (other, s.Unit))).ToDictionary(pair => pair.other, pair => pair.Unit);

    private static Dictionary<string, Func<double, TQuantity>> Table<TQuantity, TUnit>(Func<UnitsNet.QuantityValue, TUnit, TQuantity> from,
        params (string Text, TUnit Unit)[] units)
        where TUnit : Enum =>
        units.ToDictionary(u => u.Text, u => (Func<double, TQuantity>)(value => from(value, u.Unit)));
}
