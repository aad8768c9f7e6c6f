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
    public required string From { get; init; }

    /// <summary>Of which kind that is.</summary>
    public required ClearanceKind Kind { get; init; }

    /// <summary>The least distance measured; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public required Length Distance { get; init => field = Require.NotNegative(value); }

    /// <summary>The least distance wanted; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
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
