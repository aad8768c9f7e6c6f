namespace BrakeBalance.Measurements;

/// <summary>How often an interval of 90 % held the truth on simulated days.</summary>
/// <param name="Quantity">What was estimated.</param>
/// <param name="Days">How many days.</param>
/// <param name="Held">On how many of them the interval held the truth.</param>
public sealed record IntervalCoverage(string Quantity, int Days, int Held)
{
    /// <summary>Share of the days [–]: 0.9 when intervals are as wide as they should be.</summary>
    public double Share => Held / (double)Days;

    /// <summary>
    /// The posted simulation: random cars that differ from their files, 20 stops a day. Source: this program, as the head of
    /// <c>data/references/interval-coverage.csv</c> says.
    /// </summary>
    public static IReadOnlyList<IntervalCoverage> Posted { get; } = Read();

    private static IReadOnlyList<IntervalCoverage> Read()
    {
        IReadOnlyList<IReadOnlyDictionary<string, string>> blocks = ReferenceTable.Rows("interval-coverage.csv", row => row);
        int Sum(string column) => blocks.Sum(row => (int)row.Number(column)!.Value);
        return [.. blocks[0].Keys.Skip(2).Select(quantity => new IntervalCoverage(quantity, Sum("days"), Sum(quantity)))];
    }
}
