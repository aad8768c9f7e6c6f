namespace BrakeBalance.Vehicles;

/// <summary>What the course of a stop depends on beyond the balance; every value may be unknown.</summary>
/// <remarks>Where a value is null the stop takes a typical one and says so.</remarks>
public sealed record VehicleDynamics
{
    /// <summary>Moment of inertia about the vertical axis through the centre of gravity; null when unknown.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    [Field("Moment of inertia about the vertical axis; mass times the distances of the axles from the centre of gravity when left out",
        Low = "50 kg·m²", High = "30000 kg·m²", Example = "2100 kg·m²",
        HowToMeasure = "Swing on a pivot with known springs: period; or mass times the distances of the axles from the centre of gravity")]
    public MassMomentOfInertia? YawInertia { get; init => field = value is { } given ? Require.Positive(given) : null; }

    /// <summary>Undamped natural frequency of pitch on the springs; null for a load transfer without lag.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    [Field("Natural frequency of pitch on the springs; load transfer follows at once when left out", Low = "0.5 Hz", High = "10 Hz",
        Example = "1.5 Hz", HowToMeasure = "Push one end down, let go and count the swings in ten seconds, or take it from video")]
    public Frequency? PitchFrequency { get; init => field = value is { } given ? Require.Positive(given) : null; }

    /// <summary>Damping ratio of pitch [–]; null when unknown.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.05 to 2.</exception>
    [Field("Damping ratio of pitch; 0.35 when left out", Low = "0.05", High = "2", Example = "0.35",
        HowToMeasure = "Video of the swing after a push: logarithm of two following peaks' ratio, over 2π")]
    public double? PitchDamping { get; init => field = value is { } given ? Require.Between(given, 0.05, 2) : null; }

    /// <summary>Part of the load transfer that the links pass to the tyres at once: anti-dive and anti-lift [–]; null for none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 1.</exception>
    [Field(
        "Share of the load transfer that the links pass to the tyres at once, "
            + "without the springs (anti-dive and anti-lift); 0 when left out",
        Low = "0", High = "1", Example = "0.2",
        HowToMeasure = "Side-view angles of the links: slope to the instant centre over the slope of full compensation")]
    public double? AntiDive { get; init => field = value is { } given ? Require.Between(given, 0, 1) : null; }

    /// <summary>Part of the lateral load transfer that the front axle takes [–]; null when unknown.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 1.</exception>
    [Field("Front axle's share of the lateral load transfer; 0.55 when left out", Low = "0", High = "1", Example = "0.55",
        HowToMeasure = "Roll stiffness of springs and bars by axle, from rates and motion ratios")]
    public double? FrontRollShare { get; init => field = value is { } given ? Require.Between(given, 0, 1) : null; }

    /// <summary>Maximum speed of the car; null when unknown.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    [Field("Maximum speed, for the fade test; 160 km/h when left out", Low = "30 km/h", High = "450 km/h", Example = "180 km/h",
        HowToMeasure = "Registration papers, or a satellite speedometer")]
    public Speed? MaximumSpeed { get; init => field = value is { } given ? Require.Positive(given) : null; }

    /// <summary>Time in which the foot goes from nothing to its full push in an emergency stop; null when unknown.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    [Field("Time from first touch to the full push of the foot in an emergency stop; 0.25 s when left out", Low = "0.02 s", High = "5 s",
        Example = "0.25 s",
        HowToMeasure = "Pressure logger in the front line: first rise to 90 % in an emergency stop")]
    public Duration? EmergencyRiseTime { get; init => field = value is { } given ? Require.Positive(given) : null; }

    /// <summary>Time constant with which the assist follows the foot; null when unknown.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    [Field("Time constant with which the assist follows the foot; 60 ms when left out, none in a car without assist", Low = "0 ms",
        High = "1000 ms", Example = "60 ms",
        HowToMeasure = "Pressure logger and pedal force: delay of the pressure to a stamp on the pedal")]
    public Duration? AssistLag { get; init => field = value is { } given ? Require.NotNegative(given) : null; }
}
