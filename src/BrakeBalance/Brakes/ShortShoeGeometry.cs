namespace BrakeBalance.Brakes;

/// <summary>Geometry of shoes whose normal and friction forces are each taken at one point: the block of the textbooks.</summary>
/// <remarks>
/// <para>C* = μ' a/(b − μ' c) leading, μ' a/(b + μ' c) trailing; it self-locks at μ' = b/c.</para>
/// <para>μ' = μ · 4 sin β/(2β + sin 2β) for a lining that covers 2β and is pressed straight onto the drum; μ' = μ for a very short
/// one.</para>
/// <para>For derivations and first estimates; for linings longer than about 60° prefer <see cref="ShoeGeometry"/> (common
/// practice).</para>
/// <para>Source: short-shoe form and equivalent friction of the block brake, standard textbook results (from memory).</para>
/// </remarks>
public sealed record ShortShoeGeometry : IndependentShoes
{
    /// <summary>Lever arm of the actuating force about the pivot, a; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length ActuatingArm { get; init => field = Require.Positive(value); }

    /// <summary>Lever arm of the normal force about the pivot, b; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length NormalArm { get; init => field = Require.Positive(value); }

    /// <summary>Lever arm of the friction force about the pivot, c; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public required Length FrictionArm { get; init => field = Require.NotNegative(value); }

    /// <summary>Angle the lining covers seen from the drum's centre, 2β; 0° (a very short lining) to 180°.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0° to 180°.</exception>
    public Angle LiningAngle { get; init => field = Angle.FromDegrees(Require.Between(value.Degrees, 0, 180)); } = Angle.Zero;

    /// <summary>Friction coefficient μ' that a short block would need to give the same torque [–].</summary>
    /// <param name="friction">Lining friction coefficient [–]; above 0.</param>
    /// <returns>μ · 4 sin β/(2β + sin 2β) [–]; never below <paramref name="friction"/>.</returns>
    /// <remarks><para>Source: equivalent friction of the pivoted-block brake, standard textbook result (from memory).</para></remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="friction"/> is not above zero.</exception>
    public double EquivalentFriction(double friction)
    {
        Require.Positive(friction, nameof(friction));
        double angle = LiningAngle.Radians;
        return angle == 0 ? friction : friction * 4 * Math.Sin(angle / 2) / (angle + Math.Sin(angle));
    }

    private protected override double? Leading(double friction, double drumRadiusMetres)
    {
        double equivalent = EquivalentFriction(friction);
        double resisting = NormalArm.Meters - (equivalent * FrictionArm.Meters);
        return resisting > 0 ? equivalent * ActuatingArm.Meters / resisting : null;
    }

    private protected override double? Trailing(double friction, double drumRadiusMetres)
    {
        double equivalent = EquivalentFriction(friction);
        return equivalent * ActuatingArm.Meters / (NormalArm.Meters + (equivalent * FrictionArm.Meters));
    }
}
