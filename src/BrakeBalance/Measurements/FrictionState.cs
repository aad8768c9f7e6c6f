namespace BrakeBalance.Measurements;

/// <summary>How hot, damp or worn the brakes are, as factors on the friction of both axles.</summary>
public sealed record FrictionState
{
    /// <summary>Name, such as "hot fronts".</summary>
    public required string Name { get; init; }

    /// <summary>Factor on the front friction [–]; 0.3 to 2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.3 to 2.</exception>
    public double Front { get; init => field = Require.Between(value, 0.3, 2); } = 1;

    /// <summary>Factor on the rear friction [–]; 0.3 to 2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.3 to 2.</exception>
    public double Rear { get; init => field = Require.Between(value, 0.3, 2); } = 1;

    /// <summary>The states looked at unless others are named: as measured, hot fronts (−10 %), rear linings that grab (+8 %).</summary>
    /// <remarks>Common practice; put in what your own pads do.</remarks>
    public static IReadOnlyList<FrictionState> Usual { get; } =
    [
        new FrictionState { Name = "as measured" },
        new FrictionState { Name = "hot fronts", Front = 0.90 },
        new FrictionState { Name = "grabbing rears", Rear = 1.08 },
    ];
}
