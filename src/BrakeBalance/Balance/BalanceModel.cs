using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using MathNet.Numerics.RootFinding;

namespace BrakeBalance.Balance;

/// <summary>
/// The balance of one car in one load case: from line pressure to braking forces, axle loads, adhesion utilised and lock-up.
/// </summary>
/// <remarks>
/// <para>N₁ = m g (b/E + z h/E) − L₁, N₂ = m g (a/E − z h/E) − L₂; f_i = T_i/N_i; z m g = T₁ + T₂ + R + D,
/// with R the rolling resistance, D the drag and L_i the lift at each axle.</para>
/// <para>Assumes a straight, level road, rigid suspension and a quasi-static state at constant speed (for the aerodynamics).</para>
/// <para>Source: UN R13-H Annex 5 (adhesion utilisation), extended by R, D and L_i as in the usual texts on longitudinal dynamics.</para>
/// </remarks>
public sealed class BalanceModel
{
    private const double SmallestRate = 0.02;
    private const double RootTolerance = 1e-6;

    private readonly BalanceKernel _kernel;
    private readonly PressurePiece[] _pieces;

    /// <summary>Prepares the balance of a car.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="loadCase">The state of load.</param>
    /// <param name="speed">Speed for drag and lift; not negative; standstill (no aerodynamics) unless said.</param>
    /// <exception cref="ArgumentException">
    /// The centre of gravity lies outside the wheelbase, or lift takes an axle off the road.
    /// </exception>
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
        Refuse.If(a >= wheelbase,
            $"The centre of gravity lies outside the wheelbase: {a:0.###} m behind the front axle, wheelbase {wheelbase:0.###} m.",
            nameof(loadCase));

        _kernel = new BalanceKernel(vehicle, loadCase, speed.MetersPerSecond);
        Refuse.If(_kernel.FrontStatic <= 0 || _kernel.RearStatic <= 0,
            $"At {speed.KilometersPerHour:0} km/h the lift takes the {(_kernel.FrontStatic <= 0 ? "front" : "rear")} axle off the road.",
            nameof(speed));

