using BrakeBalance.Vehicles;

namespace BrakeBalance.Stops;

/// <summary>A stop with the steering held still on a road that pushes the car to one side, or with brakes that do.</summary>
/// <param name="LeftAdhesion">Adhesion under the left wheels [–].</param>
/// <param name="RightAdhesion">Adhesion under the right wheels [–].</param>
/// <param name="WheelsLock">True for the highest pressure held; false for 95 % of the pressure at which the stronger brake would lock on
/// the slippery side.</param>
/// <param name="HeldPressure">Line pressure at the master cylinder that the foot holds, gauge.</param>
/// <param name="Stop">The stop.</param>
public sealed record UnevenStop(double LeftAdhesion, double RightAdhesion, bool WheelsLock, Pressure HeldPressure, YawResult Stop)
{
    /// <summary>Stops a vehicle with full pressure and just below lock-up.</summary>
    /// <param name="vehicle">The vehicle, with the imbalance of its brakes.</param>
    /// <param name="load">One of its load cases.</param>
    /// <param name="adhesion">Adhesion on both sides where the road is not split [–]; 0.02 to 2.</param>
    /// <param name="road">Grade, slope across, and the adhesion of each side.</param>
    /// <param name="speed">Speed when the foot touches the pedal; 2 to 150 m/s.</param>
    /// <param name="pedalForce">Force of the foot; the vehicle's or the usual one unless said.</param>
    /// <returns>Full pressure first.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    /// <exception cref="InvalidOperationException">The car does not stop.</exception>
    public static IReadOnlyList<UnevenStop> Of(Vehicle vehicle, LoadCase load, double adhesion, StopRoad road, Speed speed,
        Force? pedalForce = null)
    {
        ArgumentNullException.ThrowIfNull(road);
        (double left, double right) = road.Split ?? (adhesion, adhesion);
        StopSetup setup = On(0.5 * (left + right));
        YawDisturbance disturbance = YawDisturbance.Split(left, right) with { CrossSlope = road.CrossSlope };
        Pressure full = setup.Emergency.HeldPressure;

        // The stronger brake may stand on the slippery side: a car that is so on both sides sets the pressure below which no wheel locks.
        BrakedCar worst = On(Math.Min(left, right)).Car;
        worst = worst with
        {
            Axles = worst.Axles.Select(axle =>
            axle with { Brakes = axle.Brakes.Scaled(2 / (2 - Math.Abs(axle.BrakeImbalance))) })
        };
        Pressure gentle = LockPressure.Lowest(worst, speed) is { } first && 0.95 * first.LinePressure < full
            ? 0.95 * first.LinePressure
            : full;
        return [Held(full, true), Held(gentle, false)];

        StopSetup On(double surface) =>
            StopSetup.From(vehicle, load, surface, conditions: new() { Grade = road.Grade, PedalForce = pedalForce });

        UnevenStop Held(Pressure pressure, bool locks) =>
            new(left, right, locks, pressure, YawStop.Run(setup.Car, pressure, setup.BuildUp, speed, disturbance, withTrace: false));
    }
}
