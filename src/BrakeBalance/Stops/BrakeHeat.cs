using BrakeBalance.Hydraulics;

namespace BrakeBalance.Stops;

/// <summary>Runs heat cycles: temperatures, fade, drifting balance, fluid.</summary>
/// <remarks>
/// <para>
/// After the cycle the car is taken as parked at once, with the air at rest and no further braking, and its brakes are followed until the
/// fluid of both axles has been at its hottest: heat stored in disc or drum goes on into the caliper while the wind that cools it is gone.
/// Coming to rest adds no heat. A car that rolls on in the wind after its last stop stays cooler than this.
/// </para>
/// <para>The split of heat between the axles follows their torques at the temperature of the moment, so it drifts while an axle
/// fades.</para>
/// <para>Assumes no lock, power M v/R at each axle (slip heat left out), and pressure that reaches the brakes whatever the fluid's
/// temperature.</para>
/// <para>
/// Source: energy balance; see <see cref="ThermalBrake"/>. The end of the soak: once ring, hat and caliper all fall, none can rise again,
/// because each is only warmed by the others (a cooperative system; theorem from memory).
/// </para>
/// </remarks>
public static class BrakeHeat
{
    private const double RelativeTolerance = 5e-4;
    private const double LongestStepSeconds = 5;
    private const double SoakPieceSeconds = 20;
    private const double LongestSoakSeconds = 6 * 3600;
    private const double RestingKelvinPerSecond = 1e-5;

    /// <summary>Drives a cycle.</summary>
    /// <param name="car">The car.</param>
    /// <param name="brakes">Heat capacity, cooling and fade of one wheel's brake of each axle.</param>
    /// <param name="cycle">What the car does.</param>
    /// <param name="ambient">Temperature of the air, and of the brakes at the start unless said.</param>
    /// <param name="fluid">The brake fluid.</param>
    /// <param name="atStart">Temperature of every part at the start, or null for that of the air.</param>
    /// <param name="withTrace">False to leave out temperatures over time.</param>
    /// <returns>Each stop, and the course of the temperatures.</returns>
    /// <exception cref="InvalidOperationException">
    /// The brakes at the pressure of the first stop no longer slow the car to the end speed.
    /// </exception>
    public static HeatResult Run(
        BrakedCar car, PerAxle<ThermalBrake> brakes, HeatCycle cycle, Temperature ambient, BrakeFluidGrade fluid,
            Temperature? atStart = null, bool withTrace = true)
    {
        ArgumentNullException.ThrowIfNull(cycle);
        ArgumentNullException.ThrowIfNull(fluid);
        var numbers = new CarNumbers(car);
        double air = ambient.DegreesCelsius;
        double start = (atStart ?? ambient).DegreesCelsius;
        List<HeatSample>? trace = withTrace ? new(700) : null;
        double[] hottest = new double[HeatSystem.Distance];
        Array.Fill(hottest, start);
        var system = new HeatSystem(numbers, brakes, air, hottest, trace);
        Span<double> y = stackalloc double[HeatSystem.States];
        y.Clear();
        y[HeatSystem.Speed] = cycle.InitialSpeed.MetersPerSecond;
        y[HeatSystem.FrontRing..HeatSystem.Distance].Fill(start);
        Span<double> buffer = stackalloc double[StiffIntegrator.BufferLength(HeatSystem.States, HeatSystem.Functions)];
        var integrator = new StiffIntegrator(buffer, HeatSystem.States, HeatSystem.Functions, RelativeTolerance, LongestStepSeconds);

        List<HeatStop> stops = new(cycle.Stops);
        double? held = null;
        double time = 0;
        system.Accepted(0, y);
        Span<double> before = stackalloc double[HeatSystem.States];
        IReadOnlyList<HeatPiece> pieces = cycle.Pieces;
        for (int i = 0; i < pieces.Count; i++)
        {
            HeatPiece piece = pieces[i];
            if (piece.StartsStop)
            {
                y.CopyTo(before);
                stops.Add(Begin(stops.Count + 1, time));
            }

            if (piece.HoldsPressure)
            {
                held ??= FirstPressure(system, piece, y);
                system.Pressure = held.Value;
                system.Slope = double.NaN;
            }
            else
            {
                system.Slope = piece.Slope;
            }

            system.UntilSpeed = piece.UntilSpeed ?? -1;
            double end = piece.UntilTime ?? time + 600;
            if (piece.UntilSpeed is { } speed && (piece.Slope > 0 ? y[HeatSystem.Speed] >= speed : y[HeatSystem.Speed] <= speed))
            {
                continue;
            }

            int fired = time < end ? integrator.Advance(ref system, ref time, y, end) : -1;
            if (fired < 0 && piece.UntilSpeed is not null)
            {
                throw new InvalidOperationException(Invariant.Text(
                    $"In stop {stops.Count} the car still moves at {y[HeatSystem.Speed]:0.0} m/s after ten minutes: "
                        + $"the brakes have faded to {system.Front.Fade.At(y[HeatSystem.FrontRing]):0.00} front "
                        + $"and {system.Rear.Fade.At(y[HeatSystem.RearRing]):0.00} rear of their torque."));
            }

            y[HeatSystem.Speed] = piece.UntilSpeed ?? Math.Max(0, y[HeatSystem.Speed]);
            if (piece.Brakes && (i + 1 == pieces.Count || !pieces[i + 1].Brakes || pieces[i + 1].StartsStop))
            {
                stops[^1] = End(stops[^1], system, time, before, y);
            }
        }

        PerAxle<Temperature> driving = Celsius(hottest[HeatSystem.FrontCaliper], hottest[HeatSystem.RearCaliper]);
        HeatSoak soak = Park(ref system, ref integrator, time, y);
        double heat = y[HeatSystem.FrontHeat] + y[HeatSystem.RearHeat];
        double stored = system.Front.Stored(y[HeatSystem.FrontRing] - start, y[HeatSystem.FrontHat] - start,
            y[HeatSystem.FrontCaliper] - start, 0)
            + system.Rear.Stored(y[HeatSystem.RearRing] - start, y[HeatSystem.RearHat] - start, y[HeatSystem.RearCaliper] - start, 0);
        return new HeatResult(
            Car: car,
            Cycle: cycle.Name,
            Fluid: fluid,
            Stops: stops,
            Trace: trace ?? (IReadOnlyList<HeatSample>)[],
            HottestRing: Celsius(hottest[HeatSystem.FrontRing], hottest[HeatSystem.RearRing]),
            HottestFluidDriving: driving,
            Soak: soak,
            HottestFluid: Celsius(hottest[HeatSystem.FrontCaliper], hottest[HeatSystem.RearCaliper]),
            BeyondFadeCurve: new(
                hottest[HeatSystem.FrontRing] > system.Front.Fade.HottestCelsius,
                    hottest[HeatSystem.RearRing] > system.Rear.Fade.HottestCelsius),
            Imbalance: heat > 0 ? 1 - (stored + y[HeatSystem.Lost]) / heat : 0);
    }

