namespace BrakeBalance.Stops;

/// <summary>What varies from stop to stop in a study of many stops.</summary>
/// <remarks>Draws are even between the ends; the same seed gives the same stops.</remarks>
public sealed record StopStudyPlan
{
    /// <summary>How many stops; 1 to a million.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 1 to 1 000 000.</exception>
    public int Stops { get; init => field = Require.Between(value, 1, 1_000_000); } = 10_000;

    /// <summary>Lowest peak adhesion of the surface [–]; 0.05 to 2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.05 to 2.</exception>
    public double LowestAdhesion { get; init => field = Require.Between(value, 0.05, 2); } = 0.3;

    /// <summary>Highest peak adhesion of the surface [–]; 0.05 to 2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.05 to 2.</exception>
    public double HighestAdhesion { get; init => field = Require.Between(value, 0.05, 2); } = 1.0;

    /// <summary>Greatest departure of each axle's friction from its nominal value, as a fraction of it [–]; 0 to 0.5.</summary>
    /// <remarks>Source: common practice, pads and linings of one type differ by some 5 to 10 %.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 0.5.</exception>
    public double FrictionSpread { get; init => field = Require.Between(value, 0, 0.5); } = 0.08;

    /// <summary>Speed when the foot touches the pedal; 1 to 150 m/s.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Speed InitialSpeed { get; init => field = Require.Positive(value); } = Speed.FromKilometersPerHour(100);

    /// <summary>Time in which the foot goes from nothing to its full push; above zero.</summary>
    /// <remarks>
    /// The lock order of a stamped pedal differs from the steady one: the axle with the faster rise of torque stops its wheels sooner.
    /// Source: 49 CFR 571.135 S7.2.3(c) wants the first axle lock 0.5 to 1.5 s after application (read).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Duration RiseTime { get; init => field = Require.Positive(value); } = Duration.FromSeconds(2);

    /// <summary>Road and foot; a level road and the vehicle's foot unless said.</summary>
    public StopConditions Conditions { get; init; } = new();

    /// <summary>Seed of the draws.</summary>
    public int Seed { get; init; } = 1;
}
