namespace BrakeBalance.Stops;

/// <summary>One instant of a heat cycle; plain numbers with the unit in the name, because there are hundreds of them.</summary>
public readonly record struct HeatSample
{
    /// <summary>Time since the start of the cycle, in seconds.</summary>
    public double TimeSeconds { get; init; }

    /// <summary>Speed of the car in metres per second.</summary>
    public double SpeedMetresPerSecond { get; init; }

    /// <summary>Line pressure at the master cylinder in pascals, gauge.</summary>
    public double LinePressurePascals { get; init; }

    /// <summary>Power of both brakes of each axle in watts.</summary>
    public PerAxle<double> BrakingPowerWatts { get; init; }

    /// <summary>Bulk temperature of the rubbing ring of each axle in degrees Celsius.</summary>
    public PerAxle<double> RingCelsius { get; init; }

    /// <summary>Rise of the ring's temperature of each axle in kelvins per second; negative while it cools.</summary>
    public PerAxle<double> RingKelvinsPerSecond { get; init; }

    /// <summary>Temperature of hat and hub of each axle in degrees Celsius.</summary>
    public PerAxle<double> HatCelsius { get; init; }

    /// <summary>Temperature of caliper or wheel cylinder and fluid of each axle in degrees Celsius.</summary>
    public PerAxle<double> FluidCelsius { get; init; }

    /// <summary>Torque of each axle over its torque at the reference friction [–].</summary>
    public PerAxle<double> TorqueFactor { get; init; }
}
