using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Balance;

/// <summary>The balance of a car in one load case at one speed, in SI doubles: the one calculation behind every way of asking.</summary>
/// <remarks>
/// <para>N₁ = F + τ(T₁ + T₂ + X), N₂ = R − τ(T₁ + T₂ + X), never below zero: F and R are the static loads less lift, τ =
/// h/E, X rolling resistance and drag. T_i rises in straight lines with the pressure (<see cref="PressureWalk"/>), the road's limit is K(N)
/// = k N (1 + s − s N/2N_ref), so that each lock-up is the root of a quadratic in the pressure. Exact, and free of allocations.</para>
/// <para>Friction, adhesion, height of the centre of gravity and setting are arguments: draws do not prepare a car anew.</para>
/// <para>Source: UN R13-H Annex 5 (adhesion utilisation), extended by R, D and L_i as in the usual texts on longitudinal dynamics.</para>
/// </remarks>
internal sealed class BalanceKernel
{
    /// <summary>Force per pressure that stands for an axle whose shoes lock by themselves: it locks as soon as they touch.</summary>
    public const double SelfLockingNewtonsPerPascal = 1e3;

    private const double Same = 1e-3;
    private readonly PerAxle<(double Factor, double Sensitivity, double ReferenceNewtons)> _tyres;

    /// <summary>Prepares a car; lift may take an axle off the road.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="load">The load case; its centre of gravity lies within the wheelbase.</param>
    /// <param name="speedMetresPerSecond">Speed for drag and lift.</param>
    public BalanceKernel(Vehicle vehicle, LoadCase load, double speedMetresPerSecond)
    {
        double wheelbase = vehicle.Wheelbase.Meters, a = load.FrontAxleToCentreOfGravity.Meters;
        double dynamicPressure = vehicle.Aerodynamics?.DynamicPressurePascals(speedMetresPerSecond) ?? 0;
        WeightNewtons = load.Mass.Kilograms * Gravity.StandardMetresPerSecondSquared;
        FrontStatic = WeightNewtons * (wheelbase - a) / wheelbase
            - dynamicPressure * (vehicle.Aerodynamics?.FrontLiftArea.SquareMeters ?? 0);
        RearStatic = WeightNewtons * a / wheelbase - dynamicPressure * (vehicle.Aerodynamics?.RearLiftArea.SquareMeters ?? 0);
        Tau = load.CentreOfGravityHeight.Meters / wheelbase;
        External = vehicle.RollingResistanceCoefficient * (FrontStatic + RearStatic)
            + dynamicPressure * (vehicle.Aerodynamics?.DragArea.SquareMeters ?? 0);
        Threshold = vehicle.Brakes.Select(brake => brake.ThresholdPressure.Pascals);
        Engine = new(
            vehicle.EngineBraking is { DrivenAxle: Axle.Front } front ? front.BrakingForce.Newtons : 0,
            vehicle.EngineBraking is { DrivenAxle: Axle.Rear } rear ? rear.BrakingForce.Newtons : 0);
        _tyres = vehicle.Tyres.Select(tyre => (tyre.AdhesionFactor, tyre.LoadSensitivity, tyre.ReferenceLoad.Newtons));
        Unit = Limits(1, 1);
        BrakeHydraulics hydraulics = vehicle.Hydraulics;
        Ratio = hydraulics.Split.RearToFrontPressureRatio;
        MaximumPascals = hydraulics.MaximumPressure.Pascals;
        FrontValves = hydraulics.FrontValves.Length;

        // Where a knee can be set a valve always stands, open when the car has none.
        int set = hydraulics.RearProportioningValve is { } valve ? hydraulics.RearValves.IndexOf(valve) : -1;
        Setting = FrontValves + Math.Max(0, set);
        Laws =
        [
            .. hydraulics.FrontValves.Select(one => one.Law),
            .. (ReadOnlySpan<ValveLaw>)(set < 0 ? [ValveLaw.Open] : []),
            .. hydraulics.RearValves.Select(one => one.Law),
        ];
    }

