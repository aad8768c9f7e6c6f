using BrakeBalance.Hydraulics;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using MathNet.Numerics.RootFinding;
using UnitsNet;

namespace BrakeBalance.Balance;

/// <summary>The balance of one car in one load case: from line pressure to braking forces, axle loads, adhesion utilised and lock-up.</summary>
/// <remarks>
/// <para>N₁ = m g (b/E + z h/E) − L₁, N₂ = m g (a/E − z h/E) − L₂; f_i = T_i/N_i; z m g = T₁ + T₂ + R + D,
/// with R the rolling resistance, D the drag and L_i the lift at each axle.</para>
/// <para>Assumes a straight, level road, rigid suspension and a quasi-static state at constant speed (for the aerodynamics).</para>
/// <para>Source: UN R13-H Annex 5 (adhesion utilisation), extended by R, D and L_i as in the usual texts on longitudinal dynamics.</para>
/// </remarks>
public sealed class BalanceModel
{
    private const double TogetherTolerance = 1e-3;
    private const double SmallestRate = 0.02;
    private const double RootTolerance = 1e-6;

    private readonly BrakeHydraulics _hydraulics;
    private readonly PerAxle<Tyre> _tyres;
    private readonly PerAxle<double> _tyreReferenceNewtons;
    private readonly bool _piecewiseLinear;
    private readonly bool _sensesLoad;
    private readonly double _rearPressureRatio;
    private readonly double _maximumPascals;
    private readonly double _weightNewtons;
    private readonly double _frontStaticNewtons;
    private readonly double _rearStaticNewtons;
    private readonly double _transferNewtonsPerRate;
    private readonly double _externalNewtons;
    private readonly double _frontNewtonsPerPascal;
    private readonly double _rearNewtonsPerPascal;
    private readonly double _frontThresholdPascals;
    private readonly double _rearThresholdPascals;
    private readonly double _frontEngineNewtons;
    private readonly double _rearEngineNewtons;
    private readonly double[] _kinkPascals;

    /// <summary>Prepares the balance of a car.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="loadCase">The state of load.</param>
    /// <param name="speed">Speed for drag and lift; not negative; standstill (no aerodynamics) unless said.</param>
    /// <exception cref="ArgumentException">The centre of gravity lies outside the wheelbase, or lift takes an axle off the road.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="speed"/> is negative.</exception>
    public BalanceModel(Vehicle vehicle, LoadCase loadCase, Speed speed = default)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(loadCase);
        ArgumentOutOfRangeException.ThrowIfLessThan(speed, Speed.Zero);
        Vehicle = vehicle;
        LoadCase = loadCase;
        Speed = speed;
        double wheelbase = vehicle.Wheelbase.Meters;
        double a = loadCase.FrontAxleToCentreOfGravity.Meters;
        if (a >= wheelbase)
        {
            throw new ArgumentException(
                FormattableString.Invariant($"The centre of gravity lies outside the wheelbase: {a:0.###} m behind the front axle, wheelbase {wheelbase:0.###} m."),
                nameof(loadCase));
        }

        _weightNewtons = loadCase.Mass.Kilograms * Gravity.StandardMetresPerSecondSquared;
        double dynamicPressure = vehicle.Aerodynamics?.DynamicPressurePascals(speed.MetersPerSecond) ?? 0;
        double frontLift = dynamicPressure * (vehicle.Aerodynamics?.FrontLiftArea.SquareMeters ?? 0);
        double rearLift = dynamicPressure * (vehicle.Aerodynamics?.RearLiftArea.SquareMeters ?? 0);
        _frontStaticNewtons = _weightNewtons * (wheelbase - a) / wheelbase - frontLift;
        _rearStaticNewtons = _weightNewtons * a / wheelbase - rearLift;
        if (_frontStaticNewtons <= 0 || _rearStaticNewtons <= 0)
        {
            throw new ArgumentException(
                FormattableString.Invariant($"At {speed.KilometersPerHour:0} km/h the lift takes the {(_frontStaticNewtons <= 0 ? "front" : "rear")} axle off the road."),
                nameof(speed));
        }

