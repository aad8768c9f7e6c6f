namespace BrakeBalance.Brakes;

/// <summary>Shoes known only by a brake factor at one friction coefficient and by how sharply it follows friction.</summary>
/// <remarks>
/// <para>C* = C*₀ x / (1 + (S − 1)(1 − x)), with x = μ/μ₀: the form of a self-energising
/// shoe, with value C*₀ and sensitivity S at the nominal friction μ₀. It self-locks at μ₀ S/(S − 1).</para>
/// <para>Valid near the nominal friction. Prefer geometry or a measurement when there is one.</para>
/// <para>Source: own fit through one point with a given slope; shape from the short-shoe form μa/(b − μc) (from memory).</para>
/// </remarks>
public sealed record CatalogueShoes : DrumShoes
{
    /// <summary>Friction coefficient for which the brake factor is stated [–]; above 0, at most 1.2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero, or is above 1.2.</exception>
    public required double NominalFriction { get; init => field = Require.PositiveUpTo(value, Brake.HighestFriction); }

    /// <summary>C* of the whole brake at the nominal friction [–]: circumferential force per force of one piston; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required double NominalBrakeFactor { get; init => field = Require.Positive(value); }

    /// <summary>
    /// Relative change of C* per relative change of friction at the nominal friction [–]; above zero (trailing below 1, self-energising
    /// above 1).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required double NominalSensitivity { get; init => field = Require.Positive(value); }

    /// <summary>Middle-of-the-range shoes of an arrangement, when nothing better is known.</summary>
    /// <param name="arrangement">The arrangement.</param>
    /// <returns>Shoes at a nominal friction of 0.38.</returns>
    /// <remarks>
    /// <para>C* and sensitivity at 0.38: leading-trailing 2.0 and 1.7; two-leading 3.0 and 2.0; two-trailing 1.1 and 0.6; duo-servo 4.5
    /// and 2.75.</para>
    /// <para>Source: common practice; the first, second and fourth lie in or beside the ranges of Breuer and Bill, Bremsenhandbuch
    /// (2006), seen second hand.</para>
    /// </remarks>
    public static CatalogueShoes Typical(ShoeArrangement arrangement) => arrangement switch
    {
        ShoeArrangement.LeadingTrailing => At38(2.0, 1.7),
        ShoeArrangement.TwoLeading => At38(3.0, 2.0),
        ShoeArrangement.TwoTrailing => At38(1.1, 0.6),
        ShoeArrangement.DuoServo => At38(4.5, 2.75),
        _ => throw new ArgumentOutOfRangeException(nameof(arrangement), arrangement, "Must be one of the named arrangements."),
    };

    internal override double Factor(ShoeArrangement arrangement, double friction, Length drumRadius)
    {
        double relative = friction / NominalFriction;
        double resisting = 1 + ((NominalSensitivity - 1) * (1 - relative));
        return resisting > 0 ? NominalBrakeFactor * relative / resisting
            : throw Locks("brake", friction, SelfLocking(arrangement, drumRadius));
    }

    internal override double? SelfLocking(ShoeArrangement arrangement, Length drumRadius) =>
        NominalSensitivity > 1 ? NominalFriction * NominalSensitivity / (NominalSensitivity - 1) : null;

    private static CatalogueShoes At38(double brakeFactor, double sensitivity) =>
        new() { NominalFriction = 0.38, NominalBrakeFactor = brakeFactor, NominalSensitivity = sensitivity };
}
