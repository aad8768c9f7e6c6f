namespace BrakeBalance.Charts.Figures;

public static partial class FootFigures
{
    /// <summary>Stopping distance in each case of failure, in its three parts.</summary>
    /// <param name="outcomes">The outcomes of one load case under the usual conditions, the sound car first.</param>
    /// <param name="car">The car.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>The figure; a case in which nothing brakes has no bar.</returns>
    public static Figure FailureDistances(IReadOnlyList<FailureOutcome> outcomes, Vehicle car, UnitSystem? units = null)
    {
        var asked = new FailureConditions();
        var figure = new FigureBuilder("failures", units, car);
        FailureOutcome worst = outcomes.Where(outcome => outcome.Distance is not null).MaxBy(outcome => outcome.Distance!.Whole.Meters)
            ?? outcomes[0];
        double sound = outcomes[0].Distance?.Whole.Meters ?? 0;
        string title = worst.Distance is { } longest && sound > 0
            ? Invariant.Text($"Worst is \"{worst.Case.Name}\": {figure.Text(Measure.Distance, longest.Whole)} "
                + $"with the driver's reaction, {longest.Whole.Meters / sound:0.0} times the sound car's")
            : "Nothing brakes in any case";
        double[] Part(Func<StoppingDistance, Length> part) =>
            [.. outcomes.Select(outcome => outcome.Distance is { } distance ? part(distance).Meters : 0)];
        return figure
            .Title(title)
            .Describe(
                $"Stopping distance from {figure.Text(Measure.Speed, asked.Speed)} "
                    + $"with at most {figure.Text(Measure.ControlForce, asked.PedalForce)} "
                    + $"on the pedal at an adhesion of {Words(asked.Adhesion)}, no wheel locked. {car.Name}, {outcomes[0].LoadCase}.",
                "The rule for failed circuits and assist counts from the first touch of the pedal. "
                    + string.Join(" ", outcomes.Select(outcome => outcome.Distance is { } distance
                    ? $"{Finding.Capital(outcome.Case.Name)}: {figure.Text(Measure.Distance, distance.Whole)} at a deceleration of "
                        + $"{Words(outcome.RateAtForce)} g."
                    : $"{Finding.Capital(outcome.Case.Name)}: nothing brakes.")))
            .Categories("Case", outcomes.Select(outcome => ShortName(outcome.Case)))
            .Y("Distance", "s", Measure.Distance, 0)
            .StackingBars()
            .Bars("reaction", Part(distance => distance.Reaction), Tone.Guide, Hatch.Dots)
            .Bars("build-up", Part(distance => distance.BuildUp), Tone.Other, Hatch.Rising)
            .Bars("braking", Part(distance => distance.Braking), Tone.Front)
            .Table(table => table
                .Words("Case", outcomes.Select(outcome => outcome.Case.Name))
                .Column("Deceleration", Measure.InG, outcomes.Select(outcome => (double?)outcome.RateAtForce))
                .Words("Bound by", outcomes.Select(outcome => BoundWords(outcome.Bound)))
                .Column("Pedal force", Measure.ControlForce, outcomes.Select(outcome => (double?)outcome.ForceUsed.Newtons))
                .Column("From first touch", Measure.Distance, outcomes.Select(outcome => outcome.Distance?.FromFirstTouch.Meters))
                .Column("With reaction", Measure.Distance, outcomes.Select(outcome => outcome.Distance?.Whole.Meters)))
            .Build();
    }

    internal static string ShortName(FailureCase failure) =>
        failure.LoadSensingLost ? "load sensing"
        : failure.ReserveApplication is { } number ? Invariant.Text($"engine off, {number}")
        : failure.LostCircuit switch
        {
            LostCircuit.Front => failure.AssistLost ? "front/no assist" : "front lost",
            LostCircuit.Rear => failure.AssistLost ? "rear/no assist" : "rear lost",
            LostCircuit.Diagonal => failure.AssistLost ? "diag./no assist" : "diagonal lost",
            LostCircuit.All => "all lost",
            _ => failure.AssistLost ? "no assist" : "sound",
        };

    internal static string BoundWords(RateBound bound) => bound switch
    {
        RateBound.Road => "the road's adhesion",
        RateBound.Travel => "the pedal comes to its end",
        RateBound.Nothing => "nothing is left that brakes",
        _ => "the foot",
    };
}
