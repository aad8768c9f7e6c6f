using BrakeBalance.Hydraulics;
using BrakeBalance.Pedals;
using BrakeBalance.Vehicles;
using MathNet.Numerics.RootFinding;

namespace BrakeBalance.Balance;

/// <summary>From the foot to the deceleration and back: pedal, assist and master cylinder in front of a car's balance.</summary>
/// <remarks>
/// <para>Foot → pedal → booster → master cylinder → front outlet pressure → <see cref="BalanceModel"/>.</para>
/// <para>
/// Where the pedal's ratio or spring changes over the travel and the circuits' volumes are known, the travel at the pressure decides;
/// else the ratio at rest holds. A linkage that ends before a pressure is reached has no answer there. Slow application.
/// </para>
/// <para>Source: equilibrium of each part in turn.</para>
/// </remarks>
public sealed class ControlForce
{
    private const double HighestProbePascals = 1e8;
    private const int ProbesOfTheWay = 16;

    private readonly bool _travelMatters;
    private readonly Lazy<double> _reachPascals;

    /// <summary>Puts the foot in front of a balance.</summary>
    /// <param name="model">The balance of the car in one load case.</param>
    /// <param name="control">Pedal, assist and master cylinder; those of the model's car unless said.</param>
    /// <exception cref="ArgumentException">Neither the car nor the caller says what lies between foot and line pressure.</exception>
    public ControlForce(BalanceModel model, BrakeControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        Model = model;
        Control = control ?? model.Vehicle.Control ?? throw new ArgumentException(
            $"\"{model.Vehicle.Name}\" does not say what lies between foot and line pressure: "
                + "give pedal, assist and masterCylinder in its file.", nameof(model));
        Cylinder = Control.MasterCylinderFor(model.Vehicle.Hydraulics.Split);
        _travelMatters = Control.Circuits is not null
            && (Control.Pedal.Lever is not FixedRatioLever || Control.Pedal.ReturnSpringRate > ForcePerLength.Zero);
        _reachPascals = new(ReachPascals);
    }

    /// <summary>The balance.</summary>
    public BalanceModel Model { get; }

    /// <summary>Pedal, assist and master cylinder.</summary>
    public BrakeControl Control { get; }

    /// <summary>The master cylinder, with bores and bar as the car's circuit split names them.</summary>
    public MasterCylinder Cylinder { get; }

    /// <summary>Highest front master-cylinder pressure before the pedal's linkage stops pushing; null when it never does.</summary>
    public Pressure? Reach => double.IsFinite(_reachPascals.Value) ? Pressure.FromPascals(_reachPascals.Value) : null;