    public double WeightNewtons { get; }

    public double FrontStatic { get; }

    public double RearStatic { get; }

    /// <summary>Height of the centre of gravity over the wheelbase [–].</summary>
    public double Tau { get; }

    /// <summary>Rolling resistance and drag.</summary>
    public double External { get; }

    public PerAxle<double> Threshold { get; }

    public PerAxle<double> Engine { get; }

    /// <summary>What a surface of adhesion 1 allows each axle.</summary>
    public (AxleLimit Front, AxleLimit Rear) Unit { get; }

    /// <summary>Rear over front master pressure [–].</summary>
    public double Ratio { get; }

    public double MaximumPascals { get; }

    /// <summary>How many of <see cref="Laws"/> lie in the front line; the others lie in the rear line.</summary>
    public int FrontValves { get; }

    /// <summary>Which of <see cref="Laws"/> is the valve that is set.</summary>
    public int Setting { get; }

    /// <summary>The car's valves. A copy with another law at <see cref="Setting"/> is another setting.</summary>
    public ValveLaw[] Laws { get; }

    /// <summary>Newtons of both wheels per pascal of line pressure, for a factor on the brake's own friction.</summary>
    /// <param name="brake">The brake of one wheel.</param>
    /// <param name="radiusMetres">Loaded radius of the tyre.</param>
    /// <param name="factor">Friction over the brake's own [–]; friction is taken as 1.2 at most.</param>
    /// <param name="locksFrom">Friction from which a shoe locks by itself, from <see cref="LocksByItselfFrom"/>.</param>
    /// <returns>The force per pressure; <see cref="SelfLockingNewtonsPerPascal"/> where a shoe locks by itself.</returns>
    public static double NewtonsPerPascal(Brake brake, double radiusMetres, double factor, double locksFrom)
    {
        double friction = Math.Min(Brake.HighestFriction, brake.FrictionCoefficient * factor);
        return factor == 1 ? 2 * brake.TorqueNewtonMetresPerPascal / radiusMetres
            : friction >= locksFrom ? SelfLockingNewtonsPerPascal
            : 2 * brake.WithFriction(friction).TorqueNewtonMetresPerPascal / radiusMetres;
    }

    /// <summary>Friction from which a shoe of a brake locks by itself [–]; infinite when none does.</summary>
    public static double LocksByItselfFrom(Brake brake) =>
        brake is DrumBrake drum && drum.SelfLockingFriction() is { } friction ? friction * (1 - 1e-6) : double.PositiveInfinity;

    /// <summary>Force per pressure of both axles and height of the centre of gravity, friction off by a factor at each axle.</summary>
    public static CarGains Draw(Vehicle vehicle, double front = 1, double rear = 1)
    {
        double Of(Axle axle, double factor) => NewtonsPerPascal(
            vehicle.Brakes[axle],
            vehicle.Tyres[axle].LoadedRadius.Meters,
            factor,
            factor == 1 ? 0 : LocksByItselfFrom(vehicle.Brakes[axle]));
        return new(Of(Axle.Front, front), Of(Axle.Rear, rear), 1);
    }

    /// <summary>What the road allows each axle, for the adhesion of the surface as each meets it.</summary>
    public (AxleLimit Front, AxleLimit Rear) Limits(double frontAdhesion, double rearAdhesion) =>
        (Limit(_tyres.Front, frontAdhesion), Limit(_tyres.Rear, rearAdhesion));

