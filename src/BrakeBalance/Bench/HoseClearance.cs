namespace BrakeBalance.Bench;

/// <summary>What a hose has to keep away from.</summary>
public enum ClearanceKind
{
    /// <summary>Exhaust, turbocharger, brake disc: radiated heat.</summary>
    Heat,

    /// <summary>Parts that move towards the hose: wheels, links, shafts, pulleys.</summary>
    Moving,

    /// <summary>Edges and brackets it could rub on.</summary>
    Edge,
}

/// <summary>
/// A measured distance between a hose and something that could harm it, at the worst position of suspension, steering and engine.
/// </summary>
/// <remarks>Wanted distances: 100 mm to unshielded exhaust heat, 25 mm to moving parts, 10 mm to edges (common practice).</remarks>
public sealed record HoseClearance
{
    /// <summary>What it is kept away from, in words.</summary>
    [Field("What the hose is kept away from", Required = true, Example = "exhaust manifold")]
    public required string From { get; init; }

    /// <summary>Of which kind that is.</summary>
    [Field("What would harm the hose there: heat, a moving part or an edge", Required = true, Example = "heat",
        HowToMeasure = "Look: what would harm the hose there")]
    public required ClearanceKind Kind { get; init; }

    /// <summary>The least distance measured; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    [Field("Least distance at the worst position", Required = true, Low = "0 mm", High = "2 m", Example = "110 mm",
        HowToMeasure = "Rule, suspension and steering moved through, engine rocked")]
    public required Length Distance { get; init => field = Require.NotNegative(value); }

    /// <summary>The least distance wanted; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    [Field("Distance wanted; 100 mm from heat, 25 mm from moving parts, 10 mm from edges when left out", Low = "0 mm", High = "2 m",
        Example = "100 mm", HowToMeasure = "Chosen: the service manual's distance, if it says one")]
    public Length? Wanted { get; init => field = value is { } wanted ? Require.NotNegative(wanted) : null; }

    /// <summary>The distance it is judged by: the one wanted, or what is usual for its kind.</summary>
    public Length Least => Wanted ?? Usual(Kind);

    /// <summary>Whether there is enough room.</summary>
    public bool Holds => Distance >= Least;

    /// <summary>The distance usually kept (common practice).</summary>
    /// <param name="kind">What is kept away from.</param>
    public static Length Usual(ClearanceKind kind) => Length.FromMillimeters(kind switch
    {
        ClearanceKind.Heat => 100,
        ClearanceKind.Moving => 25,
        _ => 10,
    });
}
