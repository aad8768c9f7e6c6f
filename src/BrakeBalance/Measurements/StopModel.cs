using BrakeBalance.Balance;
using BrakeBalance.Brakes;
using BrakeBalance.Vehicles;
using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace BrakeBalance.Measurements;

/// <summary>The likelihood of test stops, and the prior, in logarithms of the unknown quantities.</summary>
/// <remarks>
/// <para>Unknown: factors on front and rear friction and on the height of the centre of gravity, the adhesion of each surface, the scatter
/// of deceleration and of lock-up. Priors are normal in the logarithms.</para>
/// <para>Deceleration of a stop without lock-up: its logarithm scatters about the model's by a Student t of five degrees of freedom (robust
/// to bad readings). Lock-up: an axle locks where its adhesion utilised passes the road's, whose logarithm scatters normally, each axle by
/// itself. A stop says that this happened or did not happen up to the pressure reached (censored), or at the pressure noted. Friction that
/// differs from stop to stop (a drum multiplies it) and the gauges add to that scatter; "front first" is the chance that the front's turn
/// comes before the rear's on the way up. One stop in fifty is allowed to be noted down wrongly.</para>
/// </remarks>
internal sealed class StopModel
{
    private const int RampNodes = 24;
    private const double RampStart = 0.35;
    private const double Mistake = 0.02;
    private const double TailDegrees = 5;
    private const double LeastRate = 1e-4;

    private readonly PerAxle<FrictionGain> _gains;
    private readonly List<Stop> _stops = [];
    private readonly List<int> _places = [];
    private readonly List<SurfaceCondition> _surfaces = [];
    private readonly EstimationOptions _options;

    public StopModel(Vehicle vehicle, IEnumerable<TestStop> stops, EstimationOptions options)
    {
        (Vehicle, _options) = (vehicle, options);
        _gains = FrictionGain.Of(vehicle);
        TestStop[] all = [.. stops];
        Made = all;
        _surfaces.AddRange(all.Select(s => s.Surface ?? "unnamed").Distinct(StringComparer.OrdinalIgnoreCase).Select(SurfaceFor));
        _surfaces.AddRange(options.Surfaces.Where(s => IndexOf(s.Name) < 0));
        foreach ((int place, TestStop stop) in all.Index())
        {
            Add(stop, place);
        }

        (double Mean, double Deviation)[] priors =
        [
            (0, options.Prior.FrontFriction), (0, options.Prior.RearFriction), (0, options.Prior.CentreOfGravityHeight),
            .. _surfaces.Select(s => (Math.Log(s.Adhesion), Math.Max(0.02, s.Spread))),
            (Math.Log(options.DecelerationScatter), 0.5), (Math.Log(options.AdhesionScatter), 0.25),
        ];
        PriorMean = Vector<double>.Build.Dense(priors.Length, i => priors[i].Mean);
        PriorDeviation = Vector<double>.Build.Dense(priors.Length, i => Math.Max(1e-3, priors[i].Deviation));
    }

    public Vehicle Vehicle { get; }

    /// <summary>All stops made, used or not.</summary>
    public IReadOnlyList<TestStop> Made { get; }

    public EstimationOptions Options => _options;

    /// <summary>The stops that have a say, each with its place among those given, from 0.</summary>
    public IEnumerable<(int Place, Stop Stop)> Used => _places.Zip(_stops);

    public IReadOnlyList<SurfaceCondition> Surfaces => _surfaces;

    public Vector<double> PriorMean { get; }

    public Vector<double> PriorDeviation { get; }

    public List<LogProblem> NotUsed { get; } = [];

    /// <summary>What is remarked of a stop whose lock-up counts: nothing is wrong with it.</summary>
    internal const string LockUpWasUsed = "its deceleration was not used, since an axle locked; the lock-up was";

    public int StopsUsed => _stops.Count;

    public int ScatterIndex => 3 + _surfaces.Count;

    public CarDraw Car(Vector<double> theta) => new(Math.Exp(theta[0]), Math.Exp(theta[1]), Math.Exp(theta[2]));

