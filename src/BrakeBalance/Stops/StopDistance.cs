namespace BrakeBalance.Stops;

/// <summary>Closed forms for the distance of a stop with a constant retarding force.</summary>
/// <remarks>
/// <para>s = γ (v₁² − v₂²)/(2 g r), with r the retarding force over the weight (adhesion, rolling resistance and slope together)
/// and γ the factor of the rotating masses.</para>
/// <para>Source: work equals energy; Gillespie, Fundamentals of Vehicle Dynamics, ch. 3; Mannering and Kilareski, Principles of Highway
/// Engineering, ch. 2 (both from memory).</para>
/// </remarks>
public static class StopDistance
{
    /// <summary>Distance between two speeds under a constant retarding force.</summary>
    /// <param name="from">Speed at the start; not negative.</param>
    /// <param name="to">Speed at the end; not negative, not above <paramref name="from"/>.</param>
    /// <param name="retardingRatio">Retarding force divided by the weight r [–]; above zero.</param>
    /// <param name="rotatingMassFactor">Mass with the share of the rotating parts over mass γ [–]; at least 1.</param>
    /// <returns>Distance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Length Braking(Speed from, Speed to, double retardingRatio, double rotatingMassFactor = 1)
    {
        double v1 = Require.Between(from.MetersPerSecond, 0, 300, nameof(from));
        double v2 = Require.Between(to.MetersPerSecond, 0, v1, nameof(to));
        Require.Positive(retardingRatio, nameof(retardingRatio));
        Require.Between(rotatingMassFactor, 1, 2, nameof(rotatingMassFactor));
        return Length.FromMeters(rotatingMassFactor * (v1 * v1 - v2 * v2) / (2 * Gravity.StandardMetresPerSecondSquared * retardingRatio));
    }

    /// <summary>Speed left after a distance under a constant retarding force.</summary>
    /// <param name="from">Speed at the start; not negative.</param>
    /// <param name="distance">Distance; not negative.</param>
    /// <param name="retardingRatio">Retarding force divided by the weight r [–]; above zero.</param>
    /// <param name="rotatingMassFactor">Mass with the share of the rotating parts over mass γ [–]; at least 1.</param>
    /// <returns>Speed, or null when the car has stopped before.</returns>
    public static Speed? After(Speed from, Length distance, double retardingRatio, double rotatingMassFactor = 1)
    {
        double v = Require.Between(from.MetersPerSecond, 0, 300, nameof(from));
        Require.Positive(retardingRatio, nameof(retardingRatio));
        Require.Between(rotatingMassFactor, 1, 2, nameof(rotatingMassFactor));
        double squared = v * v - 2 * Gravity.StandardMetresPerSecondSquared * retardingRatio / rotatingMassFactor * Require.NotNegative(
            distance, nameof(distance)).Meters;
        return squared >= 0 ? Speed.FromMetersPerSecond(Math.Sqrt(squared)) : null;
    }

    /// <summary>Distance of a stop with a time before the brakes act and a constant deceleration after it.</summary>
    /// <param name="from">Speed at the start; not negative.</param>
    /// <param name="before">
    /// Time before the brakes act: reaction, or build-up as the regulations count it (0.36 s for their 0.1 v); not negative.
    /// </param>
    /// <param name="deceleration">Deceleration; above zero.</param>
    /// <returns>Distance to standstill.</returns>
    public static Length WithDelay(Speed from, Duration before, Acceleration deceleration)
    {
        double v = Require.Between(from.MetersPerSecond, 0, 300, nameof(from));
        return Length.FromMeters(v * Require.NotNegative(before, nameof(before)).Seconds
            + v * v / (2 * Require.Positive(deceleration, nameof(deceleration)).MetersPerSecondSquared));
    }
}
