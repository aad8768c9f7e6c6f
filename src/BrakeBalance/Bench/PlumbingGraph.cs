namespace BrakeBalance.Bench;

/// <summary>The parts of a pump-fed booster's plumbing and the lines between them.</summary>
/// <remarks>
/// Wanted: pump → booster → steering gear → return, and the booster's own return free to the reservoir, or joined by a tee with the
/// booster on the straight run and the gear on the branch (common practice, as archived service texts lay it out).
/// <see cref="PlumbingCheck"/> says which connections are wrong and why.
/// </remarks>
public sealed record PlumbingGraph
{
    /// <summary>The parts.</summary>
    public required ImmutableArray<PlumbingNode> Nodes { get; init; }

    /// <summary>The lines.</summary>
    public required ImmutableArray<PlumbingLine> Lines { get; init; }

    /// <summary>Pressure at which the pump's relief valve opens, gauge; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Pressure ReliefPressure { get; init => field = Require.Positive(value); }

    /// <summary>The part of a name.</summary>
    /// <param name="name">The name.</param>
    /// <returns>The part; null when there is none.</returns>
    public PlumbingNode? Node(string name) => Nodes.FirstOrDefault(node => node.Name == name);

    /// <summary>The first part of a kind.</summary>
    /// <param name="part">The kind.</param>
    /// <returns>The part; null when there is none.</returns>
    public PlumbingNode? First(PlumbingPart part) => Nodes.FirstOrDefault(node => node.Part == part);

    /// <summary>The line that leaves a port.</summary>
    /// <param name="port">The port, as <c>part.port</c>.</param>
    /// <returns>The line; null when none leaves there.</returns>
    public PlumbingLine? LineFrom(string port) => Lines.FirstOrDefault(line => line.From == port);

    /// <summary>The way of the oil from an outlet on, part by part.</summary>
    /// <param name="outlet">The port it leaves, as <c>part.port</c>.</param>
    /// <returns>
    /// The lines in their order, and where it ends: at a pump, booster, steering gear or reservoir, in a circle, or at nothing.
    /// </returns>
    public PlumbingPath Follow(string outlet)
    {
        List<PlumbingLine> lines = [];
        HashSet<string> seen = [];
        string port = outlet;
        while (LineFrom(port) is { } line)
        {
            lines.Add(line);
            (string name, string entry) = Split(line.To);
            PlumbingNode? node = Node(name);
            if (node is null || !seen.Add(line.To))
            {
                return new([.. lines], node, entry, node is not null);
            }

            string? onward = node.Part switch
            {
                PlumbingPart.Cooler or PlumbingPart.Filter => "outlet",
                PlumbingPart.Tee => OutletOf(node, entry),
                _ => null,
            };
            if (onward is null)
            {
                return new([.. lines], node, entry, false);
            }

            port = $"{name}.{onward}";
        }

        return new([.. lines], null, "", false);
    }

    internal static (string Node, string Port) Split(string port)
    {
        int at = port.LastIndexOf('.');
        return at < 0 ? (port, "") : (port[..at], port[(at + 1)..]);
    }

    // The port by which oil that enters a tee leaves it; null when it cannot, or when it splits.
    private string? OutletOf(PlumbingNode tee, string entry)
    {
        string[] leaving = [.. PlumbingPort.Of(PlumbingPart.Tee).Select(port => port.Name)
            .Where(name => name != entry && LineFrom($"{tee.Name}.{name}") is not null)];
        return leaving.Length == 1 ? leaving[0] : null;
    }
}

/// <summary>A way of the oil.</summary>
/// <param name="Lines">The lines in their order.</param>
/// <param name="End">The part at which it ends; null when it ends at nothing.</param>
/// <param name="EndPort">The port by which it arrives there.</param>
/// <param name="IsCircle">Whether it comes back to where it has been.</param>
public sealed record PlumbingPath(ImmutableArray<PlumbingLine> Lines, PlumbingNode? End, string EndPort, bool IsCircle)
{
    /// <summary>Whether it ends at a reservoir's return.</summary>
    public bool ReachesReservoir =>
        !IsCircle && End?.Part is PlumbingPart.Reservoir or PlumbingPart.PumpWithReservoir
        && EndPort.StartsWith("return", StringComparison.Ordinal);

    /// <summary>Whether it passes a part.</summary>
    /// <param name="name">Name of the part.</param>
    /// <returns>Whether it does.</returns>
    public bool Passes(string name) => Lines.Any(line => PlumbingGraph.Split(line.To).Node == name);
}
