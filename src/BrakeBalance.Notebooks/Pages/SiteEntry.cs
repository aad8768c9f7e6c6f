using BrakeBalance.Notebooks.Execution;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>A notebook that becomes a page.</summary>
/// <param name="Notebook">The executed notebook.</param>
/// <param name="Group">Where the index lists it.</param>
internal sealed record SiteEntry(ExecutedNotebook Notebook, NotebookGroup Group = NotebookGroup.Main)
{
    /// <summary>Whether its page stands in the folder already and is left as it is; the others link to it.</summary>
    public bool IsStanding { get; init; }
}

/// <summary>The groups of notebooks, in the order of the index.</summary>
internal enum NotebookGroup
{
    /// <summary>A notebook that answers a question about one's own car.</summary>
    Main,

    /// <summary>A short lesson with exercises.</summary>
    Lesson,
}
