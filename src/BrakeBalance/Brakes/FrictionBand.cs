namespace BrakeBalance.Brakes;

/// <summary>A range of friction coefficient that an edge-code letter stands for: a band, not a value.</summary>
/// <remarks>
/// <para>A band runs from over its low end to its high end. The letters say how a small sample did on a test machine; they do not
/// predict a car's brakes.</para>
/// <para>Source: SAE J866 (2019), table of code letters, seen second hand (tnlab.org summary), kept in
/// data/references/friction-letters.csv; the use of letters to choose pads is common practice.</para>
/// </remarks>
public sealed record FrictionBand
{
    private FrictionBand(char letter, double low, double? high)
    {
        (Letter, Low, High) = (letter, low, high);
    }

    /// <summary>All classified letters, lowest friction first.</summary>
    public static IReadOnlyList<FrictionBand> All { get; } = ReferenceTable.Rows(
        "friction-letters.csv", row => new FrictionBand(row["letter"][0], row.Number("over")!.Value, row.Number("not_over")));

    /// <summary>The code letter.</summary>
    public char Letter { get; }

    /// <summary>Friction must be over this [–].</summary>
    public double Low { get; }

    /// <summary>Friction must not be over this [–]; null for the open-ended letter H.</summary>
    public double? High { get; }

    /// <summary>The band of a letter.</summary>
    /// <param name="letter">C to H, either case.</param>
    /// <returns>The band, or null for Z (unclassified).</returns>
    /// <exception cref="ArgumentOutOfRangeException">The letter is none of C to H and not Z.</exception>
    public static FrictionBand? Of(char letter)
    {
        char upper = char.ToUpperInvariant(letter);
        return upper == 'Z'
            ? null
            : All.FirstOrDefault(band => band.Letter == upper)
                ?? throw new ArgumentOutOfRangeException(nameof(letter), letter,
                    "Must be a friction letter C, D, E, F, G or H, or Z for unclassified.");
    }

    /// <summary>The band in which a friction coefficient lies.</summary>
    /// <param name="friction">Friction coefficient [–]; above zero.</param>
    /// <returns>Its band.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="friction"/> is not above zero.</exception>
    public static FrictionBand For(double friction)
    {
        Require.Positive(friction, nameof(friction));
        return All.First(band => band.Contains(friction));
    }

    /// <summary>Whether a friction coefficient lies in the band.</summary>
    /// <param name="friction">Friction coefficient [–].</param>
    /// <returns>True over the low end and up to the high end.</returns>
    public bool Contains(double friction) => friction > Low && (High is null || friction <= High);
}
