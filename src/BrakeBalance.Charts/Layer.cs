namespace BrakeBalance.Charts;

/// <summary>Something drawn in the plot area of a figure; numbers in SI.</summary>
public abstract record Layer
{
    /// <summary>What it is, in words; names the group in the SVG and the trace in the chart.</summary>
    public required string Name { get; init; }

    /// <summary>The text written beside it; null to use <see cref="Name"/>, empty for none.</summary>
    public string? Label { get; init; }

    /// <summary>What it stands for; decides the colour.</summary>
    public Tone Tone { get; init; } = Tone.Main;

    /// <summary>The text to write beside it; empty for none.</summary>
    internal string LabelText => Label ?? Name;

    /// <summary>The smallest box around the layer; a null extent does not count when axes fit themselves.</summary>
    internal abstract (Extent? X, Extent? Y) Extents { get; }
}

/// <summary>The range from the least to the greatest of some numbers.</summary>
internal readonly record struct Extent(double Low, double High)
{
    /// <summary>The extent of some numbers; null when there are none.</summary>
    public static Extent? Of(params IEnumerable<double> values)
    {
        Extent? result = null;
        foreach (double value in values)
        {
            result = result is { } r ? new Extent(Math.Min(r.Low, value), Math.Max(r.High, value)) : new Extent(value, value);
        }

        return result;
    }

    /// <summary>The extent of two extents together.</summary>
    public static Extent? Union(Extent? a, Extent? b) =>
        a is not { } x ? b : b is not { } y ? a : new Extent(Math.Min(x.Low, y.Low), Math.Max(x.High, y.High));
}
