namespace BrakeBalance.Stops;

/// <summary>One instant of a straight stop; plain SI numbers with the unit in the name, because there are hundreds of them.</summary>
/// <param name="TimeSeconds">Time since the foot touched the pedal, in seconds.</param>
/// <param name="SpeedMetresPerSecond">Speed of the car in metres per second.</param>
/// <param name="DistanceMetres">Distance since the foot touched the pedal, in metres.</param>
/// <param name="DecelerationMetresPerSecondSquared">Deceleration in metres per second squared, positive when slowing.</param>
/// <param name="LinePressurePascals">Line pressure at the master cylinder in pascals, gauge.</param>
/// <param name="Slip">Slip of each axle [–]; 1 when locked.</param>
/// <param name="NormalReactionNewtons">Normal reaction of each axle in newtons.</param>
/// <param name="BrakingForceNewtons">Braking force at the road of each axle in newtons.</param>
/// <param name="BrakingTorqueNewtonMetres">Torque that the brakes of each axle can give at this pressure, in newton metres.</param>
/// <param name="WheelRadiansPerSecondSquared">
/// Angular acceleration of the wheels of each axle in radians per second squared; negative when they slow.
/// </param>
/// <param name="Wheels">What the wheels of each axle do.</param>
public readonly record struct StopSample(
    double TimeSeconds, double SpeedMetresPerSecond, double DistanceMetres, double DecelerationMetresPerSecondSquared,
    double LinePressurePascals, PerAxle<double> Slip, PerAxle<double> NormalReactionNewtons, PerAxle<double> BrakingForceNewtons,
    PerAxle<double> BrakingTorqueNewtonMetres, PerAxle<double> WheelRadiansPerSecondSquared, PerAxle<WheelState> Wheels);
