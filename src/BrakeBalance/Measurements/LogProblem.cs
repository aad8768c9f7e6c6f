namespace BrakeBalance.Measurements;

/// <summary>A line of a log that was left out, or a column that could not be used, with the reason.</summary>
public sealed record LogProblem
{
    /// <summary>Line in the file, counted from 1; comments and blank lines count.</summary>
    public required int Line { get; init; }

    /// <summary>What was wrong and what would be accepted.</summary>
    public required string Reason { get; init; }

    /// <inheritdoc/>
    public override string ToString() => Invariant.Text($"line {Line}: {Reason}");
}
