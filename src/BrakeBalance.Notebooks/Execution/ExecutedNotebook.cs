using BrakeBalance.Notebooks.Documents;

namespace BrakeBalance.Notebooks.Execution;

/// <summary>A notebook whose cells have been run: all that a page is made of.</summary>
internal sealed record ExecutedNotebook(string Name, string Title, IReadOnlyList<ExecutedCell> Cells)
{
    /// <summary>Whether every cell ran to its end.</summary>
    public bool Succeeded => Cells.OfType<ExecutedCodeCell>().All(cell => cell.Failure is null);

    /// <summary>A notebook as far as its code cells have run.</summary>
    public static ExecutedNotebook Of(NotebookDocument notebook, IReadOnlyList<CellRun> runs)
    {
        List<ExecutedCell> cells = [];
        int at = 0;
        foreach (NotebookCell cell in notebook.Cells.TakeWhile(cell => !cell.IsCode || at < runs.Count))
        {
            cells.Add(cell.IsCode ? ExecutedCodeCell.Of(cell, runs[at]) : new ExecutedMarkdownCell(cell.Id, cell.Source));
            if (cell.IsCode && runs[at++].Failure is not null)
            {
                break;
            }
        }

        return new ExecutedNotebook(notebook.Name, notebook.Title, cells);
    }
}

/// <summary>A cell of an executed notebook.</summary>
internal abstract record ExecutedCell(string Id, string Source);

internal sealed record ExecutedMarkdownCell(string Id, string Source) : ExecutedCell(Id, Source);

internal sealed record ExecutedCodeCell(
    string Id, string Source, IReadOnlyList<string> Tags, IReadOnlyList<CellOutput> Outputs, CellFailure? Failure)
    : ExecutedCell(Id, Source)
{
    /// <summary>A cell that has run.</summary>
    public static ExecutedCodeCell Of(NotebookCell cell, CellRun run) => new(cell.Id, cell.Source, cell.Tags, run.Outputs, run.Failure);
}
