namespace BrakeBalance.Charts.Figures;

/// <summary>Figures of the balance of a car: each takes what the calculation assembly answers and draws it.</summary>
public static partial class BalanceFigures
{
    /// <summary>The surfaces shown when none are chosen [–].</summary>
    public static IReadOnlyList<double> DefaultAdhesions { get; } = [0.3, 0.8];

    private static readonly double[] RatesShown = [0.2, 0.4, 0.6, 0.8, 1.0, 1.2];

    /// <summary>
    /// Rear against front brake force: ideal curve, lines of equal deceleration, locking limits, installed line with knee.
    /// </summary>
    /// <param name="model">The car in one load case.</param>
    /// <param name="adhesions">Surfaces whose locking limits are shown [–]; null for <see cref="DefaultAdhesions"/>.</param>
    /// <param name="window">How far the axes reach; null to fit.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    public static Figure BrakeForces(
        BalanceModel model, IReadOnlyList<double>? adhesions = null, ForceWindow? window = null, UnitSystem? units = null,
            string id = "brake-forces")
    {
        adhesions ??= DefaultAdhesions;
        var figure = new FigureBuilder(id, units, model.Vehicle);
        double greatestRate = model.GreatestRate(Math.Max(0.9, adhesions.Max()));
        window ??= ForceWindow.Of(model, adhesions);
        (double front, double rear) = window.Rounded();
        string order = Finding.Order(model, window.RateShown(model));
        IReadOnlyList<LockUp?> lockUps = [.. adhesions.Select(model.FirstLockUp)];
        figure
            .Title(Finding.Capital($"{model.LoadCase.Name}: {order}"))
            .Describe(
                $"Rear against front brake force of {model.Vehicle.InText}, {model.LoadCase.Name}. "
                    + "Where the installed line lies above the ideal curve, the rear axle locks first.",
                "The ideal curve rises from the origin, bends over and falls. "
                    + (model.RearKnees().Count > 0 ? "The installed line rises to the knee and runs flatter beyond it; "
                        : "The installed line has no knee; ") + $"{order}. "
                + string.Join(' ', adhesions.Zip(lockUps, (adhesion, lockUp) => Finding.LockUp(lockUp, adhesion))))
            .X("Front brake force", "T₁", Measure.BrakeForce, 0, front)
            .Y("Rear brake force", "T₂", Measure.BrakeForce, 0, rear);
        AddRearFirstRegion(figure, model, front, rear);
        foreach (double rate in RatesShown)
        {
            // On the ideal curve the two forces add up to what the rate asks of the brakes.
            double sum = Sum(model.IdealForces(rate));
            if (sum > 0 && sum < front + rear)
            {
                figure.Line($"deceleration {Finding.Rate(rate)} g", [0, sum], [sum, 0], Tone.Guide, Dash.Dot, 1, Finding.Bound("z", rate),
                    0.7);
            }
        }

        foreach ((int i, double adhesion) in adhesions.Index())
        {
            AddLimits(figure, model, adhesion, front, rear, i == adhesions.Count - 1 ? Dash.Dash : Dash.DashDot);
        }

        AddIdeal(figure, model, front, Tone.Ideal, "ideal distribution");
        AddInstalled(figure, model, front, "installed");
        LockUp[] reached = [.. lockUps.OfType<LockUp>()];
        if (reached.Length > 0)
        {
            figure.Points(
                "first lock-up", reached.Select(l => l.At.BrakingForces.Front).ToArray(), reached.Select(l => l.At.BrakingForces.Rear)
                    .ToArray(), shape: Marker.Ring,
                label: "");
        }

        AddKnees(figure, model, point => (point.BrakingForces.Front.Newtons, point.BrakingForces.Rear.Newtons));
        return figure.Table(table => RateTable(table, model, greatestRate)).Build();
    }

    private static double Sum(PerAxle<Force> forces) => forces.Front.Newtons + forces.Rear.Newtons;

    internal static void AddRearFirstRegion(FigureBuilder figure, BalanceModel model, double front, double rear)
    {
        List<double> x = [], y = [];
        const int Steps = 60;
        for (int i = 0; i <= Steps; i++)
        {
            PerAxle<Force> ideal = model.IdealForces(model.RearLiftOffRate * i / Steps);
            x.Add(ideal.Front.Newtons);
            y.Add(ideal.Rear.Newtons);
            if (ideal.Front.Newtons > front)
            {
                break;
            }
        }

        if (x[^1] < front)
        {
            x.Add(front);
            y.Add(0);
        }

        x.AddRange([Math.Max(front, x[^1]), 0]);
        y.AddRange([rear, rear]);
        figure.Region("rear axle locks first", x.ToArray(), y.ToArray(), Tone.Rear, Hatch.Rising);
    }

    internal static void AddIdeal(FigureBuilder figure, BalanceModel model, double front, Tone tone, string name, Dash dash = Dash.LongDash)
    {
        const int Steps = 100;
        var forces = Enumerable.Range(0, Steps + 1).Select(i => model.IdealForces(model.RearLiftOffRate * i / Steps)).ToList();
        int end = forces.FindIndex(f => f.Front.Newtons > front);
        forces = end < 0 ? forces : forces[..(end + 1)];
        figure.Line(name, forces.Select(f => f.Front).ToArray(), forces.Select(f => f.Rear).ToArray(), tone, dash, 2.2, labelAt: 0.9);
    }

    internal static void AddInstalled(FigureBuilder figure, BalanceModel model, double front, string name, Tone tone = Tone.Main,
        Dash dash = Dash.Solid)
    {
        var points = InstalledLine.Of(model).ToList();
        int end = points.FindIndex(p => p.BrakingForces.Front.Newtons > front * 1.02);
        points = end < 0 ? points : points[..(end + 1)];
        figure.Line(name, points.Select(p => p.BrakingForces.Front).ToArray(), points.Select(p => p.BrakingForces.Rear)
            .ToArray(), tone, dash, 2.8, labelAt: 0.95);
    }

    private static void AddLimits(FigureBuilder figure, BalanceModel model, double adhesion, double front, double rear, Dash dash)
    {
        const int Steps = 12;
        var frontLimit = Enumerable.Range(0, Steps + 1)
            .Select(i => rear * i / Steps)
            .Select(force => (Rear: force, Front: model.FrontForceAtLimit(adhesion, Force.FromNewtons(force))))
            .Where(point => point.Front is not null)
            .ToList();
        string at = Finding.Bound("k", adhesion);
        if (frontLimit.Count > 1)
        {
            figure.Line(
                $"front locks at {at}", frontLimit.Select(p => p.Front!.Value.Newtons).ToArray(), frontLimit.Select(p => p.Rear)
                    .ToArray(), Tone.Front, dash, 1.6);
        }

        double[] along = [.. Enumerable.Range(0, Steps + 1).Select(i => front * i / Steps)];
        figure.Line(
            $"rear locks at {at}", along, along.Select(force => model.RearForceAtLimit(adhesion, Force.FromNewtons(force)).Newtons)
                .ToArray(), Tone.Rear, dash, 1.6);
    }

    private static void AddKnees(FigureBuilder figure, BalanceModel model, Func<BalancePoint, (double X, double Y)> place)
    {
        foreach ((int i, BalancePoint knee) in model.RearKnees().Index())
        {
            (double x, double y) = place(knee);
            figure.Points(
                i == 0 ? "knee" : Invariant.Text($"knee {i + 1}"), [x], [y],
                label: $"knee {SettingWords.Knee(knee.LinePressures.Rear, figure.Units)}");
        }
    }

    /// <summary>The installed and the ideal state at round decelerations.</summary>
    private static void RateTable(TableBuilder table, BalanceModel model, double greatestRate)
    {
        double[] rates = [.. Enumerable.Range(1, 15).Select(i => i * 0.1).Where(rate => rate <= greatestRate + 0.05)];
        BalancePoint?[] at = [.. rates.Select(model.AtRate)];
        PerAxle<Force>[] ideal = [.. rates.Select(model.IdealForces)];
        table
            .Column("Deceleration z", Measure.InG, rates)
            .Column("Front brake force", Measure.BrakeForce, at.Select(p => p?.BrakingForces.Front.Newtons))
            .Column("Rear brake force", Measure.BrakeForce, at.Select(p => p?.BrakingForces.Rear.Newtons))
            .Column("Ideal front brake force", Measure.BrakeForce, ideal.Select(f => f.Front).ToArray())
            .Column("Ideal rear brake force", Measure.BrakeForce, ideal.Select(f => f.Rear).ToArray())
            .Column("Front line pressure", Measure.LinePressure, at.Select(p => p?.LinePressures.Front.Pascals))
            .Column("Rear line pressure", Measure.LinePressure, at.Select(p => p?.LinePressures.Rear.Pascals));
    }
}
