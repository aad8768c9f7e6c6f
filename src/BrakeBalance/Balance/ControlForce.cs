using BrakeBalance.Hydraulics;
using BrakeBalance.Pedals;
using BrakeBalance.Vehicles;
using MathNet.Numerics.RootFinding;
using UnitsNet;

namespace BrakeBalance.Balance;

/// <summary>From the foot to the braking rate and back: pedal, assist and master cylinder in front of a car's balance.</summary>
/// <remarks>
/// <para>Foot → pedal → booster → master cylinder → front outlet pressure → <see cref="BalanceModel"/>.</para>
/// <para>
/// Where the pedal's ratio or spring changes over the travel and the circuits' volumes are known, the travel at the pressure decides;
/// else the ratio at rest holds. Slow application.
/// </para>
/// <para>Source: equilibrium of each part in turn.</para>
/// </remarks>
public sealed class ControlForce
{
    private readonly bool _travelMatters;

    /// <summary>Puts the foot in front of a balance.</summary>
    /// <param name="model">The balance of the car in one load case.</param>
    /// <param name="control">Pedal, assist and master cylinder; those of the model's car unless said.</param>
    /// <exception cref="ArgumentException">Neither the car nor the caller says what lies between foot and line pressure.</exception>
    public ControlForce(BalanceModel model, BrakeControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        Model = model;
        Control = control ?? model.Vehicle.Control ?? throw new ArgumentException(
            $"\"{model.Vehicle.Name}\" does not say what lies between foot and line pressure: give pedal, assist and masterCylinder in its file.", nameof(model));
        Cylinder = Control.MasterCylinderFor(model.Vehicle.Hydraulics.Split);
        _travelMatters = Control.Circuits is not null
            && (Control.Pedal.Lever is not FixedRatioLever || Control.Pedal.ReturnSpringRate > ForcePerLength.Zero);
    }

    /// <summary>The balance.</summary>
    public BalanceModel Model { get; }

    /// <summary>Pedal, assist and master cylinder.</summary>
    public BrakeControl Control { get; }

    /// <summary>The master cylinder, with bores and bar as the car's circuit split names them.</summary>
    public MasterCylinder Cylinder { get; }

    /// <summary>The car under a pedal force.</summary>
    /// <param name="pedalForce">Force of the foot on the pad; not negative.</param>
    /// <returns>Every force and pressure on the way, and the balance.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="pedalForce"/> is negative.</exception>
    public ControlForcePoint At(Force pedalForce)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(pedalForce, Force.Zero);
        return Point(pedalForce, Pressure.FromPascals(MasterPascals(pedalForce)));
    }

    /// <summary>The car at a front master-cylinder pressure, with the pedal force that makes it.</summary>
    /// <param name="master">Front master-cylinder pressure, gauge; not negative.</param>
    /// <returns>The point.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="master"/> is negative.</exception>
    public ControlForcePoint AtPressure(Pressure master)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(master, Pressure.Zero);
        return Point(PedalForceForPressure(master), master);
    }

    /// <summary>The car at a braking rate, with the pedal force that makes it.</summary>
    /// <param name="brakingRate">Deceleration over g [–]; above zero. What the road allows is not asked here.</param>
    /// <returns>The point; null when the highest pressure considered does not reach that rate.</returns>
    public ControlForcePoint? AtRate(double brakingRate) =>
        Model.AtRate(brakingRate) is { } point ? Point(PedalForceForPressure(point.MasterPressure), point.MasterPressure) : null;

    /// <summary>Pedal force for a front master-cylinder pressure.</summary>
    /// <param name="master">Front master-cylinder pressure, gauge; not negative.</param>
    /// <returns>Force of the foot on the pad.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="master"/> is negative.</exception>
    public Force PedalForceForPressure(Pressure master) => Control.Pedal.PedalForce(
        Control.Assist.InputForce(Cylinder.RodForce(Axle.Front, master)), TravelThatCounts(master.Pascals));

    /// <summary>The braking rate that a pedal force gives on a road: what the brakes give, or what they give when the first axle locks.</summary>
    /// <param name="pedalForce">Force of the foot on the pad; not negative.</param>
    /// <param name="adhesion">The surface's coefficient of adhesion [–]; above zero, at most 2.</param>
    /// <returns>Braking rate [–].</returns>
    public double RateOn(Force pedalForce, double adhesion)
    {
        double asked = At(pedalForce).Balance.BrakingRate;
        return Model.FirstLockUp(adhesion) is { } lockUp ? Math.Min(asked, lockUp.At.BrakingRate) : asked;
    }

    /// <summary>The car at the point where the assist gives all it can; every newton more is the driver's own.</summary>
    /// <returns>The point; null without assist, or when it lies beyond the highest pressure considered.</returns>
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
    /// <returns>The budget; null when the circuits' volumes are not known, or a pressure lies beyond the table of hoses.</returns>
    public PedalTravel? TravelAt(Pressure master)
    {
        if (Control.Circuits is not { } circuits)
        {
            return null;
        }

        PerAxle<Pressure> lines = Model.At(master).LinePressures;
        return lines.Front > circuits.Front.Hose.LargestPressure || lines.Rear > circuits.Rear.Hose.LargestPressure
            ? null
            : PedalTravel.At(Control.Pedal, Cylinder, circuits, lines, Control.PushRodGap);
    }

    private ControlForcePoint Point(Force pedalForce, Pressure master)
    {
        Force input = Control.Pedal.InputRodForce(pedalForce, TravelThatCounts(master.Pascals));
        return new ControlForcePoint(pedalForce, input, Control.Assist.OutputForce(input), Cylinder.OutletPressures(Cylinder.RodForce(Axle.Front, master)), Model.At(master));
    }

    private double MasterPascals(Force pedalForce)
    {
        double AtTravel(Length travel) => Cylinder.OutletPressures(Control.Assist.OutputForce(Control.Pedal.InputRodForce(pedalForce, travel))).Front.Pascals;
        if (!_travelMatters)
        {
            return AtTravel(Length.Zero);
        }

        // A stiff spring and a falling ratio leave one consistent pressure: the one whose travel gives it back.
        double Miss(double pascals) => AtTravel(TravelThatCounts(pascals)) - pascals;
        double high = Math.Max(1, AtTravel(Length.Zero)) * 4;
        return Miss(0) <= 0 ? 0 : Miss(high) >= 0 ? high : Brent.FindRoot(Miss, 0, high, 1, 200);
    }

    private Length TravelThatCounts(double masterPascals)
    {
        if (!_travelMatters || Control.Circuits is not { } circuits)
        {
            return Length.Zero;
        }

        PerAxle<Pressure> lines = Model.At(Pressure.FromPascals(masterPascals)).LinePressures;
        Pressure front = lines.Front < circuits.Front.Hose.LargestPressure ? lines.Front : circuits.Front.Hose.LargestPressure;
        Pressure rear = lines.Rear < circuits.Rear.Hose.LargestPressure ? lines.Rear : circuits.Rear.Hose.LargestPressure;
        Length rod = Cylinder.RodTravel(new(circuits.Front.Demand(front).Total, circuits.Rear.Demand(rear).Total)) + Control.PushRodGap;
        return Control.Pedal.Lever.PadTravel(rod) ?? throw new InvalidOperationException(
            "The pedal's linkage ends before this pressure is reached; check its geometry against the travel that the brakes need.");
    }
}
