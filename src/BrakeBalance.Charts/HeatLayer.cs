namespace BrakeBalance.Charts;

internal sealed record HeatLayer : Layer
{
    /// <summary>Abscissae of the cell centres in SI, evenly spaced and rising.</summary>
    public required IReadOnlyList<double> X { get; init; }

    /// <summary>Ordinates of the cell centres in SI, evenly spaced and rising.</summary>
    public required IReadOnlyList<double> Y { get; init; }

    /// <summary>A value for each cell, row by row from the lowest ordinate; null where there is no answer.</summary>
    public required IReadOnlyList<IReadOnlyList<double?>> Values { get; init; }

    public required Measure Measure { get; init; }

    /// <summary>The values at the pale and the dark end of the scale, in SI: the least and the greatest.</summary>
    internal (double Low, double High) Range
    {
        get
        {
            Extent fit = Extent.Of(Values.SelectMany(row => row).OfType<double>()) ?? new Extent(0, 1);
            return fit.High > fit.Low ? (fit.Low, fit.High) : (fit.Low, fit.Low + 1);
        }
    }

    internal override (Extent? X, Extent? Y) Extents => (Cells(X), Cells(Y));

    internal static Extent Cells(IReadOnlyList<double> centres)
    {
        double half = centres.Count > 1 ? (centres[1] - centres[0]) / 2 : 0.5;
        return new Extent(centres[0] - half, centres[^1] + half);
    }
}
