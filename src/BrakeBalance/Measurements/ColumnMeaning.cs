namespace BrakeBalance.Measurements;

/// <summary>What a column of a time series can mean.</summary>
public enum ColumnMeaning
{
    /// <summary>Nothing that is used.</summary>
    None,

    /// <summary>Time since a start, or time of day.</summary>
    Time,

    /// <summary>Speed of the car.</summary>
    Speed,

    /// <summary>Speed at the front left wheel.</summary>
    WheelFrontLeft,

    /// <summary>Speed at the front right wheel.</summary>
    WheelFrontRight,

    /// <summary>Speed at the rear left wheel.</summary>
    WheelRearLeft,

    /// <summary>Speed at the rear right wheel.</summary>
    WheelRearRight,

    /// <summary>Latitude in degrees.</summary>
    Latitude,

    /// <summary>Longitude in degrees.</summary>
    Longitude,

    /// <summary>Acceleration along the car, either sign.</summary>
    Acceleration,

    /// <summary>Acceleration along the first of an instrument's three axes.</summary>
    AccelerationX,

    /// <summary>Acceleration along the second axis.</summary>
    AccelerationY,

    /// <summary>Acceleration along the third axis.</summary>
    AccelerationZ,

    /// <summary>Front line pressure.</summary>
    FrontPressure,

    /// <summary>Rear line pressure.</summary>
    RearPressure,

    /// <summary>What rises with the pedal: its force, its travel, or a brake pressure that names no axle.</summary>
    Pedal,

    /// <summary>Brake light or brake switch.</summary>
    BrakeSwitch,
}
