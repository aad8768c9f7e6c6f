namespace BrakeBalance.Charts;

/// <summary>One axis of a figure.</summary>
public sealed record Axis
{
    /// <summary>What the axis shows, in words: <c>Front line pressure</c>.</summary>
    public required string Quantity { get; init; }

    /// <summary>The symbol of the quantity, such as <c>p₁</c>; empty when it has none.</summary>
    public string Symbol { get; init; } = "";

    /// <summary>The measure by which numbers on this axis are shown.</summary>
    public required Measure Measure { get; init; }

    /// <summary>The lower end of the axis, in SI; null to fit the data.</summary>
    public double? Minimum { get; init; }

    /// <summary>The upper end of the axis, in SI; null to fit the data.</summary>
    public double? Maximum { get; init; }

    /// <summary>What the axis reaches at least where it fits the data, in SI, so that figures may share one.</summary>
    internal Extent? Reach { get; init; }

    /// <summary>Names of the places along an axis of categories; null on an axis of numbers.</summary>
    public IReadOnlyList<string>? Categories { get; init; }

    /// <summary>The axis title: quantity, symbol, unit in brackets.</summary>
    /// <param name="units">The system of units.</param>
    /// <returns>Such as <c>Front line pressure p₁ [bar]</c>.</returns>
    public string Title(UnitSystem units)
    {
        string name = Symbol.Length == 0 ? Quantity : $"{Quantity} {Symbol}";
        return Categories is null ? $"{name} {Measure.In(units).Bracketed}" : name;
    }
}
