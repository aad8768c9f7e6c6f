namespace BrakeBalance.Vehicles;

/// <summary>What the course of a stop depends on beyond the balance; every value may be unknown.</summary>
/// <remarks>Where a value is null the stop takes a typical one and says so.</remarks>
public sealed record VehicleDynamics
{
    /// <summary>Moment of inertia about the vertical axis through the centre of gravity; null when unknown.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public MassMomentOfInertia? YawInertia { get; init => field = value is { } given ? Require.Positive(given) : null; }

    /// <summary>Undamped natural frequency of pitch on the springs; null for a load transfer without lag.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Frequency? PitchFrequency { get; init => field = value is { } given ? Require.Positive(given) : null; }

    /// <summary>Damping ratio of pitch [–]; null when unknown.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.05 to 2.</exception>
    public double? PitchDamping { get; init => field = value is { } given ? Require.Between(given, 0.05, 2) : null; }

    /// <summary>Part of the load transfer that the links pass to the tyres at once: anti-dive and anti-lift [–]; null for none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 1.</exception>
    public double? AntiDive { get; init => field = value is { } given ? Require.Between(given, 0, 1) : null; }

    /// <summary>Part of the lateral load transfer that the front axle takes [–]; null when unknown.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 1.</exception>
    public double? FrontRollShare { get; init => field = value is { } given ? Require.Between(given, 0, 1) : null; }

    /// <summary>Maximum speed of the car; null when unknown.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Speed? MaximumSpeed { get; init => field = value is { } given ? Require.Positive(given) : null; }

    /// <summary>Time in which the foot goes from nothing to its full push in an emergency stop; null when unknown.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Duration? EmergencyRiseTime { get; init => field = value is { } given ? Require.Positive(given) : null; }

    /// <summary>Time constant with which the assist follows the foot; null when unknown.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Duration? AssistLag { get; init => field = value is { } given ? Require.NotNegative(given) : null; }
}
