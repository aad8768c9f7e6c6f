using BrakeBalance.Notebooks.Execution;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>A notebook that becomes a page.</summary>
/// <param name="Notebook">The executed notebook; one without cells when its page stands.</param>
/// <param name="Group">Where the index lists it.</param>
internal sealed record SiteEntry(ExecutedNotebook Notebook, NotebookGroup Group = NotebookGroup.Main)
{
    /// <summary>The page, where it stands in the folder already and is left as it is; the others link to it.</summary>
    public RenderedPage? Standing { get; init; }

    /// <summary>A notebook whose page stands already.</summary>
    public static SiteEntry Of(RenderedPage standing, NotebookGroup group) =>
        new(new ExecutedNotebook(Path.GetFileNameWithoutExtension(standing.FileName), standing.Title, []), group) { Standing = standing };
}

/// <summary>The groups of notebooks, in the order of the index.</summary>
internal enum NotebookGroup
{
    /// <summary>A notebook that answers a question about one's own car.</summary>
    Main,

    /// <summary>A short lesson with exercises.</summary>
    Lesson,
}
