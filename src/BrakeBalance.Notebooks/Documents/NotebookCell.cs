namespace BrakeBalance.Notebooks.Documents;

/// <summary>A cell of a notebook file.</summary>
internal sealed record NotebookCell(string Id, bool IsCode, string Source, IReadOnlyList<string> Tags);
