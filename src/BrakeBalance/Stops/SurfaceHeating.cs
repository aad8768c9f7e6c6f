namespace BrakeBalance.Stops;

/// <summary>Rise of the rubbing surface above the bulk in one stop.</summary>
/// <remarks>
/// <para>Semi-infinite solid under a flux that falls in a straight line from q₀ to zero at the end t_s of the stop: ΔT(t) = 2 q₀
/// √t/√(π k ρ c) · (1 − 2 t/(3 t_s)), greatest at t = t_s/2.</para>
/// <para>Assumes constant deceleration, no cooling during the stop, and a wall thicker than the heat reaches.</para>
/// <para>Source: Carslaw and Jaeger, Conduction of Heat in Solids, half-space under prescribed flux (from memory); Limpert, Brake Design
/// and Safety, prints 0.5270 for the factor 0.5319 of the peak (from memory).</para>
/// </remarks>
public static class SurfaceHeating
{
    /// <summary>Rise of the surface at a time.</summary>
    /// <param name="initialFlux">Heat flux into the surface at the start of the stop; not negative.</param>
    /// <param name="conductivity">Thermal conductivity of the ring; above zero.</param>
    /// <param name="density">Density of the ring; above zero.</param>
    /// <param name="specificHeat">Specific heat of the ring; above zero.</param>
    /// <param name="time">Time since the start; 0 to <paramref name="stopTime"/>.</param>
    /// <param name="stopTime">Duration of the stop; above zero.</param>
    /// <returns>Temperature of the surface above that at the start.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static TemperatureDelta Rise(
        HeatFlux initialFlux, ThermalConductivity conductivity, Density density, SpecificEntropy specificHeat, Duration time,
            Duration stopTime)
    {
        double q = Require.NotNegative(initialFlux, nameof(initialFlux)).WattsPerSquareMeter;
        double end = Require.Positive(stopTime, nameof(stopTime)).Seconds;
        double t = Require.Between(time.Seconds, 0, end, nameof(time));
        double effusivity = Math.Sqrt(
            Require.Positive(conductivity, nameof(conductivity)).WattsPerMeterKelvin
            * Require.Positive(density, nameof(density)).KilogramsPerCubicMeter
            * Require.Positive(specificHeat, nameof(specificHeat)).JoulesPerKilogramKelvin);
        return TemperatureDelta.FromKelvins(2 * q * Math.Sqrt(t / Math.PI) / effusivity * (1 - 2 * t / (3 * end)));
    }

    /// <summary>Greatest rise of the surface, half-way through the stop.</summary>
    /// <param name="initialFlux">Heat flux into the surface at the start of the stop; not negative.</param>
    /// <param name="conductivity">Thermal conductivity of the ring; above zero.</param>
    /// <param name="density">Density of the ring; above zero.</param>
    /// <param name="specificHeat">Specific heat of the ring; above zero.</param>
    /// <param name="stopTime">Duration of the stop; above zero.</param>
    /// <returns>Temperature of the surface above that at the start.</returns>
    public static TemperatureDelta Peak(HeatFlux initialFlux, ThermalConductivity conductivity, Density density,
        SpecificEntropy specificHeat, Duration stopTime) =>
        Rise(initialFlux, conductivity, density, specificHeat, stopTime / 2, stopTime);
}
