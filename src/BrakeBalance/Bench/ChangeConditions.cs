namespace BrakeBalance.Bench;

/// <summary>The stop by which old and new parts are compared.</summary>
public sealed record ChangeConditions
{
    /// <summary>Name of the load case; null for the car's first.</summary>
    public string? LoadCase { get; init; }

    /// <summary>Deceleration of a hard stop [–]; 0.1 to 1.5; 0.8 unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.1 to 1.5.</exception>
    public double BrakingRate { get; init => field = Require.Between(value, 0.1, 1.5); } = 0.8;

    /// <summary>Deceleration wanted with dead assist [–]; 0.05 to 1; 0.25 unless said: 168 m from 100 km/h.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.05 to 1.</exception>
    public double RateWithoutAssist { get; init => field = Require.Between(value, 0.05, 1); } = 0.25;

    /// <summary>Speed from which the car is stopped for the heat; above zero; 100 km/h unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Speed Speed { get; init => field = Require.Positive(value); } = Speed.FromKilometersPerHour(100);

    /// <summary>Mass of the rubbing ring (disc band or drum shell) of one wheel of each axle, old parts; null where not weighed.</summary>
    public PerAxle<Mass?> OldRings { get; init; }

    /// <summary>The same of the new parts.</summary>
    public PerAxle<Mass?> NewRings { get; init; }
}