    public double? Adhesion(Vector<double> theta, string surface) => IndexOf(surface) is >= 0 and int i ? Math.Exp(theta[3 + i]) : null;

    /// <summary>Negative log posterior up to a constant.</summary>
    public double NegativeLog(Vector<double> theta) => NegativeLog(theta, 1);

    /// <summary>The same with every scatter widened: far from the stops' message the sharp one is flat, and this one leads there.</summary>
    public double NegativeLog(Vector<double> theta, double widened)
    {
        double sum = 0;
        for (int i = 0; i < theta.Count; i++)
        {
            double u = (theta[i] - PriorMean[i]) / PriorDeviation[i];
            sum += 0.5 * u * u;
        }

        (CarGains car, PerAxle<double> friction) = Forces(theta);
        foreach (Stop stop in _stops)
        {
            sum += NegativeLog(stop, theta, widened, car, friction);
        }

        return sum;
    }

    /// <summary>What one stop adds to the negative log posterior.</summary>
    public double NegativeLog(Stop stop, Vector<double> theta)
    {
        (CarGains car, PerAxle<double> friction) = Forces(theta);
        return NegativeLog(stop, theta, 1, car, friction);
    }

    private double NegativeLog(Stop stop, Vector<double> theta, double widened, CarGains car, PerAxle<double> friction)
    {
        double sum = 0;
        if (stop.LogRate is { } observed)
        {
            double width = Math.Sqrt(RateVariance(stop, widened * Math.Exp(theta[ScatterIndex]), friction));
            double u = (observed - LogRate(stop, car)) / width;
            sum += Math.Log(width) + (TailDegrees + 1) / 2 * Math.Log(1 + u * u / TailDegrees);
        }

        if (stop.Locked is not null)
        {
            double mistake = widened > 1 ? 1e-6 : Mistake, chance = LockProbability(stop, car, theta[3 + stop.Surface],
                widened * Math.Exp(theta[ScatterIndex + 1]), friction);
            sum -= Math.Log((1 - mistake) * chance + mistake / 3);
        }

        return sum;
    }

    /// <summary>
    /// How much say a stop has at some quantities of the car [–]: 1 in full, towards 0 for one that cannot be believed.
    /// </summary>
    /// <remarks>
    /// Of a deceleration the weight that Student's t gives its residual, 1 up to one standard deviation; of a lock-up the chance that it
    /// was not noted down wrongly.
    /// </remarks>
    public (double? Rate, double? Lock) Weights(Stop stop, Vector<double> theta)
    {
        (double? rate, _) = Surprise(stop, theta);
        double? seen = stop.Locked is null ? null : (1 - Mistake) * Chance(stop, theta);
        return (rate is { } u ? Math.Min(1, (TailDegrees + 1) / (TailDegrees + u * u)) : null, seen / (seen + Mistake / 3));
    }

    /// <summary>Logarithm of the deceleration at a stop's line pressures.</summary>
    public double LogRate(Stop stop, Vector<double> theta) => LogRate(stop, Forces(theta).Gains);

    // A line pressure below a drum's threshold brakes by nothing, whose logarithm no fit could climb out of.
    private static double LogRate(Stop stop, CarGains car) =>
        Math.Log(Math.Max(LeastRate, stop.Kernel.Rate(stop.FrontLine, stop.RearLine, car)));

    private double Chance(Stop stop, Vector<double> theta)
    {
        (CarGains car, PerAxle<double> friction) = Forces(theta);
        return LockProbability(stop, car, theta[3 + stop.Surface], Math.Exp(theta[ScatterIndex + 1]), friction);
    }

    /// <summary>How far a stop lies off what the model foretells, in standard deviations.</summary>
    /// <returns>Deceleration above (positive) or below the model's; how unlikely the lock-up or its absence is, not negative.</returns>
    public (double? Rate, double? Lock) Surprise(Stop stop, Vector<double> theta)
    {
        (CarGains car, PerAxle<double> friction) = Forces(theta);
        double scatter = Math.Exp(theta[ScatterIndex]), adhesion = theta[3 + stop.Surface];
        double? rate = stop.LogRate is { } observed
            ? (observed - LogRate(stop, car)) / Math.Sqrt(RateVariance(stop, scatter, friction))
            : null;
        if (stop.Locked is null)
        {
            return (rate, null);
        }

        if (!stop.LockIsAtTop)
        {
            double chance = Math.Clamp(Chance(stop, theta), 1e-12, 0.5);
            return (rate, -MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, chance));
        }

