namespace BrakeBalance.Charts;

internal sealed record NoteLayer : Layer
{
    /// <summary>Abscissa in SI.</summary>
    public required double X { get; init; }

    /// <summary>Ordinate in SI.</summary>
    public required double Y { get; init; }

    internal override (Extent? X, Extent? Y) Extents => (null, null);
}
