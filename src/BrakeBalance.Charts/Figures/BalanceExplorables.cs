using BrakeBalance.Balance;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Hydraulics;
using BrakeBalance.Rules;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Charts.Figures;

/// <summary>Explorables of the balance of a car; every state is computed by the calculation assembly beforehand.</summary>
public static class BalanceExplorables
{
    private static readonly double[] Surfaces = [0.3, 0.5, 0.8, 1.1];

    /// <summary>Brake forces and adhesion utilisation with controls for the setting (knee, or share of the balance bar), load and surface.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="settings">How many settings the first control has; at least 2.</param>
    /// <param name="slope">Slope above the knee [–]; null for the car's own, or 0.3 when it has no proportioning valve.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The explorable's short name.</param>
    /// <returns>The explorable.</returns>
    public static Explorable SettingAndLoad(Vehicle vehicle, int settings = 15, double? slope = null, UnitSystem? units = null, string id = "explore")
    {
        UnitSystem shown = units ?? Display.Units;
        (Control control, IReadOnlyList<Vehicle> cars) = vehicle.Hydraulics.Split is BalanceBarSplit bar && vehicle.Hydraulics.RearProportioningValve is null
            ? BarShares(vehicle, bar, settings, shown)
            : Knees(vehicle, settings, slope ?? vehicle.Hydraulics.RearProportioningValve?.Slope ?? 0.3, shown);
        BalanceModel[][] models = [.. cars.Select(car => car.LoadCases.Select(load => new BalanceModel(car, load)).ToArray())];
        IReadOnlyList<UtilisationCurve>[] curves = [.. cars.Select(UtilisationCurve.Of)];
        Figure[][] utilisation = [.. curves.Select(loads => loads.Select(curve => BalanceFigures.AdhesionUtilisation(curve, shown, $"{id}-utilisation")).ToArray())];
        var window = ForceWindow.Of(models[0], 0.95);
        Control[] controls =
        [
            control,
            Control.Slider("load", "Load", vehicle.LoadCases.Select(load => load.Name), 0),
            Control.Choice("surface", "Adhesion of the road", Surfaces.Select(SurfaceName), 2),
        ];
        return Explorable.Of(id, controls, state =>
        {
            int load = state["load"];
            double adhesion = Surfaces[state["surface"]];
            BalanceModel model = models[state["setting"]][load];
            LockUp? lockUp = model.FirstLockUp(adhesion);
            return new Frame(
                [
                    BalanceFigures.BrakeForces(model, [adhesion], window, shown, $"{id}-forces"),
                    utilisation[state["setting"]][load],
                ],
                Readouts(lockUp, shown),
                Verdict(lockUp, adhesion));
        });
    }

    private static string SurfaceName(double adhesion) => adhesion switch
    {
        0.3 => "0.3 slippery",
        0.5 => "0.5 wet",
        0.8 => "0.8 dry",
        _ => "1.1 track tyres, dry",
    };

    private static (Control Control, IReadOnlyList<Vehicle> Cars) Knees(Vehicle vehicle, int settings, double slope, UnitSystem units)
    {
        // Round display numbers around the car's own knee, so that the slider reads well in either system.
        DisplayUnit unit = Measure.LinePressure.In(units);
        double own = unit.FromSi(vehicle.Hydraulics.RearProportioningValve?.Knee.Pascals ?? 3e6);
        double step = Rendering.Ticks.Step(own * 1.8, settings - 1);
        double[] knees = [.. Enumerable.Range(0, settings).Select(i => unit.ToSi((i + 1) * step))];
        int start = Nearest(knees, unit.ToSi(own));
        knees[start] = unit.ToSi(own);
        return (
            Control.Slider("setting", "Knee pressure of the valve", Measure.LinePressure, knees, start, units),
            [.. knees.Select(knee => vehicle.WithRearKnee(Pressure.FromPascals(knee), slope))]);
    }

    private static (Control Control, IReadOnlyList<Vehicle> Cars) BarShares(Vehicle vehicle, BalanceBarSplit bar, int settings, UnitSystem units)
    {
        double[] shares = [.. Enumerable.Range(0, settings).Select(i => 0.4 + 0.3 * i / (settings - 1))];
        int start = Nearest(shares, bar.FrontForceShare);
        shares[start] = bar.FrontForceShare;
        Measure measure = Measure.Pure("front share", "%", 100, 0.1);
        return (
            Control.Slider("setting", "Front share of the balance bar", measure, shares, start, units),
            [.. shares.Select(share => vehicle with { Hydraulics = vehicle.Hydraulics with { Split = bar with { FrontForceShare = share } } })]);
    }

    private static int Nearest(double[] values, double wanted) => values.Index().MinBy(value => Math.Abs(value.Item - wanted)).Index;

    private static IReadOnlyList<Readout> Readouts(LockUp? lockUp, UnitSystem units) =>
    [
        new("First to lock", lockUp is null ? "no axle" : Finding.AxleWord(lockUp) + (lockUp.First is null ? " axles" : " axle")),
        new("At braking rate", lockUp is null ? "–" : Finding.Rate(lockUp.At.BrakingRate)),
        new("Braking efficiency", lockUp is null ? "–" : Measure.Percent.Text(lockUp.Efficiency, units)),
        new("Front line pressure", lockUp is null ? "–" : Measure.LinePressure.Text(lockUp.At.LinePressures.Front, units)),
        new("Rear line pressure", lockUp is null ? "–" : Measure.LinePressure.Text(lockUp.At.LinePressures.Rear, units)),
    ];

    private static Verdict Verdict(LockUp? lockUp, double adhesion) => lockUp switch
    {
        null => new($"At an adhesion of {Finding.Rate(adhesion)} no axle locks within the pressure considered."),
        { First: Axle.Rear } => new($"The rear axle locks first at a braking rate of {Finding.Rate(lockUp.At.BrakingRate)}: the car can spin.", VerdictKind.Caution),
        { First: null } => new($"Both axles lock together at a braking rate of {Finding.Rate(lockUp.At.BrakingRate)}: nothing is left in hand.", VerdictKind.Caution),
        _ => new($"The front axle locks first at a braking rate of {Finding.Rate(lockUp.At.BrakingRate)}: the car runs straight on, unsteered.", VerdictKind.Good),
    };
}
