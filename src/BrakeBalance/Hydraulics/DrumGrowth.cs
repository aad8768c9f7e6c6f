namespace BrakeBalance.Hydraulics;

/// <summary>By how much a hot drum grows away from its shoes, and how far each wheel-cylinder piston must follow.</summary>
/// <remarks>
/// <para>
/// ΔR = α R (T − T₀). A shoe turns about its far end: its tip, where the piston pushes, moves h for each A sin θ that the lining
/// moves outwards, with the arm h of the piston's force and the distance A of the pivot; at the middle of the lining that is h/A, about 2.
/// </para>
/// <para>
/// The shoe's and lining's own growth would take a part of it back; it is left out, as they stay cooler: the safe side. Give under
/// pressure is counted apart, as cold.
/// </para>
/// <para>
/// Source: linear expansion; grey cast iron about 11·10⁻⁶ /K (common tables, from memory); 300 °C as a hot drum, common practice.
/// </para>
/// </remarks>
public sealed record DrumGrowth
{
    /// <summary>Temperature at which the shoes were adjusted: 20 °C.</summary>
    public static Temperature AdjustedAt { get; } = Temperature.FromDegreesCelsius(20);

    /// <summary>Inside radius of the drum; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length DrumRadius { get; init => field = Require.Positive(value); }

    /// <summary>Temperature of the hot drum; 20 to 600 °C; 300 °C unless said (common practice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 20 to 600 °C.</exception>
    public Temperature HotTemperature { get; init => field = Require.Between(value, AdjustedAt, Temperature.FromDegreesCelsius(600)); } =
        Temperature.FromDegreesCelsius(300);

    /// <summary>
    /// Linear expansion of the drum's material for each kelvin [1/K]; 0 to 5·10⁻⁵; 11·10⁻⁶ unless said, grey cast iron.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 5·10⁻⁵.</exception>
    public double ExpansionPerKelvin { get; init => field = Require.Between(value, 0, 5e-5); } = 11e-6;

    /// <summary>
    /// Travel of the piston over growth of the radius [–]; above zero; 2 unless said, a shoe pivoted opposite its cylinder.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public double PistonPerGrowth { get; init => field = Require.Positive(value); } = 2;

    /// <summary>Growth of the drum's radius.</summary>
    public Length RadiusGrowth => DrumRadius * (ExpansionPerKelvin * (HotTemperature - AdjustedAt).Kelvins);

    /// <summary>Further travel of each piston before the shoes touch.</summary>
    public Length PistonTravel => RadiusGrowth * PistonPerGrowth;
}
