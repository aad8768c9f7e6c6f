namespace BrakeBalance.Charts.Figures;

/// <summary>Figures and tables that set two set-ups, or the steps of an adjuster, side by side.</summary>
public static class ComparisonFigures
{
    /// <summary>The surfaces compared when none are chosen [–]: ice, snow, wet, damp, dry, track tyres.</summary>
    public static IReadOnlyList<double> DefaultAdhesions => SetUp.Roads;

    private static readonly (Tone Tone, Dash Dash)[] Strokes =
        [(Tone.Main, Dash.Solid), (Tone.Other, Dash.Dash), (Tone.Front, Dash.Dot), (Tone.Ideal, Dash.DashDot), (Tone.Guide, Dash.LongDash),
            (Tone.Main, Dash.Dot)];

    /// <summary>Braking efficiency of two set-ups over adhesion; surfaces on which the rear axle locks first are marked.</summary>
    /// <param name="before">The set-up as it was.</param>
    /// <param name="after">The set-up as it would be.</param>
    /// <param name="adhesions">The surfaces [–]; null for <see cref="DefaultAdhesions"/> and the car's highest.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <exception cref="ArgumentException">No axle locks on any of the surfaces.</exception>
    public static Figure BeforeAfter(
        BalanceModel before, BalanceModel after, IReadOnlyList<double>? adhesions = null, UnitSystem? units = null)
    {
        adhesions ??= before.Vehicle.Conditions.RoadsWith(DefaultAdhesions);
        double[] both = [.. adhesions.Where(k => before.FirstLockUp(k) is not null && after.FirstLockUp(k) is not null)];
        LockUp[] old = Locked(before, both), changed = Locked(after, both);
        Refuse.If(both.Length == 0,
            "No surface locks an axle before and after within the pressure considered, so there is no efficiency to compare.");

        var figure = new FigureBuilder("before-after", units, before.Vehicle);
        double first = old.Average(l => l.Efficiency), second = changed.Average(l => l.Efficiency);
        int rearBefore = old.Count(l => l.First == Axle.Rear), rearAfter = changed.Count(l => l.First == Axle.Rear);
        string share = $"mean efficiency {Percent(first)} before, {Percent(second)} after "
            + $"({before.LoadCase.Name}, adhesion {Finding.Rate(both[0])} to {Finding.Rate(both[^1])})";
        string order = (rearBefore, rearAfter) switch
        {
            (0, 0) => "the front axle locks first before and after",
            ( > 0, 0) => "the change cures the rear axle locking first on these surfaces",
            (0, > 0) => "the change makes the rear axle lock first on some surfaces",
            _ => $"the rear axle locks first on {rearBefore} of the surfaces before and on {rearAfter} after",
        };
        figure
            .Title(Finding.Capital($"{order}; {share}"))
            .Describe(
                $"Braking efficiency at the first lock-up of {before.Vehicle.InText}, before and after the change{Change()}."
                    + (rearBefore + rearAfter == 0 ? "" : " Triangles mark surfaces on which the rear axle locks first: dangerous."),
                $"{Finding.Capital(order)}: {share}.")
            .X("Adhesion", "k", Measure.Number, 0, adhesions.Max())
            .Y("Braking efficiency", "", Measure.Percent, 0, 1)
            .Line("before", old.Select(l => l.Adhesion).ToArray(), old.Select(l => l.Efficiency).ToArray(), Tone.Other, Dash.Dash, 2.2)
            .Line("after", changed.Select(l => l.Adhesion).ToArray(), changed.Select(l => l.Efficiency)
                .ToArray(), Tone.Main, Dash.Solid, 2.8);
        MarkRearFirst(figure, "rear locks first, before", old, Tone.Other);
        MarkRearFirst(figure, "rear locks first, after", changed, Tone.Rear);
        return figure.Table(Table(before, after, adhesions, figure.Units)).Build();

        string Percent(double efficiency) => Measure.Percent.Text(efficiency, figure.Units);

        string Change()
        {
            (BrakeHydraulics was, BrakeHydraulics now) = (before.Vehicle.Hydraulics, after.Vehicle.Hydraulics);
            (Pressure? old, Pressure? set) = (was.RearProportioningValve?.Knee, now.RearProportioningValve?.Knee);
            return set is { } knee && old?.Pascals != knee.Pascals
                ? $": knee {(old is { } own ? SettingWords.Knee(own, figure.Units) : "none")} before, "
                    + $"{SettingWords.Number(knee, figure.Units)} after"
                : (was.Split, now.Split) is (BalanceBarSplit bar, BalanceBarSplit moved) && bar.FrontForceShare != moved.FrontForceShare
                    ? Invariant.Text($": bar {100 * bar.FrontForceShare:0.0} % front before, {100 * moved.FrontForceShare:0.0} % after")
                    : "";
        }
    }

