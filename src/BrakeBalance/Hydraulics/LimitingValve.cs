namespace BrakeBalance.Hydraulics;

/// <summary>Pressure limiter: passes line pressure unchanged up to its limit and holds it there.</summary>
/// <remarks>
/// <para>p₂ = min(p₁, p_max).</para>
/// <para>Source: common practice; the limit is a proportioning valve of slope zero.</para>
/// </remarks>
public sealed record LimitingValve : ReducingValve
{
    /// <summary>Highest outlet line pressure, gauge; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public required Pressure Limit { get; init => field = Require.NotNegative(value); }

    private protected override ValveLaw Lines => ValveLaw.AboveKnee(Limit.Pascals, 0);
}
