namespace BrakeBalance.Charts.Figures;

public static partial class FootFigures
{
    private const int MostShown = 6;

    /// <summary>The hardest stop that the stored energy still helps, application by application after the engine has stopped.</summary>
    /// <param name="control">The car's control in one load case.</param>
    /// <param name="brakingRate">Deceleration of each stop [–]: it decides how much each application takes from the store.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    /// <returns>The figure; without a reserve it says so, and shows one bar of no height.</returns>
    public static Figure Reserve(ControlForce control, double brakingRate = 0.5, UnitSystem? units = null, string id = "reserve")
    {
        var figure = new FigureBuilder(id, units, control.Model.Vehicle);
        EngineOffPresses presses = EngineOffPresses.Of(control, brakingRate, applications: MostShown);
        ReserveApplication[] reserve = [.. presses.Applications.TakeWhile(application => application.MaximumAssist > Force.Zero)];
        ControlForce[] stops = [.. reserve.Select(application => application.Assist).Append(control.Control.Assist.WithoutEnergy())
            .Select(assist => new ControlForce(control.Model, control.Control with { Assist = assist }))];
        double[] helped = [.. stops.Select(HelpedUpTo)];
        double?[] efforts = [.. presses.PedalForces.Take(reserve.Length).Append(presses.WithoutAssist).Select(force => force?.Newtons)];
        string[] names = [.. reserve.Select(application => Invariant.Text($"{application.Number}")), "spent"];
        string Effort(int i) => efforts[i] is { } newtons ? figure.Text(Measure.ControlForce, newtons) : "more than the highest pressure";
        string asked = $"a deceleration of {Words(brakingRate)} g";
        string limit = figure.Text(Measure.ControlForce, presses.GreatestPedalForce);
        string finding = !presses.IsDescribed ? "The volume of the booster's chamber is not known, so no reserve is told"
            : !presses.IsStored ? $"No help is stored: engine off, {asked} takes {Effort(stops.Length - 1)}"
            : presses.Count is not { } count ? $"Engine off, {asked} takes no more than {limit} even with the store spent"
            : count == 0 ? $"Engine off, {asked} takes more than {limit} from the first press on"
            : Invariant.Text(
                $"Engine off, {count} press{(count == 1 ? "" : "es")} at {asked} stay{(count == 1 ? "s" : "")} within {limit}");
        bool oil = control.Control.Assist is HydraulicBooster;
        return figure
            .Title(finding)
            .Describe(
                $"Hardest stop that is still helped at the end of its stroke, engine stopped, presses at {Words(brakingRate)} g with "
                    + $"the pedal let up in between. {control.Model.Vehicle.Name}, {control.Model.LoadCase.Name}"
                    + $"{With(control.Model, control.Control)}.",
                string.Join(" ", reserve.Select((application, i) => Invariant.Text(
                    $"Application {application.Number}: {100 * application.ShareOfFirst:0} % of the first one's assist; a "
                        + $"deceleration of {Words(brakingRate)} g takes {Effort(i)}.")))
                + $" With the store spent a deceleration of {Words(brakingRate)} g takes {Effort(stops.Length - 1)}.")
            .Categories("Application after the engine has stopped", names)
            .Y("Deceleration up to which it helps", "z", Measure.InG, 0, Math.Max(0.6, helped.Max() * 1.1))
            .Bars("helped up to", helped, Tone.Front)
            .Level($"stops of {Words(brakingRate)} g", brakingRate)
            .Table(table => table
                .Words("Application", names)
                .Column(oil ? "Oil pressure left"
                    : "Vacuum left", oil ? Measure.LinePressure
                    : Measure.Vacuum, [.. reserve.Select(a => (double?)a.WorkingPressure.Pascals), 0d])
                .Column("Share of the first", Measure.Percent, [.. reserve.Select(a => (double?)a.ShareOfFirst), 0d])
                .Column("Helped up to a deceleration of", Measure.InG, helped.Select(rate => (double?)rate))
                .Column($"Pedal force for {Words(brakingRate)} g", Measure.ControlForce, efforts))
            .Build();
    }

    // The booster that is not the car's own; another supply alone makes none.
    private static string With(BalanceModel model, BrakeControl control) => (model.Vehicle.Control?.Assist, control.Assist) switch
    {
        (HydraulicBooster own, HydraulicBooster pump) when own == pump with { ReliefPressure = own.ReliefPressure } => "",
        (not VacuumBooster, VacuumBooster) => ", with a vacuum booster in place of its own assist",
        (_, HydraulicBooster) => ", with a hydraulic booster in place of its own assist",
        _ => "",
    };

    private static double HelpedUpTo(ControlForce control) =>
        control.Control.Assist is not PoweredAssist { RunOut: not null } ? 0
        : control.RunOut() is { } runOut ? runOut.Balance.BrakingRate
        : control.Model.At(control.Model.MaximumPressure).BrakingRate;
}
