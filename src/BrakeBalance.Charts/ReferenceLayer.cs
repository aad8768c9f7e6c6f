namespace BrakeBalance.Charts;

/// <summary>A straight line across the whole plot at one value.</summary>
internal sealed record ReferenceLayer : Layer
{
    /// <summary>Whether the line stands upright at an abscissa; otherwise it lies at an ordinate.</summary>
    public required bool Vertical { get; init; }

    /// <summary>Where it is, in SI of the axis it crosses.</summary>
    public required double Value { get; init; }

    /// <summary>How the line is broken.</summary>
    public Dash Dash { get; init; } = Dash.Dash;

    internal override (Extent? X, Extent? Y) Extents
    {
        get
        {
            var at = new Extent(Value, Value);
            return Vertical ? (at, null) : (null, at);
        }
    }
}
