using BrakeBalance.Notebooks.Documents;

namespace BrakeBalance.Notebooks.Execution;

/// <summary>How far a run has come.</summary>
/// <param name="Notebook">The notebook at work.</param>
/// <param name="Done">Code cells run so far in it.</param>
/// <param name="Of">Code cells it has.</param>
/// <param name="Cell">The code cell just run; null when the notebook is about to start.</param>
/// <param name="Took">How long that cell ran.</param>
internal sealed record RunStep(NotebookDocument Notebook, int Done, int Of, ExecutedCodeCell? Cell, TimeSpan Took);
