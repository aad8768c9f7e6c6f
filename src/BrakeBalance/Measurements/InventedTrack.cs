using BrakeBalance.Balance;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Measurements;

/// <summary>
/// An invented test day: makes gauge readings, stops and time series from a car whose truth is known, so that recovery can be proved.
/// </summary>
/// <param name="car">The car as it truly is.</param>
/// <param name="seed">Seed of the random numbers: the same seed gives the same logs.</param>
/// <remarks>
/// Not measurements, and never to be taken for any. The scatter is of the size common practice knows from gauges, spotters and pads.
/// </remarks>
public sealed class InventedTrack(Vehicle car, int seed)
{
    private readonly Random _random = RandomNumbers.Stream(seed, 0);

    /// <summary>The car as it truly is.</summary>
    public Vehicle Car { get; } = car;

    /// <summary>Standard deviation of one gauge's reading.</summary>
    public Pressure GaugeScatter { get; init; } = Pressure.FromBars(0.6);

    /// <summary>Relative scatter of each axle's friction from stop to stop [–].</summary>
    public double FrictionScatter { get; init; } = 0.02;

    /// <summary>Relative scatter of each axle's adhesion from stop to stop [–].</summary>
    public double AdhesionScatter { get; init; } = 0.04;

    /// <summary>Relative error of a deceleration read [–].</summary>
    public double DecelerationScatter { get; init; } = 0.03;

    /// <summary>Share of readings that are simply wrong [–].</summary>
    public double Outliers { get; init; }

    /// <summary>Extra rear line pressure on release above the knee: the valve's hysteresis.</summary>
    public Pressure Hysteresis { get; init; } = Pressure.FromBars(3);

    /// <summary>Reads both gauges at rising and falling pedal force for one position of the adjuster.</summary>
    /// <param name="turns">Turns from fully out; null leaves the adjuster as the car has it.</param>
    /// <param name="highest">Highest front line pressure, gauge.</param>
    /// <param name="count">Readings on the way up; half as many on the way down.</param>
    public IReadOnlyList<GaugePair> Gauges(double? turns, Pressure highest, int count)
    {
        Vehicle car = AtAdjuster(turns);
        List<GaugePair> pairs = [];
        for (int i = 0; i < count + count / 2; i++)
        {
            bool falling = i >= count;
            double share = falling ? 1 - (i - count + 1) / (count / 2 + 1.0) : (i + 1.0) / count;
            Pressure front = highest * share;
            Pressure rear = car.Hydraulics.LinePressures(front).Rear;
            if (falling)
            {
                // The valve holds the rear line back as the pedal comes up, but never above what the master cylinder gives it.
                rear = UnitMath.Min(front * car.Hydraulics.Split.RearToFrontPressureRatio,
                    UnitMath.Min(rear + Hysteresis, car.Hydraulics.LinePressures(highest).Rear));
            }

            if (_random.NextDouble() < Outliers)
            {
                rear = highest * _random.NextDouble();
            }

            pairs.Add(new GaugePair
            {
                Front = Read(front),
                Rear = Read(rear),
                Turns = turns,
                Phase = falling
                ? PressurePhase.Release : PressurePhase.Apply
            });
        }

        return pairs;
    }