    /// <summary>Braking force of both axles at their limits together.</summary>
    public double LimitNewtons(in AxleLimit front, in AxleLimit rear, double height)
    {
        double tau = Tau * height, total = FrontStatic + RearStatic;
        double n1 = FrontStatic + tau * External, n2 = RearStatic - tau * External;

        // S = K₁(n₁ + τS) + K₂(n₂ − τS).
        double c = front.At(Math.Max(0, n1)) + rear.At(Math.Max(0, n2));
        double b = tau * (front.Linear - 2 * front.Quadratic * n1 - rear.Linear + 2 * rear.Quadratic * n2) - 1;
        double a = -tau * tau * (front.Quadratic + rear.Quadratic);
        double limit = a == 0 ? (b < 0 ? -c / b : double.PositiveInfinity) : AxleLimit.Rising(-c, -b, -a);
        if (tau * limit >= n2)
        {
            return Math.Max(front.At(total), 1e-9 * WeightNewtons);
        }

        for (int i = 0; i < 200 && (front.IsFloored(n1 + tau * limit) || rear.IsFloored(n2)); i++)
        {
            limit = front.At(n1 + tau * limit) + rear.At(Math.Max(0, n2 - tau * limit));
        }

        return Math.Max(limit, 1e-9 * WeightNewtons);
    }

    /// <summary>Line pressures that make both axles lock together.</summary>
    public (double FrontPascals, double RearPascals) Together(in CarGains car, double frontAdhesion, double rearAdhesion)
    {
        (AxleLimit one, AxleLimit two) = Limits(frontAdhesion, rearAdhesion);
        double limit = LimitNewtons(one, two, car.Height);
        double front = one.At(Math.Min(FrontStatic + RearStatic, FrontStatic + Tau * car.Height * (limit + External)));
        return (Threshold.Front + (front - Engine.Front) / car.Front, Threshold.Rear + (limit - front - Engine.Rear) / car.Rear);
    }

    /// <summary>Deceleration for line pressures at the brakes.</summary>
    public double Rate(double frontLine, double rearLine, in CarGains car) =>
        (Braking(car.Front, frontLine, Threshold.Front, Engine.Front) + Braking(car.Rear, rearLine, Threshold.Rear, Engine.Rear) + External)
            / WeightNewtons;

    /// <summary>Utilisation over the adhesion that the tyres have on a surface of adhesion 1, for line pressures at the brakes.</summary>
    public (double Front, double Rear) Utilisation(double frontLine, double rearLine, in CarGains car)
    {
        double front = Braking(car.Front, frontLine, Threshold.Front, Engine.Front);
        double rear = Braking(car.Rear, rearLine, Threshold.Rear, Engine.Rear);
        double transfer = Tau * car.Height * (front + rear + External);
        double n1 = Math.Min(FrontStatic + transfer, FrontStatic + RearStatic), n2 = Math.Max(1, RearStatic - transfer);
        return (Math.Max(front, 1e-3) / Unit.Front.At(n1), Math.Max(rear, 1e-3) / Unit.Rear.At(n2));
    }

    private static double Braking(double gain, double line, double threshold, double engine) =>
        gain * Math.Max(0, line - threshold) + engine;

    /// <summary>The characteristic up to any pressure, piece by piece.</summary>
    public PressurePiece[] Pieces(in CarGains car)
    {
        List<PressurePiece> pieces = [];
        Span<byte> states = stackalloc byte[64];
        var walk = new PressureWalk(this, car, Laws, Ratio, Laws.Length <= states.Length ? states : new byte[Laws.Length]);
        while (walk.MoveNext())
        {
            pieces.Add(walk.Current);
        }

        return [.. pieces];
    }

    /// <summary>The first lock-up of a draw while the pressure rises.</summary>
    /// <param name="car">Force per pressure and height.</param>
    /// <param name="laws">The valves: <see cref="Laws"/>, or a copy with another setting.</param>
    /// <param name="ratio">Rear over front master pressure [–].</param>
    /// <param name="front">The front axle's limit.</param>
    /// <param name="rear">The rear axle's limit.</param>
    /// <param name="limitNewtons">Their sum, from <see cref="LimitNewtons"/>.</param>
    public KernelLock First(in CarGains car, ValveLaw[] laws, double ratio, in AxleLimit front, in AxleLimit rear, double limitNewtons)
    {
        Span<byte> states = stackalloc byte[16];
        var walk = new PressureWalk(this, car, laws, ratio, laws.Length <= states.Length ? states : new byte[laws.Length]);
        while (walk.MoveNext())
        {
            if (Reaches(walk.Current, front, rear, limitNewtons, out KernelLock found))
            {
                return found;
            }
        }

        throw new InvalidOperationException("The pressure has no end.");
    }

