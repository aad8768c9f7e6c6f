using UnitsNet;

namespace BrakeBalance.Tests.Hydraulics;

/// <summary>The Hagen–Poiseuille law, Δp = 128 μ L Q / (π D⁴), to hold the pipe flow against.</summary>
internal sealed record LaminarLine
{
    public required Length Bore { get; init; }

    public required Length Length { get; init; }

    public required DynamicViscosity Viscosity { get; init; }

    public Pressure PressureDrop(VolumeFlow flow) => Pressure.FromPascals(
        128 * Viscosity.PascalSeconds * Length.Meters * flow.CubicMetersPerSecond / (Math.PI * Math.Pow(Bore.Meters, 4)));
}
