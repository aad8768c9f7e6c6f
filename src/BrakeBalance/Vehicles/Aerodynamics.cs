namespace BrakeBalance.Vehicles;

/// <summary>Drag and lift of the car as areas (coefficient times reference area).</summary>
/// <remarks>
/// <para>F = ½ ρ v² · (coefficient · area).</para>
/// <para>The lift areas are those measured at the wheels, as the wheel scales of a wind tunnel give them: the couple of drag and its
/// reaction at the road is in them already. The load transfer of braking is therefore that of the whole deceleration, the part that drag
/// makes included: N₁ = static₁ − L₁ + z m g h/E, N₂ = static₂ − L₂ − z m g h/E with z m g = T₁ + T₂ + R + D.</para>
/// <para>Source: definition of the aerodynamic coefficients with their moments referred to the road (the convention of SAE J1594, from
/// memory).</para>
/// </remarks>
public sealed record Aerodynamics
{
    /// <summary>Drag area; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public required Area DragArea { get; init => field = Require.NotNegative(value); }

    /// <summary>Lift area measured at the front wheels; positive lifts, negative presses down.</summary>
    public Area FrontLiftArea { get; init; }

    /// <summary>Lift area measured at the rear wheels; positive lifts, negative presses down.</summary>
    public Area RearLiftArea { get; init; }

    /// <summary>Density of the air; above zero; 1.225 kg/m³ unless said (international standard atmosphere, sea level).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Density AirDensity { get; init => field = Require.Positive(value); } = Density.FromKilogramsPerCubicMeter(1.225);

    internal double DynamicPressurePascals(double speedMetresPerSecond) =>
        0.5 * AirDensity.KilogramsPerCubicMeter * speedMetresPerSecond * speedMetresPerSecond;
}
