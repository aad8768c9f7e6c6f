using BrakeBalance.Balance;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Stops;

/// <summary>Stops of several set-ups under equal conditions.</summary>
public static class StopComparison
{
    /// <summary>Stops each set-up with each driver model, and lets it yaw once.</summary>
    /// <param name="cars">Name and vehicle of each set-up.</param>
    /// <param name="loadCase">Name of the load case; every vehicle must have it.</param>
    /// <param name="adhesion">Peak adhesion of the surface [–].</param>
    /// <param name="initialSpeed">Speed when the foot touches the pedal.</param>
    /// <param name="conditions">Road and foot; a level road and each vehicle's foot unless said.</param>
    /// <param name="releaseRate">Fall per second of the pressure that an easing foot asks for; null for no such stop.</param>
    /// <param name="crossSlope">
    /// Slope across the road where the car may yaw; the crown of <see cref="YawDisturbance.Crown"/> unless said.
    /// </param>
    /// <returns>A row for each set-up, in order.</returns>
    /// <exception cref="ArgumentException">A vehicle has no load case of that name.</exception>
    public static IReadOnlyList<StopComparisonRow> Of(
        IEnumerable<(string Name, Vehicle Vehicle)> cars, string loadCase, double adhesion, Speed initialSpeed,
        StopConditions? conditions = null, PressureChangeRate? releaseRate = null, Angle? crossSlope = null)
    {
        ArgumentNullException.ThrowIfNull(cars);
        return
        [
            .. cars.Select(car => Row(
                car.Name, StopSetup.From(car.Vehicle, car.Vehicle.LoadCase(loadCase), adhesion, conditions: conditions), initialSpeed,
                releaseRate, crossSlope is { } slope ? new YawDisturbance { CrossSlope = slope } : YawDisturbance.Crown) with
            {
                // What was measured may allow more than all corners do, never that the rear locks first with every number at its middle.
                RearFirstLater = new(() => SettingSearch.RearFirst(
                    car.Vehicle, car.Vehicle.Measured is null ? car.Vehicle.Conditions : car.Vehicle.Conditions.AtMiddle)),
            }),
        ];
    }

    private static StopComparisonRow Row(string name, StopSetup setup, Speed speed, PressureChangeRate? releaseRate,
        YawDisturbance disturbance)
    {
        StopResult Stop(Driver driver) => StraightStop.Run(setup.Car, driver, setup.BuildUp, speed);
        StopResult? threshold = LockPressure.Lowest(setup.Car, speed) is null ? null : Stop(setup.Threshold);

        // Just past the first lock, where one axle slides and the other still rolls: the dangerous half-second of a real stop.
        Pressure firm = LockPressure.Lowest(setup.Car, Speed.Zero) is { } steady
            ? Pressure.FromPascals(Math.Min(1.08 * steady.LinePressure.Pascals, setup.EmergencyPressure.Pascals))
            : setup.EmergencyPressure;
        return new StopComparisonRow(
            name, setup, Stop(setup.Emergency), threshold, Stop(setup.Antilock),
                YawStop.Run(setup.Car, firm, setup.BuildUp, speed, disturbance))
        {
            Easing = releaseRate is { } rate ? Stop(setup.Easing(rate)) : null,
        };
    }
}

/// <summary>One set-up of a comparison.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Setup">The set-up on its surface.</param>
/// <param name="Emergency">The stop of a driver who stamps on the pedal and stays there.</param>
/// <param name="Threshold">The stop of a driver who holds just below the first lock, as far as the foot reaches; null when no pressure
/// locks an axle.</param>
/// <param name="Bound">The bound of an ideal anti-lock control.</param>
/// <param name="FirmOnCrown">The same car on a crowned road at 8 % above the pressure of first lock, free to yaw.</param>
public sealed record StopComparisonRow(
    string Name, StopSetup Setup, StopResult Emergency, StopResult? Threshold, StopResult Bound, YawResult FirmOnCrown)
{
    /// <summary>The stop of a driver who stamps on the pedal and eases after the first lock; null when not asked for.</summary>
    public StopResult? Easing { get; init; }

    /// <summary>Where in the car's conditions the rear axle can lock first: beyond the safe limit; null when nowhere.</summary>
    public BindingCondition? RearFirst => RearFirstLater?.Value;

    /// <summary>Whether it brakes the rear more than test stops of the car allow.</summary>
    public bool IsBeyondOwnStops { get; init; }

    /// <summary>Whether it is beyond the safe limit.</summary>
    public bool IsBeyond => IsBeyondOwnStops || RearFirst is not null;

    internal Lazy<BindingCondition?>? RearFirstLater { get; init; }
}