        _transferNewtonsPerRate = _weightNewtons * loadCase.CentreOfGravityHeight.Meters / wheelbase;
        _externalNewtons = vehicle.RollingResistanceCoefficient * (_frontStaticNewtons + _rearStaticNewtons)
            + dynamicPressure * (vehicle.Aerodynamics?.DragArea.SquareMeters ?? 0);
        _tyres = vehicle.Tyres;
        _tyreReferenceNewtons = vehicle.Tyres.Select(tyre => tyre.ReferenceLoad.Newtons);
        _frontNewtonsPerPascal = 2 * vehicle.Brakes.Front.TorqueNewtonMetresPerPascal / vehicle.Tyres.Front.LoadedRadius.Meters;
        _rearNewtonsPerPascal = 2 * vehicle.Brakes.Rear.TorqueNewtonMetresPerPascal / vehicle.Tyres.Rear.LoadedRadius.Meters;
        _frontThresholdPascals = vehicle.Brakes.Front.ThresholdPressure.Pascals;
        _rearThresholdPascals = vehicle.Brakes.Rear.ThresholdPressure.Pascals;
        _frontEngineNewtons = vehicle.EngineBraking is { DrivenAxle: Axle.Front } front ? front.BrakingForce.Newtons : 0;
        _rearEngineNewtons = vehicle.EngineBraking is { DrivenAxle: Axle.Rear } rear ? rear.BrakingForce.Newtons : 0;
        _hydraulics = vehicle.Hydraulics;
        _rearPressureRatio = _hydraulics.Split.RearToFrontPressureRatio;
        _maximumPascals = _hydraulics.MaximumPressure.Pascals;
        _sensesLoad = _hydraulics.SensesLoad;
        _piecewiseLinear = !_sensesLoad && _tyres.Front.LoadSensitivity == 0 && _tyres.Rear.LoadSensitivity == 0;
        _kinkPascals = FindKinks();
    }

    /// <summary>The car.</summary>
    public Vehicle Vehicle { get; }

    /// <summary>The state of load.</summary>
    public LoadCase LoadCase { get; }

    /// <summary>The speed for drag and lift.</summary>
    public Speed Speed { get; }

    /// <summary>Weight of the car, m g.</summary>
    public Force Weight => Force.FromNewtons(_weightNewtons);

    /// <summary>Static load of each axle (both wheels), less lift at <see cref="Speed"/>.</summary>
    public PerAxle<Force> StaticAxleLoads => new(Force.FromNewtons(_frontStaticNewtons), Force.FromNewtons(_rearStaticNewtons));

    /// <summary>Braking rate at which the rear wheels leave the road [–]: N₂ = 0.</summary>
    public double RearLiftOffRate => _rearStaticNewtons / _transferNewtonsPerRate;

    /// <summary>Highest master-cylinder pressure considered, gauge.</summary>
    public Pressure MaximumPressure => Pressure.FromPascals(_maximumPascals);

    /// <summary>Front master-cylinder pressures at which a line of the characteristic bends, rear lift-off among them, gauge, rising; ends included.</summary>
    public IReadOnlyList<Pressure> Kinks => [.. _kinkPascals.Select(pascals => Pressure.FromPascals(pascals))];

    /// <summary>The car at one line pressure.</summary>
    /// <param name="master">Front master-cylinder pressure, gauge; not negative.</param>
    /// <returns>Pressures, braking forces, axle loads and adhesion utilised.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="master"/> is negative.</exception>
    public BalancePoint At(Pressure master)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(master, Pressure.Zero);
        return BalancePoint.From(StateAt(master.Pascals));
    }

    /// <summary>The car at one line pressure in SI units: allocates nothing.</summary>
    /// <param name="masterPascals">Front master-cylinder pressure, gauge, not negative.</param>
    /// <returns>The state.</returns>
    public BalanceState StateAt(double masterPascals) =>
        _sensesLoad ? StateSensingLoad(masterPascals) : StateWith(masterPascals, 0);

    /// <summary>The car at a braking rate.</summary>
    /// <param name="brakingRate">Deceleration over g [–]; above zero.</param>
    /// <returns>The point; null when the highest pressure does not reach that rate, or rolling and drag alone exceed it.</returns>
    public BalancePoint? AtRate(double brakingRate) => PascalsFor(brakingRate) is { } pascals ? BalancePoint.From(StateAt(pascals)) : null;

    /// <summary>Normal reaction of the road on each axle (both wheels) at a braking rate.</summary>
    /// <param name="brakingRate">Deceleration over g [–]; not negative.</param>
    /// <returns>N₁ and N₂; beyond <see cref="RearLiftOffRate"/> the front carries all and the rear nothing.</returns>
    public PerAxle<Force> NormalReactions(double brakingRate)
    {
        (double front, double rear) = NormalNewtons(brakingRate);
        return new(Force.FromNewtons(front), Force.FromNewtons(rear));
    }

    /// <summary>The ideal braking forces at a braking rate: both axles use the same part of what their tyres have.</summary>
    /// <param name="brakingRate">Deceleration over g [–]; not negative.</param>
    /// <returns>T₁ and T₂ with T₁ + T₂ = z m g − R − D; both zero when rolling and drag alone exceed the rate.</returns>
    public PerAxle<Force> IdealForces(double brakingRate)
    {
        (double front, double rear) = NormalNewtons(brakingRate);
        double frontLimit = front * FrontAdhesion(1, front);
        double rearLimit = rear * RearAdhesion(1, rear);
        double share = Math.Max(0, brakingRate * _weightNewtons - _externalNewtons) / (frontLimit + rearLimit);
        return new(Force.FromNewtons(share * frontLimit), Force.FromNewtons(share * rearLimit));
    }

    /// <summary>Front braking force at which the front axle is about to lock, the rear axle braking with a given force.</summary>
    /// <param name="adhesion">The surface's coefficient of adhesion [–]; above zero.</param>
    /// <param name="rearForce">Braking force of the rear axle; not negative.</param>
    /// <returns>T₁; null when load transfer outruns the front's demand so that the front never locks.</returns>
    public Force? FrontForceAtLimit(double adhesion, Force rearForce)
    {
        double transfer = _transferNewtonsPerRate / _weightNewtons;
        double normal = _frontStaticNewtons;
        double force = 0;
        for (int i = 0; i < 60; i++)
        {
            double k = FrontAdhesion(adhesion, normal);
            if (k * transfer >= 1)
            {
                return null;
            }

            double next = k * (_frontStaticNewtons + transfer * (rearForce.Newtons + _externalNewtons)) / (1 - k * transfer);
            bool done = Math.Abs(next - force) < 1e-9 * _weightNewtons;
            force = next;
            normal = _frontStaticNewtons + transfer * (force + rearForce.Newtons + _externalNewtons);
            if (done)
            {
                break;
            }
        }

        return Force.FromNewtons(force);
    }

    /// <summary>Rear braking force at which the rear axle is about to lock, the front axle braking with a given force.</summary>
    /// <param name="adhesion">The surface's coefficient of adhesion [–]; above zero.</param>
    /// <param name="frontForce">Braking force of the front axle; not negative.</param>
    /// <returns>T₂; zero when the front's braking alone unloads the rear axle entirely.</returns>
    public Force RearForceAtLimit(double adhesion, Force frontForce)
    {
        double transfer = _transferNewtonsPerRate / _weightNewtons;
        double free = _rearStaticNewtons - transfer * (frontForce.Newtons + _externalNewtons);
        double normal = Math.Max(0, free);
        double force = 0;
        for (int i = 0; i < 60; i++)
        {
            double k = RearAdhesion(adhesion, normal);
            double next = Math.Max(0, k * free / (1 + k * transfer));
            bool done = Math.Abs(next - force) < 1e-9 * _weightNewtons;
            force = next;
            normal = Math.Max(0, free - transfer * force);
            if (done)
            {
                break;
            }
        }

        return Force.FromNewtons(force);
    }

    /// <summary>The braking rate with both axles at their limit: the most the road allows.</summary>
    /// <param name="adhesion">The surface's coefficient of adhesion [–]; above zero.</param>
    /// <returns>Braking rate [–], rolling resistance and drag included.</returns>
    public double GreatestRate(double adhesion) => (LimitNewtons(adhesion) + _externalNewtons) / _weightNewtons;

    /// <summary>The first lock-up while the pressure rises on a surface.</summary>
    /// <param name="adhesion">The surface's coefficient of adhesion [–]; above zero, at most 2.</param>
    /// <returns>The lock-up; null when no axle locks up to <see cref="MaximumPressure"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="adhesion"/> is outside its range.</exception>
    public LockUp? FirstLockUp(double adhesion)
    {
        if (adhesion is not (> 0 and <= 2))
        {
            throw new ArgumentOutOfRangeException(nameof(adhesion), adhesion, "The coefficient of adhesion must be above 0 and at most 2.");
        }

        return TryFirstLockUp(adhesion, out BalanceState state, out Axle? first, out double efficiency)
            ? new LockUp(adhesion, first, BalancePoint.From(state), efficiency)
            : null;
    }

    /// <summary>The first lock-up in SI units: allocates nothing where the characteristic is made of straight lines.</summary>
    /// <param name="adhesion">The surface's coefficient of adhesion [–]; above zero.</param>
    /// <param name="state">The car at first lock-up.</param>
    /// <param name="first">The axle that locks first; null when both lock together.</param>
    /// <param name="efficiency">Braking efficiency [–].</param>
    /// <returns>False when no axle locks up to the highest pressure.</returns>
    public bool TryFirstLockUp(double adhesion, out BalanceState state, out Axle? first, out double efficiency)
    {
        double low = _kinkPascals[0];
        BalanceState lowState = StateAt(low);
        double lowFront = FrontExcess(lowState, adhesion);
        double lowRear = RearExcess(lowState, adhesion);
        if (lowFront >= 0 || lowRear >= 0)
        {
            return Locked(lowState, adhesion, out state, out first, out efficiency);
        }

        for (int i = 1; i < _kinkPascals.Length; i++)
        {
            double high = _kinkPascals[i];
            BalanceState highState = StateAt(high);
            double highFront = FrontExcess(highState, adhesion);
            double highRear = RearExcess(highState, adhesion);
            if (highFront >= 0 || highRear >= 0)
            {
                double front = highFront >= 0 ? Root(low, lowFront, high, highFront, Axle.Front, adhesion) : double.PositiveInfinity;
                double rear = highRear >= 0 ? Root(low, lowRear, high, highRear, Axle.Rear, adhesion) : double.PositiveInfinity;
                return Locked(StateAt(Math.Min(front, rear)), adhesion, out state, out first, out efficiency);
            }

            (low, lowFront, lowRear) = (high, highFront, highRear);
        }

        (state, first, efficiency) = (lowState, null, 0);
        return false;
    }

    /// <summary>Braking rates at which installed and ideal distribution agree, rising.</summary>
    /// <returns>The points of crossing above a rate of 0.02; empty when there is none below the highest pressure or rear lift-off.</returns>
    public IReadOnlyList<BalancePoint> IdealCrossings()
    {
        List<BalancePoint> crossings = [];
        const int parts = 24;
        double previous = 0;
        double previousDifference = double.NaN;
        for (int i = 1; i < _kinkPascals.Length; i++)
        {
            for (int j = i == 1 ? 0 : 1; j <= parts; j++)
            {
                double pascals = _kinkPascals[i - 1] + (_kinkPascals[i] - _kinkPascals[i - 1]) * j / parts;
                BalanceState state = StateAt(pascals);
                if (state.BrakingRate >= RearLiftOffRate)
                {
                    return crossings;
                }

                double difference = Difference(state);
                if (state.BrakingRate > SmallestRate)
                {
                    if (previousDifference * difference < 0)
                    {
                        double root = Brent.FindRoot(p => Difference(StateAt(p)), previous, pascals, RootTolerance, 200);
                        crossings.Add(BalancePoint.From(StateAt(root)));
                    }

                    (previous, previousDifference) = (pascals, difference == 0 ? previousDifference : difference);
                }
            }
        }

        return crossings;
    }

    /// <summary>Where each valve in the rear line begins to hold pressure back.</summary>
    /// <returns>A point for each knee that the highest pressure reaches, in the order of the valves.</returns>
    public IReadOnlyList<BalancePoint> RearKnees()
    {
        List<BalancePoint> knees = [];
        for (int i = 0; i < _hydraulics.RearValves.Length; i++)
        {
            if (_hydraulics.RearValves[i] is HoldOffValve)
            {
                continue;
            }

            int index = i;
            bool HoldsBack(double pascals)
            {
                double load = StateAt(pascals).RearNormalNewtons;
                double inlet = BrakeHydraulics.Through(_hydraulics.RearValves[..index], pascals * _rearPressureRatio, load);
                return inlet - _hydraulics.RearValves[index].OutletPascals(inlet, load) > 0.5;
            }

            if (HoldsBack(_maximumPascals))
            {
                double pascals = Bisect(p => HoldsBack(p) ? 1 : -1, 0, _maximumPascals);
                knees.Add(BalancePoint.From(StateAt(pascals)));
            }
        }

        return knees;
    }

    /// <summary>Whether the rear axle uses more of its tyres than the front at any braking rate of a range.</summary>
    /// <param name="fromRate">Lower end [–]; above zero.</param>
    /// <param name="toRate">Upper end [–].</param>
    /// <returns>The lowest such rate; null when the front leads all the way, as far as pressure reaches.</returns>
    public double? FirstRearLedRate(double fromRate, double toRate)
    {
        double atRest = StateAt(0).BrakingRate;
        double? low = atRest > fromRate ? 0 : PascalsFor(fromRate);
        if (low is null || atRest > toRate)
        {
            return null;
        }

        double high = PascalsFor(Math.Min(toRate, RearLiftOffRate * 0.999)) ?? _maximumPascals;
        const int parts = 200;
        for (int i = 0; i <= parts; i++)
        {
            BalanceState state = StateAt(low.Value + (high - low.Value) * i / parts);
            if (Difference(state) < -1e-9 * _weightNewtons * _weightNewtons)
            {
                return state.BrakingRate;
            }
        }

        return null;
    }

    private static double Bisect(Func<double, double> sign, double low, double high)
    {
        for (int i = 0; i < 80 && high - low > 1e-3; i++)
        {
            double middle = 0.5 * (low + high);
            if (sign(middle) < 0)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return high;
    }

    private BalanceState StateWith(double masterPascals, double rearLoadNewtons)
    {
        double frontLine = BrakeHydraulics.Through(_hydraulics.FrontValves, masterPascals, rearLoadNewtons);
        double rearLine = BrakeHydraulics.Through(_hydraulics.RearValves, masterPascals * _rearPressureRatio, rearLoadNewtons);
        double front = _frontNewtonsPerPascal * Math.Max(0, frontLine - _frontThresholdPascals) + _frontEngineNewtons;
        double rear = _rearNewtonsPerPascal * Math.Max(0, rearLine - _rearThresholdPascals) + _rearEngineNewtons;
        double rate = (front + rear + _externalNewtons) / _weightNewtons;
        (double frontNormal, double rearNormal) = NormalNewtons(rate);
        return new(masterPascals, frontLine, rearLine, front, rear, rate, frontNormal, rearNormal);
    }

    // More rear load opens the valve and brakes harder, which unloads the rear: exactly one load is consistent.
    // False position with the idle end's weight halved: a few steps, because the balance is made of straight lines.
    private BalanceState StateSensingLoad(double masterPascals)
    {
        (double low, double high) = (0, _rearStaticNewtons);
        BalanceState state = StateWith(masterPascals, high);
        double atHigh = state.RearNormalNewtons - high;
        if (atHigh >= 0)
        {
            return state;
        }

        state = StateWith(masterPascals, low);
        double atLow = state.RearNormalNewtons;
        for (int i = 0; i < 100 && atLow > 0; i++)
        {
            double load = low + (high - low) * atLow / (atLow - atHigh);
            state = StateWith(masterPascals, load);
            double at = state.RearNormalNewtons - load;
            if (Math.Abs(at) < 1e-12 * _weightNewtons)
            {
                break;
            }

            if (at > 0)
            {
                (low, atLow, atHigh) = (load, at, 0.5 * atHigh);
            }
            else
            {
                (high, atHigh, atLow) = (load, at, 0.5 * atLow);
            }
        }

        return state;
    }

    private (double Front, double Rear) NormalNewtons(double rate)
    {
        double rear = _rearStaticNewtons - rate * _transferNewtonsPerRate;
        return rear >= 0
            ? (_frontStaticNewtons + rate * _transferNewtonsPerRate, rear)
            : (_frontStaticNewtons + _rearStaticNewtons, 0);
    }

    private double FrontAdhesion(double adhesion, double normal) => _tyres.Front.AdhesionOn(adhesion, normal / 2, _tyreReferenceNewtons.Front);

    private double RearAdhesion(double adhesion, double normal) => _tyres.Rear.AdhesionOn(adhesion, normal / 2, _tyreReferenceNewtons.Rear);

    private double FrontExcess(in BalanceState state, double adhesion) =>
        state.FrontForceNewtons - FrontAdhesion(adhesion, state.FrontNormalNewtons) * state.FrontNormalNewtons;

    // Wheels that are not braked do not lock, not even in the air.
    private double RearExcess(in BalanceState state, double adhesion) => state.RearForceNewtons > 0
        ? state.RearForceNewtons - RearAdhesion(adhesion, state.RearNormalNewtons) * state.RearNormalNewtons
        : Math.Min(-1e-9 * _weightNewtons, -RearAdhesion(adhesion, state.RearNormalNewtons) * state.RearNormalNewtons);

    // Positive while the front axle uses more of its tyres than the rear.
    private double Difference(in BalanceState state) =>
        state.FrontForceNewtons * RearAdhesion(1, state.RearNormalNewtons) * state.RearNormalNewtons
        - state.RearForceNewtons * FrontAdhesion(1, state.FrontNormalNewtons) * state.FrontNormalNewtons;

    private double Excess(double pascals, Axle axle, double adhesion)
    {
        BalanceState state = StateAt(pascals);
        return axle == Axle.Front ? FrontExcess(state, adhesion) : RearExcess(state, adhesion);
    }

    private double Root(double low, double atLow, double high, double atHigh, Axle axle, double adhesion)
    {
        double root = low + (high - low) * atLow / (atLow - atHigh);
        return Math.Abs(Excess(root, axle, adhesion)) <= 1e-9 * _weightNewtons ? root : Refined(low, high, axle, adhesion);
    }

    // A method of its own, because the lambda's captured values would be allocated even where the straight line is exact.
    private double Refined(double low, double high, Axle axle, double adhesion) =>
        Brent.FindRoot(p => Excess(p, axle, adhesion), low, high, RootTolerance, 200);

    private bool Locked(in BalanceState at, double adhesion, out BalanceState state, out Axle? first, out double efficiency)
    {
        state = at;
        double front = at.FrontUtilisation / FrontAdhesion(adhesion, at.FrontNormalNewtons);
        double rear = at.RearUtilisation / RearAdhesion(adhesion, at.RearNormalNewtons);
        first = Math.Abs(front - rear) < TogetherTolerance ? null : front > rear ? Axle.Front : Axle.Rear;
        efficiency = Math.Min(1, (at.FrontForceNewtons + at.RearForceNewtons) / LimitNewtons(adhesion));
        return true;
    }

    private double LimitNewtons(double adhesion)
    {
        (double front, double rear) = (_frontStaticNewtons, _rearStaticNewtons);
        double limit = 0;
        for (int i = 0; i < 200; i++)
        {
            double next = FrontAdhesion(adhesion, front) * front + RearAdhesion(adhesion, rear) * rear;
            bool done = Math.Abs(next - limit) < 1e-10 * _weightNewtons;
            limit = next;
            (front, rear) = NormalNewtons((limit + _externalNewtons) / _weightNewtons);
            if (done)
            {
                break;
            }
        }

        return limit;
    }

    private double? PascalsFor(double brakingRate)
    {
        for (int i = 0; i < _kinkPascals.Length; i++)
        {
            double rate = StateAt(_kinkPascals[i]).BrakingRate;
            if (rate < brakingRate)
            {
                continue;
            }

            if (i == 0)
            {
                return rate - brakingRate < 1e-12 ? _kinkPascals[0] : null;
            }

            double low = _kinkPascals[i - 1];
            double lowRate = StateAt(low).BrakingRate;
            double root = low + (_kinkPascals[i] - low) * (brakingRate - lowRate) / (rate - lowRate);
            return _sensesLoad
                ? Brent.FindRoot(p => (StateAt(p).BrakingRate - brakingRate) * _weightNewtons, low, _kinkPascals[i], RootTolerance, 200)
                : root;
        }

        return null;
    }

    private double[] FindKinks()
    {
        SortedSet<double> kinks = [0, _maximumPascals];
        AddKinks(kinks, _hydraulics.FrontValves, 1, _frontThresholdPascals);
        AddKinks(kinks, _hydraulics.RearValves, _rearPressureRatio, _rearThresholdPascals);
        AddLiftOff(kinks);
        double[] bends = [.. kinks];
        int parts = _piecewiseLinear ? 1 : 64;
        for (int i = 1; parts > 1 && i < bends.Length; i++)
        {
            for (int j = 1; j < parts; j++)
            {
                kinks.Add(bends[i - 1] + (bends[i] - bends[i - 1]) * j / parts);
            }
        }

        return [.. kinks];
    }

    // Beyond rear lift-off the axle loads stay as they are.
    private void AddLiftOff(SortedSet<double> kinks)
    {
        (double low, double lowRate) = (0, 0);
        foreach (double high in kinks)
        {
            double rate = StateAt(high).BrakingRate;
            if (lowRate < RearLiftOffRate && rate > RearLiftOffRate && high > 0)
            {
                kinks.Add(low + (high - low) * (RearLiftOffRate - lowRate) / (rate - lowRate));
                return;
            }

            (low, lowRate) = (high, rate);
        }
    }

    private void AddKinks(SortedSet<double> kinks, System.Collections.Immutable.ImmutableArray<PressureValve> valves, double ratio, double thresholdPascals)
    {
        for (int i = 0; i <= valves.Length; i++)
        {
            int count = i;
            double Inlet(double pascals) => BrakeHydraulics.Through(valves[..count], pascals * ratio, _rearStaticNewtons);
            foreach (double kink in i < valves.Length ? valves[i].KinkPascals() : [thresholdPascals])
            {
                if (kink > 0 && Inlet(_maximumPascals) > kink)
                {
                    kinks.Add(Bisect(p => Inlet(p) - kink, 0, _maximumPascals));
                }
            }
        }
    }
}
