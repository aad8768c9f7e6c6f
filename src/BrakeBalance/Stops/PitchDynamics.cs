namespace BrakeBalance.Stops;

/// <summary>Load transfer of a car that pitches on its springs and dampers.</summary>
/// <remarks>
/// <para>
/// Of the transfer that the forces at the road ask for, a part α reaches the tyres at once through the links (anti-dive and anti-lift);
/// the rest as the force of springs and dampers, x + (2 ζ/ω_p) x′ with x″ = ω_p² (ΔN_static − x) − 2 ζ ω_p x′. So ΔN =
/// ΔN_static (α + (1 − α) (2 ζ ω_p s + ω_p²)/(s² + 2 ζ ω_p s + ω_p²)).
/// </para>
/// <para>Assumes a half car whose pitch and heave do not couple, and tyres stiff against the springs.</para>
/// <para>
/// Source: statics and Newton's second law of the half car's pitch; pitch frequency 1.2 to 2 Hz, damping ratio 0.3 to 0.5, anti-dive 0 to
/// 0.5: common practice.
/// </para>
/// </remarks>
public sealed record PitchDynamics
{
    /// <summary>Undamped natural frequency of pitch; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Frequency NaturalFrequency { get; init => field = Require.Positive(value); }

    /// <summary>Damping ratio [–]; 0.05 to 2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.05 to 2.</exception>
    public required double DampingRatio { get; init => field = Require.Between(value, 0.05, 2); }

    /// <summary>Part of the load transfer that the links pass at once [–]; 0 to 1; 0 unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 1.</exception>
    public double InstantShare { get; init => field = Require.Between(value, 0, 1); }
}
