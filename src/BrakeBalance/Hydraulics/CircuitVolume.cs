namespace BrakeBalance.Hydraulics;

/// <summary>What the brakes, hoses and fluid of one axle swallow before and while the pressure rises.</summary>
/// <remarks>
/// V(p) = A (δ + δ_hot) + V_hose(p) + k p + V κ p + V_air p/(p + p₀), δ_hot where a drum has grown. Assumes that calipers, drums and
/// linings give way in proportion to pressure. Source: continuity; the terms as in A. Day, Braking of Road Vehicles (from memory).
/// </remarks>
public sealed record CircuitVolume
{
    /// <summary>
    /// Area of every piston that moves fluid on this axle, both sides of fixed calipers and both wheels counted; above zero.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Area PistonArea { get; init => field = Require.Positive(value); }

    /// <summary>Travel of each piston before the pads or shoes touch: clearance and roll-back; 0 to 10 mm.</summary>
    /// <remarks>About 0.015 in (0.4 mm) for a disc, 0.05 in (1.3 mm) for a drum in adjustment (common practice).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 10 mm.</exception>
    public required Length Clearance { get; init => field = Require.Between(value, Length.Zero, Length.FromMillimeters(10)); }

    /// <summary>How far the axle's drums grow when hot; null for discs, or when it is not known.</summary>
    public DrumGrowth? Drum { get; init; }

    /// <summary>Whether the drums are hot, so that their growth is to be taken up too; false unless said.</summary>
    public bool DrumHot { get; init; }

    /// <summary>The flexible hoses of the axle.</summary>
    public BrakeHose Hose { get; init; } = new() { Length = Length.Zero };

    /// <summary>Volume that calipers, pads, drums and shoes give way by at <see cref="ComplianceAt"/>, whole axle; not negative.</summary>
    /// <remarks>1 to 2 cm³ a front caliper, 0.4 to 0.8 cm³ a rear one at 100 bar: a note's estimates, not measured (from
    /// memory).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Volume Compliance { get; init => field = Require.NotNegative(value); } = Volume.Zero;

    /// <summary>Line pressure, gauge, at which <see cref="Compliance"/> holds; above zero; 100 bar unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Pressure ComplianceAt { get; init => field = Require.Positive(value); } = Pressure.FromBars(100);

    /// <summary>Fluid in the circuit: cylinder, pipes and brakes; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Volume FluidVolume { get; init => field = Require.NotNegative(value); } = Volume.Zero;

    /// <summary>The fluid.</summary>
    public BrakeFluid Fluid { get; init; } = new();

    /// <summary>The volume swallowed at a line pressure.</summary>
    /// <param name="linePressure">Line pressure at the brakes, gauge; not negative.</param>
    /// <returns>The parts and their sum; at zero pressure only the take-up.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="linePressure"/> is negative or beyond the table of hoses.</exception>
    public VolumeDemand Demand(Pressure linePressure)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(linePressure, Pressure.Zero);
        return new VolumeDemand
        {
            Clearance = Volume.FromCubicMeters(PistonArea.SquareMeters * Clearance.Meters),
            DrumGrowth = DrumHot && Drum is { } drum
                ? Volume.FromCubicMeters(PistonArea.SquareMeters * drum.PistonTravel.Meters) : Volume.Zero,
            Hoses = Hose.Expansion(linePressure),
            Compliance = Volume.FromCubicMeters(Compliance.CubicMeters * linePressure.Pascals / ComplianceAt.Pascals),
            Compression = Fluid.Compression(FluidVolume, linePressure),
            Air = Fluid.AirCompression(FluidVolume, linePressure),
        };
    }
}
