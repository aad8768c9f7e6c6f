namespace BrakeBalance.Notebooks.Pages;

/// <summary>A page ready to be written.</summary>
/// <param name="FileName">The file's name without folder.</param>
/// <param name="Title">The page's title as plain text.</param>
/// <param name="Summary">The first paragraph as HTML without links; empty when there is none.</param>
/// <param name="Html">The whole page.</param>
/// <param name="Problems">What could not be shown as meant; empty when all is well.</param>
internal sealed record RenderedPage(string FileName, string Title, string Summary, string Html, IReadOnlyList<PageProblem> Problems)
{
    /// <summary>Whether the calculation assembly runs in the page.</summary>
    public bool IsLive { get; init; }
}
