namespace BrakeBalance.Hydraulics;

/// <summary>A valve that holds back part of the rise of pressure, and lets go of it late as the pressure falls.</summary>
/// <remarks>
/// <para>Rising: p₂ = f(p₁). Falling: p₂ = min(p₁, f(p₁) + H), and never above the highest outlet reached while it rose.</para>
/// <para>
/// H is what two gauges show above the knee, outlet on release less outlet on application at the same inlet; the friction of the seals
/// makes it.
/// </para>
/// <para>Source: quasi-static friction of the valve's piston, common practice.</para>
/// </remarks>
/// <seealso cref="ProportioningValve"/>
/// <seealso cref="LimitingValve"/>
/// <seealso cref="LoadSensingValve"/>
public abstract record ReducingValve : PressureValve
{
    private protected ReducingValve()
    {
    }

    /// <summary>How much higher the outlet stands on release than on application at the same inlet, above the knee; not negative; zero
    /// unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public abstract Pressure Hysteresis { get; init; }

    /// <inheritdoc/>
    public override bool LetsGoLate => Hysteresis > Pressure.Zero;

    /// <inheritdoc/>
    public sealed override double OutletPascals(double inletPascals, double rearAxleLoadNewtons, double highestOutletPascals)
    {
        double rising = OutletPascals(inletPascals, rearAxleLoadNewtons);
        return Math.Max(rising, Math.Min(Math.Min(inletPascals, rising + Hysteresis.Pascals), highestOutletPascals));
    }
}
