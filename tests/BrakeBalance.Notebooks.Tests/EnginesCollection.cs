using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Execution;

namespace BrakeBalance.Notebooks.Tests;

/// <summary>Tests that run cells here share the console and the environment of the process, so they run one after the other.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public class EnginesCollection
{
    public const string Name = "Engines";

    private static readonly SemaphoreSlim One = new(1);

    /// <summary>Runs notebooks here for tests that run beside others: one of them after the other too.</summary>
    internal static async Task<IReadOnlyList<ExecutedNotebook>> RunAsync(EngineKind kind, IReadOnlyList<NotebookDocument> notebooks)
    {
        await One.WaitAsync();
        try
        {
            return await new NotebookRunner(kind).RunAsync(notebooks, null, CancellationToken.None);
        }
        finally
        {
            One.Release();
        }
    }
}
