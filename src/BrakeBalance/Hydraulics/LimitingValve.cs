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
    [Field("Highest outlet pressure", Required = true, Low = "0 bar", High = "300 bar", Example = "45 bar",
        HowToMeasure = "Gauge behind the valve under a hard push")]
    [Usual("15 bar", "100 bar", Above = "bar given for psi", Below = "psi given for bar")]
    public required Pressure Limit { get; init => field = Require.NotNegative(value); }

    /// <inheritdoc/>
    [Field("How much higher the outlet stands at the same inlet on release than on application, above the limit; none when left out",
        Low = "0 bar", High = "40 bar", Example = "3 bar",
        HowToMeasure = "Two gauges, rising and falling: difference of the outlets at the same inlet")]
    public override Pressure Hysteresis { get; init => field = Require.NotNegative(value); }

    /// <inheritdoc/>
    [Field("Whether the valve opens fully when the front circuit is lost, as some combination valves do; false when left out",
        Example = "true", HowToMeasure = "Two gauges, front circuit open at a bleeder: does the rear follow one to one?")]
    public override bool BypassWhenFrontLost { get; init; }

    private protected override ValveLaw Lines => ValveLaw.AboveKnee(Limit.Pascals, 0);
}
