namespace BrakeBalance.Charts.Figures;

public static partial class BalanceFigures
{
    /// <summary>Rear against front line pressure, with the knee of each valve and the pressures at first lock-up.</summary>
    /// <param name="model">The car in one load case.</param>
    /// <param name="adhesions">Surfaces whose first lock-up is marked [–]; null for <see cref="DefaultAdhesions"/>.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static Figure LinePressures(BalanceModel model, IReadOnlyList<double>? adhesions = null, UnitSystem? units = null)
    {
        adhesions ??= DefaultAdhesions;
        var figure = new FigureBuilder("line-pressures", units, model.Vehicle);
        IReadOnlyList<BalancePoint> points = InstalledLine.Of(model, InstalledLine.Beyond(model, adhesions));
        IReadOnlyList<BalancePoint> knees = model.RearKnees();
        BalancePoint last = points[^1];
        string share = Measure.Percent.Text(last.LinePressures.Rear / last.LinePressures.Front, figure.Units);
        string title = knees.Count > 0
            ? $"Above a knee of {SettingWords.Knee(knees[0].LinePressures.Rear, figure.Units)} the rear brakes get less of the pressure"
            : IsEven(points) ? $"The rear brakes get {share} of the front pressure all the way"
            : $"No valve holds the rear pressure back: it ends at {share} of the front pressure";
        LockUp[] lockUps = [.. adhesions.Select(model.FirstLockUp).OfType<LockUp>()];
        double top = Math.Max(last.LinePressures.Front.Pascals, last.LinePressures.Rear.Pascals);
        figure
            .Title(title)
            .Describe(
                $"Rear against front line pressure at the brakes, gauge, of {model.Vehicle.InText}, {model.LoadCase.Name}.",
                $"{title}. " + string.Join(' ', lockUps.Select(l =>
                    $"At an adhesion of {Finding.Rate(l.Adhesion)} the first lock-up comes "
                        + $"at {figure.Text(Measure.LinePressure, l.At.LinePressures.Front)} front "
                        + $"and {figure.Text(Measure.LinePressure, l.At.LinePressures.Rear)} rear.")))
            .X("Front line pressure", "p₁", Measure.LinePressure, 0)
            .Y("Rear line pressure", "p₂", Measure.LinePressure, 0)
            .Line("equal pressures", [0, top], [0, top], Tone.Guide, Dash.Dot, 1.4, labelAt: 0.8)
            .Line("installed", points.Select(p => p.LinePressures.Front).ToArray(), points.Select(p => p.LinePressures.Rear)
                .ToArray(), Tone.Main, Dash.Solid, 2.8);
        if (lockUps.Length > 0)
        {
            figure.Points(
                "first lock-up", lockUps.Select(l => l.At.LinePressures.Front).ToArray(), lockUps.Select(l => l.At.LinePressures.Rear)
                    .ToArray(),
                Tone.Other, Marker.Ring,
                    labels: [.. lockUps.Select(l => $"{Finding.AxleWord(l)} locks at {Finding.Bound("k", l.Adhesion)}")]);
        }

        AddKnees(figure, model, point => (point.LinePressures.Front.Pascals, point.LinePressures.Rear.Pascals));
        return figure.Table(table => PressureTable(table, model, last.MasterPressure)).Build();
    }

    /// <summary>Whether the rear gets one share of the front pressure over the whole line.</summary>
    internal static bool IsEven(IReadOnlyList<BalancePoint> points)
    {
        double share = points[^1].LinePressures.Rear / points[^1].LinePressures.Front, top = points[^1].LinePressures.Front.Pascals;
        return points.All(p => Math.Abs(p.LinePressures.Rear.Pascals - share * p.LinePressures.Front.Pascals) < 0.005 * top);
    }

    private static void PressureTable(TableBuilder table, BalanceModel model, Pressure highest)
    {
        BalancePoint[] points = [.. Enumerable.Range(0, 13).Select(i => model.At(highest * (i / 12.0)))];
        table
            .Column("Front line pressure", Measure.LinePressure, points.Select(p => p.LinePressures.Front).ToArray())
            .Column("Rear line pressure", Measure.LinePressure, points.Select(p => p.LinePressures.Rear).ToArray())
            .Column("Deceleration z", Measure.InG, points.Select(p => p.BrakingRate).ToArray());
    }
}
