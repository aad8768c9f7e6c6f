using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Stops;

/// <summary>Stops of several set-ups under equal conditions.</summary>
public static class StopComparison
{
    /// <summary>Stops each set-up with each driver model, and lets it yaw once.</summary>
    /// <param name="cars">Name and vehicle of each set-up.</param>
    /// <param name="loadCase">Name of the load case; every vehicle must have it.</param>
    /// <param name="adhesion">Peak adhesion of the surface [–].</param>
    /// <param name="initialSpeed">Speed when the foot touches the pedal.</param>
    /// <returns>A row for each set-up, in order.</returns>
    /// <exception cref="ArgumentException">A vehicle has no load case of that name.</exception>
    public static IReadOnlyList<StopComparisonRow> Of(
        IEnumerable<(string Name, Vehicle Vehicle)> cars, string loadCase, double adhesion, Speed initialSpeed)
    {
        ArgumentNullException.ThrowIfNull(cars);
        return [.. cars.Select(car => Row(car.Name, StopSetup.From(car.Vehicle, car.Vehicle.LoadCase(loadCase), adhesion), initialSpeed))];
    }

    private static StopComparisonRow Row(string name, StopSetup setup, Speed speed)
    {
        StopResult Stop(Driver driver) => StraightStop.Run(setup.Car, driver, setup.BuildUp, speed);
        StopResult? threshold = LockPressure.Lowest(setup.Car, speed) is null ? null : Stop(new ThresholdDriver());

        // Just past the first lock, where one axle slides and the other still rolls: the dangerous half-second of a real stop.
        Pressure firm = LockPressure.Lowest(setup.Car, Speed.Zero) is { } steady
            ? Pressure.FromPascals(Math.Min(1.08 * steady.LinePressure.Pascals, setup.MaximumPressure.Pascals))
            : setup.MaximumPressure;
        return new StopComparisonRow(
            name, setup, Stop(setup.Panic), threshold, Stop(setup.Antilock), YawStop.Run(setup.Car, firm, setup.BuildUp, speed, YawDisturbance.Crown));
    }
}

/// <summary>One set-up of a comparison.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Setup">The set-up on its surface.</param>
/// <param name="Panic">The stop of a driver who holds the highest pressure.</param>
/// <param name="Threshold">The stop of a driver who holds just below the first lock; null when no pressure locks an axle.</param>
/// <param name="Bound">The bound of an ideal anti-lock control.</param>
/// <param name="FirmOnCrown">The same car on a crowned road at 8 % above the pressure of first lock, free to yaw.</param>
public sealed record StopComparisonRow(
    string Name, StopSetup Setup, StopResult Panic, StopResult? Threshold, StopResult Bound, YawResult FirmOnCrown);