    /// <summary>Makes one stop: the pressure rises to a target, or until an axle locks.</summary>
    /// <param name="load">Load case.</param>
    /// <param name="surface">Surface with its true adhesion.</param>
    /// <param name="target">Front line pressure aimed at, gauge.</param>
    /// <param name="speed">Initial speed.</param>
    /// <param name="turns">Turns of the adjuster; null leaves it as the car has it.</param>
    /// <param name="notesLockPressure">Whether the pressure at lock-up is noted, as with a logger or a drag needle.</param>
    /// <returns>The stop as it would be written down.</returns>
    public TestStop Stop(LoadCase load, SurfaceCondition surface, Pressure target, Speed speed, double? turns = null,
        bool notesLockPressure = false)
    {
        Vehicle car = AtAdjuster(turns).WithFrictionFactors(Scatter(FrictionScatter), Scatter(FrictionScatter));
        double k1 = surface.Adhesion * Scatter(AdhesionScatter), k2 = surface.Adhesion * Scatter(AdhesionScatter);
        var balance = new BalanceModel(car, load);
        FirstLock locked = FirstLock.None;
        double master = 0, top = target.Pascals;
        BalanceState state = balance.StateAt(0);
        const int steps = 2000;
        for (int i = 1; i <= steps && locked == FirstLock.None; i++)
        {
            master = top * i / steps;
            state = balance.StateAt(master);
            bool front = state.FrontUtilisation > car.Tyres.Front.AdhesionOn(k1, Force.FromNewtons(state.FrontNormalNewtons / 2));
            bool rear = state.RearUtilisation > car.Tyres.Rear.AdhesionOn(k2, Force.FromNewtons(state.RearNormalNewtons / 2));
            locked = front && rear ? FirstLock.Together : front ? FirstLock.Front : rear ? FirstLock.Rear : FirstLock.None;
        }

        bool wrong = _random.NextDouble() < Outliers;
        double rate = state.BrakingRate * Scatter(DecelerationScatter) * (wrong ? 0.6 + 0.8 * _random.NextDouble() : 1);
        Pressure frontRead = Read(Pressure.FromPascals(state.FrontLinePascals));
        return new TestStop
        {
            InitialSpeed = speed,
            FrontPressure = locked == FirstLock.None || notesLockPressure ? frontRead : Read(target),
            RearPressure = Read(locked == FirstLock.None || notesLockPressure ? Pressure.FromPascals(state.RearLinePascals)
                : car.Hydraulics.LinePressures(target, Force.FromNewtons(state.RearNormalNewtons)).Rear),
            LockPressure = locked != FirstLock.None && notesLockPressure ? frontRead : null,
            Deceleration = locked == FirstLock.None
                ? Acceleration.FromMetersPerSecondSquared(rate * Gravity.StandardMetresPerSecondSquared) : null,
            Locked = locked,
            Surface = surface.Name,
            LoadCase = load.Name,
            Turns = turns,
        };
    }

    /// <summary>Logs a drive with stops as a phone in a mount would.</summary>
    /// <param name="stops">Initial speed and steady deceleration of each stop.</param>
    /// <param name="samplesPerSecond">Sample rate.</param>
    /// <param name="tilt">Tilt of the mount, nose up positive.</param>
    /// <param name="offset">Zero error of the instrument.</param>
    /// <returns>Samples of longitudinal acceleration.</returns>
    public IReadOnlyList<MotionSample> Phone(IEnumerable<(Speed From, Acceleration Steady)> stops, Frequency samplesPerSecond,
        Angle tilt, Acceleration offset)
    {
        const double buildUpSeconds = 0.4, noise = 0.25;
        double step = 1 / samplesPerSecond.Hertz, time = 0;
        List<MotionSample> samples = [];
        void Add(double acceleration)
        {
            double reading = acceleration * Math.Cos(tilt.Radians) + Gravity.StandardMetresPerSecondSquared * Math.Sin(tilt.Radians)
                + offset.MetersPerSecondSquared + noise * RandomNumbers.Normal(_random);
            samples.Add(new MotionSample
            {
                Time = Duration.FromSeconds(Math.Round(time, 4)),
                Acceleration = Acceleration.FromMetersPerSecondSquared(Math.Round(reading, 3))
            });
            time += step;
        }

        foreach ((Speed from, Acceleration steady) in stops)
        {
            for (double t = 0; t < 2; t += step)
            {
                Add(0);
            }

            double v = from.MetersPerSecond;
            for (double t = 0; v > 0; t += step)
            {
                double a = steady.MetersPerSecondSquared * Math.Min(1, t / buildUpSeconds);
                Add(-a);
                v -= a * step;
            }

            for (double t = 0; t < 3; t += step)
            {
                Add(0);
            }

            // Pulling away again: each gear a little weaker than the last.
            double reached = 0;
            for (double t = 0; reached < from.MetersPerSecond; t += step)
            {
                double a = t % 2.2 < 0.3 ? 0.2 : 3.2 * Math.Pow(0.72, Math.Floor(t / 2.2));
                Add(a);
                reached += a * step;
            }
        }

        return samples;
    }

    private Vehicle AtAdjuster(double? turns) =>
        turns is { } t && Car.Hydraulics.RearProportioningValve?.Adjustment is { } screw ? Car.WithRearKnee(screw.KneeAt(t)) : Car;

    private Pressure Read(Pressure actual) =>
        Pressure.FromBars(Math.Round(Math.Max(0, actual.Bars + GaugeScatter.Bars * RandomNumbers.Normal(_random)), 1));

    private double Scatter(double relative) => Math.Exp(relative * RandomNumbers.Normal(_random));
}
