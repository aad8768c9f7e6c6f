using UnitsNet;

namespace BrakeBalance.Vehicles;

/// <summary>Drag and lift of the car as areas (coefficient times reference area).</summary>
/// <remarks>
/// <para>F = ½ ρ v² · (coefficient · area).</para>
/// <para>Assumes that the drag acts at the height of the centre of gravity, so that it shifts no load between the axles;
/// a known pitching moment belongs into the two lift areas. Source: definition of the aerodynamic coefficients.</para>
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
