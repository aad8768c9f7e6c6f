namespace BrakeBalance.Measurements;

/// <summary>A line of a log that was left out, or a column that could not be used, with the reason.</summary>
/// <param name="Line">Line in the file, counted from 1; comments and blank lines count.</param>
/// <param name="Reason">What was wrong and what would be accepted.</param>
public sealed record LogProblem(int Line, string Reason)
{
    /// <inheritdoc/>
    public override string ToString() => Invariant.Text($"line {Line}: {Reason}");
}
