namespace BrakeBalance.Notebooks.Documents;

/// <summary>A file is not a notebook this program can read.</summary>
/// <param name="message">The file and what is wrong with it.</param>
internal sealed class NotebookFormatException(string message) : Exception(message);
