namespace BrakeBalance.Notebooks.Pages;

/// <summary>Takes a problem found while a cell is rendered.</summary>
internal delegate void Report(string message);