    /// <summary>The car under a pedal force.</summary>
    /// <param name="pedalForce">Force of the foot on the pad; not negative.</param>
    /// <returns>Every force and pressure on the way, and the balance; at most the pressure at which the linkage ends.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="pedalForce"/> is negative.</exception>
    public ControlForcePoint At(Force pedalForce)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(pedalForce, Force.Zero);
        return Point(pedalForce, Pressure.FromPascals(MasterPascals(pedalForce)));
    }

    /// <summary>The car at a front master-cylinder pressure, with the pedal force that makes it.</summary>
    /// <param name="master">Front master-cylinder pressure, gauge; not negative.</param>
    /// <returns>The point; null when the pedal's linkage ends before that pressure.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="master"/> is negative.</exception>
    public ControlForcePoint? AtPressure(Pressure master)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(master, Pressure.Zero);
        return PedalForceForPressure(master) is { } force ? Point(force, master) : null;
    }

    /// <summary>The car at a deceleration, with the pedal force that makes it.</summary>
    /// <param name="brakingRate">Deceleration over g [–]; above zero. What the road allows is not asked here.</param>
    /// <returns>
    /// The point; null when the highest pressure considered, or the pedal's linkage, does not reach that rate: see <see
    /// cref="WhyNotAtRate"/>.
    /// </returns>
    public ControlForcePoint? AtRate(double brakingRate) =>
        Model.AtRate(brakingRate) is { } point ? AtPressure(point.MasterPressure) : null;

    /// <summary>Why a deceleration cannot be had, in words.</summary>
    /// <param name="brakingRate">Deceleration over g [–]; above zero.</param>
    /// <returns>The reason; null when <see cref="AtRate"/> has an answer.</returns>
    public string? WhyNotAtRate(double brakingRate) =>
        Model.AtRate(brakingRate) is not { } point
            ? "the highest pressure considered does not give that deceleration"
        : point.MasterPressure.Pascals > _reachPascals.Value ? "the pedal's linkage ends before"
        : null;

    /// <summary>Pedal force for a front master-cylinder pressure.</summary>
    /// <param name="master">Front master-cylinder pressure, gauge; not negative.</param>
    /// <returns>
    /// Force of the foot on the pad, the most that is needed on the way there; null when the pedal's linkage ends before that pressure.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="master"/> is negative.</exception>
    public Force? PedalForceForPressure(Pressure master)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(master, Pressure.Zero);
        double pascals = master.Pascals;
        if (pascals > _reachPascals.Value || NeededNewtons(pascals) is not { } most)
        {
            return null;
        }

        for (int i = 1; RatioRises && i < ProbesOfTheWay; i++)
        {
            most = Math.Max(most, NeededNewtons(pascals * i / ProbesOfTheWay) ?? 0);
        }

        return Force.FromNewtons(most);
    }

    /// <summary>The car at the point where the assist gives all it can; all further force is the driver's own.</summary>
    /// <returns>The point; null without assist, or when it lies beyond the highest pressure considered or the linkage's end.</returns>
    public ControlForcePoint? RunOut()
    {
        if (Control.Assist.RunOut is not { } runOut)
        {
            return null;
        }

        Pressure master = Cylinder.OutletPressures(runOut.OutputForce).Front;
        return master <= Model.MaximumPressure ? AtPressure(master) : null;
    }

    /// <summary>Where the pedal's travel goes at a front master-cylinder pressure.</summary>
    /// <param name="master">Front master-cylinder pressure, gauge; not negative.</param>
    /// <param name="drumsHot">Whether drums have grown hot.</param>
    /// <returns>The budget; null when the circuits' volumes are not known, or a pressure lies beyond the table of hoses; with
    /// <paramref name="drumsHot"/> also when the car has no drums.</returns>
    public PedalTravel? TravelAt(Pressure master, bool drumsHot = false)
    {
        if (Control.Circuits is not { } circuits)
        {
            return null;
        }

        if (drumsHot)
        {
            if (circuits is { Front.Drum: null, Rear.Drum: null })
            {
                return null;
            }

            circuits = circuits.Select(circuit => circuit with { DrumHot = true });
        }

        PerAxle<Pressure> lines = Model.At(master).LinePressures;
        PerAxle<Pressure>? filling = Cylinder.BlowOffPressure is { } blowOff
            ? Model.At(master < blowOff ? master : blowOff).LinePressures : null;
        return lines.Front > circuits.Front.Hose.LargestPressure || lines.Rear > circuits.Rear.Hose.LargestPressure
            ? null
            : PedalTravel.At(Control.Pedal, Cylinder, circuits, lines, Control.PushRodGap, filling);
    }

    private ControlForcePoint Point(Force pedalForce, Pressure master)
    {
        Force input = Control.Pedal.InputRodForce(pedalForce, TravelThatCounts(master.Pascals) ?? Length.Zero);
        return new ControlForcePoint(
            pedalForce, input, Control.Assist.OutputForce(input), Cylinder.OutletPressures(Cylinder.RodForce(Axle.Front, master)),
                Model.At(master));
    }

    private double MasterPascals(Force pedalForce)
    {
        double AtTravel(Length travel) =>
            Cylinder.OutletPressures(Control.Assist.OutputForce(Control.Pedal.InputRodForce(pedalForce, travel))).Front.Pascals;
        if (!_travelMatters)
        {
            return AtTravel(Length.Zero);
        }

        // The pedal stops at the first pressure whose travel gives no more than it; a ratio that rises towards the linkage's end may
        // have others.
        double Miss(double pascals) => AtTravel(TravelThatCounts(pascals) ?? Length.Zero) - pascals;
        double high = Math.Min(Math.Max(1, AtTravel(Length.Zero)) * 4, _reachPascals.Value);
        while (high < Math.Min(_reachPascals.Value, HighestProbePascals) && Miss(high) >= 0)
        {
            high = Math.Min(2 * high, _reachPascals.Value);
        }

        if (Miss(0) <= 0 || high <= 0)
        {
            return 0;
        }

        double low = 0;
        int steps = RatioRises ? ProbesOfTheWay : 1;
        for (int i = 1; i <= steps; i++)
        {
            double next = high * i / steps;
            if (Miss(next) < 0)
            {
                return Root(Miss, low, next);
            }

            low = next;
        }

        return high;
    }

    // A booster that jumps in makes a step, at which only halving is sure to end.
    private static double Root(Func<double, double> miss, double low, double high)
    {
        if (Brent.TryFindRoot(miss, low, high, 1, 200, out double root))
        {
            return root;
        }

        while (high - low > 1)
        {
            double middle = 0.5 * (low + high);
            (low, high) = miss(middle) >= 0 ? (middle, high) : (low, middle);
        }

        return low;
    }

    private double? NeededNewtons(double masterPascals) => TravelThatCounts(masterPascals) is { } travel
        ? Control.Pedal.PedalForce(Control.Assist.InputForce(Cylinder.RodForce(Axle.Front, Pressure.FromPascals(masterPascals))),
            travel).Newtons
        : null;

    // Null where the pedal's linkage ends before the brakes have their volume.
    private Length? TravelThatCounts(double masterPascals) =>
        _travelMatters && Control.Circuits is { } circuits
            ? Control.Pedal.Lever.PadTravel(RodTravel(circuits, masterPascals)) : Length.Zero;

    private Length RodTravel(PerAxle<CircuitVolume> circuits, double masterPascals)
    {
        PerAxle<Volume> At(double pascals)
        {
            PerAxle<Pressure> lines = Model.At(Pressure.FromPascals(pascals)).LinePressures;
            Pressure front = lines.Front < circuits.Front.Hose.LargestPressure ? lines.Front : circuits.Front.Hose.LargestPressure;
            Pressure rear = lines.Rear < circuits.Rear.Hose.LargestPressure ? lines.Rear : circuits.Rear.Hose.LargestPressure;
            return new(circuits.Front.Demand(front).Total, circuits.Rear.Demand(rear).Total);
        }

        Length saved = Cylinder.BlowOffPressure is { } blowOff
            ? Cylinder.TravelSaved(At(Math.Min(masterPascals, blowOff.Pascals))) : Length.Zero;
        return Cylinder.RodTravel(At(masterPascals)) - saved + Control.PushRodGap;
    }

    private double ReachPascals()
    {
        if (!RatioRises || TravelThatCounts(HighestProbePascals) is not null)
        {
            return double.PositiveInfinity;
        }

        double low = 0;
        double high = HighestProbePascals;
        for (int i = 0; i < 50; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = TravelThatCounts(middle) is null ? (low, middle) : (middle, high);
        }

        return low;
    }

    private bool RatioRises => _travelMatters && Control.Pedal.Lever is not FixedRatioLever;
}
