namespace BrakeBalance.Hydraulics;

/// <summary>A long straight line through which fluid creeps: its resistance decides how fast a cold brake comes on.</summary>
/// <remarks>
/// <para>Δp = 128 μ L Q / (π D⁴).</para>
/// <para>Valid for: laminar flow, Reynolds number below about 2,300. Source: Hagen–Poiseuille law.</para>
/// </remarks>
public sealed record LaminarLine
{
    /// <summary>Inner diameter; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length Bore { get; init => field = Require.Positive(value); }

    /// <summary>Length; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length Length { get; init => field = Require.Positive(value); }

    /// <summary>Dynamic viscosity of the fluid; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required DynamicViscosity Viscosity { get; init => field = Require.Positive(value); }

    /// <summary>Pressure lost along the line.</summary>
    /// <param name="flow">Flow through it; its sign is that of the loss.</param>
    /// <returns>Pressure difference.</returns>
    public Pressure PressureDrop(VolumeFlow flow)
    {
        double bore = Bore.Meters;
        return Pressure.FromPascals(
            128 * Viscosity.PascalSeconds * Length.Meters * flow.CubicMetersPerSecond / (Math.PI * bore * bore * bore * bore));
    }
}
