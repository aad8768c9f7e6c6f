namespace BrakeBalance.Vehicles;

/// <summary>Drag of the engine in gear, felt as a braking force on the driven axle.</summary>
/// <remarks>Taken as a constant force while the pedal is pressed. Source: common practice.</remarks>
public sealed record EngineBraking
{
    /// <summary>The driven axle.</summary>
    public required Axle DrivenAxle { get; init; }

    /// <summary>Braking force at the road (both wheels); not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public required Force BrakingForce { get; init => field = Require.NotNegative(value); }
}
