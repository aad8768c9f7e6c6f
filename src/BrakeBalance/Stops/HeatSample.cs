namespace BrakeBalance.Stops;

/// <summary>One instant of a heat cycle; plain numbers with the unit in the name, because there are hundreds of them.</summary>
/// <param name="TimeSeconds">Time since the start of the cycle, in seconds.</param>
/// <param name="SpeedMetresPerSecond">Speed of the car in metres per second.</param>
/// <param name="BrakingPowerWatts">Power of both brakes of each axle in watts.</param>
/// <param name="RingCelsius">Bulk temperature of the rubbing ring of each axle in degrees Celsius.</param>
/// <param name="RingKelvinsPerSecond">Rise of the ring's temperature of each axle in kelvins per second; negative while it cools.</param>
/// <param name="HatCelsius">Temperature of hat and hub of each axle in degrees Celsius.</param>
/// <param name="FluidCelsius">Temperature of caliper or wheel cylinder and fluid of each axle in degrees Celsius.</param>
public readonly record struct HeatSample(
    double TimeSeconds, double SpeedMetresPerSecond, PerAxle<double> BrakingPowerWatts,
    PerAxle<double> RingCelsius, PerAxle<double> RingKelvinsPerSecond, PerAxle<double> HatCelsius, PerAxle<double> FluidCelsius);
