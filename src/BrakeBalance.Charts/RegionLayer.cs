namespace BrakeBalance.Charts;

/// <summary>A shaded polygon labelled in words.</summary>
internal sealed record RegionLayer : Layer
{
    /// <summary>Abscissae of the corners in SI.</summary>
    public required IReadOnlyList<double> X { get; init; }

    /// <summary>Ordinates of the corners in SI; as many as <see cref="X"/>.</summary>
    public required IReadOnlyList<double> Y { get; init; }

    /// <summary>How the area is hatched.</summary>
    public Hatch Hatch { get; init; } = Hatch.Rising;

    internal override (Extent? X, Extent? Y) Extents => (null, null);
}