        (double sf, double sr) = Widths(stop, Math.Exp(theta[ScatterIndex + 1]), friction);
        (double f, double r) = stop.LogUsed(^1, car);
        (double a, double b) = ((f - adhesion) / sf, (r - adhesion) / sr);
        return (rate, stop.Locked switch
        {
            FirstLock.Front => Math.Max(Math.Abs(a), b),
            FirstLock.Rear => Math.Max(Math.Abs(b), a),
            _ => Math.Max(Math.Abs(a), Math.Abs(b)),
        });
    }

    /// <summary>Force per pressure of both axles and height of the centre of gravity.</summary>
    public CarGains Gains(Vector<double> theta) => Forces(theta).Gains;

    /// <summary>Deceleration and the two braking forces at a stop's line pressures.</summary>
    public (double Rate, double Front, double Rear) Forces(Stop stop, Vector<double> theta)
    {
        CarGains car = Forces(theta).Gains;
        return (
            stop.Kernel.Rate(stop.FrontLine, stop.RearLine, car),
            car.Front * Math.Max(0, stop.FrontLine - Vehicle.Brakes.Front.ThresholdPressure.Pascals),
            car.Rear * Math.Max(0, stop.RearLine - Vehicle.Brakes.Rear.ThresholdPressure.Pascals));
    }

    /// <summary>What a stop that was not made yet would show.</summary>
    /// <returns>Logarithm of the deceleration, and the chances that nothing locks, the front, or the rear locks first.</returns>
    public StopShows Predict(Stop stop, Vector<double> theta)
    {
        (CarGains car, PerAxle<double> friction) = Forces(theta);
        double adhesion = theta[3 + stop.Surface], lockScatter = Math.Exp(theta[ScatterIndex + 1]);
        (double front, double rear) = FirstChances(stop, car, adhesion, lockScatter, friction);
        return new(LogRate(stop, car), Math.Max(0, 1 - front - rear), front, rear);
    }

    /// <summary>Pressures and load of a stop, worked out once; null with a reason when it cannot be used.</summary>
    public Stop? Prepare(TestStop stop, out string? reason)
    {
        LoadCase? load = stop.LoadCase is null
            ? Vehicle.LoadCases[0] : Vehicle.LoadCases.FirstOrDefault(l =>
            string.Equals(l.Name, stop.LoadCase, StringComparison.OrdinalIgnoreCase));
        reason = null;
        if (load is null)
        {
            reason = $"the car has no load case \"{stop.LoadCase}\"; it has {Vehicle.LoadCaseNames}";
            return null;
        }

        if (stop is { FrontPressure: null, RearPressure: null, LockPressure: null })
        {
            reason = "it gives a pedal force but no line pressure; put a gauge on the front line";
            return null;
        }

        if (stop.Deceleration is { MetersPerSecondSquared: <= 0 })
        {
            reason = "its deceleration is not above zero: is the sign wrong?";
            return null;
        }

        Vehicle set = AtAdjuster(stop.Turns);
        var balance = new BalanceModel(set, load);
        int surface = Math.Max(0, IndexOf(stop.Surface ?? "unnamed"));
        bool locked = stop.Locked is FirstLock.Front or FirstLock.Rear or FirstLock.Together;
        double? atLock = stop.LockPressure?.Pascals;
        BalanceState? slide = null;
        BalanceState At(double pascals)
        {
            BalanceState state = balance.StateAt(pascals);
            return slide is { } sliding && pascals > sliding.MasterPascals ? state with
            {
                RearLinePascals = set.Hydraulics.LinePressures(
                    Pressure.FromPascals(pascals), Force.FromNewtons(sliding.RearNormalNewtons)).Rear.Pascals,
            } : state;
        }

        double? front = stop.FrontPressure?.Pascals ?? atLock;
        // Without a valve in the front line its pressure is the master cylinder's.
        bool open = Vehicle.Hydraulics.FrontValves.IsEmpty;
        double most = 2 * balance.MaximumPressure.Pascals;
        double Front(double pascals) => open
            ? Math.Min(pascals, most) : Master(At, most, s => s.FrontLinePascals, pascals);
        // Past the lock the car slides: a valve that senses the load sees what the road leaves on the axle, not what the pressure asks for.
        if (locked && set.Hydraulics.SensesLoad)
        {
            slide = atLock is { } noted ? balance.StateAt(Front(noted))
                : balance.TryFirstLockUp(_surfaces[surface].Adhesion, out BalanceState first, out _, out _) ? first : null;
        }

        double master = front is { } read ? Front(read) : Master(At, most, s => s.RearLinePascals, stop.RearPressure!.Value.Pascals);
        BalanceState top = At(master);
        double frontLine = front ?? top.FrontLinePascals;
        double rearLine = stop.RearPressure?.Pascals ?? top.RearLinePascals;
        double correction = top.RearLinePascals > 0 ? rearLine / top.RearLinePascals : 1;
        double lockMaster = atLock is { } p ? Front(p) : master;
        double[] masters = [.. Enumerable.Range(0, RampNodes + 1).Select(i => lockMaster * (RampStart + (1 - RampStart) * i / RampNodes))];
        var path = masters.Select(At).Select(s => (s.FrontLinePascals, s.RearLinePascals * correction)).ToArray();
        // The same error of a gauge weighs more at low pressure.
        PerAxle<double> variance = new(
            GaugeVariance(Vehicle.Brakes.Front, locked && atLock is not null ? path[^1].Item1 : frontLine),
            GaugeVariance(Vehicle.Brakes.Rear, locked && atLock is not null ? path[^1].Item2 : rearLine));
        double frontForce = _gains.Front.At(1) * Math.Max(0, frontLine - Vehicle.Brakes.Front.ThresholdPressure.Pascals);
        double rearForce = _gains.Rear.At(1) * Math.Max(0, rearLine - Vehicle.Brakes.Rear.ThresholdPressure.Pascals);
        double share = frontForce / Math.Max(1, frontForce + rearForce);
        return new Stop(
            new BalanceKernel(Vehicle, load, 0.6 * (stop.InitialSpeed?.MetersPerSecond ?? 0)),
            surface,
            frontLine,
            rearLine,
            stop.Deceleration is { } d && !locked ? Math.Log(d.MetersPerSecondSquared / Gravity.StandardMetresPerSecondSquared) : null,
            stop.Locked,
            atLock is not null && locked,
            path,
            variance,
            share,
            front is not null && stop.RearPressure is not null ? RearByFront(At, master, top) : null);
    }

    private RearLineLaw RearByFront(Func<double, BalanceState> at, double master, BalanceState top)
    {
        BalanceState above = at(1.02 * master);
        double rise = Math.Max(0, above.RearLinePascals - top.RearLinePascals) / Math.Max(1, above.FrontLinePascals - top.FrontLinePascals);
        double uncut = Vehicle.Hydraulics.Split.RearToFrontPressureRatio * master;
        return new RearLineLaw(top.RearLinePascals, Math.Min(rise, 3), Math.Max(0, uncut - top.RearLinePascals));
    }

    private double GaugeVariance(Brake brake, double linePascals) =>
        Math.Pow(_options.GaugeScatter.Pascals / Math.Max(1e5, linePascals - brake.ThresholdPressure.Pascals), 2);

    /// <summary>
    /// Newtons per pascal of each axle in place of the friction factors, and the variance that friction from stop to stop makes; a drum
    /// multiplies it, the more so the higher its friction.
    /// </summary>
    private (CarGains Gains, PerAxle<double> Variance) Forces(Vector<double> theta)
    {
        CarDraw car = Car(theta);
        return (
            new CarGains(_gains.Front.At(car.Front), _gains.Rear.At(car.Rear), car.Height),
            new(Math.Pow(_options.FrictionScatter * _gains.Front.SensitivityAt(car.Front), 2),
                Math.Pow(_options.FrictionScatter * _gains.Rear.SensitivityAt(car.Rear), 2)));
    }

    private static double Master(Func<double, BalanceState> at, double most, Func<BalanceState, double> line, double pascals)
    {
        double low = 0, high = most;
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = line(at(middle)) < pascals ? (middle, high) : (low, middle);
        }

        return high;
    }

    private Vehicle AtAdjuster(double? turns) =>
        KneeAt(Vehicle, _options.Adjuster, turns) is { } knee ? Vehicle.WithRearKnee(knee) : Vehicle;

    /// <summary>The knee at which a stop was made; null where its turns do not tell, and then it is taken for the car's own.</summary>
    public static Pressure? KneeAt(Vehicle vehicle, AdjusterCalibration? adjuster, double? turns) =>
        turns is not { } t || vehicle.Hydraulics.RearProportioningValve is not { } valve ? null
            : adjuster?.KneeAt(t).Estimate ?? (valve.Adjustment is { } screw && t >= 0 && t <= screw.Turns ? screw.KneeAt(t) : null);

    private void Add(TestStop stop, int place)
    {
        Stop? prepared = Prepare(stop, out string? reason);
        if (prepared is null)
        {
            NotUsed.Add(new LogProblem(stop.Line, "not used: " + reason));
            return;
        }

        if (stop.Deceleration is not null && prepared.LogRate is null)
        {
            NotUsed.Add(new LogProblem(stop.Line, LockUpWasUsed));
        }

        if (prepared.LogRate is null && prepared.Locked is null)
        {
            NotUsed.Add(new LogProblem(stop.Line,
                "not used: it gives neither a deceleration without lock-up nor which axle locked"));
            return;
        }

        _stops.Add(prepared);
        _places.Add(place);
    }

    private double LockProbability(Stop stop, CarGains car, double adhesion, double scatter, PerAxle<double> friction)
    {
        (double sf, double sr) = Widths(stop, scatter, friction);
        if (stop.Locked == FirstLock.None)
        {
            (double f, double r) = stop.LogUsed(^1, car);
            return Below((f - adhesion) / sf) * Below((r - adhesion) / sr);
        }

        if (stop.LockIsAtTop)
        {
            (double f, double r) = stop.LogUsed(^1, car);
            (double f2, double r2) = stop.LogUsed(^2, car);
            // A valve may hold the front line where it is: then the way is measured by the master cylinder's pressure.
            (double top, double before) = (stop.Path[^1].Front, stop.Path[^2].Front);
            double step = Math.Log(top > before ? top / before : 1 / (1 - (1 - RampStart) / RampNodes));
            double a = (f - adhesion) / sf, b = (r - adhesion) / sr;
            // A density in the logarithm of the pressure, over a width of 5 % to compare with the chance of a mistake.
            double front = Normal(a) * Math.Max(1e-9, (f - f2) / sf / step) * Below(b);
            double rear = Normal(b) * Math.Max(1e-9, (r - r2) / sr / step) * Below(a);
            return 0.05 * (stop.Locked switch { FirstLock.Front => front, FirstLock.Rear => rear, _ => front + rear });
        }

        (double frontFirst, double rearFirst) = FirstChances(stop, car, adhesion, scatter, friction);
        return stop.Locked switch { FirstLock.Front => frontFirst, FirstLock.Rear => rearFirst, _ => frontFirst + rearFirst };
    }

    private static (double Front, double Rear) FirstChances(
        Stop stop, CarGains car, double adhesion, double scatter, PerAxle<double> friction)
    {
        (double sf, double sr) = Widths(stop, scatter, friction);
        double front = 0, rear = 0, notFront = 1, notRear = 1;
        // Far below the limit nothing happens: both utilisations rise along the way, so the first point that matters is found by halving.
        int first = 0, beyond = stop.Path.Length - 1;
        double leastFront = Math.Exp(adhesion - 5 * sf), leastRear = Math.Exp(adhesion - 5 * sr);
        while (first < beyond)
        {
            int middle = (first + beyond) / 2;
            (double f, double r) = stop.Kernel.Utilisation(stop.Path[middle].Front, stop.Path[middle].Rear, car);
            (first, beyond) = f < leastFront && r < leastRear ? (middle + 1, beyond) : (first, middle);
        }

        for (int j = first; j < stop.Path.Length && notFront > 1e-7 && notRear > 1e-7; j++)
        {
            (double f, double r) = stop.LogUsed(j, car);
            double nf = Below((f - adhesion) / sf), nr = Below((r - adhesion) / sr);
            front += Math.Max(0, notFront - nf) * (notRear + nr) / 2;
            rear += Math.Max(0, notRear - nr) * (notFront + nf) / 2;
            (notFront, notRear) = (Math.Min(notFront, nf), Math.Min(notRear, nr));
        }

        return (front, rear);
    }

    /// <summary>
    /// Variance of the logarithm of a measured deceleration about the model: instrument, friction from stop to stop, gauges.
    /// </summary>
    public double RateVariance(Stop stop, Vector<double> theta) =>
        RateVariance(stop, Math.Exp(theta[ScatterIndex]), Forces(theta).Variance);

    private static double RateVariance(Stop stop, double scatter, PerAxle<double> friction)
    {
        double share = stop.FrontShare;
        return scatter * scatter + share * share * (friction.Front + stop.GaugeVariance.Front)
            + (1 - share) * (1 - share) * (friction.Rear + stop.GaugeVariance.Rear);
    }

    /// <summary>Scatter of each axle's lock-up in the logarithm of utilisation over adhesion: road, friction and gauge together.</summary>
    private static (double Front, double Rear) Widths(Stop stop, double road, PerAxle<double> friction) =>
        (Math.Sqrt(road * road + stop.GaugeVariance.Front + friction.Front),
            Math.Sqrt(road * road + stop.GaugeVariance.Rear + friction.Rear));

    /// <summary>Chance that a standard normal number exceeds u: that an axle has not locked yet.</summary>
    private static double Below(double u) => u > 8 ? 0 : u < -8 ? 1 : 0.5 * SpecialFunctions.Erfc(u * 0.7071067811865476);

    private static double Normal(double u) => 0.3989422804014327 * Math.Exp(-0.5 * u * u);

    private SurfaceCondition SurfaceFor(string name) =>
        _options.Surfaces.FirstOrDefault(s => string.Equals(s.Name, name, StringComparison.OrdinalIgnoreCase))
            ?? SurfaceCondition.Typical(name);

    private int IndexOf(string surface) => _surfaces.FindIndex(s => string.Equals(s.Name, surface, StringComparison.OrdinalIgnoreCase));

    /// <summary>A stop as the likelihood needs it.</summary>
    internal sealed record Stop(
        BalanceKernel Kernel,
        int Surface,
        double FrontLine,
        double RearLine,
        double? LogRate,
        FirstLock? Locked,
        bool LockIsAtTop,
        (double Front, double Rear)[] Path,
        PerAxle<double> GaugeVariance,
        double FrontShare,
        RearLineLaw? RearByFront)
    {
        /// <summary>Logarithms of the utilisation over the adhesion on a surface of adhesion 1, at a point of the path.</summary>
        public (double Front, double Rear) LogUsed(Index at, in CarGains car)
        {
            (double front, double rear) = Kernel.Utilisation(Path[at].Front, Path[at].Rear, car);
            return (Math.Log(front), Math.Log(rear));
        }
    }

    /// <summary>What the valves make of the front line pressure, where both gauges were read.</summary>
    /// <param name="Rear">Rear line pressure by the car's valves, in pascals.</param>
    /// <param name="Slope">Rear over front for a small rise there [–].</param>
    /// <param name="Cut">What the valves take from the rear line, in pascals.</param>
    internal sealed record RearLineLaw(double Rear, double Slope, double Cut);
}
