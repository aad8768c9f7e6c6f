namespace BrakeBalance.Stops;

/// <summary>Heat capacity, cooling and fade of one wheel's brake.</summary>
/// <remarks>
/// <para>Up to three bodies: the rubbing ring (disc band or drum shell), the hat and hub behind it, and caliper or wheel cylinder with
/// pads and fluid.</para>
/// <para>C_r T_r′ = s P − A h(v) (T_r − T_a) − ε σ A (T_r⁴ − T_a⁴) − G_h (T_r − T_h) − G_f (T_r − T_f); h(v) =
/// h₀ + h₁ v^0.8.</para>
/// <para>Assumes each body at one temperature (bulk); the surface under the pads is hotter during a stop, see
/// <see cref="SurfaceHeating"/>.</para>
/// <para>Source: lumped energy balance, textbook heat transfer; turbulent exponent 0.8 for a rotating disc (Limpert, Brake Design and
/// Safety, from memory). Default numbers: common practice.</para>
/// </remarks>
public sealed record ThermalBrake
{
    /// <summary>Mass of the rubbing ring; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Mass RingMass { get; init => field = Require.Positive(value); }

    /// <summary>Mass of hat and hub that take heat from the ring; zero for a single lump.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Mass HatMass { get; init => field = Require.NotNegative(value); } = Mass.Zero;

    /// <summary>Heat conducted from ring to hat per kelvin, in watts per kelvin; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public double HatConductanceWattsPerKelvin { get; init => field = Require.NotNegative(value); } = 12;

    /// <summary>Specific heat of ring and hat; above zero.</summary>
    /// <remarks>Source: grey iron about 460 J/(kg K), common practice.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public SpecificEntropy SpecificHeat { get; init => field = Require.Positive(value); } =
        SpecificEntropy.FromJoulesPerKilogramKelvin(460);

    /// <summary>Surface of the ring that air sweeps, ducts included; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Area CoolingArea { get; init => field = Require.Positive(value); }

    /// <summary>Convection at standstill h₀; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public HeatTransferCoefficient StillConvection { get; init => field = Require.NotNegative(value); } =
        HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(10);

    /// <summary>Convection added at 10 m/s; it grows with speed to the power 0.8; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public HeatTransferCoefficient ConvectionAtTenMetresPerSecond { get; init => field = Require.NotNegative(value); } =
        HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(30);

    /// <summary>Emissivity of the ring for radiation [–]; 0 to 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 1.</exception>
    public double Emissivity { get; init => field = Require.Between(value, 0, 1); } = 0.55;

    /// <summary>Part of the braking power that enters the ring [–]; 0.5 to 1. The rest goes into pads and caliper.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.5 to 1.</exception>
    public double RingShare { get; init => field = Require.Between(value, 0.5, 1); } = 0.95;

    /// <summary>Heat capacity of caliper or wheel cylinder with pads and fluid, in joules per kelvin; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public double CaliperHeatCapacityJoulesPerKelvin { get; init => field = Require.Positive(value); } = 2500;

    /// <summary>Heat passed from ring to caliper and fluid per kelvin, in watts per kelvin; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public double CaliperConductanceWattsPerKelvin { get; init => field = Require.NotNegative(value); } = 2;

    /// <summary>
    /// Cooling of the caliper per kelvin at standstill, in watts per kelvin; it grows with speed like the ring's; not negative.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public double CaliperCoolingWattsPerKelvin { get; init => field = Require.NotNegative(value); } = 0.6;

    /// <summary>Torque against temperature of the ring.</summary>
    public FadeCurve Fade { get; init; } = FadeCurve.None;
}
