namespace BrakeBalance.Notebooks.Execution;

/// <summary>What came of running one cell.</summary>
internal sealed record CellRun(IReadOnlyList<CellOutput> Outputs, CellFailure? Failure);

/// <summary>One output of a code cell: the same thing in one or more media types.</summary>
internal sealed record CellOutput(IReadOnlyDictionary<string, string> Data);

/// <summary>Why a cell failed.</summary>
internal sealed record CellFailure(string Message, int? Line, string? SourceLine);
