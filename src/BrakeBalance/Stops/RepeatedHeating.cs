namespace BrakeBalance.Stops;

/// <summary>Closed form for equal stops at equal intervals on one lump with constant cooling.</summary>
/// <remarks>
/// <para>Peak above the air after the n-th stop: ΔT (1 − e^(−n B t_c))/(1 − e^(−B t_c)), with B = h A/(m c); the limit for many
/// stops has no e^(−n …).</para>
/// <para>Assumes stops that are short against the interval, and no radiation.</para>
/// <para>Source: geometric series of exponential cooling; Newcomb and Spurr, and Limpert, Brake Design and Safety, print this form (from
/// memory).</para>
/// </remarks>
public static class RepeatedHeating
{
    /// <summary>Temperature above the air right after a stop.</summary>
    /// <param name="risePerStop">Rise by one stop.</param>
    /// <param name="coolingRatePerSecond">B, in 1/s; above zero.</param>
    /// <param name="interval">Time from stop to stop t_c; above zero.</param>
    /// <param name="stops">How many stops; at least one, or null for the limit of many.</param>
    /// <returns>Temperature above the air.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static TemperatureDelta PeakRise(TemperatureDelta risePerStop, double coolingRatePerSecond, Duration interval, int? stops)
    {
        double exponent = Require.Positive(coolingRatePerSecond, nameof(coolingRatePerSecond)) * Require.Positive(interval,
            nameof(interval)).Seconds;
        ArgumentOutOfRangeException.ThrowIfLessThan(stops ?? 1, 1, nameof(stops));
        double numerator = stops is { } n ? 1 - Math.Exp(-n * exponent) : 1;
        return TemperatureDelta.FromKelvins(risePerStop.Kelvins * numerator / (1 - Math.Exp(-exponent)));
    }
}
