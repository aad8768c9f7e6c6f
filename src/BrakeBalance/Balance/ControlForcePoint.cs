namespace BrakeBalance.Balance;

/// <summary>The car under one pedal force, from the foot to the road.</summary>
/// <param name="PedalForce">Force of the foot on the pad.</param>
/// <param name="InputRodForce">Force on the input rod of the booster.</param>
/// <param name="OutputRodForce">Force on the master cylinder's rod.</param>
/// <param name="OutletPressures">Pressures that leave the master cylinder, gauge, before any valve: what gauges there should show.</param>
/// <param name="Balance">Line pressures at the brakes, forces, axle loads and deceleration.</param>
public sealed record ControlForcePoint(
    Force PedalForce,
    Force InputRodForce,
    Force OutputRodForce,
    PerAxle<Pressure> OutletPressures,
    BalancePoint Balance);
