namespace BrakeBalance.Brakes;

/// <summary>
/// Geometry of a duo-servo drum brake in forward rotation: primary shoe, floating adjuster link, secondary shoe, anchor pin.
/// </summary>
/// <remarks>
/// <para>
/// One double-ended wheel cylinder presses both shoes with F. The primary shoe leaves the anchor, is supported only by the link
/// and passes S = (F a + T₁)/l to it (moments about the drum's centre: a cylinder distance, l link distance). The secondary
/// shoe turns about the anchor pin at distance A and is applied by the moment S (A + l) + F (A − a). C* = (T₁ + T₂)/(r F).
/// </para>
/// <para>Assumes rigid shoes, a link that carries force only along itself and parallel to the cylinder, both perpendicular to the line
/// through drum centre and anchor.</para>
/// <para>Source: own equilibrium; secondary shoe as the long pivoted shoe of Shigley's Mechanical Engineering Design, section 16-2 (from
/// memory).</para>
/// </remarks>
public sealed record DuoServoGeometry : DrumShoes
{
    /// <summary>Distance from the drum's centre to the wheel cylinder's axis, on the anchor's side; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public required Length CylinderDistance { get; init => field = Require.NotNegative(value); }

    /// <summary>Distance from the drum's centre to the anchor pin; above zero, usually beyond the cylinder.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length AnchorDistance { get; init => field = Require.Positive(value); }

    /// <summary>Distance from the drum's centre to the adjuster link's axis, opposite the anchor; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length LinkDistance { get; init => field = Require.Positive(value); }

    /// <summary>Arc of the primary lining (usually the shorter), measured from the line to the link.</summary>
    public required LiningArc PrimaryLining { get; init; }

    /// <summary>Arc of the secondary lining (usually the longer), measured from the line to the anchor.</summary>
    public required LiningArc SecondaryLining { get; init; }

    /// <summary>C* of the primary shoe alone [–]: its friction force per wheel-cylinder force.</summary>
    /// <param name="friction">Lining friction coefficient [–]; above 0, at most 1.2.</param>
    /// <param name="drumRadius">Inside radius of the drum; above zero.</param>
    /// <returns>The primary shoe's part of C* [–].</returns>
    /// <remarks><para>Source: as for the type.</para></remarks>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range, or the shoe self-locks at this friction.</exception>
    public double PrimaryShoeFactor(double friction, Length drumRadius)
    {
        Require.PositiveUpTo(friction, Brake.HighestFriction, nameof(friction));
        Require.Positive(drumRadius, nameof(drumRadius));
        return Primary(drumRadius).LeadingPerMoment(friction) * (CylinderDistance.Meters + LinkDistance.Meters)
            ?? throw Locks("primary shoe", friction, SelfLocking(ShoeArrangement.DuoServo, drumRadius));
    }

    /// <summary>C* of the secondary shoe [–]: its friction force per wheel-cylinder force, driven mostly through the link.</summary>
    /// <param name="friction">Lining friction coefficient [–]; above 0, at most 1.2.</param>
    /// <param name="drumRadius">Inside radius of the drum; above zero.</param>
    /// <returns>The secondary shoe's part of C* [–].</returns>
    /// <remarks><para>Source: as for the type.</para></remarks>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range, or a shoe self-locks at this friction.</exception>
    public double SecondaryShoeFactor(double friction, Length drumRadius)
    {
        double link = LinkForceRatio(friction, drumRadius);
        double moment = (link * (AnchorDistance.Meters + LinkDistance.Meters)) + AnchorDistance.Meters - CylinderDistance.Meters;
        return Secondary(drumRadius).LeadingPerMoment(friction) * moment
            ?? throw Locks("secondary shoe", friction, SelfLocking(ShoeArrangement.DuoServo, drumRadius));
    }

    /// <summary>Force in the adjuster link per wheel-cylinder force [–].</summary>
    /// <param name="friction">Lining friction coefficient [–]; above 0, at most 1.2.</param>
    /// <param name="drumRadius">Inside radius of the drum; above zero.</param>
    /// <returns>How many times the cylinder's force the primary shoe passes on [–].</returns>
    /// <remarks><para>S/F = (a + C*₁ r)/l. Source: as for the type.</para></remarks>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range, or the primary shoe self-locks.</exception>
    public double LinkForceRatio(double friction, Length drumRadius) =>
        (CylinderDistance.Meters + (PrimaryShoeFactor(friction, drumRadius) * drumRadius.Meters)) / LinkDistance.Meters;

    internal override double Factor(ShoeArrangement arrangement, double friction, Length drumRadius) =>
        arrangement == ShoeArrangement.DuoServo
        ? PrimaryShoeFactor(friction, drumRadius) + SecondaryShoeFactor(friction, drumRadius)
        : throw new ArgumentException(Invariant.Text($"DuoServoGeometry describes a DuoServo brake, but the arrangement is {arrangement}; "
            + $"give ShoeGeometry or CatalogueShoes for it."));

    internal override double? SelfLocking(ShoeArrangement arrangement, Length drumRadius)
    {
        SlidingShoe primary = Primary(drumRadius);
        double? first = SelfLockingSearch.Smallest(friction => primary.LeadingPerMoment(friction) is null);
        double? second = Secondary(drumRadius).SelfLocking is double limit && limit <= SelfLockingSearch.Highest ? limit : null;
        return first is null || second is null ? first ?? second : Math.Min(first.Value, second.Value);
    }

    private SlidingShoe Primary(Length drumRadius)
    {
        (double start, double end) = PrimaryLining.Radians;
        return new SlidingShoe(drumRadius.Meters, LinkDistance.Meters, start, end);
    }

    private PivotedShoe Secondary(Length drumRadius)
    {
        (double start, double end) = SecondaryLining.Radians;
        return new PivotedShoe(drumRadius.Meters, AnchorDistance.Meters, ShoeIntegrals.Over(start, end));
    }
}
