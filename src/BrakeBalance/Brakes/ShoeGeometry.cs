namespace BrakeBalance.Brakes;

/// <summary>Geometry of the shoes of a leading-trailing, two-leading or two-trailing drum brake; both shoes alike.</summary>
/// <remarks>
/// <para>Rigid shoe and drum; lining pressure follows the shoe's movement (sinusoidal). Pivoted leading shoe, with θ from the
/// pivot:</para>
/// <para>C* = μ c ∫sin θ / (A ∫sin² θ − μ (r ∫sin θ − A ∫sin θ cos θ)); trailing with a plus. It self-locks where the
/// denominator vanishes.</para>
/// <para>Source: pivoted shoe, Shigley's Mechanical Engineering Design, section 16-2 (from memory); sliding shoe, own equilibrium from
/// the same pressure law.</para>
/// </remarks>
public sealed record ShoeGeometry : IndependentShoes
{
    /// <summary>Distance from the drum's centre to the pivot or abutment; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length PivotDistance { get; init => field = Require.Positive(value); }

    /// <summary>Lever arm of the wheel-cylinder force about the pivot or abutment, perpendicular to the force; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length ActuatingArm { get; init => field = Require.Positive(value); }

    /// <summary>Arc the lining covers, measured from the line to the pivot or abutment.</summary>
    public required LiningArc Lining { get; init; }

    /// <summary>How the end away from the wheel cylinder is held; a pivot unless said otherwise.</summary>
    public ShoeSupport Support { get; init; } = ShoeSupport.Pivoted;

    private protected override double? Leading(double friction, double drumRadiusMetres) =>
        ActuatingArm.Meters * (Support == ShoeSupport.Pivoted
        ? Pivoted(drumRadiusMetres).LeadingPerMoment(friction)
        : Sliding(drumRadiusMetres).LeadingPerMoment(friction));

    private protected override double? Trailing(double friction, double drumRadiusMetres) =>
        ActuatingArm.Meters * (Support == ShoeSupport.Pivoted
        ? Pivoted(drumRadiusMetres).TrailingPerMoment(friction)
        : Sliding(drumRadiusMetres).TrailingPerMoment(friction));

    private PivotedShoe Pivoted(double drumRadiusMetres)
    {
        (double start, double end) = Lining.Radians;
        return new PivotedShoe(drumRadiusMetres, PivotDistance.Meters, ShoeIntegrals.Over(start, end));
    }

    private SlidingShoe Sliding(double drumRadiusMetres)
    {
        (double start, double end) = Lining.Radians;
        return new SlidingShoe(drumRadiusMetres, PivotDistance.Meters, start, end);
    }
}
