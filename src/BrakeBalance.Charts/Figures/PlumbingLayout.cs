namespace BrakeBalance.Charts.Figures;

/// <summary>Where the parts and ports of a plumbing diagram stand.</summary>
/// <remarks>
/// Pump, booster and steering gear in a row, oil running to the right; reservoir, coolers, filters and tees above, oil running back to
/// the left.
/// </remarks>
internal sealed class PlumbingLayout
{
    private readonly Dictionary<string, Place> _places = [];

    public PlumbingLayout(PlumbingGraph graph, FigureSize size)
    {
        bool narrow = size.Width < 500;
        Box = narrow ? (84, 46) : (124, 52);
        Font = size.FontSize;
        double left = narrow ? 8 : 24, right = size.Width - left - Box.Width, middle = (left + right) / 2;
        Top = narrow ? 26 : 30;
        Row = size.Height - Box.Height - (narrow ? 54 : 60);
        var taken = new Dictionary<double, int>();
        var above = new List<PlumbingNode>();
        foreach (PlumbingNode node in graph.Nodes)
        {
            double? x = node.Part switch
            {
                PlumbingPart.Pump or PlumbingPart.PumpWithReservoir => left,
                PlumbingPart.Booster => middle,
                PlumbingPart.SteeringGear => right,
                _ => null,
            };
            if (node.Part == PlumbingPart.Reservoir)
            {
                Put(node, left, Top, Box.Height);
            }
            else if (x is { } at)
            {
                // A second part of a kind is wrong, but it is drawn: a little lower.
                int before = taken.GetValueOrDefault(at);
                taken[at] = before + 1;
                bool tall = node.Part == PlumbingPart.PumpWithReservoir && before == 0;
                Put(node, at, tall ? Top : Row + (before * 14), tall ? Row + Box.Height - Top : Box.Height);
            }
            else
            {
                above.Add(node);
            }
        }

        // What lies in the booster's own return (a tee above all) stands left of the booster, the rest between booster and gear; from right
        // to left in the order in which oil reaches it.
        double centre = middle + (Box.Width / 2);
        List<PlumbingNode> own = [.. Ordered(graph, PlumbingPart.Booster, above)];
        List<PlumbingNode> gears = [.. Ordered(graph, PlumbingPart.SteeringGear, above).Except(own)];
        gears.AddRange(above.Except(own).Except(gears));
        Spread(own, left + Box.Width, centre - (narrow ? 12 : 30), narrow);
        Spread(gears, centre, size.Width, narrow);
    }

    public (double Width, double Height) Box { get; }

    public double Font { get; }

    public double Top { get; }

    public double Row { get; }

    public Place Of(PlumbingNode node) => _places[node.Name];

    /// <summary>Whether a level stretch between two points runs through a part.</summary>
    public bool Crosses(double fromX, double toX, double y) =>
        _places.Values.Any(place =>
            place.Y < y && y < place.Y + place.Height && place.X + place.Width > Math.Min(fromX, toX) + 1
            && place.X < Math.Max(fromX, toX) - 1);

    /// <summary>Where a port is, and the direction in which a line leaves it.</summary>
    public (double X, double Y, int Dx, int Dy)? Port(PlumbingGraph graph, string port)
    {
        int at = port.LastIndexOf('.');
        if (at < 0 || graph.Node(port[..at]) is not { } node || !_places.TryGetValue(node.Name, out Place? place))
        {
            return null;
        }

        double x = place.X, y = place.Y, w = place.Width, h = place.Height;
        (double X, double Y, int Dx, int Dy) left = (x, y + (h / 2), -1, 0), right = (x + w, y + (h / 2), 1, 0),
            top = (x + (w / 2), y, 0, -1), bottom = (x + (w / 2), y + h, 0, 1);
        return (node.Part, port[(at + 1)..]) switch
        {
            (PlumbingPart.Reservoir, "outlet") => bottom,
            (PlumbingPart.Reservoir, "return1") => (x + w, y + (h * 0.25), 1, 0),
            (PlumbingPart.Reservoir, _) => (x + w, y + (h * 0.75), 1, 0),
            (PlumbingPart.Pump, "inlet") => top,
            (PlumbingPart.Pump, _) => right,
            (PlumbingPart.PumpWithReservoir, "outlet") => (x + w, y + h - (Box.Height / 2), 1, 0),
            (PlumbingPart.PumpWithReservoir, "return1") => (x + w, y + (Box.Height * 0.25), 1, 0),
            (PlumbingPart.PumpWithReservoir, _) => (x + w, y + (Box.Height * 0.75), 1, 0),
            (PlumbingPart.Booster or PlumbingPart.SteeringGear, "pressure") => left,
            (PlumbingPart.Booster, "gear") => right,
            (PlumbingPart.Booster or PlumbingPart.SteeringGear, _) => top,
            (PlumbingPart.Tee, "run1") => right,
            (PlumbingPart.Tee, "run2") => left,
            (PlumbingPart.Tee, _) => bottom,
            (_, "inlet") => right,
            _ => left,
        };
    }

    private static IEnumerable<PlumbingNode> Ordered(PlumbingGraph graph, PlumbingPart from, IReadOnlyList<PlumbingNode> among)
    {
        string[] names = graph.First(from) is { } part
            ? [.. graph.Follow($"{part.Name}.return").Lines.Select(line => line.To[..Math.Max(0, line.To.LastIndexOf('.'))])] : [];
        return names.Select(name => among.FirstOrDefault(node => node.Name == name)).OfType<PlumbingNode>().Distinct();
    }

    private void Spread(IReadOnlyList<PlumbingNode> nodes, double from, double to, bool narrow)
    {
        double step = (to - from) / Math.Max(1, nodes.Count), gap = narrow ? 30 : 40;
        double width = Math.Max(narrow ? 40 : 60, Math.Min(Box.Width * 0.86, step - (2 * gap)));
        foreach ((int i, PlumbingNode node) in nodes.Index())
        {
            Put(node, to - ((i + 0.5) * step) - (width / 2), Top, Box.Height * 0.86, width);
        }
    }

    private void Put(PlumbingNode node, double x, double y, double height, double? width = null) =>
        _places[node.Name] = new(x, y, width ?? Box.Width, height);

    internal sealed record Place(double X, double Y, double Width, double Height);
}
