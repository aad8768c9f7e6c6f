using UnitsNet;

namespace BrakeBalance.Brakes;

/// <summary>Geometry of the shoes of a leading-trailing, two-leading or two-trailing drum brake; both shoes alike.</summary>
/// <remarks>
/// <para>Rigid shoe and drum, lining pressure following the shoe's movement (sinusoidal). See <see cref="SelfLockingFriction"/> for the limit of a leading shoe.</para>
/// <para>Source: pivoted shoe, Shigley's Mechanical Engineering Design, section 16-2 (from memory); sliding shoe, own equilibrium from the same pressure law.</para>
/// </remarks>
public sealed record ShoeGeometry : DrumShoes
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

    /// <summary>C* of one leading shoe [–]: friction force at the drum per wheel-cylinder force on that shoe.</summary>
    /// <param name="friction">Lining friction coefficient [–]; above 0, at most 1.2.</param>
    /// <param name="drumRadius">Inside radius of the drum; above zero.</param>
    /// <returns>The shoe's factor [–]; above zero.</returns>
    /// <remarks><para>Source: as for the type.</para></remarks>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range, or the shoe self-locks at this friction.</exception>
    public double LeadingShoeFactor(double friction, Length drumRadius)
    {
        Check(friction, drumRadius);
        double? perMoment = Support == ShoeSupport.Pivoted
            ? Pivoted(drumRadius).LeadingPerMoment(friction)
            : Sliding(drumRadius).LeadingPerMoment(friction);
        return perMoment * ActuatingArm.Meters ?? throw Locks("leading shoe", friction, SelfLockingFriction(drumRadius));
    }

    /// <summary>C* of one trailing shoe [–]: friction force at the drum per wheel-cylinder force on that shoe.</summary>
    /// <param name="friction">Lining friction coefficient [–]; above 0, at most 1.2.</param>
    /// <param name="drumRadius">Inside radius of the drum; above zero.</param>
    /// <returns>The shoe's factor [–]; above zero.</returns>
    /// <remarks><para>Source: as for the type.</para></remarks>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range, or the lining sits so near the pivot that reversed friction locks the shoe.</exception>
    public double TrailingShoeFactor(double friction, Length drumRadius)
    {
        Check(friction, drumRadius);
        double? perMoment = Support == ShoeSupport.Pivoted
            ? Pivoted(drumRadius).TrailingPerMoment(friction)
            : Sliding(drumRadius).TrailingPerMoment(friction);
        return perMoment * ActuatingArm.Meters ?? throw Locks("trailing shoe", friction, null);
    }

    /// <summary>Friction coefficient at which the leading shoe self-locks [–].</summary>
    /// <param name="drumRadius">Inside radius of the drum; above zero.</param>
    /// <returns>The smallest self-locking friction coefficient, or null when there is none up to 3.</returns>
    /// <remarks>
    /// <para>Pivoted: A∫sin² / (r∫sin − A∫sin cos). Sliding: found by halving, to 1e-9.</para>
    /// <para>Source: as for the type.</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="drumRadius"/> is not above zero.</exception>
    public double? SelfLockingFriction(Length drumRadius)
    {
        Require.Positive(drumRadius, nameof(drumRadius));
        if (Support == ShoeSupport.Pivoted)
        {
            return Pivoted(drumRadius).SelfLocking is double limit && limit <= SelfLockingSearch.Highest ? limit : null;
        }

        SlidingShoe shoe = Sliding(drumRadius);
        return SelfLockingSearch.Smallest(friction => shoe.LeadingPerMoment(friction) is null);
    }

    internal override double Factor(ShoeArrangement arrangement, double friction, Length drumRadius) => arrangement switch
    {
        ShoeArrangement.LeadingTrailing => LeadingShoeFactor(friction, drumRadius) + TrailingShoeFactor(friction, drumRadius),
        ShoeArrangement.TwoLeading => 2 * LeadingShoeFactor(friction, drumRadius),
        ShoeArrangement.TwoTrailing => 2 * TrailingShoeFactor(friction, drumRadius),
        _ => throw new ArgumentException("A duo-servo brake needs DuoServoGeometry or CatalogueShoes; ShoeGeometry describes shoes that do not drive one another."),
    };

    internal override double? SelfLocking(ShoeArrangement arrangement, Length drumRadius) =>
        arrangement == ShoeArrangement.TwoTrailing ? null : SelfLockingFriction(drumRadius);

    private static void Check(double friction, Length drumRadius)
    {
        Require.PositiveUpTo(friction, Brake.HighestFriction, nameof(friction));
        Require.Positive(drumRadius, nameof(drumRadius));
    }

    private PivotedShoe Pivoted(Length drumRadius)
    {
        (double start, double end) = Lining.Radians;
        return new PivotedShoe(drumRadius.Meters, PivotDistance.Meters, ShoeIntegrals.Over(start, end));
    }

    private SlidingShoe Sliding(Length drumRadius)
    {
        (double start, double end) = Lining.Radians;
        return new SlidingShoe(drumRadius.Meters, PivotDistance.Meters, start, end);
    }
}
