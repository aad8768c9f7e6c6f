namespace BrakeBalance.Rules;

/// <summary>One rule on the distance of a stop, as data.</summary>
/// <remarks>
/// S ≤ a V + b V², or one distance at one speed. Source: see each rule; all in <c>data/references/effectiveness-rules.csv</c>.
/// </remarks>
internal sealed record EffectivenessRule
{
    private static readonly Lazy<IReadOnlyList<EffectivenessRule>> Table =
        new(() => ReferenceTable.Rows("effectiveness-rules.csv", row => new EffectivenessRule
        {
            Id = row["rule"],
            Section = row["section"],
            Title = row["title"],
            Source = row["source"],
            _linear = row.Number("a_m_per_kmh"),
            _square = row.Number("b_m_per_kmh2"),
            _fixedMetres = row.Number("distance_m"),
            TestSpeed = row.Number("speed_kmh") is { } speed ? Speed.FromKilometersPerHour(speed) : null,
            LeastPedalForce = Force.FromNewtons(row.Number("least_force_N")!.Value),
            GreatestPedalForce = Force.FromNewtons(row.Number("greatest_force_N")!.Value),
            Cases = row["cases"] == "not computed" ? [] : row["cases"].Split(' '),
            GrossWeightOnly = row["loads"] == "gross",
        }));

    private double? _linear;
    private double? _square;
    private double? _fixedMetres;

    private EffectivenessRule()
    {
    }

    /// <summary>All rules of the table.</summary>
    public static IReadOnlyList<EffectivenessRule> All => Table.Value;

    /// <summary>Short name, stable for scripts.</summary>
    public string Id { get; private init; } = string.Empty;

    /// <summary>Regulation and section.</summary>
    public string Section { get; private init; } = string.Empty;

    /// <summary>What is tested.</summary>
    public string Title { get; private init; } = string.Empty;

    /// <summary>How the numbers were obtained.</summary>
    public string Source { get; private init; } = string.Empty;

    /// <summary>Speed of the test; null when it depends on the car's top speed.</summary>
    public Speed? TestSpeed { get; private init; }

    /// <summary>Least pedal force of the test.</summary>
    public Force LeastPedalForce { get; private init; }

    /// <summary>Greatest pedal force of the test.</summary>
    public Force GreatestPedalForce { get; private init; }

    /// <summary>Failure cases that it looks at, by their short names; empty when no model of that failure exists here.</summary>
    public IReadOnlyList<string> Cases { get; private init; } = [];

    /// <summary>True when only the heaviest state of load is tested.</summary>
    public bool GrossWeightOnly { get; private init; }

    /// <summary>Whether it looks at a failure in a state of load.</summary>
    /// <param name="failure">The failure's short name.</param>
    /// <param name="isHeaviest">Whether it is the heaviest state of load.</param>
    public bool LooksAt(string failure, bool isHeaviest) => Cases.Contains(failure) && (!GrossWeightOnly || isHeaviest);

    /// <summary>Longest distance allowed, from the first touch of the pedal.</summary>
    /// <param name="speed">Speed at the start of the stop; above zero.</param>
    /// <returns>The distance; null when the rule gives one distance only and <paramref name="speed"/> is not its test speed.</returns>
    public Length? LongestDistance(Speed speed)
    {
        double v = speed.KilometersPerHour;
        return _linear is { } a && _square is { } b ? Length.FromMeters((a * v) + (b * v * v))
            : _fixedMetres is { } metres && TestSpeed is { } test && Math.Abs(v - test.KilometersPerHour) < 0.01 ? Length.FromMeters(metres)
            : null;
    }

    /// <summary>Mean fully developed deceleration that the rule's square term stands for: 1/(25.92 b).</summary>
    /// <returns>The deceleration; null for a rule of one distance.</returns>
    public Acceleration? ImpliedDeceleration => _square is { } b ? Acceleration.FromMetersPerSecondSquared(1 / (25.92 * b)) : null;
}
