namespace BrakeBalance.Bench;

/// <summary>One size of one family of tube or hose ends: thread, cone and what it is confused with.</summary>
/// <remarks>Source: each row of <c>data/references/thread-facts.csv</c> carries a letter that the file's head resolves.</remarks>
public sealed record ThreadFact
{
    private static readonly Lazy<ImmutableArray<ThreadFact>> Table = new(Load);

    private static readonly Length AlikeDiameter = Length.FromMillimeters(0.6);

    /// <summary>All rows of the table.</summary>
    public static ImmutableArray<ThreadFact> All => Table.Value;

    /// <summary>The family, such as "inverted double flare".</summary>
    public required string Family { get; init; }

    /// <summary>The size by which it is asked for.</summary>
    public required string Size { get; init; }

    /// <summary>Outer diameter of the tube; null for a bare port.</summary>
    public Length? Tube { get; init; }

    /// <summary>The thread as it is written.</summary>
    public required string Thread { get; init; }

    /// <summary>Nominal outer diameter of the thread; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length MajorDiameter { get; init => field = Require.Positive(value); }

    /// <summary>Pitch; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length Pitch { get; init => field = Require.Positive(value); }

    /// <summary>Angle of the cone against the axis; null where none is known here.</summary>
    public Angle? Cone { get; init; }

    /// <summary>The standard; empty when none is named.</summary>
    public string Standard { get; init; } = "";

    /// <summary>A remark; may be empty.</summary>
    public string Remark { get; init; } = "";

    /// <summary>Letter of the source in the table's head.</summary>
    public string Source { get; init; } = "";

    /// <summary>Threads on an inch [–].</summary>
    public double ThreadsPerInch => 25.4 / Pitch.Millimeters;

    /// <summary>Rows that hold every word of a text.</summary>
    /// <param name="words">Words separated by blanks, capitals or not; <c>deg</c> and <c>degree</c> stand for °.</param>
    /// <returns>The rows in the table's order; all of them for an empty text.</returns>
    public static ImmutableArray<ThreadFact> Search(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        string[] wanted = [.. words.Replace("degrees", "°", StringComparison.OrdinalIgnoreCase)
            .Replace("degree", "°", StringComparison.OrdinalIgnoreCase).Replace("deg", "°", StringComparison.OrdinalIgnoreCase)
            .Replace(" °", "°", StringComparison.Ordinal).Split(' ', StringSplitOptions.RemoveEmptyEntries)];
        return [.. All.Where(row => wanted.All(word => row.Text.Contains(word, StringComparison.OrdinalIgnoreCase)))];
    }

    /// <summary>Other rows that may be screwed together with this one by mistake.</summary>
    /// <returns>
    /// Rows whose thread is within 0.6 mm in diameter but has another pitch or form, or has the same thread and another family.
    /// </returns>
    public IEnumerable<ThreadLookAlike> LookAlikes() => All
        .Where(other => other != this && (other.Family != Family || other.Thread != Thread)
            && (other.MajorDiameter - MajorDiameter).Abs() <= AlikeDiameter)
        .Select(other => new ThreadLookAlike(other, other.Thread == Thread, Difference(other)))
        .Where(alike => alike.Difference.Length > 0);

    private string Text => string.Join(' ', Family, Size, Thread, Standard, Remark, Cone is { } cone
        ? Invariant.Text($"{cone.Degrees:0}°") : "");

    private string Difference(ThreadFact other)
    {
        if (other.Thread != Thread)
        {
            return Invariant.Text($"{other.MajorDiameter.Millimeters:0.00} mm with {other.ThreadsPerInch:0.#} threads per inch against "
                + $"{MajorDiameter.Millimeters:0.00} mm with {ThreadsPerInch:0.#}");
        }

        return other.Cone is { } there && Cone is { } here && Math.Abs(there.Degrees - here.Degrees) > 0.5
            ? Invariant.Text($"same thread, cone of {there.Degrees:0}° against {here.Degrees:0}°: it screws together and leaks")
            : other.Family != Family && Tube is not null && other.Tube is not null
            ? $"same thread, {other.Family} against {Family}: the seat differs"
            : "";
    }

    private static ImmutableArray<ThreadFact> Load() => [.. ReferenceTable.Rows("thread-facts.csv", row => new ThreadFact
    {
        Family = row["family"],
        Size = row["size"],
        Tube = row.Number("tube_mm") is { } tube ? Length.FromMillimeters(tube) : null,
        Thread = row["thread"],
        MajorDiameter = Length.FromMillimeters(row.Number("major_mm")!.Value),
        Pitch = Length.FromMillimeters(row.Number("pitch_mm")!.Value),
        Cone = row.Number("cone_degrees") is { } cone ? Angle.FromDegrees(cone) : null,
        Standard = row["standard"],
        Remark = row["remark"],
        Source = row["source"],
    })];
}

/// <summary>A thread that may be taken for another.</summary>
/// <param name="Other">The other row.</param>
/// <param name="SameThread">Whether the threads themselves are the same and only the seat differs.</param>
/// <param name="Difference">What differs, in words.</param>
public sealed record ThreadLookAlike(ThreadFact Other, bool SameThread, string Difference);
