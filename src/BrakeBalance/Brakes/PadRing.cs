namespace BrakeBalance.Brakes;

/// <summary>The ring a disc brake's pad sweeps, from which the effective radius follows.</summary>
public sealed record PadRing
{
    /// <summary>Radius of the pad's inner edge from the wheel's axis; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public required Length InnerRadius { get; init => field = Require.NotNegative(value); }

    /// <summary>Radius of the pad's outer edge from the wheel's axis; above the inner radius.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length OuterRadius { get; init => field = Require.Positive(value); }

    /// <summary>Angle the pad covers seen from the wheel's axis; above 0°, at most 180°.</summary>
    /// <remarks>
    /// Default 60°, common practice for road-car pads; it sets how far the pad's centre of force lies inside the effective radius, not
    /// the torque.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above 0° or is above 180°.</exception>
    public Angle Arc { get; init => field = Angle.FromDegrees(Require.PositiveUpTo(value.Degrees, 180)); } = Angle.FromDegrees(60);

    /// <summary>Effective radius of a worn-in pad: halfway between the edges.</summary>
    /// <returns>The radius at which the friction force may be taken to act.</returns>
    /// <remarks>
    /// <para>r_e = (r_i + r_o)/2. Assumes wear ∝ pressure × speed, the same over the pad.</para>
    /// <para>Source: Shigley's Mechanical Engineering Design, section 16-6, uniform wear (from memory).</para>
    /// </remarks>
    /// <exception cref="ArgumentException">The outer radius is not above the inner radius.</exception>
    public Length EffectiveRadiusUniformWear()
    {
        (double inner, double outer) = Edges();
        return Length.FromMeters((inner + outer) / 2);
    }

    /// <summary>Effective radius of a new pad that presses evenly.</summary>
    /// <returns>The radius at which the friction force may be taken to act.</returns>
    /// <remarks>
    /// <para>r_e = (2/3)(r_o³ − r_i³)/(r_o² − r_i²). Assumes the same pressure over the pad.</para>
    /// <para>Source: Shigley's Mechanical Engineering Design, section 16-6, uniform pressure (from memory).</para>
    /// </remarks>
    /// <exception cref="ArgumentException">The outer radius is not above the inner radius.</exception>
    public Length EffectiveRadiusUniformPressure()
    {
        (double inner, double outer) = Edges();
        return Length.FromMeters(2.0 / 3 * ((inner * inner) + (inner * outer) + (outer * outer)) / (inner + outer));
    }

    /// <summary>Highest lining pressure of a worn-in pad, which is at its inner edge.</summary>
    /// <param name="clamping">Force with which one pad is pressed on the disc; not negative.</param>
    /// <returns>Pressure between pad and disc at the inner edge.</returns>
    /// <remarks>
    /// <para>F = θ p_a r_i (r_o − r_i), solved for p_a.</para>
    /// <para>Source: Shigley's Mechanical Engineering Design, section 16-6, uniform wear (from memory).</para>
    /// </remarks>
    /// <exception cref="ArgumentException">The outer radius is not above the inner radius, or the inner radius is zero.</exception>
    public Pressure HighestPressureUniformWear(Force clamping)
    {
        Require.NotNegative(clamping, nameof(clamping));
        (double inner, double outer) = Edges();
        return inner > 0
            ? Pressure.FromPascals(clamping.Newtons / (Arc.Radians * inner * (outer - inner)))
            : throw new ArgumentException(
                "A pad that reaches the wheel's axis has no finite pressure there under uniform wear; give an inner radius above zero.");
    }

    /// <summary>Lining pressure of a new pad that presses evenly.</summary>
    /// <param name="clamping">Force with which one pad is pressed on the disc; not negative.</param>
    /// <returns>Pressure between pad and disc, the same everywhere.</returns>
    /// <remarks>
    /// <para>F = ½ θ p_a (r_o² − r_i²), solved for p_a.</para>
    /// <para>Source: Shigley's Mechanical Engineering Design, section 16-6, uniform pressure (from memory).</para>
    /// </remarks>
    /// <exception cref="ArgumentException">The outer radius is not above the inner radius.</exception>
    public Pressure PressureUniform(Force clamping)
    {
        Require.NotNegative(clamping, nameof(clamping));
        (double inner, double outer) = Edges();
        return Pressure.FromPascals(2 * clamping.Newtons / (Arc.Radians * ((outer * outer) - (inner * inner))));
    }

    private (double Inner, double Outer) Edges() => OuterRadius.Meters > InnerRadius.Meters
        ? (InnerRadius.Meters, OuterRadius.Meters)
        : throw new ArgumentException(Invariant.Text($"The pad's outer radius ({OuterRadius.Millimeters:0.###} "
            + $"mm) must be greater than its inner radius ({InnerRadius.Millimeters:0.###} mm)."));
}
