namespace BrakeBalance.Hydraulics;

/// <summary>Proportioning valve: passes line pressure unchanged up to the knee, then a fraction of any further rise.</summary>
/// <remarks>
/// <para>p₂ = p₁ for p₁ ≤ p_k; p₂ = p_k + s (p₁ − p_k) above.</para>
/// <para>Assumes quasi-static application.</para>
/// <para>Source: common practice; the knee-and-slope form is the one by which such valves are specified.</para>
/// </remarks>
public sealed record ProportioningValve : ReducingValve
{
    /// <summary>Inlet line pressure at which proportioning begins, gauge; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public required Pressure Knee { get; init => field = Require.NotNegative(value); }

    /// <summary>Rise of outlet pressure per rise of inlet pressure above the knee [–]; 0 to 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 1, or is not a number.</exception>
    public required double Slope { get; init => field = Require.Between(value, 0, 1); }

    /// <summary>How the knee is adjusted; null for a fixed valve.</summary>
    public KneeAdjustment? Adjustment { get; init; }

    private protected override ValveLaw Lines => ValveLaw.AboveKnee(Knee.Pascals, Slope);
}
