namespace BrakeBalance.Vehicles;

/// <summary>How hot, cold, damp or worn the brakes are, as factors on the friction of each axle.</summary>
public sealed record BrakeState
{
    /// <summary>Name, such as "hot in front".</summary>
    [Field("Name of the state, as it stands behind the word \"brakes\"", Required = true, Example = "hot in front")]
    public required string Name { get; init; }

    /// <summary>Factor on the front friction [–]; 0.3 to 2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.3 to 2.</exception>
    [Field("Factor on the front friction; 1 when left out", Low = "0.3", High = "2", Example = "0.9",
        HowToMeasure = "Test stops or drag sled with the brakes in that state, against the normal ones")]
    public double Front { get; init => field = Require.Between(value, 0.3, 2); } = 1;

    /// <summary>Factor on the rear friction [–]; 0.3 to 2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.3 to 2.</exception>
    [Field("Factor on the rear friction; 1 when left out", Low = "0.3", High = "2", Example = "1.0",
        HowToMeasure = "Test stops or drag sled with the brakes in that state, against the normal ones")]
    public double Rear { get; init => field = Require.Between(value, 0.3, 2); } = 1;
}
