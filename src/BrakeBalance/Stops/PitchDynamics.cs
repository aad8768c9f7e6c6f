using UnitsNet;

namespace BrakeBalance.Stops;

/// <summary>Load transfer that follows the braking force as a damped second-order lag, for a car that pitches on its springs.</summary>
/// <remarks>
/// <para>ΔN″ = ω_p² (ΔN_static − ΔN) − 2 ζ ω_p ΔN′.</para>
/// <para>Assumes that the whole transfer passes through the springs (no anti-dive geometry).</para>
/// <para>Source: common practice; pitch frequency 1.2 to 2 Hz, damping ratio 0.3 to 0.5.</para>
/// </remarks>
public sealed record PitchDynamics
{
    /// <summary>Undamped natural frequency of pitch; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Frequency NaturalFrequency { get; init => field = Require.Positive(value); }

    /// <summary>Damping ratio [–]; 0.05 to 2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.05 to 2.</exception>
    public required double DampingRatio { get; init => field = Require.Between(value, 0.05, 2); }
}
