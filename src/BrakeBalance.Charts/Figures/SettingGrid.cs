namespace BrakeBalance.Charts.Figures;

/// <summary>The outcomes of a sweep as a grid of knees and slopes.</summary>
/// <remarks>A cell reaches from the knee and slope before up to those it was judged at, so that all of it does as well at least.</remarks>
internal sealed class SettingGrid(double[] knees, double[] slopes, SettingOutcome[,] cells)
{
    private readonly SettingOutcome[,] _cells = cells;

    /// <summary>The knees in pascals, rising.</summary>
    public double[] Knees { get; } = knees;

    /// <summary>The slopes, rising.</summary>
    public double[] Slopes { get; } = slopes;

    /// <summary>The middles of the cells along the knees in pascals.</summary>
    public double[] KneeMiddles => Middles(Knees);

    /// <summary>The middles of the cells along the slopes.</summary>
    public double[] SlopeMiddles => Middles(Slopes);

    /// <summary>Sorts outcomes into a grid.</summary>
    public static SettingGrid Of(IReadOnlyList<SettingOutcome> outcomes)
    {
        double[] knees = [.. outcomes.Select(o => o.Knee.Pascals).Distinct().Order()],
            slopes = [.. outcomes.Select(o => o.Slope).Distinct().Order()];
        Refuse.If(knees.Length < 2 || slopes.Length < 2 || knees.Length * slopes.Length != outcomes.Count,
            $"The outcomes must be a full grid of at least two knees and two slopes; "
                + $"they are {outcomes.Count} outcomes at {knees.Length} knees and {slopes.Length} slopes.", nameof(outcomes));

        var cells = new SettingOutcome[slopes.Length, knees.Length];
        foreach (SettingOutcome outcome in outcomes)
        {
            cells[Array.IndexOf(slopes, outcome.Slope), Array.IndexOf(knees, outcome.Knee.Pascals)] = outcome;
        }

        return new(knees, slopes, cells);
    }

    /// <summary>A value for each cell, row by row from the lowest slope: that of its greatest knee and slope.</summary>
    public IReadOnlyList<IReadOnlyList<T>> Rows<T>(Func<SettingOutcome, T> value) =>
        [.. Enumerable.Range(1, Slopes.Length - 1)
            .Select(row => (IReadOnlyList<T>)[.. Enumerable.Range(1, Knees.Length - 1).Select(column => value(_cells[row, column]))])];

    private static double[] Middles(double[] ends) => [.. ends.Zip(ends.Skip(1), (low, high) => 0.5 * (low + high))];

    /// <summary>Whether a setting lies within the grid.</summary>
    public bool Covers(Pressure knee, double slope) =>
        knee.Pascals >= Knees[0] && knee.Pascals <= Knees[^1] && slope >= Slopes[0] && slope <= Slopes[^1];
}
