using BrakeBalance.Stops;

namespace BrakeBalance.Measurements;

/// <summary>One sample of a logger or phone.</summary>
public sealed record MotionSample
{
    /// <summary>Line of the log the sample came from, from 1; 0 when it came from elsewhere.</summary>
    public int Line { get; init; }

    /// <summary>Time since the start of the log.</summary>
    public required Duration Time { get; init; }

    /// <summary>Speed over ground, not negative; null when not recorded.</summary>
    public Speed? Speed { get; init; }

    /// <summary>
    /// Longitudinal acceleration as the instrument gave it, of either sign, with its tilt and offset; null when not recorded.
    /// </summary>
    public Acceleration? Acceleration { get; init; }

    /// <summary>Readings of three axes at right angles, in any mounting, gravity included; null when not recorded.</summary>
    public (Acceleration X, Acceleration Y, Acceleration Z)? Axes { get; init; }

    /// <summary>Front line pressure, gauge; null when not recorded.</summary>
    public Pressure? FrontPressure { get; init; }

    /// <summary>Rear line pressure, gauge; null when not recorded.</summary>
    public Pressure? RearPressure { get; init; }

    /// <summary>Speeds at the wheels' rims: front left, front right, rear left, rear right; null where not recorded.</summary>
    public (Speed? FrontLeft, Speed? FrontRight, Speed? RearLeft, Speed? RearRight) Wheels { get; init; }

    /// <summary>
    /// What rises with the pedal (force, travel, a pressure), of which only the rise counts [–]; null when not recorded.
    /// </summary>
    public double? Pedal { get; init; }

    /// <summary>Whether the brake switch is closed; null when not recorded.</summary>
    public bool? BrakeOn { get; init; }

    /// <summary>The speeds at the wheels in the order of <see cref="Wheels"/>.</summary>
    internal IEnumerable<Speed?> AllWheels => [Wheels.FrontLeft, Wheels.FrontRight, Wheels.RearLeft, Wheels.RearRight];

    /// <summary>Whether nothing but a wheel knows the speed.</summary>
    internal bool SpeedIsOfWheel => Speed is { } speed && AllWheels.Any(wheel => wheel is { } rim && rim.Equals((object)speed));
}

/// <summary>Samples taken together.</summary>
public static class MotionSamples
{
    /// <summary>The speed over time of the samples that have a speed.</summary>
    /// <param name="samples">The samples, in order of time.</param>
    /// <exception cref="ArgumentException">Fewer than two samples have a speed, or the times do not rise.</exception>
    public static SpeedTrace Trace(this IEnumerable<MotionSample> samples) =>
        SpeedTrace.Through(samples.Where(s => s.Speed is not null).Select(s => (s.Time, s.Speed!.Value)));
}
