using BrakeBalance.Charts.Exploring;

namespace BrakeBalance.Charts.Figures;

/// <summary>Explorables of the balance of a car.</summary>
public static class BalanceExplorables
{
    /// <summary>
    /// Brake forces and adhesion utilisation with controls for the setting (knee, or share of the balance bar), load and surface.
    /// </summary>
    /// <param name="setting">The answer for the car, whose settings are among those to choose from.</param>
    /// <param name="settings">How many settings the first control has; at least 3.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The explorable's short name.</param>
    public static Explorable SettingAndLoad(Setting setting, int settings = 41, UnitSystem? units = null, string id = "explore")
    {
        ArgumentNullException.ThrowIfNull(setting);
        Vehicle vehicle = setting.Vehicle;
        UnitSystem shown = units ?? Display.Units;
        (Control control, IReadOnlyList<Vehicle> cars) = vehicle.Hydraulics.Split is BalanceBarSplit bar
            && vehicle.Hydraulics.RearProportioningValve is null
            ? BarShares(setting, bar, settings, shown)
            : Knees(setting, settings, shown);
        var window = ForceWindow.Of([.. cars[0].LoadCases.Select(load => new BalanceModel(cars[0], load))],
            Math.Max(0.95, vehicle.Conditions.BestAdhesion));
        IReadOnlyList<(string Name, string Where, double Adhesion)> surfaces = Finding.NamedRoads(vehicle);
        Control[] controls =
        [
            control,
            Control.Slider("load", "Load", vehicle.LoadCases.Select(load => load.Name), 0),
            Control.Choice("surface", "Adhesion of the road",
                surfaces.Select(road => Invariant.Text($"{road.Adhesion:0.0#} {road.Name}")), 2),
        ];
        return Explorable.Of(id, controls, state =>
        {
            Vehicle car = cars[state["setting"]];
            int load = state["load"];
            double adhesion = surfaces[state["surface"]].Adhesion;
            var model = new BalanceModel(car, car.LoadCases[load]);
            LockUp? lockUp = model.FirstLockUp(adhesion);
            return new Frame(
                [
                    BalanceFigures.BrakeForces(model, [adhesion], window, shown, $"{id}-forces"),
                    BalanceFigures.AdhesionUtilisation(UtilisationCurve.Of(car)[load], shown, $"{id}-utilisation"),
                ],
                Readouts(lockUp, shown),
                Verdict(lockUp, adhesion, setting.IsBeyond(car)));
        }).AgainFrom(vehicle, "setting-and-load", shown, ("settings", settings));
    }

    private static (Control Control, IReadOnlyList<Vehicle> Cars) Knees(Setting setting, int settings, UnitSystem units)
    {
        (Pressure[] knees, int start) = SettingChoices.Knees(setting, settings, units);
        double slope = setting.Middle.Slope ?? SettingSearch.AddedSlope;
        Vehicle[] cars = [.. knees.Select(knee => setting.Vehicle.WithRearKnee(knee, slope))];
        IEnumerable<string> texts = SettingChoices.Texts(knees, units);
        // A car that has no such valve is shown as it is: with any it would brake its rear less.
        return setting.Variable != SettingVariable.AddedKnee
            ? (Control.Slider("setting", "Knee pressure of the valve", texts, start), cars)
            : (Control.Slider("setting", "Knee of a valve added", [.. texts, SettingWords.None], cars.Length), [.. cars, setting.Vehicle]);
    }

    private static (Control Control, IReadOnlyList<Vehicle> Cars) BarShares(Setting setting, BalanceBarSplit bar, int settings,
        UnitSystem units)
    {
        (double[] shares, int start) = SettingChoices.Shares(setting, bar.FrontForceShare, settings);
        Measure measure = Measure.Pure("front share", "%", 100, 0.1);
        return (
            Control.Slider("setting", "Front share of the balance bar", measure, shares, start, units),
            [.. shares.Select(setting.Vehicle.WithFrontForceShare)]);
    }

    private static IReadOnlyList<Readout> Readouts(LockUp? lockUp, UnitSystem units) =>
    [
        new("Locks first", lockUp is null ? "no axle" : Finding.AxleWord(lockUp) + (lockUp.First is null ? " axles" : " axle")),
        new("At a deceleration of", lockUp is null ? "–" : $"{Finding.Rate(lockUp.At.BrakingRate)} g"),
        new("Braking efficiency", lockUp is null ? "–" : Measure.Percent.Text(lockUp.Efficiency, units)),
        new("Front line pressure", lockUp is null ? "–" : Measure.LinePressure.Text(lockUp.At.LinePressures.Front, units)),
        new("Rear line pressure", lockUp is null ? "–" : Measure.LinePressure.Text(lockUp.At.LinePressures.Rear, units)),
    ];

    private static Verdict Verdict(LockUp? lockUp, double adhesion, bool isBeyond) => lockUp switch
    {
        null => new($"At an adhesion of {Finding.Rate(adhesion)} no axle locks within the pressure considered."),
        { First: Axle.Rear } => new(
            $"The rear axle locks first at a deceleration of {Finding.Rate(lockUp.At.BrakingRate)} g: the car can spin.",
            VerdictKind.Caution),
        { First: null } => new($"Both axles lock together at a deceleration of {Finding.Rate(lockUp.At.BrakingRate)} g: "
            + "nothing is left in hand.", VerdictKind.Caution),
        _ => new($"The front axle locks first at a deceleration of {Finding.Rate(lockUp.At.BrakingRate)} g: "
            + "the car runs straight on, unsteered."
            + (isBeyond ? " But this setting is beyond the safe limit: in other conditions the rear can lock first." : ""),
            isBeyond ? VerdictKind.Caution : VerdictKind.Good),
    };
}
