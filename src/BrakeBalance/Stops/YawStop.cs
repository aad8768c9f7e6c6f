namespace BrakeBalance.Stops;

/// <summary>Simulates stops in which the car may turn: what a locked axle does to the direction.</summary>
/// <remarks>
/// <para>Four wheels with inertia and combined slip, each on the adhesion of its side and with its side's brake; the driver holds the
/// steering wheel still.</para>
/// <para>Assumes load transfer along the car only: both wheels of an axle carry the same.</para>
/// <para>Source: common practice (two-track model; Mitschke and Wallentowitz, Dynamik der Kraftfahrzeuge, from memory).</para>
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
        BrakedCar car, Pressure heldPressure, PressureBuildUp buildUp, Speed initialSpeed, YawDisturbance disturbance,
            bool withTrace = true) =>
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

    /// <summary>Three stops on a crowned road: with the front axle locked, with the rear axle locked, and with no wheel locked.</summary>
    /// <param name="setup">The car ready to stop.</param>
    /// <param name="speed">Speed when the foot touches the pedal; 2 to 150 m/s.</param>
    /// <returns>Name and outcome of each.</returns>
    public static IReadOnlyList<(string Name, YawResult Stop)> EachAxleLocked(StopSetup setup, Speed speed)
    {
        ArgumentNullException.ThrowIfNull(setup);
        StopResult gentle = StraightStop.Run(setup.Car, new ThresholdDriver { Margin = 0.9 }, setup.BuildUp, speed);
        YawResult Stop(BrakedCar car, Pressure pressure) => Run(car, pressure, setup.BuildUp, speed, YawDisturbance.Crown);
        return
        [
            ("front axle locked", Stop(WithOnlyLocked(setup.Car, Axle.Front), setup.MaximumPressure)),
            ("rear axle locked", Stop(WithOnlyLocked(setup.Car, Axle.Rear), setup.MaximumPressure)),
            ("wheels rolling", Stop(setup.Car, gentle.HeldPressure)),
        ];
    }

    internal static YawResult Run(
        BrakedCar car, Pressure heldPressure, PressureBuildUp buildUp, Speed initialSpeed, YawDisturbance disturbance, bool withTrace,
            double relativeTolerance)
    {
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

        double initialEnergy = system.Kinetic(y);
        double time = 0;
        double longest = 20 + 20 * v0;
        double? squareToPath = null;
        double? squareToRoad = null;
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
                case YawStopSystem.SquareToPath:
                    squareToPath ??= time;
                    break;
                case YawStopSystem.SquareToRoad:
                    squareToRoad ??= time;
                    break;
                case >= YawStopSystem.Stops and < YawStopSystem.Stops + 4:
                    Both(ref system, time, y, fired, YawStopSystem.Stops);
                    locks = new(
                        locks.Front ?? (system.Locked(Axle.Front) ? Duration.FromSeconds(time) : null),
                            locks.Rear ?? (system.Locked(Axle.Rear) ? Duration.FromSeconds(time) : null));
                    break;
                case >= YawStopSystem.Releases and < YawStopSystem.Releases + 4:
                    Both(ref system, time, y, fired, YawStopSystem.Releases);
                    break;
                default:
                    if (time >= longest)
                    {
                        throw new InvalidOperationException(Invariant.Text(
                            $"The car still moves after {time:0} s: neither the brakes at {held / 1e5:0.0} bar nor the road stop it."));
                    }

                    break;
            }
        }

        double left = system.Kinetic(y);
        return new YawResult(
            Car: car,
            Distance: Length.FromMeters(y[YawStopSystem.Path]),
            Duration: Duration.FromSeconds(time),
            LockTimes: locks,
            SidewaysAt: squareToPath is { } path ? Duration.FromSeconds(path) : null,
            SquareToRoadAt: squareToRoad is { } road ? Duration.FromSeconds(road) : null,
            FinalHeading: Angle.FromRadians(y[YawStopSystem.Heading]),
            GreatestSideslip: Angle.FromRadians(system.GreatestSideslip),
            GreatestHeading: Angle.FromRadians(system.GreatestHeading),
            WidestWheel: Length.FromMeters(system.WidestWheel),
            GreatestBrakingMoment: Torque.FromNewtonMeters(system.GreatestMoment),
            LateralOffset: Length.FromMeters(y[YawStopSystem.Across]),
            EnergyImbalance: 1 - (y[YawStopSystem.Dissipated] + left) / initialEnergy,
            Trace: trace ?? (IReadOnlyList<YawSample>)[]);
    }

    /// <summary>Does the same for the partner of a wheel when its event comes at the same instant, as on a straight and even
    /// road.</summary>
    private static void Both(ref YawStopSystem system, double time, Span<double> y, int fired, int kind)
    {
        Span<double> values = stackalloc double[YawStopSystem.Functions];
        system.Events(time, y, values);
        int wheel = fired - kind;
        int partner = wheel ^ 1;
        double scale = kind == YawStopSystem.Stops ? 1 : 1000;
        bool together = Math.Abs(values[kind + partner]) <= 1e-8 * scale;
        Handle(ref system, time, y, wheel, kind);
        if (together)
        {
            Handle(ref system, time, y, partner, kind);
        }
    }

    private static void Handle(ref YawStopSystem system, double time, Span<double> y, int wheel, int kind)
    {
        if (kind == YawStopSystem.Releases)
        {
            double along = system.WheelX(wheel, y);
            system.Senses[wheel] = along >= 0 ? 1 : -1;
            y[YawStopSystem.Sliding + wheel] = along * (1 - 1e-6) / YawStopSystem.SpeedOf(y);
            return;
        }

        // A wheel that comes to a halt stays there when the brake holds more than the road turns; otherwise it starts turning the other
        // way.
        int sense = system.Senses[wheel];
        system.Senses[wheel] = 0;
        YawStopSystem.WheelMotion motion = system.Solve(time, y).Wheels[wheel];
        bool holds = motion.Torque > 0 && motion.Torque >= Math.Abs(motion.WheelX) * motion.Load * system.AxleOf(wheel).Radius;
        system.Senses[wheel] = holds ? 0 : -sense;
    }
}
