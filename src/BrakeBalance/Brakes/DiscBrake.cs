namespace BrakeBalance.Brakes;

/// <summary>The disc brake of one wheel: two pads that squeeze a disc.</summary>
/// <remarks>
/// <para>C* = 2 μ: the pistons of one side press one pad with p·A, the other pad is pressed just as hard by the opposite
/// pistons (fixed caliper) or by reaction (sliding caliper), and both rub.</para>
/// <para>Assumes no self-energising of the pads.</para>
/// <para>Source: Breuer and Bill, Bremsenhandbuch (2006), disc 2 μ, seen second hand.</para>
/// </remarks>
public sealed record DiscBrake : Brake
{
    /// <summary>The pistons of one side of the caliper.</summary>
    public required PistonSet Pistons { get; init; }

    /// <summary>Distance from the wheel's axis at which the pads' friction force acts; above zero.</summary>
    /// <remarks>
    /// From the pad's edges by <see cref="PadRing.EffectiveRadiusUniformWear"/> or <see cref="PadRing.EffectiveRadiusUniformPressure"/>.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public override required Length EffectiveRadius { get; init => field = Require.Positive(value); }

    /// <summary>Piston area of one side of the caliper.</summary>
    public override Area PistonArea => Pistons.Area;

    /// <summary>A disc.</summary>
    public override BrakeConstruction? Construction => BrakeConstruction.Disc;

    /// <summary>Always 1: a disc brake's torque follows pad friction in proportion [–].</summary>
    public override double FrictionSensitivity => 1;

    private protected override double Factor(double friction) => 2 * friction;
}
