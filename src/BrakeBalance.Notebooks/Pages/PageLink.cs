namespace BrakeBalance.Notebooks.Pages;

/// <summary>A link to another page.</summary>
internal sealed record PageLink(string FileName, string Title);
