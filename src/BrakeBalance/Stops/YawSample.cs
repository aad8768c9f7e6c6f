namespace BrakeBalance.Stops;

/// <summary>
/// One instant of a stop seen from above; plain SI numbers with the unit in the name, because there are hundreds of them.
/// </summary>
/// <param name="TimeSeconds">Time since the foot touched the pedal, in seconds.</param>
/// <param name="AlongMetres">Way of the centre of gravity along the first direction of travel, in metres.</param>
/// <param name="AcrossMetres">Way of the centre of gravity across it, leftwards positive, in metres.</param>
/// <param name="HeadingRadians">
/// Heading of the car against the first direction of travel, leftwards positive, in radians; not wrapped.
/// </param>
/// <param name="YawRateRadiansPerSecond">Yaw rate in radians per second, leftwards positive.</param>
/// <param name="SpeedMetresPerSecond">Speed of the centre of gravity in metres per second.</param>
/// <param name="DecelerationMetresPerSecondSquared">Deceleration along the velocity in metres per second squared.</param>
/// <param name="BrakingMomentNewtonMetres">
/// Moment of unequal forces along the car left and right about the vertical axis in newton metres, leftwards positive.
/// </param>
/// <param name="LongitudinalForceNewtons">Force of the road on each axle along the car in newtons, forwards positive.</param>
/// <param name="Wheels">What the wheels of each axle do; locked when both stand.</param>
public readonly record struct YawSample(
    double TimeSeconds, double AlongMetres, double AcrossMetres, double HeadingRadians, double YawRateRadiansPerSecond,
    double SpeedMetresPerSecond, double DecelerationMetresPerSecondSquared, double BrakingMomentNewtonMetres,
    PerAxle<double> LongitudinalForceNewtons, PerAxle<WheelState> Wheels);
