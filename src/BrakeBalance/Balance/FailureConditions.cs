namespace BrakeBalance.Balance;

/// <summary>What is asked of a car in a case of failure.</summary>
public sealed record FailureConditions
{
    /// <summary>Deceleration for which the pedal force is asked [–]; above zero, to 2; 0.25 unless said.</summary>
    /// <remarks>Stopping from 100 km/h in 168 m after 0.36 s, as the rules for failed systems ask, needs a rate of 0.25.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.01 to 2.</exception>
    public double BrakingRate { get; init => field = Require.Between(value, 0.01, 2); } = 0.25;

    /// <summary>Pedal force for which the deceleration is asked; above zero; 500 N unless said.</summary>
    /// <remarks>Source: highest pedal force of the tests of 49 CFR 571.135, S7.5.2(c) (read).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Force PedalForce { get; init => field = Require.Positive(value); } = Force.FromNewtons(500);

    /// <summary>The surface's coefficient of adhesion [–]; 0.05 to 2; 0.9 unless said.</summary>
    /// <remarks>Source: peak friction coefficient of the test surface, 49 CFR 571.135 S6.2.1 (read).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.05 to 2.</exception>
    public double Adhesion { get; init => field = Require.Between(value, 0.05, 2); } = 0.9;

    /// <summary>The adhesion at which the braked wheels lock: half of it where one diagonal brakes for both wheels of each axle.</summary>
    internal double AdhesionOf(FailureCase failure) => failure.LostCircuit == LostCircuit.Diagonal ? Adhesion / 2 : Adhesion;

    /// <summary>Speed at the start of the stop; above zero; 100 km/h unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Speed Speed { get; init => field = Require.Positive(value); } = Speed.FromKilometersPerHour(100);

    /// <summary>The driver's reaction; not negative; 1 s unless said (common practice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Duration Reaction { get; init => field = Require.NotNegative(value); } = StoppingDistance.UsualReaction;
}
