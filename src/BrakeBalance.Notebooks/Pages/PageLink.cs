namespace BrakeBalance.Notebooks.Pages;

internal sealed record PageLink(string FileName, string Title);