    /// <summary>Braking efficiency of several set-ups over adhesion; surfaces on which the rear axle locks first are marked.</summary>
    /// <param name="setUps">The set-ups, each with its name; at most six can be told apart.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="settings">The answers of the set-ups, so that those beyond their safe limit are named; null for none.</param>
    /// <returns>The figure; null when a set-up locks no axle on any of the surfaces.</returns>
    public static Figure? SetUps(
        IReadOnlyList<(string Name, BalanceModel Model)> setUps, UnitSystem? units = null, IReadOnlyList<Setting>? settings = null)
    {
        ArgumentNullException.ThrowIfNull(setUps);
        IReadOnlyList<double> adhesions = RoadsOf(setUps);
        LockUp[][] locks = [.. setUps.Select(setUp => Locked(setUp.Model, adhesions))];
        if (locks.Any(one => one.Length == 0))
        {
            return null;
        }

        string[] rear = [.. setUps.Where((_, i) => locks[i].Any(at => at.First == Axle.Rear)).Select(setUp => setUp.Name)];
        string finding = rear.Length == 0
            ? "By the files' own numbers no set-up locks the rear first on these surfaces"
            : $"The rear locks first somewhere with {string.Join(", ", rear)}";
        string beyond = Beyond(setUps, settings);
        FigureBuilder figure = new FigureBuilder("set-ups", units, RangesOf(setUps))
            .Title(finding)
            .Describe(
                $"Braking efficiency at the first lock-up, {setUps[0].Model.LoadCase.Name}, standing still, nominal friction. "
                + $"Triangles: the rear axle locks first, dangerous.{beyond}",
                $"{finding}.{beyond}")
            .X("Adhesion", "k", Measure.Number, 0, adhesions[^1])
            .Y("Braking efficiency", "", Measure.Percent, 0, 1);
        for (int i = 0; i < setUps.Count; i++)
        {
            (Tone tone, Dash dash) = Strokes[i % Strokes.Length];
            figure.Line(setUps[i].Name, locks[i].Select(at => at.Adhesion).ToArray(), locks[i].Select(at => at.Efficiency).ToArray(),
                tone, dash, 2.4);
            MarkRearFirst(figure, $"rear locks first, {setUps[i].Name}", locks[i], Tone.Rear);
        }

        return figure.Table(table => EachOver(table.Column("Adhesion k", Measure.Number, adhesions.ToArray()), adhesions, setUps,
            "Braking efficiency", Measure.Percent, (model, adhesion) => model.FirstLockUp(adhesion)?.Efficiency)).Build();
    }

