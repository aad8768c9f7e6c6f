namespace BrakeBalance.Vehicles;

/// <summary>One state of load: how heavy the car is and where its centre of gravity lies.</summary>
public sealed record LoadCase
{
    /// <summary>Short name, such as "driver only".</summary>
    public required string Name { get; init; }

    /// <summary>Mass of the car with driver, fuel and load; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Mass Mass { get; init => field = Require.Positive(value); }

    /// <summary>Horizontal distance from the front axle back to the centre of gravity (a); above zero and below the wheelbase.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length FrontAxleToCentreOfGravity { get; init => field = Require.Positive(value); }

    /// <summary>Height of the centre of gravity above the road (h); above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length CentreOfGravityHeight { get; init => field = Require.Positive(value); }

    /// <summary>A load case's name where more follows behind a comma: in quotation marks when it has a comma of its own.</summary>
    internal static string Listed(string name) => name.Contains(',') ? $"\"{name}\"" : name;
}
