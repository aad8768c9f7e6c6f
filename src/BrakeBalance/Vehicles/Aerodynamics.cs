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
    [Field("Drag coefficient times frontal area", Typical = "0.55 m² .. 1.1 m²", Required = true, Low = "0 m²", High = "5 m²",
        Example = "0.72 m²", HowToMeasure = "Coast down from high speed on a level road without wind, or a wind tunnel")]
    [Usual("0.3 m²", "1.7 m²", Above = "frontal area without the drag coefficient", Below = "drag coefficient without the frontal area")]
    public required Area DragArea { get; init => field = Require.NotNegative(value); }

    /// <summary>Lift area measured at the front wheels; positive lifts, negative presses down.</summary>
    [Field(
        "Lift coefficient at the front wheels as a tunnel's wheel scales give it, "
            + "drag couple included, times frontal area; negative presses down",
        Low = "-5 m²", High = "2 m²", Example = "0.10 m²",
        HowToMeasure = "Wind tunnel's wheel scales, or ride height at speed over the springs' rates")]
    public Area FrontLiftArea { get; init; }

    /// <summary>Lift area measured at the rear wheels; positive lifts, negative presses down.</summary>
    [Field(
        "Lift coefficient at the rear wheels, measured alike, times frontal area; negative presses down",
        Low = "-5 m²", High = "2 m²", Example = "0.15 m²",
        HowToMeasure = "Wind tunnel's wheel scales, or ride height at speed over the springs' rates")]
    public Area RearLiftArea { get; init; }

    /// <summary>Density of the air; above zero; 1.225 kg/m³ unless said (international standard atmosphere, sea level).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    [Field("Density of the air; 1.225 kg/m³ when left out", Low = "0.5 kg/m³", High = "2 kg/m³", Example = "1.2 kg/m³",
        HowToMeasure = "Barometer and thermometer: pressure over 287 J/kg·K times absolute temperature")]
    public Density AirDensity { get; init => field = Require.Positive(value); } = Density.FromKilogramsPerCubicMeter(1.225);

    internal double DynamicPressurePascals(double speedMetresPerSecond) =>
        0.5 * AirDensity.KilogramsPerCubicMeter * speedMetresPerSecond * speedMetresPerSecond;
}
