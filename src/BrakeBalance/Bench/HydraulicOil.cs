namespace BrakeBalance.Bench;

/// <summary>The oil of pump, booster and steering gear, with its viscosity over temperature.</summary>
/// <remarks>
/// <para>lg lg (ν + 0.7) = A − B lg T, ν in mm²/s and T in kelvin, through two given points. Source: ASTM D341 (Walther), from
/// memory.</para>
/// <para>Density 860 kg/m³ and 36 mm²/s at 40 °C, 7.2 mm²/s at 100 °C unless said: a usual steering fluid (common practice).</para>
/// <para>Valid for: −40 to 150 °C.</para>
/// </remarks>
public sealed record HydraulicOil
{
    private const double WarmKelvin = 313.15;
    private const double HotKelvin = 373.15;

    /// <summary>Density; 700 to 1,100 kg/m³.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 700 to 1,100 kg/m³.</exception>
    [Field("Density; 860 kg/m³ when left out", Low = "700 kg/m³", High = "1100 kg/m³", Example = "860 kg/m³",
        HowToMeasure = "The fluid's data sheet")]
    public Density Density
    {
        get;
        init => field = Require.Between(value, Density.FromKilogramsPerCubicMeter(700), Density.FromKilogramsPerCubicMeter(1100));
    } = Density.FromKilogramsPerCubicMeter(860);

    /// <summary>Kinematic viscosity at 40 °C; 2 to 1,000 mm²/s; above that at 100 °C.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 2 to 1,000 mm²/s.</exception>
    [Field("Kinematic viscosity at 40 °C; 36 mm²/s when left out", Low = "2 mm²/s", High = "1000 mm²/s", Example = "36 mm²/s",
        HowToMeasure = "The fluid's data sheet")]
    public KinematicViscosity At40Celsius { get; init => field = Require.Between(value, MmSquared(2), MmSquared(1000)); } = MmSquared(36);

    /// <summary>Kinematic viscosity at 100 °C; 1 to 100 mm²/s.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 1 to 100 mm²/s.</exception>
    [Field("Kinematic viscosity at 100 °C; 7.2 mm²/s when left out", Low = "1 mm²/s", High = "100 mm²/s", Example = "7.2 mm²/s",
        HowToMeasure = "The fluid's data sheet")]
    public KinematicViscosity At100Celsius { get; init => field = Require.Between(value, MmSquared(1), MmSquared(100)); } = MmSquared(7.2);

    /// <summary>Kinematic viscosity at a temperature.</summary>
    /// <param name="temperature">Temperature; −40 to 150 °C.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="temperature"/> is outside its range.</exception>
    /// <exception cref="InvalidOperationException">The oil is not thinner at 100 °C than at 40 °C.</exception>
    public KinematicViscosity ViscosityAt(Temperature temperature)
    {
        double celsius = Require.Between(temperature.DegreesCelsius, -40, 150, nameof(temperature));
        if (At100Celsius >= At40Celsius)
        {
            throw new InvalidOperationException(Invariant.Text($"The oil has {At40Celsius.Centistokes:0.#} mm²/s "
                + $"at 40 °C and {At100Celsius.Centistokes:0.#} mm²/s at 100 °C; it must be thinner when hot."));
        }

        double warm = DoubleLog(At40Celsius), hot = DoubleLog(At100Celsius);
        double slope = (warm - hot) / (Math.Log10(HotKelvin) - Math.Log10(WarmKelvin));
        double at = warm - (slope * (Math.Log10(celsius + 273.15) - Math.Log10(WarmKelvin)));
        return MmSquared(Math.Pow(10, Math.Pow(10, at)) - 0.7);
    }

    private static double DoubleLog(KinematicViscosity viscosity) => Math.Log10(Math.Log10(viscosity.Centistokes + 0.7));

    private static KinematicViscosity MmSquared(double value) => KinematicViscosity.FromCentistokes(value);
}
