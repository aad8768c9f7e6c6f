namespace BrakeBalance.Measurements;

/// <summary>What an estimated car does at given line pressures, each with its 90 % interval.</summary>
/// <param name="BrakingRate">Deceleration [–].</param>
/// <param name="FrontForce">Braking force of the front axle (both wheels).</param>
/// <param name="RearForce">Braking force of the rear axle (both wheels).</param>
public sealed record StopForecast(Interval<double> BrakingRate, Interval<Force> FrontForce, Interval<Force> RearForce);
