using BrakeBalance.Hydraulics;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using MathNet.Numerics.RootFinding;

namespace BrakeBalance.Balance;

/// <summary>Where the axles of a car lock as the foot presses, and where they turn again as it eases.</summary>
/// <remarks>
/// <para>
/// An axle locks where the force its brakes ask for reaches k N, and turns again where that force has fallen to the sliding k_s N. A locked
/// axle brakes with k_s N_i, a rolling one with what its brakes ask for; the loads follow from both. On release the valves keep their
/// hysteresis (<see cref="ReducingValve"/>): a rear line that holds its pressure keeps the rear axle locked as the foot eases.
/// </para>
/// <para>Assumes a slow foot: no wheel inertia, no pitch, the speed of the balance.</para>
/// <para>Source: statics and Coulomb friction with two coefficients.</para>
/// </remarks>
internal sealed record ReleaseBehaviour
{
    private ReleaseBehaviour()
    {
    }

    /// <summary>Front master-cylinder pressure from which the foot eases, gauge.</summary>
    public required Pressure Highest { get; init; }

    /// <summary>Front master-cylinder pressure at which each axle locks as the foot presses, gauge; null for one that does not up to
    /// <see cref="Highest"/>.</summary>
    public required PerAxle<Pressure?> LocksAt { get; init; }

    /// <summary>Front master-cylinder pressure at which each axle turns again as the foot eases, gauge; null for one that did not lock, or
    /// that engine braking keeps locked.</summary>
    public required PerAxle<Pressure?> FreeAt { get; init; }

    /// <summary>Whether the rear axle never locks, or turns again no later than the front.</summary>
    public bool RearIsFreeWithFront => LocksAt.Rear is null || (FreeAt is { Front: { } front, Rear: { } rear } && rear >= front);

    /// <summary>The behaviour of a car whose foot presses to a pressure and eases.</summary>
    /// <param name="model">The balance of the car in one load case at one speed.</param>
    /// <param name="highest">Front master-cylinder pressure from which the foot eases, gauge; above zero.</param>
    /// <param name="adhesion">The surface's peak coefficient of adhesion [–]; above zero, at most 2.</param>
    /// <param name="slidingShare">Adhesion of a locked wheel over the peak [–]; above zero, at most 1; 0.6 to 0.85 on paved roads (common
    /// practice).</param>
    /// <returns>The pressures of lock and of release.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static ReleaseBehaviour Of(BalanceModel model, Pressure highest, double adhesion, double slidingShare)
    {
        double top = Require.Positive(highest, nameof(highest)).Pascals;
        Require.PositiveUpTo(adhesion, 2, nameof(adhesion));
        var axles = new SlidingAxles(model, adhesion, Require.PositiveUpTo(slidingShare, 1, nameof(slidingShare)));
        (double? front, double? rear) = axles.Locks(top);
        (double? frontFree, double? rearFree) = axles.Frees(top, front is not null, rear is not null);
        return new ReleaseBehaviour
        {
            Highest = highest,
            LocksAt = new(Bar(front), Bar(rear)),
            FreeAt = new(Bar(frontFree), Bar(rearFree))
        };

        static Pressure? Bar(double? pascals) => pascals is { } known ? Pressure.FromPascals(known) : null;
    }

