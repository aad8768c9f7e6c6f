namespace BrakeBalance.Charts.Figures;

public static partial class BalanceFigures
{
    /// <summary>Adhesion utilised by each axle against deceleration, with the limit of UN R13-H.</summary>
    /// <param name="curve">The curve of a car in one load case.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    /// <param name="allLines">Whether the lines of UN R13 and FMVSS 135 are drawn as well.</param>
    /// <exception cref="ArgumentException">The curve has no points.</exception>
    public static Figure AdhesionUtilisation(UtilisationCurve curve, UnitSystem? units = null, string id = "adhesion-utilisation",
        bool allLines = false)
    {
        IReadOnlyList<UtilisationPoint> points = curve.Points;
        Refuse.If(points.Count == 0,
            $"The car reaches no deceleration at which adhesion utilisation is judged ({curve.LoadCase.Name}).", nameof(curve));

        double[] rates = [.. points.Select(p => p.BrakingRate)];
        double[] front = [.. points.Select(p => p.Front)], rear = [.. points.Select(p => p.Rear)];
        string order = Order(curve, "the front axle uses more adhesion than the rear", "the rear axle uses more adhesion than the front");
        double top = Math.Min(1.4, Math.Max(1.0, Math.Max(front.Max(), rear.Max())));
        var figure = new FigureBuilder(id, units, curve.Vehicle)
            .Title(Finding.Capital($"{curve.LoadCase.Name}: {order}"))
            .Describe(
                $"Adhesion used by each axle of {curve.Vehicle.InText}, {curve.LoadCase.Name}, engine disconnected. UN R13-H asks for the "
                    + "front curve above the rear one from 0.15 to 0.80 and both below its limit. Informative; no approval.",
                $"Two curves near the line on which adhesion used equals deceleration; {order}. The limit line of UN R13-H runs "
                    + "above from a deceleration of 0.10 to 0.52 g.")
            .X("Deceleration", "z", Measure.InG, 0, 1)
            .Y("Adhesion used", "f", Measure.Number, 0, Math.Ceiling(top * 5) / 5);
        AddRearAboveFront(figure, points);
        figure.Line("f = z", [0, 1], [0, 1], Tone.Guide, Dash.Dot, 1.2, "f\u00a0=\u00a0z");
        AddLimit(figure, "limit of UN R13-H", DistributionRules.UnR13HLine, Dash.LongDash);
        if (allLines)
        {
            AddLimit(figure, "limit of UN R13", DistributionRules.UnR13Line, Dash.DashDot);
            figure.Line(
                "rear limit of FMVSS 135", [0.15, 0.8],
                    [DistributionRules.Fmvss135RearLimit(0.15), DistributionRules.Fmvss135RearLimit(0.8)], Tone.Rear, Dash.Dot,
                1.6);
        }

        return figure
            .Line("front axle", rates, front, Tone.Front, width: 2.6)
            .Line("rear axle", rates, rear, Tone.Rear, Dash.Dash, 2.6)
            .Table(table =>
            {
                UtilisationPoint[] rows = [.. points.Where((_, i) => i % 5 == 0)];
                table
                    .Column("Deceleration z", Measure.InG, rows.Select(p => p.BrakingRate).ToArray())
                    .Column("Adhesion used, front", Measure.Number, rows.Select(p => p.Front).ToArray())
                    .Column("Adhesion used, rear", Measure.Number, rows.Select(p => p.Rear).ToArray())
                    .Column("Limit of UN R13-H", Measure.Number, rows.Select(p => Limit(p.BrakingRate)));
            }).Build();
    }

    /// <summary>Which axle uses more adhesion over the decelerations that the rules judge, in the words given.</summary>
    internal static string Order(UtilisationCurve curve, string front, string rear)
    {
        UtilisationPoint[] judged = [.. curve.Points.Where(p => p.BrakingRate is >= 0.1499 and <= 0.8001)];
        IReadOnlyList<(UtilisationPoint From, UtilisationPoint To)> led = Finding.Runs(judged, point => point.Rear > point.Front);
        return judged.Length == 0 ? "0.15 g is not reached"
            : led.Count == 0 ? $"{front} from {Finding.Rate(judged[0].BrakingRate)} to {Finding.Rate(judged[^1].BrakingRate)} g"
            : $"{rear} from " + string.Join(" and ", led.Select(part =>
                $"{Finding.Rate(part.From.BrakingRate)} to {Finding.Rate(part.To.BrakingRate)} g"));
    }

    private static double? Limit(double rate)
    {
        double limit = DistributionRules.UnR13HLine.GreatestAdhesion(rate);
        return limit is >= AcceptanceLine.LowestAdhesion - 1e-9 and <= AcceptanceLine.HighestAdhesion + 1e-9 ? limit : null;
    }

    private static void AddLimit(FigureBuilder figure, string name, AcceptanceLine line, Dash dash) => figure.Line(
        name,
        [line.LeastRate(AcceptanceLine.LowestAdhesion), line.LeastRate(AcceptanceLine.HighestAdhesion)],
        [AcceptanceLine.LowestAdhesion, AcceptanceLine.HighestAdhesion], Tone.Other, dash, 1.8);

    /// <summary>
    /// The region between the curves wherever the rear curve lies above the front curve in the range that the rule judges.
    /// </summary>
    private static void AddRearAboveFront(FigureBuilder figure, IReadOnlyList<UtilisationPoint> points)
    {
        List<UtilisationPoint> run = [];
        bool named = false;
        foreach (UtilisationPoint point in points.Append(new UtilisationPoint(2, 1, 0)))
        {
            if (point.Rear > point.Front && point.BrakingRate is >= 0.1499 and <= 0.8001)
            {
                run.Add(point);
                continue;
            }

            if (run.Count > 1)
            {
                figure.Region(
                    "rear above front",
                    (double[])[.. run.Select(p => p.BrakingRate), .. run.Select(p => p.BrakingRate).Reverse()],
                    (double[])[.. run.Select(p => p.Rear), .. run.Select(p => p.Front).Reverse()],
                    Tone.Rear, Hatch.Rising, named ? "" : null);
                named = true;
            }

            run = [];
        }
    }
}
