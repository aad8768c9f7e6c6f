namespace BrakeBalance.Brakes;

/// <summary>The drum brake of one wheel: two shoes that wheel-cylinder pistons press outwards against a drum.</summary>
/// <remarks>
/// <para>
/// C* is counted on the force of one piston, p · π d²/4 with d the wheel-cylinder bore, in every <see cref="ShoeArrangement"/>,
/// although two pistons act: leading-trailing and duo-servo have one cylinder with two pistons, two-leading has two cylinders
/// with one piston each. The braking torque of the wheel is C* times that one force times the drum's inside radius.
/// </para>
/// <para>Source: C* as defined in Breuer and Bill, Bremsenhandbuch (2006), seen second hand.</para>
/// </remarks>
public sealed record DrumBrake : Brake
{
    // Nearer to self-locking the brake factor is beyond anything that a lining does.
    private const double BelowLocking = 0.98;

    /// <summary>How the shoes are pushed and supported in forward rotation.</summary>
    public required ShoeArrangement Arrangement { get; init; }

    /// <summary>Bore of one wheel cylinder; both pistons have this bore; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length WheelCylinderDiameter { get; init => field = Require.Positive(value); }

    /// <summary>Inside radius of the drum, where the linings rub; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public override required Length EffectiveRadius { get; init => field = Require.Positive(value); }

    /// <summary>The shoes, by geometry or by a catalogue brake factor.</summary>
    public required DrumShoes Shoes { get; init; }

    /// <summary>Area of one wheel-cylinder bore.</summary>
    public override Area PistonArea => Area.FromCircleDiameter(WheelCylinderDiameter);

    /// <summary>A drum.</summary>
    public override BrakeConstruction? Construction => BrakeConstruction.Drum;

    /// <summary>Friction coefficient at which a shoe self-locks [–]; null when none does.</summary>
    /// <returns>The smallest such friction coefficient, which may lie above the accepted range of friction.</returns>
    /// <remarks>
    /// <para>Source: see <see cref="ShoeGeometry"/>, <see cref="DuoServoGeometry"/>, <see cref="CatalogueShoes"/>.</para>
    /// </remarks>
    public double? SelfLockingFriction() => Shoes.SelfLocking(Arrangement, EffectiveRadius);

    /// <inheritdoc/>
    public override double GreatestFriction => Math.Min(HighestFriction, BelowLocking * SelfLockingFriction() ?? HighestFriction);

    private protected override double Factor(double friction) => Shoes.Factor(Arrangement, friction, EffectiveRadius);
}
