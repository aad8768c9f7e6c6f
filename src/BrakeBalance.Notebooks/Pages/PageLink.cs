namespace BrakeBalance.Notebooks.Pages;

/// <summary>A link to another page.</summary>
/// <param name="FileName">The page's file.</param>
/// <param name="Title">Its title as plain text.</param>
internal sealed record PageLink(string FileName, string Title);
