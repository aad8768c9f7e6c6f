namespace BrakeBalance.Measurements;

/// <summary>Relative standard deviations of what is hardest to know of a car.</summary>
/// <remarks>Defaults are common practice: a pad's friction is known to a tenth at best, a home measurement of the height to 25 mm.</remarks>
public sealed record ParameterSpread
{
    /// <summary>Of the front friction [–]; 0 to 0.5.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 0.5.</exception>
    public double FrontFriction { get; init => field = Require.Between(value, 0, 0.5); } = 0.10;

    /// <summary>Of the rear friction [–]; 0 to 0.5.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 0.5.</exception>
    public double RearFriction { get; init => field = Require.Between(value, 0, 0.5); } = 0.10;

    /// <summary>Of the height of the centre of gravity [–]; 0 to 0.3.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 0.3.</exception>
    public double CentreOfGravityHeight { get; init => field = Require.Between(value, 0, 0.3); } = 0.05;
}