    /// <summary>The first lock-ups of a draw for one knee after another: what lies below a knee is walked once.</summary>
    /// <param name="car">Force per pressure and height.</param>
    /// <param name="laws">A copy of <see cref="Laws"/>, changed here.</param>
    /// <param name="knees">The knees in pascals, rising; infinite for none.</param>
    /// <param name="slope">Slope above the knee [–].</param>
    /// <param name="front">The front axle's limit.</param>
    /// <param name="rear">The rear axle's limit.</param>
    /// <param name="found">One lock-up a knee.</param>
    public void First(
        in CarGains car,
        ValveLaw[] laws,
        ReadOnlySpan<double> knees,
        double slope,
        in AxleLimit front,
        in AxleLimit rear,
        Span<KernelLock> found)
    {
        Span<byte> states = laws.Length <= 16 ? stackalloc byte[16] : new byte[laws.Length];
        Span<byte> kept = laws.Length <= 16 ? stackalloc byte[16] : new byte[laws.Length];
        double limit = LimitNewtons(front, rear, car.Height);
        var walk = new PressureWalk(this, car, laws, Ratio, states);
        WalkMark mark = walk.Mark(kept);
        for (int i = 0; i < knees.Length; i++)
        {
            laws[Setting] = ValveLaw.AboveKnee(knees[i], slope);
            walk.Return(mark, kept);
            while (walk.MoveNext() && !Reaches(walk.Current, front, rear, limit, out found[i]))
            {
                if (walk.StillPasses(Setting))
                {
                    mark = walk.Mark(kept);
                }
            }

            if (!found[i].SettingActs)
            {
                // No higher knee changes anything.
                found[(i + 1)..].Fill(found[i]);
                return;
            }
        }
    }

    /// <summary>Whether an axle locks, or the highest pressure is reached, within a piece.</summary>
    public bool Reaches(in PressurePiece piece, in AxleLimit front, in AxleLimit rear, double limitNewtons, out KernelLock found)
    {
        double to = Math.Min(piece.To, MaximumPascals), total = FrontStatic + RearStatic;
        double atFront = front.Reached(piece.Front0, piece.Front1, total - piece.Load0, -piece.Load1, piece.From, to);
        double atRear = rear.Reached(piece.Rear0, piece.Rear1, piece.Load0, piece.Load1, piece.From, to);
        double at = Math.Min(atFront, atRear);
        if (double.IsPositiveInfinity(at))
        {
            found = piece.To < MaximumPascals ? default : Found(piece, MaximumPascals, LockOrder.None, limitNewtons);
            return piece.To >= MaximumPascals;
        }

        double load = Math.Max(0, piece.Load0 + piece.Load1 * at);
        double one = front.Share(piece.Front0 + piece.Front1 * at, total - load, atFront == at);
        double two = rear.Share(piece.Rear0 + piece.Rear1 * at, load, atRear == at);
        LockOrder order = one < two * (1 - Same) ? LockOrder.Rear : two < one * (1 - Same) ? LockOrder.Front : LockOrder.Together;
        found = Found(piece, at, order, limitNewtons);
        return true;
    }

