namespace BrakeBalance.Charts;

internal sealed record LineLayer : Layer
{
    /// <summary>Abscissae in SI.</summary>
    public required IReadOnlyList<double> X { get; init; }

    /// <summary>Ordinates in SI; as many as <see cref="X"/>.</summary>
    public required IReadOnlyList<double> Y { get; init; }

    /// <summary>How the line is broken.</summary>
    public Dash Dash { get; init; }

    /// <summary>Line width in pixels at page size.</summary>
    public double Width { get; init; } = 2;

    /// <summary>Where along the line the label would best stand: 0 at its start, 1 at its end; null for wherever there is room.</summary>
    public double? LabelAt { get; init; }

    internal override (Extent? X, Extent? Y) Extents => (Extent.Of(X), Extent.Of(Y));
}
