using BrakeBalance.Balance;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Charts.Figures;

/// <summary>Which axle locks first over knee and adhesion, with sliders for load and pad friction.</summary>
public static class SettingExplorer
{
    private static readonly double[] FrictionFactors = [0.85, 0.9, 0.95, 1, 1.05, 1.1, 1.15];

    /// <summary>Makes the explorable.</summary>
    /// <param name="vehicle">The car; with a proportioning valve in the rear line.</param>
    /// <param name="highest">The highest knee to show, gauge.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">Its short name.</param>
    /// <returns>The explorable.</returns>
    /// <exception cref="ArgumentException">The car has no proportioning valve in the rear line.</exception>
    public static Explorable Of(Vehicle vehicle, Pressure highest, UnitSystem? units = null, string id = "explore-setting")
    {
        if (vehicle.Hydraulics.RearProportioningValve is null)
        {
            throw new ArgumentException("The car has no proportioning valve in the rear line, so there is no knee to explore.", nameof(vehicle));
        }

        string[] changes = [.. FrictionFactors.Select(factor => factor == 1 ? "as in the file" : FormattableString.Invariant($"{(factor > 1 ? "+" : "−")}{Math.Abs(factor - 1) * 100:0} %"))];
        return Explorable.Of(
            id,
            [
                Control.Choice("load", "Load", vehicle.LoadCases.Select(load => load.Name)),
                Control.Slider("front", "Front pad friction", changes, 3),
                Control.Slider("rear", "Rear friction", changes, 3),
            ],
            selection => Frame(
                vehicle.WithFrictionFactors(FrictionFactors[selection["front"]], FrictionFactors[selection["rear"]]), vehicle.LoadCases[selection["load"]], highest, units, id));
    }

    private static Frame Frame(Vehicle vehicle, LoadCase load, Pressure highest, UnitSystem? units, string id)
    {
        Pressure[] knees = [.. Enumerable.Range(0, 31).Select(i => highest * i / 30)];
        double[] adhesions = [.. Enumerable.Range(0, 23).Select(i => 0.1 + i * 0.05)];
        BalanceModel[] models = [.. knees.Select(knee => new BalanceModel(vehicle.WithRearKnee(knee), load))];
        var cells = models.Select(model => (IReadOnlyList<int>)[.. adhesions.Select(adhesion => RearFirst(model, adhesion) ? 1 : 0)]).ToList();
        int greatest = Enumerable.Range(0, knees.Length).TakeWhile(k => cells[k].All(cell => cell == 0)).Count() - 1;
        var figure = new FigureBuilder(id + "-map", units);
        Pressure present = vehicle.Hydraulics.RearProportioningValve!.Knee;
        string finding = greatest < 0
            ? $"{load.Name}: at every knee the rear locks first somewhere"
            : $"{load.Name}: up to a knee of {figure.Text(Measure.LinePressure, knees[greatest])} the front locks first on every surface";
        figure
            .Title(Finding.Capital(finding))
            .Describe(
                $"Which axle of the {vehicle.Name} locks first, over the adhesion of the road and the valve's knee.",
                "A map of adhesion and knee, parted into front first and rear first.",
                $"{Finding.Capital(finding)}. The line marks the knee as set now, {figure.Text(Measure.LinePressure, present)}.")
            .X("Adhesion", "k", Measure.Number).Y("Knee", "p", Measure.LinePressure)
            .Map("first to lock", adhesions, knees, cells, new Layers.MapClass("front first", Tone.Front), new Layers.MapClass("rear first", Tone.Rear, Hatch.Rising));
        if (present <= highest)
        {
            figure.Level("knee as set now", present.Pascals, Tone.Main, Dash.Dash);
        }

        figure.Table(table => table
            .Column("Adhesion k", Measure.Number, adhesions)
            .Column("Greatest knee shown with the front first", Measure.LinePressure, Enumerable.Range(0, adhesions.Length).Select(column => GreatestSafe(column) is >= 0 and var row ? knees[row].Pascals : (double?)null)));
        var now = new BalanceModel(vehicle, load);
        double[] rearFirst = [.. adhesions.Where(adhesion => RearFirst(now, adhesion))];
        var verdict = rearFirst.Length == 0
            ? new Verdict("As set now the front locks first on every surface shown.", VerdictKind.Good)
            : new Verdict($"As set now the rear locks first on surfaces from {Finding.Rate(rearFirst[0])} to {Finding.Rate(rearFirst[^1])}: the car can spin.", VerdictKind.Caution);
        return new Frame(
            [figure.Build()],
            [
                new Readout("Knee as set now", figure.Text(Measure.LinePressure, present)),
                new Readout("Greatest safe knee here", greatest < 0 ? "none" : figure.Text(Measure.LinePressure, knees[greatest])),
                new Readout("Efficiency at adhesion 0.80", now.FirstLockUp(0.8) is { } lockUp ? Measure.Percent.Text(lockUp.Efficiency, figure.Units) : "no lock-up"),
            ],
            verdict);

        int GreatestSafe(int column) => Enumerable.Range(0, knees.Length).LastOrDefault(row => cells[row][column] == 0, -1);
    }

    private static bool RearFirst(BalanceModel model, double adhesion) =>
        model.TryFirstLockUp(adhesion, out _, out Axle? first, out _) && first == Axle.Rear;
}
