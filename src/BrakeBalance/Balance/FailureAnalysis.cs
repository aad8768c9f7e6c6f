using BrakeBalance.Assist;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Balance;

/// <summary>Works out what a car still does when its assist, a circuit or both are lost, or its engine has stopped.</summary>
/// <remarks>
/// <para>
/// A lost front or rear circuit keeps its line at no pressure; the sound one sees the same pressure for the same rod force, and past a
/// valve with a bypass (<see cref="PressureValve.BypassWhenFrontLost"/>) the rear gets all of it. A lost diagonal leaves one wheel an
/// axle: half the braking force, which locks at half the axle's load. A load-sensing valve that has lost its linkage keeps its lowest
/// knee.
/// </para>
/// <para>Assumes a straight line. A car braked on one diagonal pulls to the side; that is not computed here.</para>
/// <para>Source: statics; the three splits as in Yu Zhisheng, Automobile Theory, example 4.5.</para>
/// </remarks>
public static class FailureAnalysis
{
    // Where the pedal makes no pressure at all, a share of it is never small enough.
    private const double LeastStepPascals = 0.1;

    /// <summary>Every case of failure of a car in one load case.</summary>
    /// <param name="vehicle">The car; it must say what lies between foot and line pressure.</param>
    /// <param name="loadCase">The state of load.</param>
    /// <param name="conditions">Rate, force, road and speed asked for; the usual ones unless said.</param>
    /// <returns>One outcome a case, the sound car first.</returns>
    /// <exception cref="ArgumentException">The car does not say what lies between foot and line pressure.</exception>
    public static IReadOnlyList<FailureOutcome> Of(Vehicle vehicle, LoadCase loadCase, FailureConditions? conditions = null) =>
        Of(vehicle, loadCase, conditions ?? new FailureConditions(), _ => true);

