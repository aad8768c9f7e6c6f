namespace BrakeBalance.Brakes;

/// <summary>Two shoes alike of which neither drives the other; each leads or trails.</summary>
public abstract record IndependentShoes : DrumShoes
{
    private protected IndependentShoes()
    {
    }

    /// <summary>C* of one leading shoe [–]: friction force at the drum per actuating force on that shoe.</summary>
    /// <param name="friction">Lining friction coefficient [–]; above 0, at most 1.2.</param>
    /// <param name="drumRadius">Radius at which the lining rubs; above zero.</param>
    /// <returns>The shoe's factor [–]; above zero.</returns>
    /// <remarks><para>Source: see the type of the shoes.</para></remarks>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range, or the shoe self-locks at this friction.</exception>
    public double LeadingShoeFactor(double friction, Length drumRadius)
    {
        Check(friction, drumRadius);
        return Leading(friction, drumRadius.Meters) ?? throw Locks("leading shoe", friction, SelfLockingFriction(drumRadius));
    }

    /// <summary>C* of one trailing shoe [–]: friction force at the drum per actuating force on that shoe.</summary>
    /// <param name="friction">Lining friction coefficient [–]; above 0, at most 1.2.</param>
    /// <param name="drumRadius">Radius at which the lining rubs; above zero.</param>
    /// <returns>The shoe's factor [–]; above zero.</returns>
    /// <remarks><para>Source: see the type of the shoes.</para></remarks>
    /// <exception cref="ArgumentOutOfRangeException">
    /// An argument is out of range, or the geometry is such that the trailing shoe locks at this friction.
    /// </exception>
    public double TrailingShoeFactor(double friction, Length drumRadius)
    {
        Check(friction, drumRadius);
        return Trailing(friction, drumRadius.Meters) ?? throw Locks("trailing shoe", friction, null);
    }

    /// <summary>Friction coefficient at which the leading shoe self-locks [–].</summary>
    /// <param name="drumRadius">Radius at which the lining rubs; above zero.</param>
    /// <returns>The smallest self-locking friction coefficient, or null when there is none up to 3.</returns>
    /// <remarks><para>Found by halving, to 1e-9. Source: see the type of the shoes.</para></remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="drumRadius"/> is not above zero.</exception>
    public double? SelfLockingFriction(Length drumRadius)
    {
        double radius = Require.Positive(drumRadius, nameof(drumRadius)).Meters;
        return SelfLockingSearch.Smallest(friction => Leading(friction, radius) is null);
    }

    internal override double Factor(ShoeArrangement arrangement, double friction, Length drumRadius) => arrangement switch
    {
        ShoeArrangement.LeadingTrailing => LeadingShoeFactor(friction, drumRadius) + TrailingShoeFactor(friction, drumRadius),
        ShoeArrangement.TwoLeading => 2 * LeadingShoeFactor(friction, drumRadius),
        ShoeArrangement.TwoTrailing => 2 * TrailingShoeFactor(friction, drumRadius),
        _ => throw new ArgumentException(Invariant.Text(
            $"{GetType().Name} describes shoes that do not drive one another, but the arrangement is {arrangement}; "
                + $"give DuoServoGeometry or CatalogueShoes for it.")),
    };

    internal override double? SelfLocking(ShoeArrangement arrangement, Length drumRadius)
    {
        // A trailing shoe of an odd geometry can be dragged along its support.
        double radius = drumRadius.Meters;
        return SelfLockingSearch.Smallest(friction =>
            (arrangement != ShoeArrangement.TwoTrailing && Leading(friction, radius) is null)
            || (arrangement != ShoeArrangement.TwoLeading && Trailing(friction, radius) is null));
    }

    /// <summary>C* of one leading shoe [–]; null at and past self-locking.</summary>
    private protected abstract double? Leading(double friction, double drumRadiusMetres);

    /// <summary>C* of one trailing shoe [–]; null when it locks.</summary>
    private protected abstract double? Trailing(double friction, double drumRadiusMetres);

    private static void Check(double friction, Length drumRadius)
    {
        Require.PositiveUpTo(friction, Brake.HighestFriction, nameof(friction));
        Require.Positive(drumRadius, nameof(drumRadius));
    }
}
