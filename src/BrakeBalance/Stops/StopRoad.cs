namespace BrakeBalance.Stops;

/// <summary>Shape of the road of a stop.</summary>
public sealed record StopRoad
{
    /// <summary>Slope along the road, uphill positive; within 20 degrees.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The slope is steeper than 20 degrees.</exception>
    public Angle Grade { get; init => field = Require.Between(value, Angle.FromDegrees(-20), Angle.FromDegrees(20)); } = Angle.Zero;

    /// <summary>Slope across the road, positive when it falls away to the left; within 10 degrees; a crown of two percent unless
    /// said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The slope is steeper than 10 degrees.</exception>
    public Angle CrossSlope
    {
        get; init => field = Require.Between(value, Angle.FromDegrees(-10), Angle.FromDegrees(10));
    } = YawDisturbance.Crown.CrossSlope;

    /// <summary>Adhesion under the left and under the right wheels [–]; null for the same on both sides.</summary>
    public (double Left, double Right)? Split { get; init; }
}
