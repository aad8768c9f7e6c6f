namespace BrakeBalance.Stops;

/// <summary>Simulates straight stops.</summary>
/// <remarks>
/// <para>Equations: <see cref="BrakedCar"/> as a rigid body on two axles with wheel inertia and slip curves; lock, release and
/// standstill are located as events.</para>
/// <para>Source: common practice of longitudinal vehicle dynamics; the checks beside the tests name theirs.</para>
/// </remarks>
public static class StraightStop
{
    /// <summary>Speed below which a lock no longer counts: every stop ends with still wheels.</summary>
    /// <remarks>
    /// Source: 49 CFR 571.135 counts locks above 15 km/h only and lets a wheel lock for 0.1 s above that (S7.2.3(d), S7.5.2(d), read);
    /// 5 km/h is this project's choice, so that late locks are told too. Both wheels of an axle lock at once here; there an axle is locked
    /// when its second wheel locks (S7.2.1(e)).
    /// </remarks>
    public static Speed SlowestLock { get; } = Speed.FromKilometersPerHour(5);

    private const double RelativeTolerance = 2e-4;
    private const double LongestStepSeconds = 0.03;

    /// <summary>Stops a car.</summary>
    /// <param name="car">The car on its road.</param>
    /// <param name="driver">What the foot asks for.</param>
    /// <param name="buildUp">How pressure follows the foot.</param>
    /// <param name="initialSpeed">Speed when the foot touches the pedal; 1 to 150 m/s.</param>
    /// <param name="withTrace">False to leave out the trace, for studies of many stops.</param>
    /// <returns>Distance, locks, energies and the trace.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The initial speed is outside its range.</exception>
    /// <exception cref="InvalidOperationException">
    /// The car does not stop: the brakes and the road do not overcome the slope; or no pressure reaches lock for a threshold driver.
    /// </exception>
    public static StopResult Run(BrakedCar car, Driver driver, PressureBuildUp buildUp, Speed initialSpeed, bool withTrace = true) =>
        Run(car, driver, buildUp, initialSpeed, withTrace, RelativeTolerance);

    internal static StopResult Run(BrakedCar car, Driver driver, PressureBuildUp buildUp, Speed initialSpeed, bool withTrace,
        double relativeTolerance)
    {
        double v0 = Require.Between(initialSpeed.MetersPerSecond, 1, 150, nameof(initialSpeed));
        var numbers = new CarNumbers(car);
        double held = HeldPascals(numbers, driver, v0, out bool bounded);
        var command = new PressureCommand(buildUp, held);
        List<StopSample>? trace = withTrace ? new(600) : null;
        var system = new StraightStopSystem(numbers, command, v0, (driver as AntilockBound)?.Efficiency, trace);

        Span<double> y = stackalloc double[StraightStopSystem.States];
        system.Begin(y);
        Span<double> buffer = stackalloc double[StiffIntegrator.BufferLength(StraightStopSystem.States, StraightStopSystem.Functions)];
        var integrator = new StiffIntegrator(buffer, StraightStopSystem.States, StraightStopSystem.Functions, relativeTolerance,
            LongestStepSeconds);

        double time = 0;
        double longest = 20 + 20 * v0;
        double markedAt80 = 0;
        double markedAt10 = 0;
        PerAxle<LockEvent?> locks = default;
        PerAxle<ReleaseEvent?> releases = default;
        bool regulated = false;
        var easing = driver as EasingDriver;
        double easeAt = easing?.EasesAt?.Seconds ?? double.PositiveInfinity;
        bool eases = false;
        system.Accepted(0, y);
        while (true)
        {
            double end = Math.Min(Math.Min(longest, easeAt), system.Command.NextKink(time));
            int fired = integrator.Advance(ref system, ref time, y, end);
            if (fired == StraightStopSystem.Standstill)
            {
                break;
            }

            switch (fired)
            {
                case StraightStopSystem.At80Percent:
                    markedAt80 = y[StraightStopSystem.Distance];
                    break;
                case StraightStopSystem.At10Percent:
                    markedAt10 = y[StraightStopSystem.Distance];
                    break;
                case StraightStopSystem.FrontSaturates:
                    system.FrontState = Saturate(driver, y, StraightStopSystem.FrontSlip);
                    locks = new(locks.Front ?? Lock(Axle.Front, system.FrontState, system, time, y), locks.Rear);
                    regulated |= driver is AntilockBound;
                    break;
                case StraightStopSystem.RearSaturates:
                    system.RearState = Saturate(driver, y, StraightStopSystem.RearSlip);
                    locks = new(locks.Front, locks.Rear ?? Lock(Axle.Rear, system.RearState, system, time, y));
                    regulated |= driver is AntilockBound;
                    break;
                case StraightStopSystem.FrontReleases:
                    releases = new(locks.Front is null ? null : releases.Front ?? Release(Axle.Front, system, time, y), releases.Rear);
                    system.FrontState = WheelState.Rolling;
                    y[StraightStopSystem.FrontSlip] = Math.Min(y[StraightStopSystem.FrontSlip], 1 - 1e-6);
                    break;
                case StraightStopSystem.RearReleases:
                    releases = new(releases.Front, locks.Rear is null ? null : releases.Rear ?? Release(Axle.Rear, system, time, y));
                    system.RearState = WheelState.Rolling;
                    y[StraightStopSystem.RearSlip] = Math.Min(y[StraightStopSystem.RearSlip], 1 - 1e-6);
                    break;
                default:
                    ThrowWhenEndless(time, longest, y[StraightStopSystem.Speed], system.Command.At(time));
                    break;
            }

            if (easing is null)
            {
                continue;
            }

            bool locked = system.FrontState == WheelState.Locked || system.RearState == WheelState.Locked;
            if (eases && !locked)
            {
                eases = false;
                system.Command = system.Command.Held(time);
            }
            else if (!eases && locked && double.IsPositiveInfinity(easeAt) && y[StraightStopSystem.Speed] >= SlowestLock.MetersPerSecond)
            {
                easeAt = time + easing.Reaction.Seconds;
            }

            if (time >= easeAt)
            {
                easeAt = double.PositiveInfinity;
                eases = locked;
                system.Command = locked ? system.Command.Eased(time, easing.ReleaseRate.PascalsPerSecond) : system.Command;
            }
        }

        // Below the end speed the deceleration is taken as constant: 0.1 m/s is gone within a few millimetres.
        StraightStopSystem.Forces last = system.Solve(time, y);
        double v = y[StraightStopSystem.Speed];
        double stopTime = time + v / last.Deceleration;
        double distance = y[StraightStopSystem.Distance] + v * v / (2 * last.Deceleration);
        trace?.Add(trace[^1] with { TimeSeconds = stopTime, SpeedMetresPerSecond = 0, DistanceMetres = distance });
        return new StopResult(
            Car: car,
            Driver: driver.Name,
            InitialSpeed: initialSpeed,
            Distance: Length.FromMeters(distance),
            Duration: Duration.FromSeconds(stopTime),
            HeldPressure: Pressure.FromPascals(held),
            Locks: locks,
            Releases: releases,
            Bound: regulated || (locks.Front ?? locks.Rear) is not null || (driver is ThresholdDriver && !bounded) ? StopBound.Road
                : driver.Bound,
            Energy: Energies(numbers, v0, y),
            MeanFullyDevelopedDeceleration: Acceleration.FromMetersPerSecondSquared(
                (0.64 - 0.01) * v0 * v0 / (2 * ((markedAt10 > 0 ? markedAt10 : distance) - markedAt80))),
            Trace: trace ?? (IReadOnlyList<StopSample>)[]);
    }

