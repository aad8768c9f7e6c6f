namespace BrakeBalance.Charts.Figures;

public static partial class BalanceFigures
{
    /// <summary>The same car in two load cases in one picture: two ideal curves, the installed line and the first lock-up on a dry
    /// road.</summary>
    /// <param name="light">The lighter load case, such as driver only.</param>
    /// <param name="laden">The heavier load case.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static Figure LoadCases(BalanceModel light, BalanceModel laden, UnitSystem? units = null)
    {
        const double adhesion = Conditions.DryAdhesion;
        var figure = new FigureBuilder("load-cases", units, light.Vehicle);
        (double front, double rear) = ForceWindow.Of([light, laden], adhesion).Rounded();
        bool sensing = light.Vehicle.Hydraulics.SensesLoad || laden.Vehicle.Hydraulics.SensesLoad;
        BalanceModel[] both = light.LoadCase == laden.LoadCase ? [light] : [light, laden];
        LockUp?[] lockUps = [.. both.Select(model => model.FirstLockUp(adhesion))];
        string finding = string.Join("; ", both.Zip(lockUps, (model, lockUp) => lockUp is null
            ? $"{model.LoadCase.Name}, no axle locks"
            : $"{model.LoadCase.Name}, {Finding.AxleWords(lockUp.First)} at a deceleration of {Finding.Rate(lockUp.At.BrakingRate)} g "
                + $"with a braking efficiency of {Measure.Percent.Text(lockUp.Efficiency, figure.Units)}"));
        figure
            .KeyWhereCrowded()
            .Title(LoadTitle(both, lockUps, adhesion))
            .Describe(
                $"Ideal distribution of {light.Vehicle.InText}, {string.Join(" and ", both.Select(model => model.LoadCase.Name))}, "
                    + $"and what is installed. "
                    + (both.Length == 1 ? "The file has one load case only."
                        : sensing ? "The load moves the ideal curve, and through the valve that feels it the installed line."
                        : "The load moves the ideal curve, the installed line stays."),
                (both.Length == 1 ? "" : "The ideal curve of the heavier load case lies higher, because the rear axle carries more. ")
                    + $"At an adhesion of {Finding.Rate(adhesion)}: {finding}.")
            .X("Front brake force", "T₁", Measure.BrakeForce, 0, front)
            .Y("Rear brake force", "T₂", Measure.BrakeForce, 0, rear);
        AddIdeal(figure, light, front, Tone.Ideal, $"ideal, {light.LoadCase.Name}");
        if (both.Length > 1)
        {
            AddIdeal(figure, laden, front, Tone.Other, $"ideal, {laden.LoadCase.Name}", Dash.DashDot);
        }

        AddInstalled(figure, light, front, sensing ? $"installed, {light.LoadCase.Name}" : "installed");
        if (sensing)
        {
            AddInstalled(figure, laden, front, $"installed, {laden.LoadCase.Name}", Tone.Main, Dash.Dash);
        }

        foreach ((BalanceModel model, LockUp? lockUp) in both.Zip(lockUps))
        {
            if (lockUp is not null)
            {
                figure.Points(
                    $"first lock-up, {model.LoadCase.Name}", [lockUp.At.BrakingForces.Front.Newtons],
                        [lockUp.At.BrakingForces.Rear.Newtons],
                    model == light ? Tone.Ideal : Tone.Other, model == light ? Marker.Circle : Marker.Square,
                    $"{Finding.AxleWord(lockUp)} locks, {model.LoadCase.Name}, {Finding.Bound("z", Math.Round(lockUp.At.BrakingRate, 2))}");
            }
        }

        AddKnees(figure, light, point => (point.BrakingForces.Front.Newtons, point.BrakingForces.Rear.Newtons));
        double[] adhesions = [0.2, 0.4, 0.6, 0.8, 1.0];
        return figure.Table(table =>
        {
            var rows = both.SelectMany(model =>
                adhesions.Select(k => (Name: model.LoadCase.Name, Adhesion: k, LockUp: model.FirstLockUp(k)))).ToList();
            table
                .Words("Load case", rows.Select(row => row.Name))
                .Column("Adhesion k", Measure.Number, rows.Select(row => row.Adhesion).ToArray())
                .Words("Locks first", rows.Select(row => Finding.AxleWord(row.LockUp)))
                .Column("Deceleration z", Measure.InG, rows.Select(row => row.LockUp?.At.BrakingRate))
                .Column("Braking efficiency", Measure.Percent, rows.Select(row => row.LockUp?.Efficiency));
        }).Build();
    }

    private static string LoadTitle(BalanceModel[] both, LockUp?[] lockUps, double adhesion)
    {
        if (lockUps[0] is not { } light || lockUps[^1] is not { } laden)
        {
            return $"At an adhesion of {Finding.Rate(adhesion)} an axle locks in one load case only, if any";
        }

        return light.First == laden.First
            ? $"At an adhesion of {Finding.Rate(adhesion)} {Finding.AxleWords(light.First)} first: at " + string.Join(", ",
                both.Zip(lockUps, (model, lockUp) => $"{Finding.Rate(lockUp!.At.BrakingRate)} g {LoadCase.Listed(model.LoadCase.Name)}"))
            : $"The load changes which axle locks first at an adhesion of {Finding.Rate(adhesion)}: {Finding.AxleWord(light)} "
                + $"{LoadCase.Listed(both[0].LoadCase.Name)}, {Finding.AxleWord(laden)} {LoadCase.Listed(both[1].LoadCase.Name)}";
    }
}
