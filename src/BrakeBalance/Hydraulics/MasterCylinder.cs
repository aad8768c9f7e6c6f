namespace BrakeBalance.Hydraulics;

/// <summary>The cylinder, or pair of cylinders, that turns the rod's force into line pressure and its travel into volume.</summary>
/// <remarks>
/// <para>p = (F − F_spring − F_seal) / A, not below zero; for a quick-take-up cylinder see <see cref="QuickTakeUp"/>.</para>
/// <para>Volume and travel: see each kind. Slow application. Source: Pascal's law.</para>
/// </remarks>
/// <seealso cref="SingleMasterCylinder"/>
/// <seealso cref="TandemMasterCylinder"/>
/// <seealso cref="TwinMasterCylinders"/>
public abstract record MasterCylinder
{
    /// <summary>Smallest bore taken as sensible.</summary>
    public static Length SmallestBore { get; } = Length.FromMillimeters(9);

    /// <summary>Largest bore taken as sensible: beyond it a car's driver could not raise the pressure.</summary>
    public static Length LargestBore { get; } = Length.FromMillimeters(51);

    private protected MasterCylinder()
    {
    }

    /// <summary>Travel of a cylinder's rod from rest to its end; above zero. A tandem's is that of both chambers together.</summary>
    /// <remarks>About 1.5 to 1.75 in, of which half is planned on (common practice).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length Stroke { get; init => field = Require.Positive(value); }

    /// <summary>
    /// Travel of the rod before the compensating ports are covered and pressure can rise; not negative; 1.2 mm unless said (common
    /// practice).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Length CompensatingPortTravel { get; init => field = Require.NotNegative(value); } = Length.FromMillimeters(1.2);

    /// <summary>Force of the return springs against the rod; not negative; 100 N unless said (common practice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Force ReturnSpringForce { get; init => field = Require.NotNegative(value); } = Force.FromNewtons(100);

    /// <summary>Friction of the cups against the rod's travel; not negative; none unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Force SealFriction { get; init => field = Require.NotNegative(value); } = Force.Zero;

    /// <summary>Area of the piston that serves each axle.</summary>
    public abstract PerAxle<Area> PistonAreas { get; }

    /// <summary>
    /// Share of the rod's force that acts on the piston which serves each axle [–]; 1 for both with a single or tandem cylinder.
    /// </summary>
    public abstract PerAxle<double> ForceShares { get; }

    /// <summary>Pressures at the outlets for a force on the rod.</summary>
    /// <param name="rodForce">Force on the rod, or on the balance bar's bearing; not negative.</param>
    /// <returns>Front and rear outlet pressure, gauge, before any valve.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rodForce"/> is negative.</exception>
    public PerAxle<Pressure> OutletPressures(Force rodForce)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rodForce, Force.Zero);
        double net = NewtonsThatPress(Math.Max(0, rodForce.Newtons - ReturnSpringForce.Newtons - SealFriction.Newtons));
        PerAxle<Area> areas = PistonAreas;
        PerAxle<double> shares = ForceShares;
        return new(
            Pressure.FromPascals(net * shares.Front / areas.Front.SquareMeters),
            Pressure.FromPascals(net * shares.Rear / areas.Rear.SquareMeters));
    }

    /// <summary>Force on the rod for a pressure at one outlet.</summary>
    /// <param name="axle">Whose outlet.</param>
    /// <param name="outletPressure">Pressure at that outlet, gauge, before any valve; not negative.</param>
    /// <returns>Force on the rod; zero for no pressure.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="outletPressure"/> is negative.</exception>
    public Force RodForce(Axle axle, Pressure outletPressure)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(outletPressure, Pressure.Zero);
        double atPiston = outletPressure.Pascals * PistonAreas[axle].SquareMeters / ForceShares[axle];
        return Force.FromNewtons(atPiston > 0 ? NewtonsToPress(atPiston) + ReturnSpringForce.Newtons + SealFriction.Newtons : 0);
    }

    /// <summary>Travel of the rod that sends given volumes into the two circuits, travel to cover the ports included.</summary>
    /// <param name="volumes">Volume for the front and for the rear circuit; not negative.</param>
    /// <returns>
    /// Travel of the rod; may be longer than <see cref="Stroke"/>, then the pedal goes to the end before the pressure is there.
    /// </returns>
    public abstract Length RodTravel(PerAxle<Volume> volumes);

    /// <summary>Travel of the rod when one circuit has lost its fluid.</summary>
    /// <param name="lost">The circuit that takes no pressure any more.</param>
    /// <param name="volumes">Volume that the sound circuit needs, in its place; the lost one's is not looked at.</param>
    /// <returns>Travel of the rod; null when nothing is left to push (one cylinder for both circuits).</returns>
    public abstract Length? RodTravelWithout(Axle lost, PerAxle<Volume> volumes);

    /// <summary>Front master-cylinder pressure up to which a large bore fills the circuits; null for a cylinder without one.</summary>
    public virtual Pressure? BlowOffPressure => null;

    /// <summary>By how much less the rod travels because volume was sent by a large bore.</summary>
    /// <param name="filled">Volume that each circuit had taken at <see cref="BlowOffPressure"/>; not negative.</param>
    /// <returns>Travel to take off <see cref="RodTravel"/>; zero without a large bore.</returns>
    public virtual Length TravelSaved(PerAxle<Volume> filled) => Length.Zero;

    // Of the force behind springs and seals, what stands on the pressing piston; and the way back.
    private protected virtual double NewtonsThatPress(double net) => net;

    private protected virtual double NewtonsToPress(double atPiston) => atPiston;

    /// <summary>Whether a bore lies in the range that is taken as sensible.</summary>
    internal static bool IsSensible(Length bore) => bore >= SmallestBore && bore <= LargestBore;

    private protected static Length SensibleBore(Length bore, string name) => Require.Between(bore, SmallestBore, LargestBore, name);

    private protected static Area Circle(Length bore) => Area.FromSquareMeters(Math.PI / 4 * bore.Meters * bore.Meters);
}
