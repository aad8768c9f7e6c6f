using BrakeBalance.Notebooks.Documents;

namespace BrakeBalance.Notebooks.Execution;

/// <summary>How far a run has come.</summary>
internal sealed record RunStep(NotebookDocument Notebook, int Done, int Of, ExecutedCodeCell? Cell, TimeSpan Took);
