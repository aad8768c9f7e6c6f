namespace BrakeBalance.Tyres;

/// <summary>Slip curve with an exponential rise and a linear fall.</summary>
/// <remarks>
/// <para>μ(s) = c₁ (1 − e^(−c₂ s)) − c₃ s; greatest at s* = ln(c₁ c₂/c₃)/c₂, or at lock when c₃ = 0.</para>
/// <para>Assumes one load and one speed.</para>
/// <para>Source: M. Burckhardt, Fahrwerktechnik: Radschlupf-Regelsysteme, 1993 (form seen second hand in published code).</para>
/// </remarks>
public sealed record BurckhardtCurve : SlipCurve
{
    /// <summary>Asymptote of the rising part [–]; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required double C1 { get; init => field = Require.Positive(value); }

    /// <summary>Steepness of the rise [–]; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required double C2 { get; init => field = Require.Positive(value); }

    /// <summary>Linear fall with slip [–]; not negative, zero for a curve without a peak.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public required double C3 { get; init => field = Require.NotNegative(value); }

    private protected override double Shape(double slip, double loadNewtons) => C1 * (1 - Math.Exp(-C2 * slip)) - C3 * slip;

    internal override double PeakSlipAt(double loadNewtons) => C3 == 0 ? 1 : Math.Clamp(Math.Log(C1 * C2 / C3) / C2, 0, 1);
}