    /// <summary>Rear against front braking force of several set-ups, over the ideal curve of the first.</summary>
    /// <param name="setUps">The set-ups, each with its name; at most six can be told apart.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="settings">The answers of the set-ups, so that those beyond their safe limit are named; null for none.</param>
    public static Figure Forces(
        IReadOnlyList<(string Name, BalanceModel Model)> setUps, UnitSystem? units = null, IReadOnlyList<Setting>? settings = null)
    {
        ArgumentNullException.ThrowIfNull(setUps);
        var figure = new FigureBuilder("set-ups-forces", units, RangesOf(setUps));
        (double front, double rear) = ForceWindow.Of([.. setUps.Select(setUp => setUp.Model)], 0.9).Rounded();
        BalanceModel first = setUps[0].Model;
        string[] above = [.. setUps.Where(setUp => Locked(setUp.Model, RoadsOf(setUps)).Any(at => at.First == Axle.Rear))
            .Select(setUp => setUp.Name)];
        string finding = above.Length == 0 ? "By the files' own numbers every set-up keeps the front first on these surfaces"
            : $"Rear first somewhere: {string.Join(", ", above)}";
        figure
            .Title(finding)
            .Describe(
                $"Rear against front brake force, {first.LoadCase.Name}. The ideal curve is that of \"{setUps[0].Name}\"; above it the "
                    + "rear axle locks first. With another mass or height the curve is another one. Nominal friction."
                    + Beyond(setUps, settings),
                $"{finding}. A line that lies higher brakes more at the rear.")
            .X("Front brake force", "T₁", Measure.BrakeForce, 0, front)
            .Y("Rear brake force", "T₂", Measure.BrakeForce, 0, rear);
        BalanceFigures.AddRearFirstRegion(figure, first, front, rear);
        BalanceFigures.AddIdeal(figure, first, front, Tone.Ideal, "ideal distribution");
        foreach ((int i, (string name, BalanceModel model)) in setUps.Index())
        {
            (Tone tone, Dash dash) = Strokes[i % Strokes.Length];
            BalanceFigures.AddInstalled(figure, model, front, name, tone, dash);
        }

        return figure.Table(table => Rates(table, setUps, "Rear brake force", Measure.BrakeForce,
            (model, rate) => model.AtRate(rate)?.BrakingForces.Rear.Newtons)).Build();
    }

    // As far as the car goes that is asked to hold on the grippiest road.
    private static IReadOnlyList<double> RoadsOf(IReadOnlyList<(string Name, BalanceModel Model)> setUps) =>
        setUps.Select(setUp => setUp.Model.Vehicle.Conditions).MaxBy(asked => asked.HighestAdhesion)!.RoadsWith(DefaultAdhesions);

    private static Vehicle? RangesOf(IReadOnlyList<(string Name, BalanceModel Model)> setUps) =>
        setUps.Select(setUp => setUp.Model.Vehicle).FirstOrDefault(car => car.Uncertainty is not null);

    /// <summary>Pedal force of several set-ups over deceleration.</summary>
    /// <param name="setUps">The set-ups, each with its name; at most six can be told apart.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>The figure; null unless every file says what lies between foot and line pressure.</returns>
    public static Figure? Effort(
        IReadOnlyList<(string Name, BalanceModel Model)> setUps, UnitSystem? units = null)
    {
        ArgumentNullException.ThrowIfNull(setUps);
        if (setUps.Any(setUp => setUp.Model.Vehicle.Control is null))
        {
            return null;
        }

        var figure = new FigureBuilder("set-ups-effort", units, RangesOf(setUps));
        (string Name, ControlForce Foot)[] feet = [.. setUps.Select(setUp => (setUp.Name, new ControlForce(setUp.Model)))];
        (string Name, Force Force)[] hard = [.. feet.Select(foot => (foot.Name, foot.Foot.AtRate(FootFigures.HardStop)?.PedalForce))
            .Where(pair => pair.PedalForce is not null).Select(pair => (pair.Name, pair.PedalForce!.Value))];
        string rate = Finding.Rate(FootFigures.HardStop);
        string finding = hard.Length < feet.Length ? $"Not every set-up reaches a deceleration of {rate} g"
            : $"{rate} g takes {figure.Text(Measure.ControlForce, hard.MinBy(one => one.Force).Force)} with "
                + $"{hard.MinBy(one => one.Force).Name}, {figure.Text(Measure.ControlForce, hard.MaxBy(one => one.Force).Force)} with "
                + hard.MaxBy(one => one.Force).Name;
        figure
            .Title(finding)
            .Describe(
                $"Pedal force against deceleration, {setUps[0].Model.LoadCase.Name}. Where a line turns steep, its assist has run out.",
                finding + ". " + string.Join(' ', hard.Select(one =>
                    $"{Finding.Capital(one.Name)}: {figure.Text(Measure.ControlForce, one.Force)} for {rate} g.")))
            .X("Deceleration", "z", Measure.InG, 0, 1)
            .Y("Pedal force", "F", Measure.ControlForce, 0);
        double[] rates = [.. Enumerable.Range(1, 100).Select(i => i / 100.0)];
        foreach ((int i, (string name, ControlForce foot)) in feet.Index())
        {
            FootFigures.AddEffort(figure, name, foot, [.. rates.Where(z => setUps[i].Model.AtRate(z) is not null)],
                Strokes[i % Strokes.Length], double.PositiveInfinity, labelAt: 0.95 - (0.11 * i));
        }

        return figure.Table(table => Rates(table, setUps, "Pedal force", Measure.ControlForce,
            (model, z) => new ControlForce(model).AtRate(z)?.PedalForce.Newtons)).Build();
    }

