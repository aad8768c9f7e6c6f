namespace BrakeBalance.Charts;

/// <summary>A band between two lines over the same abscissae: spread or uncertainty.</summary>
internal sealed record BandLayer : Layer
{
    /// <summary>Abscissae in SI, rising.</summary>
    public required IReadOnlyList<double> X { get; init; }

    /// <summary>The lower edge in SI.</summary>
    public required IReadOnlyList<double> Lower { get; init; }

    /// <summary>The upper edge in SI.</summary>
    public required IReadOnlyList<double> Upper { get; init; }

    internal override (Extent? X, Extent? Y) Extents => (Extent.Of(X), Extent.Union(Extent.Of(Lower), Extent.Of(Upper)));
}
