using BrakeBalance.Notebooks.Documents;

namespace BrakeBalance.Notebooks.Execution;

/// <summary>Runs notebooks one after the other, each in an engine of its own.</summary>
/// <remarks>
/// The next notebook's engine starts while the current one runs. Cells run in the invariant culture: a decimal comma
/// would break pictures.
/// </remarks>
/// <param name="startEngine">Starts an engine for a notebook.</param>
internal sealed class NotebookRunner(Func<NotebookDocument, Task<ICellEngine>> startEngine)
{
    /// <summary>A runner with engines of one kind.</summary>
    public NotebookRunner(EngineKind kind)
        : this(notebook => CellEngines.StartAsync(kind, notebook.Folder))
    {
    }

    /// <summary>Runs all notebooks. A failing cell ends its notebook; the others still run.</summary>
    /// <param name="notebooks">The notebooks in order.</param>
    /// <param name="progress">
    /// Told of each notebook's start and of each code cell run, in order, on the running thread; may be null.
    /// </param>
    /// <param name="cancellation">Ends the run.</param>
    /// <returns>The notebooks in the same order; one with a failure has its cells up to the failing one.</returns>
    /// <exception cref="OperationCanceledException"><paramref name="cancellation"/> was requested.</exception>
    public async Task<IReadOnlyList<ExecutedNotebook>> RunAsync(
        IReadOnlyList<NotebookDocument> notebooks, IProgress<RunStep>? progress, CancellationToken cancellation)
    {
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
        List<ExecutedNotebook> executed = [];
        Task<ICellEngine>? next = null;
        try
        {
            for (int index = 0; index < notebooks.Count; index++)
            {
                await using ICellEngine engine = await (next ?? Start(notebooks[index])).ConfigureAwait(false);
                next = index + 1 < notebooks.Count ? Start(notebooks[index + 1]) : null;
                executed.Add(await RunOneAsync(notebooks[index], engine, progress, cancellation).ConfigureAwait(false));
            }
        }
        finally
        {
            if (next is not null)
            {
                await (await next.ConfigureAwait(false)).DisposeAsync().ConfigureAwait(false);
            }
        }

        return executed;

        Task<ICellEngine> Start(NotebookDocument notebook) => Task.Run(() => startEngine(notebook), CancellationToken.None);
    }

    private static async Task<ExecutedNotebook> RunOneAsync(
        NotebookDocument notebook, ICellEngine engine, IProgress<RunStep>? progress, CancellationToken cancellation)
    {
        int total = notebook.Cells.Count(cell => cell.IsCode);
        int done = 0;
        progress?.Report(new RunStep(notebook, done, total, null));
        List<CellRun> runs = [];
        foreach (NotebookCell cell in notebook.Cells.Where(cell => cell.IsCode))
        {
            CellRun run = await engine.RunAsync(cell.Source, cancellation).ConfigureAwait(false);
            runs.Add(run);
            progress?.Report(new RunStep(notebook, ++done, total, ExecutedCodeCell.Of(cell, run)));
            if (run.Failure is not null)
            {
                break;
            }
        }

        return ExecutedNotebook.Of(notebook, runs);
    }
}
