using BrakeBalance.Brakes;

namespace BrakeBalance.Vehicles;

/// <summary>Heat capacity, cooling and hot friction of one wheel's brake as a vehicle file gives them.</summary>
public sealed record BrakeThermalData
{
    /// <summary>Mass of the rubbing ring of the disc, or of the drum's shell; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Mass RingMass { get; init => field = Require.Positive(value); }

    /// <summary>Mass of hat and hub behind it; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Mass HatMass { get; init => field = Require.NotNegative(value); } = Mass.Zero;

    /// <summary>Surface of the ring that air sweeps, ducts included; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Area CoolingArea { get; init => field = Require.Positive(value); }

    /// <summary>Convection added at 10 m/s; null when unknown.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public HeatTransferCoefficient? ConvectionAtTenMetresPerSecond
    {
        get;
        init => field = value is { } given ? Require.NotNegative(given) : null;
    }

    /// <summary>Friction against temperature; null when it does not change, as far as is known.</summary>
    public FrictionCurve? Friction { get; init; }

    /// <summary>
    /// True when the curve's height counts; false when only its shape does and the brake's own friction stands at 100 °C.
    /// </summary>
    public bool FrictionIsMeasured { get; init; }
}
