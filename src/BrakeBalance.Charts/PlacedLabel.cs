using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts;

internal sealed record LabelRequest
{
    /// <summary>The place of its layer in the figure.</summary>
    public required int Owner { get; init; }

    /// <summary>Which part of the layer it names: the class of a map; 0 for other layers.</summary>
    public int Part { get; init; }

    public required string Text { get; init; }

    /// <summary>Whether the figure is complete without it, so that it need not stand in the key when there is no room.</summary>
    public bool MayBeLeftOut { get; init; }

    /// <summary>The tone in which it is written.</summary>
    public required Tone Tone { get; init; }

    /// <summary>Whether it must be placed early because it has few places to go.</summary>
    public required int Priority { get; init; }

    /// <summary>The places it may go, for a box of the given width and height; lower cost is better.</summary>
    public required Func<double, double, IEnumerable<(Dot Centre, double Cost)>> Candidates { get; init; }

    /// <summary>What it names, as segments; null where it stands in what it names.</summary>
    public IReadOnlyList<(Dot A, Dot B)>? Mark { get; init; }

    /// <summary>The area it must stay in; null for the plot.</summary>
    public IReadOnlyList<Dot>? Within { get; init; }

    /// <summary>Whether it names an area and is written bold.</summary>
    public bool Bold { get; init; }

    /// <summary>Where it, or its like, stood in the picture before.</summary>
    public IReadOnlyList<Dot> Stood { get; init; } = [];
}

internal sealed record PlacedLabel(int Owner, IReadOnlyList<string> Lines, Tone Tone, bool Bold, Box Box)
{
    /// <summary>The farthest that a label stands from its mark without a line that joins them, in layout units.</summary>
    public const double Reach = 20;

    /// <summary>From where on a label beside its mark, but nearer to another, is joined to it all the same.</summary>
    public const double Beside = 7;

    /// <summary>From where on <see cref="Clutter"/> is no place for a label that may stand in the key.</summary>
    public const double Crowded = 5;

    /// <summary>What it costs that it covers or confuses other marks.</summary>
    public double Clutter { get; init; }

    /// <summary>The line from its edge to its mark; null where it stands beside it.</summary>
    public (Dot From, Dot To)? Leader { get; init; }
}
