namespace BrakeBalance.Charts;

/// <summary>Single points, each with a label or an error bar if wanted.</summary>
internal sealed record MarkerLayer : Layer
{
    /// <summary>Abscissae in SI.</summary>
    public required IReadOnlyList<double> X { get; init; }

    /// <summary>Ordinates in SI; as many as <see cref="X"/>.</summary>
    public required IReadOnlyList<double> Y { get; init; }

    public Marker Shape { get; init; }

    /// <summary>Marker size in pixels at page size.</summary>
    public double Size { get; init; } = 8;

    /// <summary>Half the height of each error bar in SI; null for none.</summary>
    public IReadOnlyList<double>? YError { get; init; }

    /// <summary>A label for each point; null for one label (<see cref="Layer.Label"/>) beside the last point.</summary>
    public IReadOnlyList<string>? PointLabels { get; init; }

    internal override (Extent? X, Extent? Y) Extents
    {
        get
        {
            Extent? y = Extent.Of(Y);
            if (YError is { } error)
            {
                y = Extent.Union(y, Extent.Of([.. Y.Zip(error, (v, e) => v - e), .. Y.Zip(error, (v, e) => v + e)]));
            }

            return (Extent.Of(X), y);
        }
    }
}
