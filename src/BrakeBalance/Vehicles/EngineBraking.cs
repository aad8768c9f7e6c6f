namespace BrakeBalance.Vehicles;

/// <summary>Drag of the engine in gear, felt as a braking force on the driven axle.</summary>
/// <remarks>Taken as a constant force while the pedal is pressed. Source: common practice.</remarks>
public sealed record EngineBraking
{
    /// <summary>The driven axle.</summary>
    [Field("The driven axle", Required = true, Example = "rear",
        HowToMeasure = "Look at the drive shafts")]
    public required Axle DrivenAxle { get; init; }

    /// <summary>Braking force at the road (both wheels); not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    [Field("Braking force of both driven wheels at the road", Typical = "200 N .. 600 N", Required = true, Low = "0 N", High = "10 kN",
        Example = "350 N", HowToMeasure = "Coast in the gear of the stop: deceleration times mass, less that in neutral")]
    [Usual("0 N", "1500 N")]
    public required Force BrakingForce { get; init => field = Require.NotNegative(value); }
}
