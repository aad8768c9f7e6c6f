namespace BrakeBalance.Tyres;

/// <summary>Linear loss of a tyre's adhesion coefficient as its load rises.</summary>
/// <remarks>
/// <para>λ(N) = 1 − k (N/N₀ − 1), never below <see cref="SmallestFactor"/>.</para>
/// <para>Assumes the linear fall of the peak coefficient that the Magic Formula's D = (b₁ F_z + b₂) F_z expresses.</para>
/// <para>Source: Bakker, Nyborg and Pacejka 1987, SAE 870421, form of the peak factor (from memory); typical k 0.05 to 0.2, common
/// practice; 0.04 and 0.06 around 4 kN follow from two public tyre files (second-hand).</para>
/// </remarks>
public sealed record LoadSensitivity
{
    /// <summary>Floor of the factor [–], far outside the loads of a road car.</summary>
    public const double SmallestFactor = 0.1;

    /// <summary>Normal reaction of one wheel at which the factor is one; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Force ReferenceLoad { get; init => field = Require.Positive(value); }

    /// <summary>Fraction of the coefficient lost when the load doubles from the reference load [–]; 0 to 0.5.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 0.5, or is not a number.</exception>
    public required double LossPerDoubling { get; init => field = Require.Between(value, 0, 0.5); }

    private Kept<double> _referenceNewtons;

    /// <summary>Factor on the adhesion coefficient for a load in newtons.</summary>
    internal double Factor(double loadNewtons) => Math.Max(SmallestFactor,
        1 - LossPerDoubling * (loadNewtons / _referenceNewtons.Of(this, static of => of.ReferenceLoad.Newtons) - 1));
}
