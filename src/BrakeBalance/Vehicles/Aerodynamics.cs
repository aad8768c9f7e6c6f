using UnitsNet;

namespace BrakeBalance.Vehicles;

/// <summary>Drag and lift of the car as areas (coefficient times reference area).</summary>
/// <remarks>
/// <para>F = ½ ρ v² · (coefficient · area).</para>
/// <para>
/// The lift areas are those measured at the wheels, as the wheel scales of a tunnel give them: they hold the couple of drag and of the
/// air's pitching moment
/// about the road already. So N₁ = static − L₁ + (T₁ + T₂ + R + D) h/E and N₂ = static − L₂ − (T₁ + T₂ + R + D) h/E: the whole m a − m g
/// sin θ moves load.
/// </para>
/// <para>Source: definition of the aerodynamic coefficients, reference on the road between the axles, as in SAE J1594 (from memory).</para>
/// </remarks>
public sealed record Aerodynamics
{
    /// <summary>Drag area; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public required Area DragArea { get; init => field = Require.NotNegative(value); }

    /// <summary>Lift area at the front axle; positive lifts, negative presses down.</summary>
    public Area FrontLiftArea { get; init; }

    /// <summary>Lift area at the rear axle; positive lifts, negative presses down.</summary>
    public Area RearLiftArea { get; init; }

    /// <summary>Density of the air; above zero; 1.225 kg/m³ unless said (international standard atmosphere, sea level).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Density AirDensity { get; init => field = Require.Positive(value); } = Density.FromKilogramsPerCubicMeter(1.225);

    internal double DynamicPressurePascals(double speedMetresPerSecond) =>
        0.5 * AirDensity.KilogramsPerCubicMeter * speedMetresPerSecond * speedMetresPerSecond;
}
