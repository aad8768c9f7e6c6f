namespace BrakeBalance.Notebooks.Pages;

/// <summary>Takes a problem found while a cell is rendered.</summary>
/// <param name="message">What is wrong, in words.</param>
internal delegate void Report(string message);
