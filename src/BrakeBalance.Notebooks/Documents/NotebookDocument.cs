namespace BrakeBalance.Notebooks.Documents;

internal sealed record NotebookDocument(string Path, IReadOnlyList<NotebookCell> Cells)
{
    /// <summary>File name without folder and extension.</summary>
    public string Name => System.IO.Path.GetFileNameWithoutExtension(Path);

    /// <summary>Full path of the folder the file lies in.</summary>
    public string Folder => System.IO.Path.GetDirectoryName(Path)!;

    /// <summary>The text of the first top-level heading, or the name where there is none.</summary>
    public string Title => Cells
        .Where(cell => !cell.IsCode)
        .SelectMany(cell => cell.Source.Split('\n'))
        .FirstOrDefault(line => line.StartsWith("# ", StringComparison.Ordinal)) is { } heading ? heading[2..].Trim() : Name;
}
