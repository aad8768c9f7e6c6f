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
        double[] adhesions = [.. Enumerable.Range(0, 23).Select(i => 0.1 + i * 0.05)];
        double[] limits = GreatestKnees(vehicle, load, adhesions, highest.Pascals);
        double least = limits.Min();
        Pressure present = vehicle.Hydraulics.RearProportioningValve!.Knee;
        var figure = new FigureBuilder(id + "-map", units);
        string everywhere = least >= highest.Pascals
            ? "the front locks first on every surface at every knee shown"
            : least <= 0 ? "the rear locks first somewhere at every knee" : $"up to a knee of {figure.Text(Measure.LinePressure, least)} the front locks first on every surface";
        figure
            .Title($"{Finding.Capital(load.Name)}: {everywhere}")
            .Describe(
                $"The greatest knee with which the front axle of the {vehicle.Name} locks first, over the adhesion of the road. Above the line the rear locks first.",
                "Greatest safe knee against adhesion; the region above it, where the rear locks first, is shaded.",
                $"{Finding.Capital(load.Name)}: {everywhere}. The level line marks the knee as set now, {figure.Text(Measure.LinePressure, present)}.")
            .X("Adhesion", "k", Measure.Number, adhesions[0], adhesions[^1]).Y("Knee", "p", Measure.LinePressure, 0, highest.Pascals)
            .Region("rear first", [.. adhesions, adhesions[^1], adhesions[0]], [.. limits, highest.Pascals, highest.Pascals], Tone.Rear, Hatch.Rising)
            .Line("greatest safe knee", adhesions, limits, Tone.Front, Dash.Solid, 2.6);
        if (present <= highest)
        {
            figure.Level("knee as set now", present.Pascals, Tone.Main, Dash.Dash);
        }

        int[] listed = [.. Enumerable.Range(0, adhesions.Length).Where(i => i % 2 == 0)];
        figure.Table(table => table
            .Column("Adhesion k", Measure.Number, listed.Select(i => adhesions[i]).ToArray())
            .Column("Greatest knee with the front first, as far as shown", Measure.LinePressure, listed.Select(i => limits[i]).ToArray()));
        var now = new BalanceModel(vehicle, load);
        double[] rearFirst = [.. adhesions.Where(adhesion => RearFirst(now, adhesion))];
        var verdict = rearFirst.Length == 0
            ? new Verdict("As set now the front locks first on every surface shown.", VerdictKind.Good)
            : new Verdict($"As set now the rear locks first on surfaces from {Finding.Rate(rearFirst[0])} to {Finding.Rate(rearFirst[^1])}: the car can spin.", VerdictKind.Caution);
        return new Frame(
            [figure.Build()],
            [
                new Readout("Knee as set now", figure.Text(Measure.LinePressure, present)),
                new Readout("Greatest safe knee here", least >= highest.Pascals ? "above " + figure.Text(Measure.LinePressure, highest) : least <= 0 ? "none" : figure.Text(Measure.LinePressure, least)),
                new Readout("Efficiency at adhesion 0.80", now.FirstLockUp(0.8) is { } lockUp ? Measure.Percent.Text(lockUp.Efficiency, figure.Units) : "no lock-up"),
            ],
            verdict);
    }

    /// <summary>The greatest knee at each adhesion with which the front locks first: by halving, since a higher knee never brakes the rear less.</summary>
    private static double[] GreatestKnees(Vehicle vehicle, LoadCase load, double[] adhesions, double highestPascals)
    {
        const int steps = 128;
        BalanceModel[] models = [.. Enumerable.Range(0, steps + 1).Select(i => new BalanceModel(vehicle.WithRearKnee(Pressure.FromPascals(highestPascals * i / steps)), load))];
        return [.. adhesions.Select(Greatest)];

        double Greatest(double adhesion)
        {
            (int safe, int unsafeStep) = (-1, steps + 1);
            while (unsafeStep - safe > 1)
            {
                int middle = (safe + unsafeStep) / 2;
                (safe, unsafeStep) = RearFirst(models[middle], adhesion) ? (safe, middle) : (middle, unsafeStep);
            }

            return highestPascals * Math.Max(0, safe) / steps;
        }
    }

    private static bool RearFirst(BalanceModel model, double adhesion) =>
        model.TryFirstLockUp(adhesion, out _, out Axle? first, out _) && first == Axle.Rear;
}
