namespace BrakeBalance.Stops;

/// <summary>The road and the foot of a stop, beside adhesion and speed.</summary>
public sealed record StopConditions
{
    /// <summary>Force of a foot that stamps on the pedal, when neither the conditions nor the vehicle say it: 500 N.</summary>
    /// <remarks>Source: common practice; upper limit of the pedal force in the tests of 49 CFR 571.135, S7.5 (read).</remarks>
    public static Force UsualPedalForce { get; } = Force.FromNewtons(500);

    /// <summary>Slope of the road, uphill positive; within 20 degrees of level.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The slope is steeper than 20 degrees.</exception>
    public Angle Grade { get; init => field = Require.Within(value, 20); } = Angle.Zero;

    /// <summary>Force of a foot that stamps on the pedal; above zero; null for the vehicle's, or <see cref="UsualPedalForce"/> where it
    /// says none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Force? PedalForce { get; init => field = value is { } given ? Require.Positive(given) : null; }
}
