namespace BrakeBalance.Notebooks.Documents;

/// <summary>A file is not a notebook this program can read.</summary>
internal sealed class NotebookFormatException(string message) : Exception(message);
