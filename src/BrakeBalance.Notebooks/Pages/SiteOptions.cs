using BrakeBalance.Notebooks.Execution;

namespace BrakeBalance.Notebooks.Pages;

internal sealed record SiteOptions
{
    /// <summary>Whether each page carries the calculation itself, so that one file can be passed on alone.</summary>
    public bool SingleFile { get; init; }

    /// <summary>Whether these are all pages; an index that lists more than a part stays as it is.</summary>
    public bool IsWhole { get; init; } = true;

    /// <summary>Whether each page loads itself again when it is written anew.</summary>
    public bool IsWatched { get; init; }

    /// <summary>
    /// Facts for the foot of every page, such as the vehicle file and the unit system; nothing that changes from run to run.
    /// </summary>
    public IReadOnlyList<KeyValuePair<string, string>> Facts { get; init; } = [];

    /// <summary>Facts for the foot of one notebook's page; those of every page unless said.</summary>
    public Func<ExecutedNotebook, IReadOnlyList<KeyValuePair<string, string>>> FactsOf { get => field ?? (_ => Facts); init; }

    /// <summary>What edited cells find in the page as the notebooks found it here.</summary>
    public CellSurroundings Surroundings { get; init; } = CellSurroundings.None;

    /// <summary>Pages that are no notebooks and answer for the car; the index lists them first.</summary>
    public IReadOnlyList<RenderedPage> Answers { get; init; } = [];

    /// <summary>Pages that are no notebooks, such as a story for readers; the index lists them last.</summary>
    public IReadOnlyList<RenderedPage> Stories { get; init; } = [];
}