    private static double HeldPascals(in CarNumbers car, Driver driver, double speed, out bool bounded)
    {
        bounded = false;
        switch (driver)
        {
            case EmergencyDriver emergency:
                return emergency.HeldPressure.Pascals;
            case AntilockBound bound:
                return bound.HeldPressure.Pascals;
            case EasingDriver easing:
                return easing.HeldPressure.Pascals;
            default:
                double? fast = LockPressure.Lowest(car, speed)?.Pascals;
                double? slow = LockPressure.Lowest(car, 0)?.Pascals;
                var threshold = (ThresholdDriver)driver;
                double wanted = fast is { } a && slow is { } b ? threshold.Margin * Math.Min(a, b) : double.PositiveInfinity;
                double most = threshold.HighestPressure?.Pascals ?? double.PositiveInfinity;
                bounded = most < wanted;
                return Math.Min(wanted, most) is var pascals && double.IsFinite(pascals)
                    ? pascals
                    : throw new InvalidOperationException(
                        "No line pressure within four times the last point of the torque curves locks an axle, so there is no "
                            + "threshold to hold; use an emergency driver with a chosen pressure.");
        }
    }

    private static WheelState Saturate(Driver driver, Span<double> state, int slip)
    {
        if (driver is AntilockBound)
        {
            return WheelState.Regulated;
        }

        state[slip] = 1;
        return WheelState.Locked;
    }

    private static LockEvent? Lock(Axle axle, WheelState wheels, in StraightStopSystem system, double time, ReadOnlySpan<double> state)
    {
        double speed = state[StraightStopSystem.Speed];
        return wheels != WheelState.Locked || speed < SlowestLock.MetersPerSecond
            ? null
            : new LockEvent(
                axle, Duration.FromSeconds(time), Speed.FromMetersPerSecond(speed), Length.FromMeters(state[StraightStopSystem.Distance]),
                system.Solve(time, state).Deceleration / Gravity.StandardMetresPerSecondSquared,
                    Pressure.FromPascals(system.Command.At(time)));
    }

    private static ReleaseEvent Release(Axle axle, in StraightStopSystem system, double time, ReadOnlySpan<double> state)
    {
        StraightStopSystem.Forces forces = system.Solve(time, state);
        return new ReleaseEvent(
            axle, Duration.FromSeconds(time), Speed.FromMetersPerSecond(state[StraightStopSystem.Speed]),
            Pressure.FromPascals(forces.Pressure), Pressure.FromPascals(system.LinePascals(axle, forces)));
    }

    private static StopEnergy Energies(in CarNumbers car, double v0, ReadOnlySpan<double> y)
    {
        double front = v0 / car.Front.Radius;
        double rear = v0 / car.Rear.Radius;
        double kinetic = 0.5 * (car.Mass * v0 * v0 + car.Front.Inertia * front * front + car.Rear.Inertia * rear * rear);
        return new StopEnergy(
            Energy.FromJoules(kinetic),
            new(Energy.FromJoules(y[StraightStopSystem.FrontBrakeEnergy]), Energy.FromJoules(y[StraightStopSystem.RearBrakeEnergy])),
            new(Energy.FromJoules(y[StraightStopSystem.FrontTyreEnergy]), Energy.FromJoules(y[StraightStopSystem.RearTyreEnergy])),
            Energy.FromJoules(y[StraightStopSystem.ResistanceEnergy]));
    }

    private static void ThrowWhenEndless(double time, double longest, double speed, double heldPascals)
    {
        if (time >= longest)
        {
            throw new InvalidOperationException(Invariant.Text($"The car still moves at {speed:0.0} m/s after {time:0} s: "
                + $"neither the brakes at {heldPascals / 1e5:0.0} bar nor the road stop it."));
        }
    }
}
