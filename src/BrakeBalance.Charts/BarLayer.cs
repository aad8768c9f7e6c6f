namespace BrakeBalance.Charts;

/// <summary>One series of bars over the categories of the x axis.</summary>
internal sealed record BarLayer : Layer
{
    /// <summary>The height of the bar of each category, in SI.</summary>
    public required IReadOnlyList<double> Values { get; init; }

    /// <summary>How the bars are hatched.</summary>
    public Hatch Hatch { get; init; }

    internal override (Extent? X, Extent? Y) Extents => (null, Extent.Union(new Extent(0, 0), Extent.Of(Values)));
}
