using UnitsNet.Units;

namespace BrakeBalance.Charts.Figures;

public static partial class FootFigures
{
    /// <summary>A bore: mm or in.</summary>
    public static Measure Bore { get; } =
        Measure.Of("bore", LengthUnit.Meter, (LengthUnit.Millimeter, "mm", 0.1), (LengthUnit.Inch, "in", 0.01));

    private static readonly MapClass[] ChoiceClasses =
    [
        new("fits", Tone.Ideal),
        new("pedal too long: bore too small", Tone.Front, Hatch.Rising),
        new("pedal too hard: bore too big", Tone.Rear, Hatch.Falling),
        new("too long and too hard", Tone.Guide, Hatch.Crossed),
        new("touchy", Tone.Other, Hatch.Dots),
        new("too hard without assist", Tone.Guide, Hatch.Falling),
        new("no such cylinder", Tone.Guide, Hatch.Dots),
    ];

    /// <summary>Map of bore and pedal ratio: what fits the usual targets, and why the rest does not.</summary>
    /// <param name="model">The car in one load case; it must know its circuits' volumes.</param>
    /// <param name="assistName">Name of the booster in words.</param>
    /// <param name="assist">The booster.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    public static Figure ChoiceMap(
        BalanceModel model, string assistName, Assist.BrakeAssist assist, UnitSystem? units = null, string id = "bore-ratio")
    {
        var wanted = new ControlTargets();
        var figure = new FigureBuilder(id, units, model.Vehicle);
        var present = new ControlForce(model);
        var twin = present.Cylinder as Hydraulics.TwinMasterCylinders;
        int below = twin is null ? 0 : 10;
        double[] bores = [.. Enumerable.Range(0, 40 + below).Select(i => 0.0140 + ((i - below) * 0.0005))];
        double[] ratios = [.. Enumerable.Range(0, 31).Select(i => 2.5 + (i * 0.15))];
        var grid = ControlChoice.Sweep(model, [.. bores.Select(bore => Length.FromMeters(bore))], ratios, assist, wanted);
        int[][] cells = [.. ratios.Select((_, row) => bores.Select((_, column) => ClassOf(grid[(row * bores.Length) + column])).ToArray())];
        ControlChoiceResult[] fitting = [.. grid.Where(choice => choice.Fits)];
        double presentBore = twin?.FrontBore.Meters ?? Math.Sqrt(present.Cylinder.PistonAreas.Front.SquareMeters * 4 / Math.PI);
        double presentRatio = present.Control.Pedal.Lever.RatioAt(Length.Zero);
        string with = assist is PoweredAssist ? $"With {assistName}" : "Without assist";
        string title = fitting.Length == 0
            ? $"{with} no bore and ratio meet every target"
            : $"{with} bores from {figure.Text(Bore, fitting.Min(c => c.Bore.Meters))} "
                + $"to {figure.Text(Bore, fitting.Max(c => c.Bore.Meters))} can fit, each with its own ratios";
        return figure
            .Title(title)
            .Describe(
                $"Bore of the master cylinder against pedal ratio for {model.Vehicle.InText}, {model.LoadCase.Name}: "
                    + "what is neither too hard nor too long, with and without assist.",
                $"Wanted: a deceleration of {Words(wanted.BrakingRate)} g with {figure.Text(Measure.ControlForce, wanted.LeastPedalForce)} "
                    + $"to {figure.Text(Measure.ControlForce, wanted.GreatestPedalForce)}, "
                    + $"{figure.Text(Measure.Travel, wanted.LeastTravelLeft)} left to the floor, and {Words(wanted.FailSafeRate)} g "
                    + $"without assist with at most {figure.Text(Measure.ControlForce, wanted.GreatestFailSafeForce)}. "
                + $"{title}. A small bore or a high ratio makes the pedal long and light, a big bore or a low ratio short and hard. A "
                + $"diamond marks the car as it is: {figure.Text(Bore, presentBore)} and {Words(presentRatio)}.")
            .X(FootExplorables.BoreLabel(model.Vehicle), "d", Bore)
            .Y("Pedal ratio", "i", Measure.Number)
            .Map("choice", bores, ratios, cells, grid.Any(choice => choice.NotPossible is not null) ? ChoiceClasses : ChoiceClasses[..^1])
            .Points("as it is", [presentBore], [presentRatio], Tone.Main, Marker.Diamond, size: 11)
            .Table(table =>
            {
                ControlChoiceResult[] listed = [.. grid.Where((_, i) => i / bores.Length % 5 == 0 && i % bores.Length % 5 == 0)];
                table
                    .Column("Bore", Bore, listed.Select(c => (double?)c.Bore.Meters))
                    .Column("Pedal ratio", Measure.Number, listed.Select(c => (double?)c.PedalRatio))
                    .Column("Pedal force", Measure.ControlForce, listed.Select(c => c.PedalForce?.Newtons))
                    .Column("Travel left", Measure.Travel, listed.Select(c => c.Travel?.LeftToFloor?.Meters))
                    .Column("Pedal force without assist", Measure.ControlForce, listed.Select(c => c.FailSafePedalForce?.Newtons))
                    .Words("Verdict", listed.Select(c => c.Describe()));
            }).Build();
    }

    private static int ClassOf(ControlChoiceResult choice) =>
        choice.NotPossible is not null ? 6
        : choice.Fits ? 0
        : choice.TooLong && (choice.TooHard || choice.TooHardWithoutAssist) ? 3
        : choice.TooLong ? 1
        : choice.TooHard ? 2
        : choice.TooLight ? 4
        : 5;
}
