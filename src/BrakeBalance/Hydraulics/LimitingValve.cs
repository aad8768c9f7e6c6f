namespace BrakeBalance.Hydraulics;

/// <summary>Pressure limiter: passes line pressure unchanged up to its limit and holds it there.</summary>
/// <remarks>
/// <para>p₂ = min(p₁, p_max).</para>
/// <para>Source: common practice; the limit is a proportioning valve of slope zero.</para>
/// </remarks>
public sealed record LimitingValve : ReducingValve
{
    private readonly double _limitPascals;

    /// <summary>Highest outlet line pressure, gauge; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public required Pressure Limit
    {
        get;
        init
        {
            field = Require.NotNegative(value);
            _limitPascals = value.Pascals;
        }
    }

    internal override ValveLaw Law => ValveLaw.AboveKnee(_limitPascals, 0);
}
