namespace BrakeBalance.Notebooks.Pages;

/// <summary>What came of writing the pages.</summary>
/// <param name="Files">The files written, pages first.</param>
/// <param name="Problems">What could not be shown as meant, such as an unknown formula command; empty when all is well.</param>
/// <param name="Faults">Pages that could not be made; in their place stands one that says so.</param>
internal sealed record SiteResult(IReadOnlyList<string> Files, IReadOnlyList<PageProblem> Problems, IReadOnlyList<PageFault> Faults);

internal sealed record PageFault(string Page, Exception Fault);