    /// <summary>The highest knee of the rear proportioning valve up to which the rear axle is free again when the front is.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="loadCase">The state of load.</param>
    /// <param name="highest">Front master-cylinder pressure from which the foot eases, gauge; above zero.</param>
    /// <param name="adhesion">The surface's peak coefficient of adhesion [–]; above zero, at most 2.</param>
    /// <param name="slidingShare">Adhesion of a locked wheel over the peak [–]; above zero, at most 1.</param>
    /// <param name="speed">Speed for drag and lift; standstill unless said.</param>
    /// <param name="slope">The slope above the knee [–]; null keeps the present slope.</param>
    /// <returns>The knee, gauge, to 0.01 bar, at most <paramref name="highest"/>; null when no knee does it.</returns>
    /// <exception cref="ArgumentException">There is no proportioning valve and no slope is given.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Pressure? HighestKnee(
        Vehicle vehicle, LoadCase loadCase, Pressure highest, double adhesion, double slidingShare, Speed speed = default,
            double? slope = null)
    {
        bool Good(double bars) => Of(
            new BalanceModel(vehicle with { Hydraulics = vehicle.Hydraulics.WithRearKnee(Pressure.FromBars(bars), slope) }, loadCase,
                speed),
            highest, adhesion, slidingShare).RearIsFreeWithFront;
        if (!Good(0))
        {
            return null;
        }

        const int parts = 40;
        for (int i = 1; i <= parts; i++)
        {
            (double low, double high) = (highest.Bars * (i - 1) / parts, highest.Bars * i / parts);
            if (Good(high))
            {
                continue;
            }

            while (high - low > 0.01)
            {
                double middle = 0.5 * (low + high);
                (low, high) = Good(middle) ? (middle, high) : (low, middle);
            }

            return Pressure.FromBars(low);
        }

        return highest;
    }

    /// <summary>The two axles in SI numbers, each rolling or locked.</summary>
    private sealed class SlidingAxles
    {
        private readonly BalanceModel _model;
        private readonly BrakeHydraulics _hydraulics;
        private readonly double _adhesion;
        private readonly double _share;
        private readonly double _sum;
        private readonly double _rearStatic;
        private readonly double _heightOverWheelbase;
        private readonly double _external;
        private readonly PerAxle<double> _perPascal;
        private readonly PerAxle<double> _threshold;
        private readonly PerAxle<double> _engine;
        private readonly double[] _frontOutlets;
        private readonly double[] _rearOutlets;

        public SlidingAxles(BalanceModel model, double adhesion, double share)
        {
            Vehicle car = model.Vehicle;
            _model = model;
            _hydraulics = car.Hydraulics;
            _adhesion = adhesion;
            _share = share;
            _rearStatic = model.StaticAxleLoads.Rear.Newtons;
            _sum = model.StaticAxleLoads.Front.Newtons + _rearStatic;
            _heightOverWheelbase = model.LoadCase.CentreOfGravityHeight / car.Wheelbase;
            _perPascal = new(PerPascal(Axle.Front), PerPascal(Axle.Rear));
            _threshold = car.Brakes.Select(brake => brake.ThresholdPressure.Pascals);
            _engine = new(Engine(Axle.Front), Engine(Axle.Rear));
            BalanceState rest = model.StateAt(0);
            _external = rest.BrakingRate * model.Weight.Newtons - rest.FrontForceNewtons - rest.RearForceNewtons;
            _frontOutlets = new double[_hydraulics.FrontValves.Length];
            _rearOutlets = new double[_hydraulics.RearValves.Length];

            double PerPascal(Axle axle) => 2 * car.Brakes[axle].TorqueNewtonMetresPerPascal / car.Tyres[axle].LoadedRadius.Meters;
            double Engine(Axle axle) => car.EngineBraking is { } engine && engine.DrivenAxle == axle ? engine.BrakingForce.Newtons : 0;
        }

        /// <summary>Pressures of lock while the foot presses up to a pressure.</summary>
        public (double? Front, double? Rear) Locks(double top)
        {
            if (!_model.TryFirstLockUp(_adhesion, out BalanceState state, out Axle? first, out _) || state.MasterPascals > top)
            {
                return (null, null);
            }

            double at = state.MasterPascals;
            if (first is not { } axle)
            {
                return (at, at);
            }

            Axle other = axle == Axle.Front ? Axle.Rear : Axle.Front;
            double Over(double pascals) => Excess(pascals, other, axle == Axle.Front, axle == Axle.Rear, 1, [], []);
            double? second = Over(top) < 0 ? null : Over(at) >= 0 ? at : Brent.FindRoot(Over, at, top, 1e-3, 200);
            return axle == Axle.Front ? (at, second) : (second, at);
        }

        /// <summary>Pressures of release while the foot eases from a pressure.</summary>
        public (double? Front, double? Rear) Frees(double top, bool frontLocked, bool rearLocked)
        {
            double load = RearLoad(top, frontLocked, rearLocked, [], []);
            BrakeHydraulics.Remember(_hydraulics.FrontValves, top, load, _frontOutlets);
            BrakeHydraulics.Remember(_hydraulics.RearValves, top * _hydraulics.Split.RearToFrontPressureRatio, load, _rearOutlets);
            double? front = null;
            double? rear = null;
            double from = top;
            while (frontLocked || rearLocked)
            {
                double atFront = frontLocked ? Free(Axle.Front) : double.NegativeInfinity;
                double atRear = rearLocked ? Free(Axle.Rear) : double.NegativeInfinity;
                from = Math.Max(atFront, atRear);
                if (from < 0)
                {
                    break;
                }

                if (atFront >= atRear)
                {
                    (front, frontLocked) = (from, false);
                }
                else
                {
                    (rear, rearLocked) = (from, false);
                }
            }

            return (front, rear);

            double Free(Axle axle)
            {
                double Over(double pascals) => Excess(pascals, axle, frontLocked, rearLocked, _share, _frontOutlets, _rearOutlets);
                return Over(from) <= 0 ? from : Over(0) > 0 ? double.NegativeInfinity : Brent.FindRoot(Over, 0, from, 1e-3, 200);
            }
        }

        // Force that the brakes ask for less a share of what the road gives at the peak.
        private double Excess(double pascals, Axle axle, bool frontLocked, bool rearLocked, double share, double[] frontOutlets,
            double[] rearOutlets)
        {
            double rear = RearLoad(pascals, frontLocked, rearLocked, frontOutlets, rearOutlets);
            double asked = Asked(pascals, axle, rear, frontOutlets, rearOutlets);
            return asked <= 0 ? -1 : asked - share * Peak(axle, axle == Axle.Front ? _sum - rear : rear);
        }

        // More load on the rear axle unloads the front, and what both brake with unloads the rear again: one load agrees with itself.
        private double RearLoad(double pascals, bool frontLocked, bool rearLocked, double[] frontOutlets, double[] rearOutlets)
        {
            double Miss(double load) => _rearStatic - load - _heightOverWheelbase * (_external
                + (frontLocked ? _share * Peak(Axle.Front, _sum - load) : Asked(pascals, Axle.Front, load, frontOutlets, rearOutlets))
                + (rearLocked ? _share * Peak(Axle.Rear, load) : Asked(pascals, Axle.Rear, load, frontOutlets, rearOutlets)));
            return Miss(0) <= 0 ? 0 : Miss(_rearStatic) >= 0 ? _rearStatic : Brent.FindRoot(Miss, 0, _rearStatic, 1e-7, 200);
        }

        private double Asked(double pascals, Axle axle, double rearLoad, double[] frontOutlets, double[] rearOutlets)
        {
            double line = axle == Axle.Front
                ? BrakeHydraulics.Through(_hydraulics.FrontValves, pascals, rearLoad, frontOutlets)
                : BrakeHydraulics.Through(_hydraulics.RearValves, pascals * _hydraulics.Split.RearToFrontPressureRatio, rearLoad,
                    rearOutlets);
            return _perPascal[axle] * Math.Max(0, line - _threshold[axle]) + _engine[axle];
        }

        private double Peak(Axle axle, double load)
        {
            Tyre tyre = _model.Vehicle.Tyres[axle];
            return tyre.AdhesionOn(_adhesion, load / 2, tyre.ReferenceLoad.Newtons) * load;
        }
    }
}
