using System.Collections.Immutable;
using BrakeBalance.Assist;
using BrakeBalance.Balance;
using UnitsNet;

namespace BrakeBalance.Charts.Figures;

public static partial class FootFigures
{
    /// <summary>Pedal force for a stop out of the stored energy, application by application after the engine has stopped.</summary>
    /// <param name="control">The car's control in one load case.</param>
    /// <param name="brakingRate">Braking rate of each stop [–].</param>
    /// <param name="applications">How many applications are shown at most.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    /// <returns>The figure; without a reserve it shows the unassisted pedal alone.</returns>
    public static Figure Reserve(ControlForce control, double brakingRate = 0.5, int applications = 6, UnitSystem? units = null, string id = "reserve")
    {
        var figure = new FigureBuilder(id, units);
        ImmutableArray<ReserveApplication> reserve = FailureAnalysis.Reserve(control, new FailureConditions { BrakingRate = brakingRate }, applications);
        double? Effort(BrakeAssist assist) => new ControlForce(control.Model, control.Control with { Assist = assist }).AtRate(brakingRate)?.PedalForce.Newtons;
        double?[] efforts = [.. reserve.Select(application => Effort(application.Assist)), Effort(control.Control.Assist.WithoutEnergy())];
        string[] names = [.. reserve.Select(application => FormattableString.Invariant($"{application.Number}")), "no assist"];
        bool reached = efforts.All(effort => effort is not null);
        string finding = reserve.Length == 0 ? "Nothing is stored: with the engine stopped the leg is alone"
            : reserve.Length == 1 || !reached ? "One application is left once the engine has stopped"
            : $"The second stop without the engine takes {figure.Text(Measure.ControlForce, efforts[1]!.Value)}, the first {figure.Text(Measure.ControlForce, efforts[0]!.Value)}";
        return figure
            .Title(finding)
            .Describe(
                $"Pedal force for a braking rate of {Words(brakingRate)} with the engine stopped, by application, the pedal let up fully in between. {control.Model.Vehicle.Name}, {control.Model.LoadCase.Name}.",
                "Bars of pedal force that grow from application to application; the last bar is the pedal without assist.",
                string.Join(" ", reserve.Select((application, i) => FormattableString.Invariant(
                    $"Application {application.Number}: {100 * application.ShareOfFirst:0} % of the first one's assist, {figure.Text(Measure.ControlForce, efforts[i] ?? 0)}.")))
                + $" Without assist a braking rate of {Words(brakingRate)} takes {figure.Text(Measure.ControlForce, efforts[^1] ?? 0)}.")
            .Categories("Application after the engine has stopped", names)
            .Y("Pedal force", "F", Measure.ControlForce, 0)
            .Bars("pedal force", efforts.Select(effort => effort ?? 0).ToArray(), Tone.Front)
            .Level("500 N, the rules' highest pedal force", 500)
            .Table(table => table
                .Words("Application", names)
                .Column(control.Control.Assist is HydraulicBooster ? "Oil pressure left" : "Vacuum left", control.Control.Assist is HydraulicBooster ? Measure.LinePressure : Measure.Vacuum, [.. reserve.Select(a => (double?)a.WorkingPressure.Pascals), 0d])
                .Column("Share of the first", Measure.Percent, [.. reserve.Select(a => (double?)a.ShareOfFirst), 0d])
                .Column("Pedal force", Measure.ControlForce, efforts))
            .Build();
    }
}
