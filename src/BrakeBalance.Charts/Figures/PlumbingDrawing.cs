using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts.Figures;

/// <summary>Draws the plumbing of a pump-fed booster, with what is wrong in it marked.</summary>
public static class PlumbingDrawing
{
    private static readonly FigureSize Wide = new() { Name = "wide", Width = 720, Height = 330, ShowTitle = false };

    private static readonly FigureSize Narrow = new() { Name = "narrow", Width = 360, Height = 310, FontSize = 13, ShowTitle = false };

    /// <summary>Draws a plumbing.</summary>
    /// <param name="graph">The plumbing, sound or not.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The drawing's short name.</param>
    /// <returns>The drawing; its lines carry the numbers of its table.</returns>
    public static Drawing Of(PlumbingGraph graph, UnitSystem? units = null, string id = "plumbing")
    {
        ArgumentNullException.ThrowIfNull(graph);
        UnitSystem system = units ?? Display.Units;
        BenchFinding[] wrong = [.. PlumbingCheck.Of(graph).Where(finding => finding.Severity == BenchSeverity.Wrong)];
        BenchFinding[] cautions = [.. PlumbingCheck.Of(graph).Where(finding => finding.Severity == BenchSeverity.Caution)];
        string title = wrong.Length > 0
            ? Invariant.Text($"{wrong.Length} thing{(wrong.Length == 1 ? " is" : "s are")} wrong in this plumbing")
            : cautions.Length > 0 ? "The plumbing works, with cautions"
                : "Pump, booster, steering gear and returns are connected as they should be";
        string findings = string.Join(' ', wrong.Concat(cautions).Select(finding => finding.In(system)));
        return new Drawing(Wide, Narrow, (size, theme) => Draw(id, graph, [.. wrong], size, theme))
        {
            Id = id,
            Title = title,
            Caption = findings.Length > 0
                ? findings : "Full lines carry pump pressure, dashed ones run back to the reservoir, dotted ones feed the pump. "
                    + "Check the real hoses one by one.",
            AltText = $"Diagram of {graph.Nodes.Length.ToString(CultureInfo.InvariantCulture)} parts "
                + $"and {graph.Lines.Length.ToString(CultureInfo.InvariantCulture)} lines; "
                + $"{(wrong.Length > 0 ? "wrong ones crossed" : "none wrong")}.",
            LongDescription = string.Join(' ',
                graph.Lines.Select((line, i) => Invariant.Text($"Line {i + 1} runs from {line.From} to {line.To}.")))
                + (findings.Length > 0 ? " " + findings : ""),
            Table = new TableBuilder(system)
                .Words("Line", graph.Lines.Select((_, i) => (i + 1).ToString(CultureInfo.InvariantCulture)))
                .Words("From", graph.Lines.Select(line => line.From))
                .Words("To", graph.Lines.Select(line => line.To))
                .Column("Bore", Measure.Travel, graph.Lines.Select(line => (double?)line.Bore.Meters))
                .Column("Length", Measure.Distance, graph.Lines.Select(line => (double?)line.Length.Meters))
                .Column("Working pressure", Measure.LinePressure, graph.Lines.Select(line => line.WorkingPressure?.Pascals))
                .Words("Finding", graph.Lines.Select(line =>
                    string.Join(' ', wrong.Concat(cautions).Where(finding => Concerns(finding, line)).Select(finding => finding.In(system))
                    .Select(finding => $"{finding.What} {finding.Why}"))))
                .Build(),
        };
    }

    private static bool Concerns(BenchFinding finding, PlumbingLine line) =>
        finding.Where == line.Name || finding.Where == line.From || finding.Where == line.To;

    private static string Draw(string id, PlumbingGraph graph, IReadOnlyList<BenchFinding> wrong, FigureSize size, Theme theme)
    {
        var layout = new PlumbingLayout(graph, size);
        var svg = new SvgWriter(size.FontSize);
        double lane = layout.Top + layout.Box.Height
            + 14, laneStep = Math.Min(17, (layout.Row - lane - 8) / Math.Max(1, graph.Lines.Length));
        List<((double X, double Y)[] Points, int Number, bool Wrong)> ways = [];
        foreach ((int i, PlumbingLine line) in graph.Lines.Index())
        {
            if (layout.Port(graph, line.From) is not { } from || layout.Port(graph, line.To) is not { } to)
            {
                continue;
            }

            bool bad = wrong.Any(finding => Concerns(finding, line));
            Kind kind = KindOf(graph, line);
            string colour = bad ? theme.Rear : theme.Ink;
            (double X, double Y)[] points =
                Way(layout, from, to, lane + (i * laneStep), (size.Width < 500 ? 9 : 13) + (7 * ((graph.Lines.Length - 1 - i) % 3)));
            string way = "M" + string.Join('L', points.Select(point => SvgWriter.Number(point.X) + " " + SvgWriter.Number(point.Y)));
            svg.Open("g", ("id", $"{id}-{Naming.Slug(line.Name)}-{size.Name}"), ("fill", "none"), ("stroke", colour));
            svg.Empty("path", ("d", way), ("stroke-width", kind == Kind.Pressure ? 3.2 : 2.0), ("stroke-linejoin", "round"),
                ("stroke-dasharray", kind == Kind.Return ? "7 4" : kind == Kind.Suction ? "2 4" : null));
            Arrow(svg, points, colour);
            svg.Close();
            ways.Add((points, i + 1, bad));
        }

        Parts(svg, graph, wrong, layout, theme);
        foreach (((double X, double Y)[] points, int number, bool bad) in ways)
        {
            (double x, double y) = TagAt(points, [.. ways.Where(way => way.Number != number).Select(way => way.Points)]);
            Tag(svg, size, theme, x, y, number.ToString(CultureInfo.InvariantCulture), bad);
        }

        Key(svg, size, theme, ways.Exists(way => way.Wrong));
        return svg.ToString();
    }