    private static HeatSoak Park(ref HeatSystem system, ref StiffIntegrator integrator, double end, Span<double> y)
    {
        system.Slope = 0;
        system.Pressure = 0;
        system.UntilSpeed = -1;
        system.SampleApart = 10;
        y[HeatSystem.Speed] = 0;
        double time = end;
        double front = y[HeatSystem.FrontCaliper];
        double rear = y[HeatSystem.RearCaliper];
        double frontTime = end;
        double rearTime = end;
        Span<double> rate = stackalloc double[HeatSystem.States];
        Span<double> decay = stackalloc double[HeatSystem.States];
        while (time < end + LongestSoakSeconds && Warms(system, time, y, rate, decay))
        {
            integrator.Advance(ref system, ref time, y, time + SoakPieceSeconds);
            (front, frontTime) = y[HeatSystem.FrontCaliper] > front ? (y[HeatSystem.FrontCaliper], time) : (front, frontTime);
            (rear, rearTime) = y[HeatSystem.RearCaliper] > rear ? (y[HeatSystem.RearCaliper], time) : (rear, rearTime);
        }

        return new HeatSoak(
            HottestFluid: Celsius(front, rear),
            HottestAfter: new(Duration.FromSeconds(frontTime - end), Duration.FromSeconds(rearTime - end)));
    }

    private static bool Warms(HeatSystem system, double time, ReadOnlySpan<double> y, Span<double> rate, Span<double> decay)
    {
        system.Rates(time, y, rate, decay);
        return rate[HeatSystem.FrontRing..HeatSystem.Distance].ContainsAnyExceptInRange(double.NegativeInfinity, RestingKelvinPerSecond);
    }

    private static double FirstPressure(in HeatSystem system, in HeatPiece piece, ReadOnlySpan<double> y)
    {
        // At the mean of the speeds between which the first stop runs, where drag has its mean effect.
        Span<double> middle = stackalloc double[HeatSystem.States];
        y.CopyTo(middle);
        middle[HeatSystem.Speed] = 0.5 * (y[HeatSystem.Speed] + piece.UntilSpeed!.Value);
        HeatSystem probe = system;
        probe.Slope = piece.Slope;
        return probe.Solve(middle).Pressure;
    }

    private static HeatStop Begin(int number, double time) => new(
        Number: number,
        Start: Duration.FromSeconds(time),
        MeanDeceleration: Acceleration.Zero,
        LinePressure: Pressure.Zero,
        RingAtStart: default,
        RingAtEnd: default,
        FluidAtEnd: default,
        Heat: default,
        TorqueFactorAtEnd: default);

    private static HeatStop End(HeatStop stop, in HeatSystem system, double time, ReadOnlySpan<double> before, ReadOnlySpan<double> y)
    {
        double seconds = time - stop.Start.Seconds;
        return stop with
        {
            MeanDeceleration = Acceleration.FromMetersPerSecondSquared(seconds > 0
                ? (before[HeatSystem.Speed] - y[HeatSystem.Speed]) / seconds : 0),
            LinePressure = Pressure.FromPascals(system.Solve(y).Pressure),
            RingAtStart = Celsius(before[HeatSystem.FrontRing], before[HeatSystem.RearRing]),
            RingAtEnd = Celsius(y[HeatSystem.FrontRing], y[HeatSystem.RearRing]),
            FluidAtEnd = Celsius(y[HeatSystem.FrontCaliper], y[HeatSystem.RearCaliper]),
            Heat = new(
                Energy.FromJoules(y[HeatSystem.FrontHeat] - before[HeatSystem.FrontHeat]),
                    Energy.FromJoules(y[HeatSystem.RearHeat] - before[HeatSystem.RearHeat])),
            TorqueFactorAtEnd = new(system.Front.Fade.At(y[HeatSystem.FrontRing]), system.Rear.Fade.At(y[HeatSystem.RearRing])),
        };
    }

    private static PerAxle<Temperature> Celsius(double front, double rear) =>
        new(Temperature.FromDegreesCelsius(front), Temperature.FromDegreesCelsius(rear));
}
