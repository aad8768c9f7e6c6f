namespace BrakeBalance.Stops;

/// <summary>One instant of a straight stop; plain SI numbers with the unit in the name, because there are hundreds of them.</summary>
public readonly record struct StopSample
{
    /// <summary>Time since the foot touched the pedal, in seconds.</summary>
    public double TimeSeconds { get; init; }

    /// <summary>Speed of the car in metres per second.</summary>
    public double SpeedMetresPerSecond { get; init; }

    /// <summary>Distance since the foot touched the pedal, in metres.</summary>
    public double DistanceMetres { get; init; }

    /// <summary>Deceleration in metres per second squared, positive when slowing.</summary>
    public double DecelerationMetresPerSecondSquared { get; init; }

    /// <summary>Line pressure at the master cylinder in pascals, gauge.</summary>
    public double LinePressurePascals { get; init; }

    /// <summary>Slip of each axle [–]; 1 when locked.</summary>
    public PerAxle<double> Slip { get; init; }

    /// <summary>Normal reaction of each axle in newtons.</summary>
    public PerAxle<double> NormalReactionNewtons { get; init; }

    /// <summary>Braking force at the road of each axle in newtons.</summary>
    public PerAxle<double> BrakingForceNewtons { get; init; }

    /// <summary>Torque that the brakes of each axle can give at this pressure, in newton metres.</summary>
    public PerAxle<double> BrakingTorqueNewtonMetres { get; init; }

    /// <summary>Angular acceleration of the wheels of each axle in radians per second squared; negative when they slow.</summary>
    public PerAxle<double> WheelRadiansPerSecondSquared { get; init; }

    /// <summary>What the wheels of each axle do.</summary>
    public PerAxle<WheelState> Wheels { get; init; }
}