    private enum Kind
    {
        Pressure,
        Return,
        Suction,
    }

    private static Kind KindOf(PlumbingGraph graph, PlumbingLine line)
    {
        (string name, string port) = PlumbingGraph.Split(line.From);
        PlumbingPart? part = graph.Node(name)?.Part;
        return part == PlumbingPart.Reservoir ? Kind.Suction
            : part is PlumbingPart.Pump or PlumbingPart.PumpWithReservoir && port == "outlet" ? Kind.Pressure
            : part == PlumbingPart.Booster && port == "gear" ? Kind.Pressure
            : Kind.Return;
    }

    private static (double X, double Y)[] Way(PlumbingLayout layout, (double X, double Y, int Dx, int Dy) from,
        (double X, double Y, int Dx, int Dy) to, double lane, double stub)
    {
        if (Math.Abs(from.Y - to.Y) < 0.5 && from.Dx == -to.Dx && from.Dx * (to.X - from.X) > 0 && !layout.Crosses(from.X, to.X, from.Y))
        {
            return [(from.X, from.Y), (to.X, to.Y)];
        }

        if (Math.Abs(from.X - to.X) < 0.5 && from.Dy == -to.Dy && from.Dy * (to.Y - from.Y) > 0)
        {
            return [(from.X, from.Y), (to.X, to.Y)];
        }

        double between = (from.X + to.X) / 2;
        if (from.Dx == -to.Dx && from.Dx * (to.X - from.X) > 0 && Math.Abs(from.Y - to.Y) < 60 && !layout.Crosses(from.X, between, from.Y)
            && !layout.Crosses(between, to.X, to.Y))
        {
            return [(from.X, from.Y), (between, from.Y), (between, to.Y), (to.X, to.Y)];
        }

        (double X, double Y) start = (from.X + (from.Dx * stub), from.Y + (from.Dy * stub)),
            end = (to.X + (to.Dx * stub), to.Y + (to.Dy * stub));

        // A port that looks up or down joins its lane directly, one that looks sideways by its stub.
        List<(double X, double Y)> points = [(from.X, from.Y)];
        if (from.Dx != 0)
        {
            points.Add(start);
        }

        points.Add((from.Dx != 0 ? start.X : from.X, lane));
        points.Add((to.Dx != 0 ? end.X : to.X, lane));
        if (to.Dx != 0)
        {
            points.Add(end);
        }

        points.Add((to.X, to.Y));
        return [.. points];
    }

    // On the longest stretch, where no other line runs close by.
    private static (double X, double Y) TagAt((double X, double Y)[] points, IReadOnlyList<(double X, double Y)[]> others)
    {
        int longest = Enumerable.Range(0, points.Length - 1)
            .MaxBy(i => Math.Abs(points[i + 1].X - points[i].X) + Math.Abs(points[i + 1].Y - points[i].Y));
        (double X, double Y) from = points[longest], to = points[longest + 1];
        double Room((double X, double Y) at) =>
            others.SelectMany(other => other.Zip(other.Skip(1))).Select(stretch => Distance(at, stretch.First, stretch.Second))
            .DefaultIfEmpty(99).Min();
        IEnumerable<(double X, double Y)> places =
            new[] { 0.5, 0.38, 0.62, 0.26, 0.74 }.Select(part => (from.X + (part * (to.X - from.X)), from.Y + (part * (to.Y - from.Y))));
        return places.FirstOrDefault(at => Room(at) > 12, places.MaxBy(Room));
    }

    private static double Distance((double X, double Y) at, (double X, double Y) a, (double X, double Y) b)
    {
        double dx = at.X - Math.Clamp(at.X, Math.Min(a.X, b.X), Math.Max(a.X, b.X)),
            dy = at.Y - Math.Clamp(at.Y, Math.Min(a.Y, b.Y), Math.Max(a.Y, b.Y));
        return Math.Sqrt((dx * dx) + (dy * dy));
    }

