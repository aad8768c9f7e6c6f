namespace BrakeBalance.Charts;

/// <summary>A grid of cells that each belong to one named class, such as <c>front first everywhere</c>.</summary>
internal sealed record MapLayer : Layer
{
    /// <summary>Abscissae of the cell centres in SI, evenly spaced and rising.</summary>
    public required IReadOnlyList<double> X { get; init; }

    /// <summary>Ordinates of the cell centres in SI, evenly spaced and rising.</summary>
    public required IReadOnlyList<double> Y { get; init; }

    /// <summary>The class of each cell as its place in <see cref="Classes"/>, row by row from the lowest ordinate.</summary>
    public required IReadOnlyList<IReadOnlyList<int>> Cells { get; init; }

    /// <summary>The classes.</summary>
    public required IReadOnlyList<MapClass> Classes { get; init; }

    internal override (Extent? X, Extent? Y) Extents => (HeatLayer.Cells(X), HeatLayer.Cells(Y));
}

/// <summary>One class of a <see cref="MapLayer"/>.</summary>
/// <param name="Label">What holds there, in words; written into the map.</param>
/// <param name="Tone">Its tone.</param>
/// <param name="Hatch">Its hatch.</param>
public sealed record MapClass(string Label, Tone Tone, Hatch Hatch = Hatch.None);
