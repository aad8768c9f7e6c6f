namespace BrakeBalance.Notebooks.Execution;

/// <summary>What came of running one cell.</summary>
/// <param name="Outputs">What the cell printed and returned, in order.</param>
/// <param name="Failure">Why the cell failed; null when it ran to its end.</param>
internal sealed record CellRun(IReadOnlyList<CellOutput> Outputs, CellFailure? Failure);