    /// <summary>
    /// An adhesion of a range on which the rear locks first, found from the crossings of the two axles' utilisation, so that none is
    /// missed.
    /// </summary>
    /// <param name="car">Force per pressure and height.</param>
    /// <param name="laws">The valves.</param>
    /// <param name="ratio">Rear over front master pressure [–].</param>
    /// <param name="lowest">Lowest adhesion [–].</param>
    /// <param name="highest">Highest adhesion [–].</param>
    /// <returns>The middle of the first such part of the range; null when there is none.</returns>
    public double? RearFirstAdhesion(in CarGains car, ValveLaw[] laws, double ratio, double lowest, double highest)
    {
        Span<byte> states = stackalloc byte[16];
        Span<double> ends = stackalloc double[8];
        (AxleLimit front, AxleLimit rear) = Unit;
        var walk = new PressureWalk(this, car, laws, ratio, laws.Length <= states.Length ? states : new byte[laws.Length]);
        double total = FrontStatic + RearStatic, reached = 0;
        while (reached < highest && walk.MoveNext() && walk.Current.From < MaximumPascals)
        {
            PressurePiece piece = walk.Current;
            double to = Math.Min(piece.To, MaximumPascals);
            (double Front, double Rear) last = Needed(piece, piece.From, front, rear, total);
            if (piece.From == 0 && last.Front < last.Rear * (1 - Same) && last.Rear >= lowest)
            {
                return lowest;
            }

            reached = Math.Max(reached, Math.Max(last.Front, last.Rear));
            int count = RearFirstCrossings.Between(piece, front, rear, total, piece.From, to, 1 - Same, ends);
            double from = piece.From;
            for (int i = 0; i < count; i++)
            {
                (double Front, double Rear) middle = Needed(piece, 0.5 * (from + ends[i]), front, rear, total);
                (double Front, double Rear) next = Needed(piece, ends[i], front, rear, total);
                double low = Math.Max(lowest, Math.Max(reached, last.Rear)), high = Math.Min(highest, Math.Max(last.Rear, next.Rear));
                if (middle.Front < middle.Rear * (1 - Same) && low <= high && high > reached * (1 + 1e-9))
                {
                    return 0.5 * (low + high);
                }

                reached = Math.Max(reached, Math.Max(next.Front, next.Rear));
                (from, last) = (ends[i], next);
            }
        }

        return null;
    }

    // Adhesion that each axle needs: force over what a surface of adhesion 1 would allow.
    private static (double Front, double Rear) Needed(
        in PressurePiece piece, double pascals, in AxleLimit front, in AxleLimit rear, double total)
    {
        double load = Math.Max(0, piece.Load0 + piece.Load1 * pascals);
        return (
            front.Share(piece.Front0 + piece.Front1 * pascals, total - load, false),
            rear.Share(piece.Rear0 + piece.Rear1 * pascals, load, false));
    }

    private static AxleLimit Limit((double Factor, double Sensitivity, double ReferenceNewtons) tyre, double adhesion)
    {
        double k = adhesion * tyre.Factor;
        double floor = tyre.Sensitivity > 0 ? Tyre.LeastAdhesion * k : 0;
        return new(k * (1 + tyre.Sensitivity), k * tyre.Sensitivity / (2 * tyre.ReferenceNewtons), floor);
    }

    private KernelLock Found(in PressurePiece piece, double at, LockOrder order, double limitNewtons)
    {
        double force = piece.Front0 + piece.Front1 * at + piece.Rear0 + piece.Rear1 * at;

        // With no lock-up up to the highest pressure the tyres use what that pressure gives.
        double efficiency = force / limitNewtons;
        bool acts = (piece.Holding >> Math.Min(31, Setting) & 1) != 0;
        return new(at, order, Math.Min(1, efficiency), (force + External) / WeightNewtons, acts);
    }
}

internal enum LockOrder : byte
{
    None,
    Front,
    Rear,
    Together,
}

/// <summary>The first lock-up of a draw.</summary>
/// <param name="Pascals">Front master pressure then; the highest when nothing locks.</param>
/// <param name="Order">Which axle locks first.</param>
/// <param name="Efficiency">Braking efficiency [–].</param>
/// <param name="Rate">Deceleration over g [–].</param>
/// <param name="SettingActs">Whether the valve that is set holds pressure back then: if not, no higher knee changes anything.</param>
internal readonly record struct KernelLock(double Pascals, LockOrder Order, double Efficiency, double Rate, bool SettingActs);

/// <summary>
/// Force per pressure of both axles (both wheels), in newtons per pascal, and a factor on the height of the centre of gravity.
/// </summary>
internal readonly record struct CarGains(double Front, double Rear, double Height);
