namespace BrakeBalance.Stops;

/// <summary>When the wheels of an axle that had locked turned again for the first time.</summary>
/// <param name="Axle">Which axle.</param>
/// <param name="Time">Time since the foot touched the pedal.</param>
/// <param name="Speed">Speed of the car at that instant.</param>
/// <param name="MasterPressure">Line pressure at the master cylinder at that instant, gauge.</param>
/// <param name="LinePressure">Line pressure at the axle's brakes at that instant, gauge.</param>
public sealed record ReleaseEvent(Axle Axle, Duration Time, Speed Speed, Pressure MasterPressure, Pressure LinePressure);