    /// <summary>Those of the cases that are wanted.</summary>
    internal static IReadOnlyList<FailureOutcome> Of(
        Vehicle vehicle, LoadCase loadCase, FailureConditions asked, Func<FailureCase, bool> wanted)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(loadCase);
        var sound = new ControlForce(new BalanceModel(vehicle, loadCase));
        return [.. FailureCase.Of(sound.Control, vehicle.Hydraulics.SensesLoad, Reserve(sound, asked)).Where(wanted)
            .Select(failure => Outcome(vehicle, loadCase, failure, asked))];
    }

    /// <summary>
    /// The applications out of the stored energy after the engine has stopped, each as hard as the deceleration asked for needs.
    /// </summary>
    /// <remarks>
    /// The stroke is that of the deceleration: travel goes with line pressure, whoever makes it, so the assist that is left does not
    /// change it.
    /// </remarks>
    /// <param name="control">The car's control.</param>
    /// <param name="conditions">Rate asked for; the usual one unless said.</param>
    /// <param name="applications">How many to list at most; 1 to 100.</param>
    /// <returns>One entry an application; empty when nothing is stored, or when the stored energy is not described.</returns>
    public static ImmutableArray<ReserveApplication> Reserve(ControlForce control, FailureConditions? conditions = null,
        int applications = 8)
    {
        ArgumentNullException.ThrowIfNull(control);
        BrakeAssist assist = control.Control.Assist;
        return assist.Reserve(Possible(assist, RodTravel(control, (conditions ?? new FailureConditions()).BrakingRate)), applications);
    }

    /// <summary>One case of failure.</summary>
    /// <param name="vehicle">The car; it must say what lies between foot and line pressure.</param>
    /// <param name="loadCase">The state of load.</param>
    /// <param name="failure">What is wrong.</param>
    /// <param name="conditions">Rate, force, road and speed asked for; the usual ones unless said.</param>
    /// <exception cref="ArgumentException">
    /// The car does not say what lies between foot and line pressure, or has no such reserve.
    /// </exception>
    public static FailureOutcome Outcome(Vehicle vehicle, LoadCase loadCase, FailureCase failure, FailureConditions? conditions = null)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(loadCase);
        ArgumentNullException.ThrowIfNull(failure);
        FailureConditions asked = conditions ?? new FailureConditions();
        ControlForce atRate = Damaged(vehicle, loadCase, failure, asked);
        if (failure.LostCircuit == LostCircuit.All)
        {
            return NothingLeft(failure, loadCase, asked);
        }

        LockUp? lockUp = atRate.Model.FirstLockUp(asked.AdhesionOf(failure));
        ControlForce control = failure.ReserveApplication is { } number
            ? AtFullForce(new ControlForce(atRate.Model), atRate, number, asked, lockUp)
            : atRate;
        double force = asked.PedalForce.Newtons;
        double foot = Math.Min(control.At(asked.PedalForce).Balance.MasterPressure.Pascals, control.Model.MaximumPressure.Pascals);
        double road = lockUp?.At.MasterPressure.Pascals ?? double.PositiveInfinity;
        double reach = ReachPascals(control, failure, Math.Min(foot, road));
        bool leverEnds = foot < road && control.Reach is { } end && foot >= end.Pascals * (1 - 1e-9);
        (RateBound bound, double pascals) = leverEnds || reach < Math.Min(foot, road)
            ? (RateBound.Travel, reach)
            : road < foot ? (RateBound.Road, road) : (RateBound.Foot, foot);
        BalancePoint at = control.Model.At(Pressure.FromPascals(pascals));
        double rate = at.BrakingRate;
        Force used = bound == RateBound.Foot
            ? Force.FromNewtons(force) : control.PedalForceForPressure(at.MasterPressure) ?? asked.PedalForce;
        PedalTravel? travel = TravelAt(control, failure, pascals);
        (Force? needed, string? whyNot) = ForRate(atRate, failure, asked, lockUp);
        return new FailureOutcome(
            Case: failure,
            LoadCase: loadCase.Name,
            PedalForceForRate: needed,
            WhyNot: whyNot,
            RateAtForce: rate,
            Bound: bound,
            ForceUsed: used,
            MasterPressure: at.MasterPressure,
            LinePressures: at.LinePressures,
            FirstToLock: lockUp?.First,
            LockUpRate: lockUp?.At.BrakingRate,
            Efficiency: lockUp?.Efficiency,
            Distance: rate > 0 ? StoppingDistance.From(asked.Speed, rate, BuildUp(control, travel), asked.Reaction) : null,
            Travel: travel,
            Notices: Notices(control, failure, lockUp, travel));
    }

    /// <summary>The control of a car with something wrong.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="loadCase">The state of load.</param>
    /// <param name="failure">What is wrong.</param>
    /// <param name="conditions">Rate for which the reserve's strokes are taken; the usual one unless said.</param>
    /// <returns>The control; a lost diagonal's locks at half the surface's adhesion.</returns>
    /// <exception cref="ArgumentException">The car has no such application in reserve.</exception>
    public static ControlForce Damaged(Vehicle vehicle, LoadCase loadCase, FailureCase failure, FailureConditions? conditions = null)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(failure);
        var sound = new ControlForce(new BalanceModel(vehicle, loadCase));
        BrakeControl control = sound.Control;
        if (failure.ReserveApplication is { } number)
        {
            ReserveApplication application = Reserve(sound, conditions).FirstOrDefault(entry => entry.Number == number)
                ?? throw new ArgumentException($"The booster has no application number {number} in reserve.", nameof(failure));
            control = control with { Assist = application.Assist };
        }
        else if (failure.AssistLost)
        {
            control = control with { Assist = control.Assist.WithoutEnergy() };
        }

        var noPressure = new LimitingValve { Limit = Pressure.Zero };
        Vehicle damaged = failure.LostCircuit switch
        {
            LostCircuit.Front => vehicle with
            {
                Hydraulics = vehicle.Hydraulics with
                {
                    FrontValves = vehicle.Hydraulics.FrontValves.Add(noPressure),
                    RearValves = [.. vehicle.Hydraulics.RearValves.Where(valve => !valve.BypassWhenFrontLost)],
                },
            },
            LostCircuit.Rear => vehicle with
            {
                Hydraulics = vehicle.Hydraulics with
                {
                    RearValves = vehicle.Hydraulics.RearValves.Add(noPressure),
                },
            },
            LostCircuit.Diagonal => vehicle with { Brakes = vehicle.Brakes.Select(OneWheelOfTwo) },
            _ => failure.LoadSensingLost ? vehicle with { Hydraulics = Unlinked(vehicle.Hydraulics) } : vehicle,
        };
        return new ControlForce(new BalanceModel(damaged, loadCase), control);
    }

    private static BrakeHydraulics Unlinked(BrakeHydraulics hydraulics)
    {
        static PressureValve Fixed(PressureValve valve) => valve is LoadSensingValve sensing
            ? new ProportioningValve { Knee = sensing.LowestKnee, Slope = sensing.Slope, Hysteresis = sensing.Hysteresis }
            : valve;
        return hydraulics with
        {
            FrontValves = [.. hydraulics.FrontValves.Select(Fixed)],
            RearValves = [.. hydraulics.RearValves.Select(Fixed)],
        };
    }

    private static Brake OneWheelOfTwo(Brake brake) => brake is MeasuredBrake measured
        ? measured with { MeasuredNewtonMetresPerBar = measured.MeasuredNewtonMetresPerBar / 2 }
        : brake with { Efficiency = brake.Efficiency / 2 };

    private static Length RodTravel(ControlForce control, double brakingRate) =>
        control.Model.AtRate(brakingRate) is { } point ? RodTravel(control, point.MasterPressure) : control.Cylinder.Stroke / 2;

    private static Length RodTravel(ControlForce control, Pressure master) =>
        control.TravelAt(master)?.RodTravel ?? control.Cylinder.Stroke / 2;

    // A stroke that would sweep the whole vacuum chamber is cut just before it: nothing is left there anyhow.
    private static Length Possible(BrakeAssist assist, Length stroke) =>
        assist is VacuumBooster { VacuumChamberVolume: var chamber } vacuum && chamber > Volume.Zero
            ? Length.FromMeters(Math.Min(stroke.Meters, 0.999 * chamber.CubicMeters / vacuum.EffectiveArea.SquareMeters))
            : stroke;

    // Harder pressing takes a longer stroke, which leaves less help at its end: the one pressure at which both agree, or that of the
    // road. The applications before were as hard as the deceleration asked for.
    private static ControlForce AtFullForce(ControlForce sound, ControlForce atRate, int number, FailureConditions asked, LockUp? lockUp)
    {
        BrakeAssist full = sound.Control.Assist;
        Length before = Possible(full, RodTravel(sound, asked.BrakingRate));
        double high = Math.Min(lockUp?.At.MasterPressure.Pascals ?? double.PositiveInfinity, sound.Model.MaximumPressure.Pascals);
        double low = 0;
        ControlForce pressed = With(high);
        if (Foot(pressed) >= high)
        {
            return pressed;
        }

        while (high - low > Math.Max(1e-7 * high, LeastStepPascals))
        {
            double middle = 0.5 * (low + high);
            (low, high) = Foot(With(middle)) >= middle ? (middle, high) : (low, middle);
        }

        return With(low);

        double Foot(ControlForce control) => control.At(asked.PedalForce).Balance.MasterPressure.Pascals;

        ControlForce With(double pascals)
        {
            Length last = Possible(full, RodTravel(sound, Pressure.FromPascals(pascals)));
            ImmutableArray<ReserveApplication> strokes = full.Reserve([.. Enumerable.Repeat(before, number - 1), last]);
            BrakeAssist assist = strokes.Length == number ? strokes[^1].Assist : full.WithoutEnergy();
            return new ControlForce(atRate.Model, atRate.Control with { Assist = assist });
        }
    }

    // Half the volume goes to each diagonal; the lost one's chamber closes first, whichever it is.
    private static PedalTravel? TravelAt(ControlForce control, FailureCase failure, double pascals)
    {
        if (failure.LostCircuit is null)
        {
            return control.TravelAt(Pressure.FromPascals(pascals));
        }

        if (control.Control.Circuits is not { } circuits)
        {
            return null;
        }

        PerAxle<Pressure> lines = control.Model.At(Pressure.FromPascals(pascals)).LinePressures;
        if (lines.Front > circuits.Front.Hose.LargestPressure || lines.Rear > circuits.Rear.Hose.LargestPressure)
        {
            return null;
        }

        Volume front = circuits.Front.Demand(lines.Front).Total;
        Volume rear = circuits.Rear.Demand(lines.Rear).Total;
        (Axle lost, PerAxle<Volume> volumes) = failure.LostCircuit switch
        {
            LostCircuit.Front => (Axle.Front, new PerAxle<Volume>(front, rear)),
            LostCircuit.Rear => (Axle.Rear, new PerAxle<Volume>(front, rear)),
            _ => (Axle.Rear, new PerAxle<Volume>((front + rear) / 2, (front + rear) / 2)),
        };
        return PedalTravel.WithCircuitLost(control.Control.Pedal, control.Cylinder, lost, volumes, control.Control.PushRodGap);
    }

    private static double ReachPascals(ControlForce control, FailureCase failure, double wanted)
    {
        if (TravelAt(control, failure, wanted) is not { Reaches: false })
        {
            return wanted;
        }

        double low = 0;
        double high = wanted;
        for (int i = 0; i < 50; i++)
        {
            double middle = 0.5 * (low + high);
            if (TravelAt(control, failure, middle) is { Reaches: false })
            {
                high = middle;
            }
            else
            {
                low = middle;
            }
        }

        return low;
    }

    private static (Force? Needed, string? WhyNot) ForRate(ControlForce control, FailureCase failure, FailureConditions asked,
        LockUp? lockUp)
    {
        double rate = asked.BrakingRate;
        if (lockUp is not null && lockUp.At.BrakingRate < rate)
        {
            return (null, Invariant.Text(
                $"the {AxleWords(lockUp.First)} locks at a deceleration of {lockUp.At.BrakingRate:0.00} g on this road"));
        }

        if (control.AtRate(rate) is not { } point)
        {
            return (null, control.WhyNotAtRate(rate));
        }

        return TravelAt(control, failure, point.Balance.MasterPressure.Pascals) is { Reaches: false }
            ? (null, "the pedal or the master cylinder is at its end before") : (point.PedalForce, null);
    }

    private static string AxleWords(Axle? axle) => axle switch
    {
        Axle.Front => "front axle",
        Axle.Rear => "rear axle",
        _ => "car with both axles",
    };

    private static Duration BuildUp(ControlForce control, PedalTravel? travel)
    {
        Duration usual = StoppingDistance.UsualBuildUp;
        return control.Control.Assist is HydraulicBooster booster && travel is not null
            && booster.ShortestApplication(travel.RodTravel) is { } shortest && shortest > usual
            ? shortest
            : usual;
    }

    private static List<string> Notices(ControlForce control, FailureCase failure, LockUp? lockUp, PedalTravel? travel)
    {
        List<string> notices = [];
        if (lockUp?.First == Axle.Rear)
        {
            notices.Add("The rear axle locks first: the car spins.");
        }

        if (failure.LostCircuit == LostCircuit.Diagonal)
        {
            notices.Add("The car is braked on one diagonal and pulls to the side of the braked front wheel.");
        }

        if (travel?.Warning is { } warning)
        {
            notices.Add(warning);
        }

        if (control.Control.Assist is HydraulicBooster { FastestRodSpeed: { } speed } booster && speed <= Speed.Zero
            && failure.ReserveApplication is null && !failure.AssistLost && booster.PumpFlow > VolumeFlow.Zero)
        {
            notices.Add("The steering takes the whole flow of the pump; a quick application is not assisted until it is released.");
        }

        return notices;
    }

    private static FailureOutcome NothingLeft(FailureCase failure, LoadCase loadCase, FailureConditions asked) => new(
        Case: failure,
        LoadCase: loadCase.Name,
        PedalForceForRate: null,
        WhyNot: "one circuit serves all wheels",
        RateAtForce: 0,
        Bound: RateBound.Nothing,
        ForceUsed: asked.PedalForce,
        MasterPressure: Pressure.Zero,
        LinePressures: new(Pressure.Zero, Pressure.Zero),
        FirstToLock: null,
        LockUpRate: null,
        Efficiency: null,
        Distance: null,
        Travel: null,
        Notices: ["One circuit serves all wheels: a leak leaves only the parking brake. No car should be driven so."]);
}
