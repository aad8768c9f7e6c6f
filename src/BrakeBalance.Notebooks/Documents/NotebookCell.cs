namespace BrakeBalance.Notebooks.Documents;

/// <summary>A cell of a notebook file.</summary>
/// <param name="Id">The cell's id; unique in its notebook.</param>
/// <param name="IsCode">Whether the cell is code; otherwise it is prose.</param>
/// <param name="Source">The cell's text, lines separated by LF.</param>
/// <param name="Tags">The tags in the cell's metadata.</param>
internal sealed record NotebookCell(string Id, bool IsCode, string Source, IReadOnlyList<string> Tags);
