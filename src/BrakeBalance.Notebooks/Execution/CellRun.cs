namespace BrakeBalance.Notebooks.Execution;

/// <summary>What came of running one cell.</summary>
/// <param name="Outputs">What the cell printed and returned, in order.</param>
/// <param name="Failure">Why the cell failed; null when it ran to its end.</param>
internal sealed record CellRun(IReadOnlyList<CellOutput> Outputs, CellFailure? Failure);

/// <summary>One output of a code cell: the same thing in one or more media types.</summary>
/// <param name="Data">Media type (such as <c>text/html</c>, <c>text/plain</c>) to content.</param>
internal sealed record CellOutput(IReadOnlyDictionary<string, string> Data);

/// <summary>Why a cell failed.</summary>
/// <param name="Message">What went wrong, in words; no stack trace.</param>
/// <param name="Line">The line in the cell, counted from 1; null when unknown.</param>
/// <param name="SourceLine">The text of that line; null when unknown.</param>
internal sealed record CellFailure(string Message, int? Line, string? SourceLine);
