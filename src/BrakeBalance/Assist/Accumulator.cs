namespace BrakeBalance.Assist;

/// <summary>A gas-charged accumulator that keeps oil under pressure for when the pump stands still.</summary>
/// <remarks>
/// <para>
/// Charging is slow and at constant temperature: V₁ = V₀ p₀ / p₁. A stop is quick: p = p₁ (V₁ / V)ⁿ with n the polytropic
/// exponent, 1 for constant temperature to 1.4 for nitrogen without heat exchange. When the gas fills the whole vessel again no oil is
/// left. Pressures in the formulas are absolute.
/// </para>
/// <para>Assumes an ideal gas at the temperature it was charged at. Source: polytropic change of state, any textbook of
/// thermodynamics.</para>
/// </remarks>
public sealed record Accumulator
{
    private const double AirPascals = 101_325;

    /// <summary>Volume of the gas with no oil in the vessel; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    [Field("Volume of the gas with no oil in the vessel", Required = true, Low = "5 cm³", High = "2000 cm³", Example = "80 cm³",
        HowToMeasure = "Stamped on the vessel, or its service manual")]
    public required Volume GasVolume { get; init => field = Require.Positive(value); }

    /// <summary>Pressure of the gas with no oil in the vessel, gauge; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    [Field("Pressure of the gas with no oil in the vessel", Required = true, Low = "1 bar", High = "200 bar", Example = "45 bar",
        HowToMeasure = "Filling tool's gauge on the gas valve, oil side empty")]
    [Usual("15 bar", "100 bar", Above = "bar given for psi", Below = "psi given for bar")]
    public required Pressure Precharge { get; init => field = Require.Positive(value); }

    /// <summary>Polytropic exponent of a quick discharge [–]; 1 to 1.67; 1.3 unless said (common practice, between 1 and 1.4).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 1 to 1.67.</exception>
    [Field("Polytropic exponent of a quick discharge; 1.3 when left out", Low = "1", High = "1.67", Example = "1.3",
        HowToMeasure = "Not measured in a car: 1 for a slow, 1.4 for a quick discharge of nitrogen")]
    public double PolytropicExponent { get; init => field = Require.Between(value, 1, 1.67); } = 1.3;

    /// <summary>Oil held when charged to a pressure.</summary>
    /// <param name="charge">Pressure to which the pump has charged it, gauge; not below the precharge.</param>
    /// <returns>Volume of oil.</returns>
    /// <exception cref="ArgumentException">The precharge lies above <paramref name="charge"/>, so that no oil can enter.</exception>
    public Volume StoredOil(Pressure charge) => Volume.FromCubicMeters(GasVolume.CubicMeters - ChargedGasCubicMetres(charge));

    /// <summary>Pressure left after oil has been taken out quickly.</summary>
    /// <param name="charge">Pressure to which it was charged, gauge; not below the precharge.</param>
    /// <param name="drawn">Oil taken out since; not negative.</param>
    /// <returns>Pressure, gauge, not negative; zero when more was asked for than was stored.</returns>
    /// <exception cref="ArgumentException">The precharge lies above <paramref name="charge"/>, so that no oil can enter.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="drawn"/> is negative.</exception>
    public Pressure PressureAfter(Pressure charge, Volume drawn)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(drawn, Volume.Zero);
        double charged = ChargedGasCubicMetres(charge);
        double gas = charged + drawn.CubicMeters;
        if (gas > GasVolume.CubicMeters * (1 + 1e-12))
        {
            return Pressure.Zero;
        }

        double absolute = (charge.Pascals + AirPascals) * Math.Pow(charged / gas, PolytropicExponent);
        return Pressure.FromPascals(Math.Max(0, absolute - AirPascals));
    }

    private double ChargedGasCubicMetres(Pressure charge)
    {
        Refuse.If(charge < Precharge,
            $"The accumulator's precharge of {Precharge.Bars:0.#} bar lies above the {charge.Bars:0.#} bar that the pump can give, "
                + $"so no oil can enter it. Lower the precharge below the pump's relief pressure, or check both readings.");

        return GasVolume.CubicMeters * (Precharge.Pascals + AirPascals) / (charge.Pascals + AirPascals);
    }
}
