namespace BrakeBalance.Notebooks.Pages;

/// <summary>A heading of a page, for its table of contents.</summary>
/// <param name="Level">1 to 6.</param>
/// <param name="Id">The id of the heading's element.</param>
/// <param name="Html">The heading's content, without links.</param>
internal sealed record PageHeading(int Level, string Id, string Html);