    private static string Beyond(IReadOnlyList<(string Name, BalanceModel Model)> setUps, IReadOnlyList<Setting>? settings) =>
        setUps.Zip(settings ?? []).Where(pair => pair.Second.StandsBeyond).Select(pair => pair.First.Name).ToArray()
            is { Length: > 0 } of
            ? $" Beyond what is safe, so that the rear can lock first in other conditions: {string.Join(", ", of)}." : "";

    private static void Rates(TableBuilder table, IReadOnlyList<(string Name, BalanceModel Model)> setUps, string what, Measure measure,
        Func<BalanceModel, double, double?> at)
    {
        double[] rates = [.. Enumerable.Range(1, 10).Select(i => i / 10.0)];
        EachOver(table.Column("Deceleration z", Measure.InG, rates), rates, setUps, what, measure, at);
    }

    private static void EachOver(TableBuilder table, IReadOnlyList<double> steps, IReadOnlyList<(string Name, BalanceModel Model)> setUps,
        string what, Measure measure, Func<BalanceModel, double, double?> at)
    {
        foreach ((string name, BalanceModel model) in setUps)
        {
            table.Column($"{what}, {name}", measure, steps.Select(step => at(model, step)));
        }
    }

    private static LockUp[] Locked(BalanceModel model, IReadOnlyList<double> adhesions) =>
        [.. adhesions.Select(model.FirstLockUp).OfType<LockUp>()];

    private static void MarkRearFirst(FigureBuilder figure, string name, LockUp[] lockUps, Tone tone)
    {
        LockUp[] rear = [.. lockUps.Where(l => l.First == Axle.Rear)];
        if (rear.Length > 0)
        {
            figure.Points(name, rear.Select(l => l.Adhesion).ToArray(), rear.Select(l => l.Efficiency)
                .ToArray(), tone, Marker.Triangle, size: 10);
        }
    }

    private static FigureTable Table(BalanceModel before, BalanceModel after, IReadOnlyList<double> adhesions, UnitSystem units)
    {
        LockUp?[] old = [.. adhesions.Select(before.FirstLockUp)], changed = [.. adhesions.Select(after.FirstLockUp)];
        return new TableBuilder(units)
            .Column("Adhesion k", Measure.Number, adhesions.ToArray())
            .Words("Locks first, before", old.Select(Finding.AxleWord))
            .Words("Locks first, after", changed.Select(Finding.AxleWord))
            .Column("Deceleration z, before", Measure.InG, old.Select(l => l?.At.BrakingRate))
            .Column("Deceleration z, after", Measure.InG, changed.Select(l => l?.At.BrakingRate))
            .Column("Change in deceleration", Measure.InG, old.Zip(changed, (a, b) => b?.At.BrakingRate - a?.At.BrakingRate))
            .Column("Front line pressure, before", Measure.LinePressure, old.Select(l => l?.At.LinePressures.Front.Pascals))
            .Column("Front line pressure, after", Measure.LinePressure, changed.Select(l => l?.At.LinePressures.Front.Pascals))
            .Column("Rear line pressure, before", Measure.LinePressure, old.Select(l => l?.At.LinePressures.Rear.Pascals))
            .Column("Rear line pressure, after", Measure.LinePressure, changed.Select(l => l?.At.LinePressures.Rear.Pascals))
            .Build();
    }
}
