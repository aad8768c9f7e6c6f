namespace BrakeBalance.Notebooks.Pages;

/// <summary>What came of writing the pages.</summary>
/// <param name="Files">The files written, pages first.</param>
/// <param name="Problems">What could not be shown as meant, such as an unknown formula command; empty when all is well.</param>
public sealed record SiteResult(IReadOnlyList<string> Files, IReadOnlyList<PageProblem> Problems);
