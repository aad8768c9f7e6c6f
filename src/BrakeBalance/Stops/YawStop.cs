using UnitsNet;

namespace BrakeBalance.Stops;

/// <summary>Simulates stops in which the car may turn: what a locked axle does to the direction.</summary>
/// <remarks>
/// <para>Single-track car with wheel inertia and combined slip; the driver holds the steering wheel still.</para>
/// <para>Assumes load transfer along the car only, and both wheels of an axle in the same state.</para>
/// <para>Source: common practice (single-track model; Mitschke and Wallentowitz, Dynamik der Kraftfahrzeuge, from memory).</para>
/// </remarks>
public static class YawStop
{
    private const double RelativeTolerance = 3e-4;
    private const double LongestStepSeconds = 0.02;

    /// <summary>Stops a car that may turn.</summary>
    /// <param name="car">The car on its road.</param>
    /// <param name="heldPressure">Line pressure at the master cylinder that the foot holds, gauge; not negative.</param>
    /// <param name="buildUp">How pressure follows the foot.</param>
    /// <param name="initialSpeed">Speed when the foot touches the pedal; 2 to 150 m/s.</param>
    /// <param name="disturbance">What pushes the car off its line.</param>
    /// <param name="withTrace">False to leave out the trace.</param>
    /// <returns>Path, heading and whether the ends swap.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The initial speed is outside its range.</exception>
    /// <exception cref="InvalidOperationException">The car does not stop.</exception>
    public static YawResult Run(
        BrakedCar car, Pressure heldPressure, PressureBuildUp buildUp, Speed initialSpeed, YawDisturbance disturbance, bool withTrace = true) =>
        Run(car, heldPressure, buildUp, initialSpeed, disturbance, withTrace, RelativeTolerance);

    /// <summary>The car with one axle certain to lock and the other not braked, to show what the lock of that axle alone does.</summary>
    /// <param name="car">The car on its road.</param>
    /// <param name="locked">The axle to lock.</param>
    /// <returns>The car with other brakes.</returns>
    public static BrakedCar WithOnlyLocked(BrakedCar car, Axle locked)
    {
        ArgumentNullException.ThrowIfNull(car);
        return car with
        {
            Axles = new(Only(car.Axles.Front, locked == Axle.Front), Only(car.Axles.Rear, locked == Axle.Rear)),
        };

        static BrakedAxle Only(BrakedAxle axle, bool brakes) => axle with
        {
            EngineBrakingTorque = Torque.Zero,
            Brakes = TorqueCurve.Proportional(Pressure.FromBars(100), Torque.FromNewtonMeters(brakes ? 40_000 : 0)),
        };
    }

