using System.Diagnostics;
using BrakeBalance.Notebooks.Documents;

namespace BrakeBalance.Notebooks.Execution;

/// <summary>Runs notebooks, each in an engine of its own, some beside one another.</summary>
/// <remarks>Cells run in the invariant culture: a decimal comma would break pictures.</remarks>
/// <param name="startEngine">Starts an engine for a notebook.</param>
/// <param name="beside">The most notebooks that run at the same time.</param>
internal sealed class NotebookRunner(Func<NotebookDocument, Task<ICellEngine>> startEngine, int beside)
{
    public NotebookRunner(EngineKind kind)
        : this(notebook => CellEngines.StartAsync(kind, notebook.Folder), CellEngines.Beside(kind))
    {
    }

    /// <summary>Runs all notebooks. A failing cell ends its notebook; the others still run.</summary>
    /// <param name="notebooks">The notebooks in order.</param>
    /// <param name="progress">
    /// Told of each notebook's start and of each code cell run, one step at a time, on any thread; may be null. A notebook's own
    /// steps come in order.
    /// </param>
    /// <param name="cancellation">Ends the run.</param>
    /// <returns>The notebooks in the same order; one with a failure has its cells up to the failing one.</returns>
    /// <exception cref="OperationCanceledException"><paramref name="cancellation"/> was requested.</exception>
    public async Task<IReadOnlyList<ExecutedNotebook>> RunAsync(
        IReadOnlyList<NotebookDocument> notebooks, IProgress<RunStep>? progress, CancellationToken cancellation)
    {
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
        var executed = new ExecutedNotebook[notebooks.Count];
        var telling = new Lock();
        var options = new ParallelOptions { MaxDegreeOfParallelism = beside, CancellationToken = cancellation };
        await Parallel.ForAsync(0, notebooks.Count, options, async (index, stop) =>
        {
            await using ICellEngine engine = await startEngine(notebooks[index]).ConfigureAwait(false);
            executed[index] = await RunOneAsync(notebooks[index], engine, Tell, stop).ConfigureAwait(false);
        }).ConfigureAwait(false);
        return executed;

        void Tell(RunStep step)
        {
            lock (telling)
            {
                progress?.Report(step);
            }
        }
    }

    private static async Task<ExecutedNotebook> RunOneAsync(
        NotebookDocument notebook, ICellEngine engine, Action<RunStep> tell, CancellationToken cancellation)
    {
        int total = notebook.Cells.Count(cell => cell.IsCode);
        int done = 0;
        tell(new RunStep(notebook, done, total, null, TimeSpan.Zero));
        List<CellRun> runs = [];
        foreach (NotebookCell cell in notebook.Cells.Where(cell => cell.IsCode))
        {
            long started = Stopwatch.GetTimestamp();
            CellRun run = await engine.RunAsync(cell.Source, cancellation).ConfigureAwait(false);
            runs.Add(run);
            tell(new RunStep(notebook, ++done, total, ExecutedCodeCell.Of(cell, run), Stopwatch.GetElapsedTime(started)));
            if (run.Failure is not null)
            {
                break;
            }
        }

        return ExecutedNotebook.Of(notebook, runs);
    }
}
