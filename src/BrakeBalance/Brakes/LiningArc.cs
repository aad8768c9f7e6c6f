namespace BrakeBalance.Brakes;

/// <summary>The arc of a drum that one lining covers.</summary>
/// <remarks>
/// Angles are measured at the drum's centre from the line to the shoe's supported end (pivot, abutment, link or anchor), towards the
/// other end.
/// </remarks>
public sealed record LiningArc
{
    /// <summary>Where the lining begins, near the supported end; 0° to below 180°.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0° to 180°.</exception>
    public required Angle Start { get; init => field = Angle.FromDegrees(Require.Between(value.Degrees, 0, 180)); }

    /// <summary>Where the lining ends; above the start, at most 180°.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0° to 180°.</exception>
    public required Angle End { get; init => field = Angle.FromDegrees(Require.Between(value.Degrees, 0, 180)); }

    internal (double Start, double End) Radians => End.Radians > Start.Radians
        ? (Start.Radians, End.Radians)
        : throw new ArgumentException(Invariant.Text(
            $"The lining must end further from its support than it starts: start {Start.Degrees:0.###}°, end {End.Degrees:0.###}°."));
}