        Gains = BalanceKernel.Draw(vehicle);
        _pieces = _kernel.Pieces(Gains);
    }

    /// <summary>The car.</summary>
    public Vehicle Vehicle { get; }

    /// <summary>The state of load.</summary>
    public LoadCase LoadCase { get; }

    /// <summary>The speed for drag and lift.</summary>
    public Speed Speed { get; }

    /// <summary>Weight of the car, m g.</summary>
    public Force Weight => Force.FromNewtons(_kernel.WeightNewtons);

    /// <summary>Static load of each axle (both wheels), less lift at <see cref="Speed"/>.</summary>
    public PerAxle<Force> StaticAxleLoads => new(Force.FromNewtons(_kernel.FrontStatic), Force.FromNewtons(_kernel.RearStatic));

    /// <summary>Deceleration at which the rear wheels leave the road [–]: N₂ = 0.</summary>
    public double RearLiftOffRate => _kernel.RearStatic / (_kernel.WeightNewtons * _kernel.Tau);

    /// <summary>Highest master-cylinder pressure considered, gauge.</summary>
    public Pressure MaximumPressure => Pressure.FromPascals(_kernel.MaximumPascals);

    /// <summary>
    /// Front master-cylinder pressures at which a line of the characteristic bends, rear lift-off among them, gauge, rising; ends
    /// included.
    /// </summary>
    public IReadOnlyList<Pressure> Kinks =>
    [
        .. _pieces.Where(piece => piece.From < _kernel.MaximumPascals).Select(piece => Pressure.FromPascals(piece.From)),
        MaximumPressure,
    ];

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
    public BalanceState StateAt(double masterPascals)
    {
        int i = 0;
        while (masterPascals > _pieces[i].To)
        {
            i++;
        }

        ref readonly PressurePiece piece = ref _pieces[i];
        double front = Math.Max(0, piece.Front0 + piece.Front1 * masterPascals);
        double rear = Math.Max(0, piece.Rear0 + piece.Rear1 * masterPascals);
        double load = Math.Max(0, piece.Load0 + piece.Load1 * masterPascals);
        return new(
            masterPascals,
            Math.Max(0, piece.FrontLine0 + piece.FrontLine1 * masterPascals),
            Math.Max(0, piece.RearLine0 + piece.RearLine1 * masterPascals),
            front,
            rear,
            (front + rear + _kernel.External) / _kernel.WeightNewtons,
            _kernel.FrontStatic + _kernel.RearStatic - load,
            load);
    }

    internal BalanceKernel Kernel => _kernel;

    /// <summary>Force per pressure of both axles at the car's own friction.</summary>
    internal CarGains Gains { get; }

    /// <summary>The car at a deceleration.</summary>
    /// <param name="brakingRate">Deceleration over g [–]; above zero.</param>
    /// <returns>The point; null when the highest pressure does not reach that rate, or rolling and drag alone exceed it.</returns>
    public BalancePoint? AtRate(double brakingRate) => PascalsFor(brakingRate) is { } pascals ? BalancePoint.From(StateAt(pascals)) : null;

    /// <summary>Normal reaction of the road on each axle (both wheels) at a deceleration.</summary>
    /// <param name="brakingRate">Deceleration over g [–]; not negative.</param>
    /// <returns>N₁ and N₂; beyond <see cref="RearLiftOffRate"/> the front carries all and the rear nothing.</returns>
    public PerAxle<Force> NormalReactions(double brakingRate)
    {
        (double front, double rear) = NormalNewtons(brakingRate);
        return new(Force.FromNewtons(front), Force.FromNewtons(rear));
    }

    /// <summary>The ideal braking forces at a deceleration: both axles use the same part of what their tyres have.</summary>
    /// <param name="brakingRate">Deceleration over g [–]; not negative.</param>
    /// <returns>T₁ and T₂ with T₁ + T₂ = z m g − R − D; both zero when rolling and drag alone exceed the rate.</returns>
    public PerAxle<Force> IdealForces(double brakingRate)
    {
        (double front, double rear) = NormalNewtons(brakingRate);
        (AxleLimit one, AxleLimit two) = _kernel.Unit;
        double share = Math.Max(0, brakingRate * _kernel.WeightNewtons - _kernel.External) / (one.At(front) + two.At(rear));
        return new(Force.FromNewtons(share * one.At(front)), Force.FromNewtons(share * two.At(rear)));
    }

    /// <summary>Front braking force at which the front axle is about to lock, the rear axle braking with a given force.</summary>
    /// <param name="adhesion">The surface's coefficient of adhesion [–]; above zero.</param>
    /// <param name="rearForce">Braking force of the rear axle; not negative.</param>
    /// <returns>T₁; null when load transfer outruns the front's demand so that the front never locks.</returns>
    public Force? FrontForceAtLimit(double adhesion, Force rearForce)
    {
        double free = _kernel.FrontStatic + _kernel.Tau * (rearForce.Newtons + _kernel.External);
        double force = _kernel.Limits(adhesion, adhesion).Front.Reached(0, 1, free, _kernel.Tau, 0, double.MaxValue);
        return double.IsPositiveInfinity(force) ? null : Force.FromNewtons(force);
    }

    /// <summary>Rear braking force at which the rear axle is about to lock, the front axle braking with a given force.</summary>
    /// <param name="adhesion">The surface's coefficient of adhesion [–]; above zero.</param>
    /// <param name="frontForce">Braking force of the front axle; not negative.</param>
    /// <returns>T₂; zero when the front's braking alone unloads the rear axle entirely.</returns>
    public Force RearForceAtLimit(double adhesion, Force frontForce)
    {
        double free = _kernel.RearStatic - _kernel.Tau * (frontForce.Newtons + _kernel.External);
        AxleLimit limit = _kernel.Limits(adhesion, adhesion).Rear;
        return Force.FromNewtons(free > 0 ? limit.Reached(0, 1, free, -_kernel.Tau, 0, double.MaxValue) : 0);
    }

    /// <summary>The deceleration with both axles at their limit: the most the road allows.</summary>
    /// <param name="adhesion">The surface's coefficient of adhesion [–]; above zero.</param>
    /// <returns>Deceleration [–], rolling resistance and drag included.</returns>
    public double GreatestRate(double adhesion)
    {
        (AxleLimit front, AxleLimit rear) = _kernel.Limits(adhesion, adhesion);
        return (_kernel.LimitNewtons(front, rear, 1) + _kernel.External) / _kernel.WeightNewtons;
    }

    /// <summary>The first lock-up while the pressure rises on a surface.</summary>
    /// <param name="adhesion">The surface's coefficient of adhesion [–]; above zero, at most 2.</param>
    /// <returns>The lock-up; null when no axle locks up to <see cref="MaximumPressure"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="adhesion"/> is outside its range.</exception>
    public LockUp? FirstLockUp(double adhesion)
    {
        Require.PositiveUpTo(adhesion, 2, nameof(adhesion));
        return TryFirstLockUp(adhesion, out BalanceState state, out Axle? first, out double efficiency)
            ? new LockUp(adhesion, first, BalancePoint.From(state), efficiency)
            : null;
    }

    /// <summary>The first lock-up in SI units: allocates nothing.</summary>
    /// <param name="adhesion">The surface's coefficient of adhesion [–]; above zero.</param>
    /// <param name="state">The car at first lock-up; at the highest pressure when no axle locks.</param>
    /// <param name="first">The axle that locks first; null when both lock together.</param>
    /// <param name="efficiency">
    /// Braking efficiency [–]; when no axle locks, the deceleration of the highest pressure over what the road allows.
    /// </param>
    /// <returns>False when no axle locks up to the highest pressure.</returns>
    public bool TryFirstLockUp(double adhesion, out BalanceState state, out Axle? first, out double efficiency)
    {
        KernelLock found = Lock(adhesion);
        state = StateAt(found.Pascals);
        first = found.Order switch { LockOrder.Front => Axle.Front, LockOrder.Rear => Axle.Rear, _ => null };
        efficiency = found.Efficiency;
        return found.Order != LockOrder.None;
    }

    internal KernelLock Lock(double adhesion)
    {
        (AxleLimit front, AxleLimit rear) = _kernel.Limits(adhesion, adhesion);
        double limit = _kernel.LimitNewtons(front, rear, 1);
        foreach (ref readonly PressurePiece piece in _pieces.AsSpan())
        {
            if (_kernel.Reaches(piece, front, rear, limit, out KernelLock found))
            {
                return found;
            }
        }

        throw new InvalidOperationException("The pressure has no end.");
    }

    /// <summary>Decelerations at which installed and ideal distribution agree, rising.</summary>
    /// <returns>
    /// The points of crossing above a rate of 0.02; empty when there is none below the highest pressure or rear lift-off.
    /// </returns>
    public IReadOnlyList<BalancePoint> IdealCrossings()
    {
        List<BalancePoint> crossings = [];
        const int parts = 24;
        double previous = 0;
        double previousDifference = double.NaN;
        foreach (PressurePiece piece in _pieces.TakeWhile(piece => piece.From < _kernel.MaximumPascals))
        {
            double to = Math.Min(piece.To, _kernel.MaximumPascals);
            for (int j = piece.From == 0 ? 0 : 1; j <= parts; j++)
            {
                double pascals = piece.From + (to - piece.From) * j / parts;
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
        bool added = Vehicle.Hydraulics.RearProportioningValve is null;
        foreach ((int i, PressureValve valve) in Vehicle.Hydraulics.RearValves.Index())
        {
            int bit = Math.Min(31, _kernel.FrontValves + i + (added ? 1 : 0));
            int first = Array.FindIndex(_pieces, piece => (piece.Holding >> bit & 1) != 0);
            if (valve is not MeteringValve && first >= 0 && _pieces[first].From < _kernel.MaximumPascals)
            {
                knees.Add(BalancePoint.From(StateAt(_pieces[first].From)));
            }
        }

        return knees;
    }

    /// <summary>Whether the rear axle uses more of its tyres than the front at any deceleration of a range.</summary>
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

        double high = PascalsFor(Math.Min(toRate, RearLiftOffRate * 0.999)) ?? _kernel.MaximumPascals;
        const int parts = 200;
        for (int i = 0; i <= parts; i++)
        {
            BalanceState state = StateAt(low.Value + (high - low.Value) * i / parts);
            if (Difference(state) < -1e-9 * _kernel.WeightNewtons * _kernel.WeightNewtons)
            {
                return state.BrakingRate;
            }
        }

        return null;
    }

    private (double Front, double Rear) NormalNewtons(double rate)
    {
        double rear = Math.Max(0, _kernel.RearStatic - rate * _kernel.WeightNewtons * _kernel.Tau);
        return (_kernel.FrontStatic + _kernel.RearStatic - rear, rear);
    }

    // Positive while the front axle uses more of its tyres than the rear.
    private double Difference(in BalanceState state)
    {
        (AxleLimit front, AxleLimit rear) = _kernel.Unit;
        return state.FrontForceNewtons * rear.At(state.RearNormalNewtons) - state.RearForceNewtons * front.At(state.FrontNormalNewtons);
    }

    private double? PascalsFor(double brakingRate)
    {
        double force = brakingRate * _kernel.WeightNewtons - _kernel.External, atRest = _pieces[0].Front0 + _pieces[0].Rear0;
        if (force <= atRest)
        {
            return atRest - force < 1e-12 * _kernel.WeightNewtons ? 0 : null;
        }

        foreach (ref readonly PressurePiece piece in _pieces.AsSpan())
        {
            double pascals = (force - piece.Front0 - piece.Rear0) / (piece.Front1 + piece.Rear1);
            if (pascals <= piece.To)
            {
                return pascals <= _kernel.MaximumPascals ? Math.Max(pascals, piece.From) : null;
            }
        }

        return null;
    }
}
