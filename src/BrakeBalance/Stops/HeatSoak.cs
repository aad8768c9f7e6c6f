namespace BrakeBalance.Stops;

/// <summary>The fluid of a car that is parked at the end of a heat cycle, until it has been at its hottest at both axles.</summary>
/// <param name="HottestFluid">Highest temperature of the fluid at each axle from the end of the cycle on.</param>
/// <param name="HottestAfter">Time from the end of the cycle to that temperature; zero when the fluid only cools.</param>
/// <remarks>Parked at once, the air at rest, no further braking; see <see cref="BrakeHeat"/>.</remarks>
public sealed record HeatSoak(PerAxle<Temperature> HottestFluid, PerAxle<Duration> HottestAfter);
