namespace BrakeBalance.Stops;

/// <summary>When and where the wheels of an axle stood still for the first time.</summary>
/// <param name="Axle">Which axle.</param>
/// <param name="Time">Time since the foot touched the pedal.</param>
/// <param name="Speed">Speed of the car at that instant.</param>
/// <param name="Distance">Distance since the foot touched the pedal.</param>
/// <param name="BrakingRate">Deceleration in units of g at that instant [–].</param>
/// <param name="MasterPressure">Line pressure at the master cylinder at that instant, gauge.</param>
public sealed record LockEvent(Axle Axle, Duration Time, Speed Speed, Length Distance, double BrakingRate, Pressure MasterPressure);
