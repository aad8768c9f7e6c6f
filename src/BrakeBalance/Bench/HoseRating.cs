namespace BrakeBalance.Bench;

/// <summary>On which side of a hydraulic circuit a class of hose may be used.</summary>
public enum HoseSide
{
    /// <summary>Between pump and users.</summary>
    Pressure,

    /// <summary>Back to the reservoir.</summary>
    Return,
}

/// <summary>What a class and size of hose is made for.</summary>
/// <remarks>
/// Source: each row of <c>data/references/hose-ratings.csv</c> names its own. The marking on the hose itself goes before it.
/// </remarks>
public sealed record HoseRating
{
    private static readonly Lazy<ImmutableArray<HoseRating>> Table = new(Load);

    /// <summary>All rows of the table.</summary>
    public static ImmutableArray<HoseRating> All => Table.Value;

    /// <summary>The class: standard and kind.</summary>
    public required string Class { get; init; }

    /// <summary>Size as a dash number, sixteenths of an inch; empty where the class has one rating for all sizes.</summary>
    public string Dash { get; init; } = "";

    /// <summary>Inner diameter; null where the class has one rating for all sizes.</summary>
    public Length? Bore { get; init; }

    /// <summary>Highest working pressure, gauge; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Pressure WorkingPressure { get; init => field = Require.Positive(value); }

    /// <summary>Smallest radius to which the hose's centre line may be bent; null when not known here.</summary>
    public Length? LeastBendRadius { get; init; }

    /// <summary>Lowest fluid temperature.</summary>
    public Temperature? LeastTemperature { get; init; }

    /// <summary>Highest fluid temperature.</summary>
    public Temperature? GreatestTemperature { get; init; }

    /// <summary>Proof pressure over working pressure [–]; null when not known here.</summary>
    public double? ProofFactor { get; init; }

    /// <summary>Least burst pressure over working pressure [–]; null when not known here.</summary>
    public double? BurstFactor { get; init; }

    /// <summary>On which side it may be used; a pressure hose may also serve as a return.</summary>
    public HoseSide Side { get; init; }

    /// <summary>What the class is, in words.</summary>
    public string Use { get; init; } = "";

    /// <summary>Where the numbers come from.</summary>
    public string Source { get; init; } = "";

    /// <summary>Class and size as one name.</summary>
    public string Name => Dash.Length == 0 ? Class : $"{Class} {Dash}";

    /// <summary>The rating of a class and size.</summary>
    /// <param name="hoseClass">The class, capitals or not.</param>
    /// <param name="dash">The size as a dash number, such as <c>-6</c>; empty for a class with one rating for all sizes.</param>
    /// <returns>The row; null when the table has none.</returns>
    public static HoseRating? Find(string hoseClass, string dash = "") => All.FirstOrDefault(row =>
        string.Equals(row.Class, hoseClass, StringComparison.OrdinalIgnoreCase) && row.Dash == dash);

    private static ImmutableArray<HoseRating> Load() => [.. ReferenceTable.Rows("hose-ratings.csv", row => new HoseRating
    {
        Class = row["class"],
        Dash = row["dash"],
        Bore = row.Number("bore_mm") is { } bore ? Length.FromMillimeters(bore) : null,
        WorkingPressure = Pressure.FromBars(row.Number("working_bar")!.Value),
        LeastBendRadius = row.Number("least_bend_radius_mm") is { } radius ? Length.FromMillimeters(radius) : null,
        LeastTemperature = row.Number("least_C") is { } least ? Temperature.FromDegreesCelsius(least) : null,
        GreatestTemperature = row.Number("greatest_C") is { } greatest ? Temperature.FromDegreesCelsius(greatest) : null,
        ProofFactor = row.Number("proof_factor"),
        BurstFactor = row.Number("burst_factor"),
        Side = row["side"] == "return" ? HoseSide.Return : HoseSide.Pressure,
        Use = row["use"],
        Source = row["source"],
    })];
}
