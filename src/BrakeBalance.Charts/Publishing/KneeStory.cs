using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Figures;

namespace BrakeBalance.Charts.Publishing;

/// <summary>The figures to move in the story "What the knee does": four controls, plain words.</summary>
public static class KneeStory
{
    private const int KneeCount = 41;

    /// <summary>Roads of the story: name in plain words and adhesion [–].</summary>
    public static IReadOnlyList<(string Name, double Adhesion)> Roads { get; } =
        [("slippery", 0.3), ("wet", Conditions.WetAdhesion), ("dry", Conditions.DryAdhesion), ("dry, track tyres", 1.1)];

    /// <summary>What a metering valve in the front line does, in plain words; empty when the car has none.</summary>
    /// <param name="vehicle">The car.</param>
    /// <returns>A sentence.</returns>
    public static string MeteringOf(Vehicle vehicle) => StoryFigures.HoldsFront(vehicle) ? StoryFigures.Metering : "";

    /// <summary>Slopes of the story [–]; 1 is a car without the valve.</summary>
    public static IReadOnlyList<double> Slopes { get; } = [0, 0.3, 0.6, 1];

    /// <summary>The slopes of the story for a car: its own in place of the nearest.</summary>
    /// <param name="setting">The answer for the car.</param>
    /// <returns>Them, rising, and the place of its own.</returns>
    public static (IReadOnlyList<double> Slopes, int Start) SlopesOf(Setting setting)
    {
        ArgumentNullException.ThrowIfNull(setting);
        double[] slopes = [.. Slopes];
        int start = SettingChoices.Put(slopes, setting.Middle.Slope ?? SettingSearch.AddedSlope, recommended: null);
        return (slopes, start);
    }

    /// <summary>The explorable of a car.</summary>
    /// <param name="setting">The answer for the car; a valve is put into its rear line where it has none.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">Its short name.</param>
    /// <returns>The explorable.</returns>
    public static Explorable Of(Setting setting, UnitSystem? units = null, string id = "story")
    {
        ArgumentNullException.ThrowIfNull(setting);
        UnitSystem shown = units ?? Display.Units;
        Vehicle vehicle = setting.Vehicle;
        (Pressure[] knees, int own) = SettingChoices.Knees(setting, KneeCount, shown);
        (IReadOnlyList<double> slopes, int ownSlope) = SlopesOf(setting);
        BalanceModel Model(int knee, int slope, int load) =>
            new(vehicle.WithRearKnee(knees[knee], slopes[slope]), vehicle.LoadCases[load]);
        var window = ForceWindow.Of(
            [.. Enumerable.Range(0, vehicle.LoadCases.Length).Select(load => Model(knees.Length - 1, slopes.Count - 1, load))], 0.95);
        Control[] controls =
        [
            Control.Slider("knee", "Knee", SettingChoices.Texts(knees, shown), own),
            Control.Slider("slope", "Share above the knee", slopes.Select(SlopeName), ownSlope),
            Control.Choice("load", "Load", vehicle.LoadCases.Select(load => PlainText.Load(load.Name)), 0),
            Control.Choice("road", "Road", Roads.Select(road => road.Name), 2),
        ];
        return Explorable.Of(id, controls, state =>
        {
            BalanceModel model = Model(state["knee"], state["slope"], state["load"]);
            (string road, double adhesion) = Roads[state["road"]];
            LockUp? lockUp = model.FirstLockUp(adhesion);
            return new Frame(
                [
                    StoryFigures.Valve(model, lockUp, knees[state["knee"]], slopes[state["slope"]], shown, $"{id}-valve"),
                    StoryFigures.Sharing(model, lockUp, adhesion, road, window, shown, $"{id}-sharing"),
                    StoryFigures.Wheels(lockUp, shown, $"{id}-wheels"),
                ],
                [
                    new Readout("Locks first", lockUp is null
                        ? "no wheel" : lockUp.First switch { Axle.Front => "front wheels", Axle.Rear => "rear wheels", _ => "all wheels" }),
                    new Readout("When braking at", lockUp is null ? "–" : $"{Finding.Rate(lockUp.At.BrakingRate)} g"),
                    new Readout("Grip of the road used", lockUp is null ? "–" : Measure.Percent.Text(lockUp.Efficiency, shown)),
                ],
                StoryFigures.Verdict(lockUp));
        }).AgainFrom(vehicle, "story", shown);
    }

    /// <summary>The knees of the story and the place of the one at the start; gauge.</summary>
    /// <param name="setting">The answer for the car.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>Them, rising.</returns>
    public static (IReadOnlyList<Pressure> Knees, int Start) Knees(Setting setting, UnitSystem units) =>
        SettingChoices.Knees(setting, KneeCount, units);

    private static string SlopeName(double slope) => slope switch
    {
        0 => "nothing",
        1 => "all of it (no valve)",
        _ => FormattableString.Invariant($"{100 * slope:0} %"),
    };
}