    internal static YawResult Run(
        BrakedCar car, Pressure heldPressure, PressureBuildUp buildUp, Speed initialSpeed, YawDisturbance disturbance, bool withTrace, double relativeTolerance)
    {
        ArgumentNullException.ThrowIfNull(buildUp);
        ArgumentNullException.ThrowIfNull(disturbance);
        double v0 = Require.Between(initialSpeed.MetersPerSecond, 2, 150, nameof(initialSpeed));
        double held = Require.NotNegative(heldPressure, nameof(heldPressure)).Pascals;
        var numbers = new CarNumbers(car);
        var command = new PressureCommand(buildUp, held);
        List<YawSample>? trace = withTrace ? new(500) : null;
        var system = new YawStopSystem(numbers, command, disturbance, trace);

        Span<double> y = stackalloc double[YawStopSystem.States];
        y.Clear();
        y[YawStopSystem.Vx] = v0;
        y[YawStopSystem.Yaw] = disturbance.InitialYawRate.RadiansPerSecond;
        Span<double> buffer = stackalloc double[StiffIntegrator.BufferLength(YawStopSystem.States, YawStopSystem.Functions)];
        var integrator = new StiffIntegrator(buffer, YawStopSystem.States, YawStopSystem.Functions, relativeTolerance, LongestStepSeconds);

        double initialEnergy = Kinetic(numbers, system, y);
        double time = 0;
        double longest = 20 + 20 * v0;
        double? sideways = null;
        PerAxle<Duration?> locks = default;
        system.Accepted(0, y);
        while (true)
        {
            double end = time < command.RampStart ? command.RampStart : time < command.RampEnd ? command.RampEnd : longest;
            int fired = integrator.Advance(ref system, ref time, y, end);
            if (fired == YawStopSystem.Standstill)
            {
                break;
            }

            switch (fired)
            {
                case YawStopSystem.Sideways:
                    sideways ??= time;
                    break;
                case YawStopSystem.FrontStops:
                    system.FrontSense = StopOrReverse(system, time, y, Axle.Front, numbers.Front.Radius);
                    locks = system.FrontSense == 0 ? new(locks.Front ?? Duration.FromSeconds(time), locks.Rear) : locks;
                    break;
                case YawStopSystem.RearStops:
                    system.RearSense = StopOrReverse(system, time, y, Axle.Rear, numbers.Rear.Radius);
                    locks = system.RearSense == 0 ? new(locks.Front, locks.Rear ?? Duration.FromSeconds(time)) : locks;
                    break;
                case YawStopSystem.FrontReleases:
                    double frontX = system.FrontWheelX(y);
                    system.FrontSense = frontX >= 0 ? 1 : -1;
                    y[YawStopSystem.FrontSliding] = frontX * (1 - 1e-6) / YawStopSystem.SpeedOf(y);
                    break;
                case YawStopSystem.RearReleases:
                    system.RearSense = y[YawStopSystem.Vx] >= 0 ? 1 : -1;
                    y[YawStopSystem.RearSliding] = y[YawStopSystem.Vx] * (1 - 1e-6) / YawStopSystem.SpeedOf(y);
                    break;
                default:
                    if (time >= longest)
                    {
                        throw new InvalidOperationException(FormattableString.Invariant(
                            $"The car still moves after {time:0} s: neither the brakes at {held / 1e5:0.0} bar nor the road stop it."));
                    }

                    break;
            }
        }

        double left = Kinetic(numbers, system, y);
        return new YawResult
        {
            Car = car.Name,
            Distance = Length.FromMeters(y[YawStopSystem.Path]),
            Duration = Duration.FromSeconds(time),
            LockTimes = locks,
            SidewaysAt = sideways is { } s ? Duration.FromSeconds(s) : null,
            FinalHeading = Angle.FromRadians(y[YawStopSystem.Heading]),
            GreatestSideslip = Angle.FromRadians(system.GreatestSideslip),
            LateralOffset = Length.FromMeters(y[YawStopSystem.Across]),
            EnergyImbalance = 1 - (y[YawStopSystem.Dissipated] + left) / initialEnergy,
            Steps = integrator.Steps,
            Trace = trace ?? (IReadOnlyList<YawSample>)[],
        };
    }

    /// <summary>Wheels that come to a halt stay there when the brakes hold more than the road turns; otherwise they start turning the other way.</summary>
    private static int StopOrReverse(YawStopSystem system, double time, ReadOnlySpan<double> y, Axle axle, double radius)
    {
        int sense = axle == Axle.Front ? system.FrontSense : system.RearSense;
        system.FrontSense = axle == Axle.Front ? 0 : system.FrontSense;
        system.RearSense = axle == Axle.Rear ? 0 : system.RearSense;
        YawStopSystem.Motion m = system.Solve(time, y);
        YawStopSystem.AxleMotion a = axle == Axle.Front ? m.Front : m.Rear;
        return a.Torque > 0 && a.Torque >= Math.Abs(a.WheelX) * a.Load * radius ? 0 : -sense;
    }

    private static double Kinetic(in CarNumbers car, in YawStopSystem system, ReadOnlySpan<double> y)
    {
        double front = system.FrontSense == 0 ? 0 : (system.FrontWheelX(y) - y[YawStopSystem.FrontSliding] * YawStopSystem.SpeedOf(y)) / car.Front.Radius;
        double rear = system.RearSense == 0 ? 0 : (y[YawStopSystem.Vx] - y[YawStopSystem.RearSliding] * YawStopSystem.SpeedOf(y)) / car.Rear.Radius;
        return 0.5 * (car.Mass * (y[YawStopSystem.Vx] * y[YawStopSystem.Vx] + y[YawStopSystem.Vy] * y[YawStopSystem.Vy])
            + car.YawInertia * y[YawStopSystem.Yaw] * y[YawStopSystem.Yaw] + car.Front.Inertia * front * front + car.Rear.Inertia * rear * rear);
    }
}