    // A round tag on a line that is right, a filled diamond on one that is wrong: told apart without colour.
    private static void Tag(SvgWriter svg, FigureSize size, Theme theme, double x, double y, string text, bool bad)
    {
        double r = size.FontSize * (bad ? 1.05 : 0.68);
        if (bad)
        {
            svg.Empty("path", ("d", Invariant.Text(
                $"M{x:0.##} {y - r:0.##}L{x + r:0.##} {y:0.##}L{x:0.##} {y + r:0.##}L{x - r:0.##} {y:0.##}Z")), ("fill", theme.Rear),
                ("stroke", theme.Background), ("stroke-width", 1.2));
        }
        else
        {
            svg.Empty("circle", ("cx", x), ("cy", y), ("r", r), ("fill", theme.Background), ("stroke", theme.Ink), ("stroke-width", 1.2));
        }

        svg.Text("text", text, ("x", x), ("y", y + (size.FontSize * 0.33)), ("text-anchor", "middle"), ("font-size", size.FontSize * 0.9),
            ("font-weight", "bold"), ("fill", bad ? theme.Background : theme.Ink));
    }

    private static void Arrow(SvgWriter svg, (double X, double Y)[] points, string colour)
    {
        (double X, double Y) tip = points[^1], before = points[^2];
        double length = Math.Max(1e-9, Math.Sqrt(((tip.X - before.X) * (tip.X - before.X)) + ((tip.Y - before.Y) * (tip.Y - before.Y))));
        double ux = (tip.X - before.X) / length, uy = (tip.Y - before.Y) / length;
        svg.Empty("path", ("d", Invariant.Text($"M{tip.X:0.##} {tip.Y:0.##}L{tip.X - (9 * ux) - (4.5 * uy):0.##} "
            + $"{tip.Y - (9 * uy) + (4.5 * ux):0.##}L{tip.X - (9 * ux) + (4.5 * uy):0.##} {tip.Y - (9 * uy) - (4.5 * ux):0.##}Z")),
            ("fill", colour), ("stroke", "none"));
    }

    private static void Parts(SvgWriter svg, PlumbingGraph graph, IReadOnlyList<BenchFinding> wrong, PlumbingLayout layout, Theme theme)
    {
        foreach (PlumbingNode node in graph.Nodes.DistinctBy(node => node.Name))
        {
            PlumbingLayout.Place place = layout.Of(node);
            bool bad = wrong.Any(finding => finding.Where == node.Name);
            svg.Open("g", ("fill", theme.Ink), ("text-anchor", "middle"));
            svg.Empty("rect", ("x", place.X), ("y", place.Y), ("width", place.Width), ("height", place.Height),
                ("rx", node.Part == PlumbingPart.Tee ? 14.0 : 5.0),
                ("fill", theme.Background), ("stroke", bad ? theme.Rear : theme.Ink), ("stroke-width", bad ? 3.0 : 1.6),
                    ("stroke-dasharray", bad ? "6 3" : null));
            string kind = Words(node.Part);
            string[] lines = string.Equals(kind, node.Name, StringComparison.OrdinalIgnoreCase)
                ? [node.Name] : [node.Name, .. TextMetrics.Wrap(kind, layout.Font * 0.85, place.Width - 8)];
            double y = place.Y + (place.Height / 2) - ((lines.Length - 1) * layout.Font * 0.55) + (layout.Font * 0.35);
            foreach ((int i, string text) in lines.Index())
            {
                svg.Text("text", text, ("x", place.X + (place.Width / 2)), ("y", y + (i * layout.Font * 1.12)),
                    ("font-weight", i == 0 ? "bold" : null), ("font-size", i == 0 ? layout.Font : layout.Font * 0.85),
                    ("fill", i == 0 ? null : theme.Muted));
            }

            svg.Close();
        }
    }

    private static void Key(SvgWriter svg, FigureSize size, Theme theme, bool wrong)
    {
        (string Words, double Width, string? Dash)[] entries = [("pressure", 3.2, null), ("return", 2.0, "7 4"), ("suction", 2.0, "2 4")];
        double x = 10, y = size.Height - 14;
        foreach ((string words, double width, string? dash) in entries)
        {
            svg.Empty("path", ("d", Invariant.Text($"M{x:0.##} {y:0.##}h26")), ("stroke", theme.Ink), ("stroke-width", width),
                ("stroke-dasharray", dash), ("fill", "none"));
            svg.Text("text", words, ("x", x + 32), ("y", y + (size.FontSize * 0.35)), ("fill", theme.Ink),
                ("font-size", size.FontSize * 0.9));
            x += 32 + TextMetrics.Width(words, size.FontSize * 0.9) + (size.Width < 500 ? 11 : 26);
        }

        if (wrong)
        {
            Tag(svg, size, theme, x + 8, y, "", true);
            svg.Text("text", "wrong", ("x", x + 24), ("y", y + (size.FontSize * 0.35)), ("fill", theme.Ink),
                ("font-size", size.FontSize * 0.9));
        }
    }

    private static string Words(PlumbingPart part) => part switch
    {
        PlumbingPart.PumpWithReservoir => "pump with reservoir",
        PlumbingPart.SteeringGear => "steering gear",
        _ => part.ToString().ToLowerInvariant(),
    };
}
