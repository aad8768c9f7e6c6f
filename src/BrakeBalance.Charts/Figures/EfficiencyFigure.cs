namespace BrakeBalance.Charts.Figures;

public static partial class BalanceFigures
{
    /// <summary>Braking efficiency against adhesion, told apart by the axle that locks first.</summary>
    /// <param name="model">The car in one load case.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <exception cref="ArgumentException">No axle locks on any of the surfaces.</exception>
    public static Figure BrakingEfficiency(BalanceModel model, UnitSystem? units = null)
    {
        double highestAdhesion = Finding.Highest(model.Vehicle);
        LockUp[] lockUps = [.. Finding.Roads(highestAdhesion).Select(model.FirstLockUp).OfType<LockUp>()];
        Refuse.If(lockUps.Length == 0,
            $"No axle of {model.Vehicle.InText} locks up to an adhesion of {highestAdhesion} within the pressure considered.",
            nameof(model));

        var figure = new FigureBuilder("braking-efficiency", units, model.Vehicle);
        LockUp worst = lockUps.MinBy(l => l.Efficiency)!;
        string finding =
            $"the braking efficiency at first lock-up is at least {Measure.Percent.Text(worst.Efficiency, figure.Units)}, least at an "
                + $"adhesion of {Finding.Rate(worst.Adhesion)}";
        bool rearFirst = lockUps.Any(l => l.First == Axle.Rear);
        figure
            .Title(Finding.Capital($"{model.LoadCase.Name}: {finding}"))
            .Describe(
                $"Braking efficiency at the first lock-up of {model.Vehicle.InText}, {model.LoadCase.Name}: "
                    + "braking force used over the braking force the road allows.",
                $"{Finding.Capital(finding)}. " + (rearFirst
                    ? $"The rear axle locks first at {Finding.Adhesions(lockUps, l => l.Adhesion, l => l.First == Axle.Rear)}."
                    : "The front axle locks first on all of these surfaces."))
            .X("Adhesion", "k", Measure.Number, 0, highestAdhesion)
            .Y("Braking efficiency", "", Measure.Percent, 0, 1);
        AddEfficiency(figure, lockUps);
        return figure.Table(table => LockUpTable(table, [.. lockUps.Where((_, i) => i % 10 == 0)])).Build();
    }

    /// <summary>The efficiency line in pieces: one dash pattern for each axle that locks first.</summary>
    private static void AddEfficiency(FigureBuilder figure, IReadOnlyList<LockUp> lockUps)
    {
        var seen = new HashSet<bool>();
        for (int from = 0; from < lockUps.Count;)
        {
            bool rearFirst = lockUps[from].First == Axle.Rear;
            int to = from;
            while (to + 1 < lockUps.Count && lockUps[to + 1].First == Axle.Rear == rearFirst)
            {
                to++;
            }

            // A piece goes on to the first point of the next one, so that the line has no gaps.
            int end = Math.Min(to + 1, lockUps.Count - 1);
            LockUp[] part = [.. lockUps.Skip(from).Take(end - from + 1)];
            (string name, Tone tone, Dash dash) = rearFirst
                ? ("rear locks first", Tone.Rear, Dash.Dash) : ("front locks first", Tone.Front, Dash.Solid);
            figure.Line(name, part.Select(l => l.Adhesion).ToArray(), part.Select(l => l.Efficiency).ToArray(), tone, dash, 2.6,
                seen.Add(rearFirst) ? null : "");
            from = to + 1;
        }
    }

    private static void LockUpTable(TableBuilder table, IReadOnlyList<LockUp> lockUps) => table
        .Column("Adhesion k", Measure.Number, lockUps.Select(l => l.Adhesion).ToArray())
        .Words("Locks first", lockUps.Select(Finding.AxleWord))
        .Column("Deceleration z", Measure.InG, lockUps.Select(l => l.At.BrakingRate).ToArray())
        .Column("Braking efficiency", Measure.Percent, lockUps.Select(l => l.Efficiency).ToArray())
        .Column("Front line pressure", Measure.LinePressure, lockUps.Select(l => l.At.LinePressures.Front).ToArray())
        .Column("Rear line pressure", Measure.LinePressure, lockUps.Select(l => l.At.LinePressures.Rear).ToArray());
}
