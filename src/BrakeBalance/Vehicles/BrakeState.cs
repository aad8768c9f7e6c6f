namespace BrakeBalance.Vehicles;

/// <summary>How hot, cold, damp or worn the brakes are, as factors on the friction of each axle.</summary>
public sealed record BrakeState
{
    /// <summary>Name, such as "hot in front".</summary>
    public required string Name { get; init; }

    /// <summary>Factor on the front friction [–]; 0.3 to 2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.3 to 2.</exception>
    public double Front { get; init => field = Require.Between(value, 0.3, 2); } = 1;

    /// <summary>Factor on the rear friction [–]; 0.3 to 2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.3 to 2.</exception>
    public double Rear { get; init => field = Require.Between(value, 0.3, 2); } = 1;
}
