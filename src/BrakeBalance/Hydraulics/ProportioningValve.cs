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
    [Field("Inlet pressure at which the outlet stops following one to one", ByClass = true, Typical = "200 psi .. 900 psi", Required = true,
        Low = "0 bar", High = "300 bar", Example = "35 bar",
        HowToMeasure = "Two gauges, one each side of the valve: inlet pressure at which they part")]
    [Usual("10 bar", "75 bar", Above = "bar given for psi", Below = "psi given for bar")]
    public required Pressure Knee { get; init => field = Require.NotNegative(value); }

    /// <summary>Rise of outlet pressure per rise of inlet pressure above the knee [–]; 0 to 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 1, or is not a number.</exception>
    [Field("Rise of the outlet over rise of the inlet above the knee", ByClass = true, Typical = "0.2 .. 0.5", Required = true, Low = "0",
        High = "1", Example = "0.4",
        HowToMeasure = "Two gauges: difference of outlet over difference of inlet between two readings above the knee")]
    [Usual("0.2", "0.5", Above = "percent reduction given for slope (a 57 % reduction is a slope of 0.43)")]
    public required double Slope { get; init => field = Require.Between(value, 0, 1); }

    /// <inheritdoc/>
    [Field("How much higher the outlet stands at the same inlet on release than on application, above the knee; none when left out",
        Low = "0 bar", High = "40 bar", Example = "3 bar",
        HowToMeasure = "Two gauges, rising and falling: difference of the outlets at the same inlet")]
    public override Pressure Hysteresis { get; init => field = Require.NotNegative(value); }

    /// <summary>How the knee is adjusted; null for a fixed valve.</summary>
    [Field("The adjuster, when the valve has one", Key = "adjuster")]
    public KneeAdjustment? Adjustment { get; init; }

    /// <inheritdoc/>
    [Field("Whether the valve opens fully when the front circuit is lost, as some combination valves do; false when left out",
        Example = "true", HowToMeasure = "Two gauges, front circuit open at a bleeder: does the rear follow one to one?")]
    public override bool BypassWhenFrontLost { get; init; }

    private protected override ValveLaw Lines => ValveLaw.AboveKnee(Knee.Pascals, Slope);
}
