using BrakeBalance.Choosing;

namespace BrakeBalance.Charts.Figures;

public static partial class FootFigures
{
    // More dots than these say nothing more.
    private const int MostDots = 1500;

    /// <summary>Pedal force against pedal travel of every combination of a search that fits; the best of both as a line.</summary>
    /// <param name="choice">What was asked.</param>
    /// <param name="result">What the search found.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>The figure; null when nothing fits, or travel cannot be told.</returns>
    public static Figure? SearchFront(Choice choice, ChoiceResult result, UnitSystem? units = null)
    {
        ArgumentNullException.ThrowIfNull(choice);
        ArgumentNullException.ThrowIfNull(result);
        static double Force(Proposal set) => set.Values[(int)TargetKind.PedalForceFull];
        static double Travel(Proposal set) => set.Values[(int)TargetKind.PedalTravelFull];
        FoundSet[] fits = [.. result.Fits.Where(set => !double.IsNaN(set.TravelMetres))];
        if (fits.Length == 0 || result.EffortFront.Count == 0)
        {
            return null;
        }

        var figure = new FigureBuilder("effort-travel", units, choice.Car);
        IReadOnlyList<Proposal> front = result.EffortFront;
        FoundSet[] dots = [.. fits.Where((_, i) => i % ((fits.Length / MostDots) + 1) == 0)];
        string from = $"{figure.Text(Measure.ControlForce, Force(front[0]))} and {figure.Text(Measure.Travel, Travel(front[0]))}";
        string to = $"{figure.Text(Measure.ControlForce, Force(front[^1]))} and {figure.Text(Measure.Travel, Travel(front[^1]))}";
        double[] present = [.. ChosenCar.Answers(choice.Car, choice.Targets, null)];
        string title = front.Count == 1 ? $"One set beats all others in force and travel: {from}"
            : $"Less force costs travel: from {from} to {to}";
        figure
            .Title(title)
            .Describe(
                $"Pedal force and pedal travel at 1.00 g of the combinations that meet the targets; {choice.Car.Name}, "
                    + $"{choice.Targets.LoadCaseOf(choice.Car).Name}.",
                $"{title}. Along the line nothing can be had for nothing: a lighter pedal is a longer one. "
                    + "A diamond marks the car as it is.")
            .X("Pedal force at 1.00 g", "", Measure.ControlForce)
            .Y("Pedal travel at 1.00 g", "", Measure.Travel)
            .Points("fits", dots.Select(set => set.EffortNewtons).ToArray(), dots.Select(set => set.TravelMetres).ToArray(), Tone.Guide,
                Marker.Circle, label: "", size: 4)
            .Line("best of both", front.Select(Force).ToArray(), front.Select(Travel).ToArray(), Tone.Main, Dash.Solid, 2.4);
        if (double.IsFinite(present[(int)TargetKind.PedalForceFull]) && double.IsFinite(present[(int)TargetKind.PedalTravelFull]))
        {
            figure.Points("as it is", [present[(int)TargetKind.PedalForceFull]], [present[(int)TargetKind.PedalTravelFull]], Tone.Rear,
                Marker.Diamond, size: 11);
        }

        figure.Points("smallest change", [Force(result.Sets[0])], [Travel(result.Sets[0])], Tone.Ideal, Marker.Ring, size: 12);
        return figure.Table(table => table
            .Column("Pedal force", Measure.ControlForce, front.Select(set => (double?)Force(set)))
            .Column("Pedal travel", Measure.Travel, front.Select(set => (double?)Travel(set)))
            .Words("New parts", front.Select(ChoiceWords.PartsOf))).Build();
    }
}
