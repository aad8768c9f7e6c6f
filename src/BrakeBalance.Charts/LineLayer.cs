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

    /// <summary>Whether each value holds until the next point (steps) instead of being joined to it.</summary>
    public bool Steps { get; init; }

    /// <summary>Where along the line the label would best stand: 0 at its start, 1 at its end; null for wherever there is room.</summary>
    public double? LabelAt { get; init; }

    /// <summary>The points to draw, with the corners of steps put in.</summary>
    internal (IReadOnlyList<double> X, IReadOnlyList<double> Y) Path
    {
        get
        {
            if (!Steps || X.Count < 2)
            {
                return (X, Y);
            }

            List<double> x = [X[0]], y = [Y[0]];
            for (int i = 1; i < X.Count; i++)
            {
                x.AddRange([X[i], X[i]]);
                y.AddRange([Y[i - 1], Y[i]]);
            }

            return (x, y);
        }
    }

    internal override (Extent? X, Extent? Y) Extents => (Extent.Of(X), Extent.Of(Y));
}
