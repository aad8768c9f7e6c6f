namespace BrakeBalance.Measurements;

/// <summary>What an estimated car does at given line pressures, each with its 90 % interval.</summary>
public sealed record StopForecast
{
    /// <summary>Deceleration [–].</summary>
    public required Interval<double> BrakingRate { get; init; }

    /// <summary>Braking force of the front axle (both wheels).</summary>
    public required Interval<Force> FrontForce { get; init; }

    /// <summary>Braking force of the rear axle (both wheels).</summary>
    public required Interval<Force> RearForce { get; init; }
}
