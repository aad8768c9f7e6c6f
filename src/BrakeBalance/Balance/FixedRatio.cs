namespace BrakeBalance.Balance;

/// <summary>Closed forms for a car whose brakes share the force in one fixed ratio: no valve, no threshold, no aerodynamics.</summary>
/// <remarks>
/// <para>Ψ static rear load share, Φ rear share of the braking force, χ = h/E, k adhesion.</para>
/// <para>z_crit = (Ψ − Φ)/χ; front lock-up E₁ = (1 − Ψ)/(1 − Φ − k χ); rear lock-up E₂ = Ψ/(Φ + k χ).</para>
/// <para>
/// Source: Limpert, Brake Design and Safety (from memory), and the lock limits of Crolla (ed.), Automotive Engineering, 2009, ch. 12.1
/// (read); algebraically the synchronous adhesion and utilisation of Yu, Automobile Theory, ch. 4 (read in a course report).
/// </para>
/// </remarks>
public sealed record FixedRatio
{
    /// <summary>Rear axle's share of the weight at rest, Ψ [–]; 0.05 to 0.95.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.05 to 0.95.</exception>
    public required double StaticRearShare { get; init => field = Require.Between(value, 0.05, 0.95); }

    /// <summary>Rear axle's share of the braking force, Φ [–]; 0 to 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 1.</exception>
    public required double RearForceShare { get; init => field = Require.Between(value, 0, 1); }

    /// <summary>Height of the centre of gravity over wheelbase, χ [–]; above 0, at most 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.01 to 1.</exception>
    public required double RelativeHeight { get; init => field = Require.Between(value, 0.01, 1); }

    /// <summary>Deceleration at which both axles use the same adhesion [–].</summary>
    /// <returns>The rate; null when the rear axle leads at every rate (Φ ≥ Ψ).</returns>
    public double? CriticalRate => StaticRearShare > RearForceShare ? (StaticRearShare - RearForceShare) / RelativeHeight : null;

    /// <summary>Deceleration at which the front axle locks [–].</summary>
    /// <param name="adhesion">Coefficient of adhesion, k [–]; above zero.</param>
    /// <returns>z; null when load transfer outruns the front's demand so that it never locks.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="adhesion"/> is not above zero.</exception>
    public double? FrontLockRate(double adhesion)
    {
        Require.Positive(adhesion, nameof(adhesion));
        double rest = 1 - RearForceShare - adhesion * RelativeHeight;
        return rest > 0 ? adhesion * (1 - StaticRearShare) / rest : null;
    }

    /// <summary>Deceleration at which the rear axle locks [–].</summary>
    /// <param name="adhesion">Coefficient of adhesion, k [–]; above zero.</param>
    /// <returns>z [–].</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="adhesion"/> is not above zero.</exception>
    public double RearLockRate(double adhesion) =>
        Require.Positive(adhesion, nameof(adhesion)) * StaticRearShare / (RearForceShare + adhesion * RelativeHeight);

    /// <summary>Deceleration at the first lock-up [–].</summary>
    /// <param name="adhesion">Coefficient of adhesion, k [–]; above zero.</param>
    /// <returns>The smaller of the two lock-up rates.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="adhesion"/> is not above zero.</exception>
    public double FirstLockRate(double adhesion) => Math.Min(FrontLockRate(adhesion) ?? double.PositiveInfinity, RearLockRate(adhesion));

    /// <summary>Braking efficiency at the first lock-up, z/k [–].</summary>
    /// <param name="adhesion">Coefficient of adhesion, k [–]; above zero.</param>
    /// <returns>0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="adhesion"/> is not above zero.</exception>
    public double Efficiency(double adhesion) => FirstLockRate(adhesion) / adhesion;
}
