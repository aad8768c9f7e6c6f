namespace BrakeBalance.Stops;

/// <summary>
/// One instant of a stop seen from above; plain SI numbers with the unit in the name, because there are hundreds of them.
/// </summary>
public readonly record struct YawSample
{
    /// <summary>Time since the foot touched the pedal, in seconds.</summary>
    public double TimeSeconds { get; init; }

    /// <summary>Way of the centre of gravity along the first direction of travel, in metres.</summary>
    public double AlongMetres { get; init; }

    /// <summary>Way of the centre of gravity across it, leftwards positive, in metres.</summary>
    public double AcrossMetres { get; init; }

    /// <summary>Heading of the car against the first direction of travel, leftwards positive, in radians; not wrapped.</summary>
    public double HeadingRadians { get; init; }

    /// <summary>Yaw rate in radians per second, leftwards positive.</summary>
    public double YawRateRadiansPerSecond { get; init; }

    /// <summary>Speed of the centre of gravity in metres per second.</summary>
    public double SpeedMetresPerSecond { get; init; }

    /// <summary>Angle between the car's axis and its velocity in radians; positive when it moves to its own left.</summary>
    public double SideslipRadians { get; init; }

    /// <summary>Deceleration along the velocity in metres per second squared.</summary>
    public double DecelerationMetresPerSecondSquared { get; init; }

    /// <summary>Moment of unequal forces along the car left and right about the vertical axis in newton metres, leftwards
    /// positive.</summary>
    public double BrakingMomentNewtonMetres { get; init; }

    /// <summary>Longitudinal slip of each axle, the mean of its wheels [–]; 1 when locked and running straight.</summary>
    public PerAxle<double> Slip { get; init; }

    /// <summary>Force of the road on each axle along the car in newtons, forwards positive.</summary>
    public PerAxle<double> LongitudinalForceNewtons { get; init; }

    /// <summary>Force of the road on each axle across the car in newtons, leftwards positive.</summary>
    public PerAxle<double> LateralForceNewtons { get; init; }

    /// <summary>What the wheels of each axle do; locked when both stand.</summary>
    public PerAxle<WheelState> Wheels { get; init; }
}
