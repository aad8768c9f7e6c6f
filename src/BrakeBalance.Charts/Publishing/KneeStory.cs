using BrakeBalance.Balance;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Charts.Publishing;

/// <summary>The figures to move in the story "What the knee does": four controls, plain words, every state computed beforehand.</summary>
public static class KneeStory
{
    /// <summary>Roads of the story: name in plain words and adhesion [–].</summary>
    public static IReadOnlyList<(string Name, double Adhesion)> Roads { get; } = [("slippery", 0.3), ("wet", 0.5), ("dry", 0.8), ("dry, track tyres", 1.1)];

    /// <summary>Slopes of the story [–]; 1 is a car without the valve.</summary>
    public static IReadOnlyList<double> Slopes { get; } = [0, 0.3, 0.6, 1];

    /// <summary>The explorable of a car.</summary>
    /// <param name="vehicle">The car; a valve is put into its rear line where it has none.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">Its short name.</param>
    /// <returns>The explorable.</returns>
    public static Explorable Of(Vehicle vehicle, UnitSystem? units = null, string id = "story")
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        UnitSystem shown = units ?? Display.Units;
        Pressure[] knees = Knees(vehicle, shown);
        int own = Nearest(knees, OwnKnee(vehicle));
        double ownSlope = vehicle.Hydraulics.RearProportioningValve?.Slope ?? 0.3;
        BalanceModel[][][] models = [.. knees.Select(knee => Slopes.Select(slope =>
            vehicle.WithRearKnee(knee, slope)).Select(car => car.LoadCases.Select(load => new BalanceModel(car, load)).ToArray()).ToArray())];
        var window = ForceWindow.Of(models[^1][^1], 0.95);
        Control[] controls =
        [
            Control.Slider("knee", "Knee", Measure.LinePressure, knees, own, shown),
            Control.Slider("slope", "Share above the knee", Slopes.Select(SlopeName), Slopes.Index().MinBy(slope => Math.Abs(slope.Item - ownSlope)).Index),
            Control.Choice("load", "Load", vehicle.LoadCases.Select(load => PlainWording.Say(load.Name)), 0),
            Control.Choice("road", "Road", Roads.Select(road => road.Name), 2),
        ];
        return Explorable.Of(id, controls, state =>
        {
            BalanceModel model = models[state["knee"]][state["slope"]][state["load"]];
            (string road, double adhesion) = Roads[state["road"]];
            LockUp? lockUp = model.FirstLockUp(adhesion);
            return new Frame(
                [
                    StoryFigures.Valve(model, lockUp, knees[state["knee"]], Slopes[state["slope"]], shown, $"{id}-valve"),
                    StoryFigures.Sharing(model, lockUp, adhesion, road, window, shown, $"{id}-sharing"),
                    StoryFigures.Wheels(lockUp, shown, $"{id}-wheels"),
                ],
                [
                    new Readout("Locks first", lockUp is null ? "no wheel" : lockUp.First switch { Axle.Front => "front wheels", Axle.Rear => "rear wheels", _ => "all wheels" }),
                    new Readout("When braking at", lockUp is null ? "–" : $"{Finding.Rate(lockUp.At.BrakingRate)} g"),
                    new Readout("Grip of the road used", lockUp is null ? "–" : Measure.Percent.Text(lockUp.Efficiency, shown)),
                ],
                StoryFigures.Verdict(lockUp));
        });
    }

    /// <summary>The knee of the car as it is, or a usual one where it has no valve; gauge.</summary>
    internal static Pressure OwnKnee(Vehicle vehicle) => vehicle.Hydraulics.RearProportioningValve?.Knee ?? Pressure.FromBars(30);

    /// <summary>Round pressures from a low knee to one that no stop reaches; the car's own takes the place of the nearest.</summary>
    internal static Pressure[] Knees(Vehicle vehicle, UnitSystem units)
    {
        DisplayUnit unit = Measure.LinePressure.In(units);
        double step = units == UnitSystem.Us ? 100 : 8;
        Pressure[] knees = [.. Enumerable.Range(1, 9).Select(i => Pressure.FromPascals(unit.ToSi(step * i)))];
        knees[Nearest(knees, OwnKnee(vehicle))] = OwnKnee(vehicle);
        return knees;
    }

    private static int Nearest(Pressure[] knees, Pressure wanted) => knees.Index().MinBy(knee => Math.Abs(knee.Item.Pascals - wanted.Pascals)).Index;

    private static string SlopeName(double slope) => slope switch
    {
        0 => "nothing",
        1 => "all of it (no valve)",
        _ => FormattableString.Invariant($"{100 * slope:0} %"),
    };
}
