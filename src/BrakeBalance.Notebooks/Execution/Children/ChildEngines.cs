using BrakeBalance.Notebooks.Documents;

namespace BrakeBalance.Notebooks.Execution.Children;

/// <summary>Engines whose cells run in a process of their own, so that nothing a cell does can end this program.</summary>
/// <remarks>
/// One process serves all notebooks, each in a fresh engine, for as long as it lives; the next is started only when it has ended, or
/// for a notebook that runs alone.
/// </remarks>
internal sealed class ChildEngines(EngineKind kind, TimeSpan cellLimit) : IAsyncDisposable
{
    private readonly SemaphoreSlim _starting = new(1);
    private readonly List<CellProcess> _processes = [];
    private CellProcess? _shared;
    private int _numbers;

    internal EngineKind Kind => kind;

    internal TimeSpan CellLimit => cellLimit;

    /// <summary>What notebooks left running that ended a process after their last cell, in words; their pages are whole.</summary>
    /// <remarks>A process that serves several notebooks does not know which of them it was.</remarks>
    public IReadOnlyList<string> LeftRunning =>
    [
        .. _processes.Where(process => !process.IsExplained).Select(process =>
            process.Notebooks is [var one]
                ? $"{one}: after its last cell the process that ran it ended: {process.Ending}. Its page is whole."
                : $"{string.Join(", ", process.Notebooks)}: after the last cell of one of them the process that ran them ended: "
                    + $"{process.Ending}. Their pages are whole."),
    ];

    /// <summary>Starts an engine; a process that ends meanwhile is replaced when the first cell runs.</summary>
    /// <returns>The engine; the caller disposes of it.</returns>
    public async Task<ICellEngine> StartAsync(NotebookDocument notebook)
    {
        var engine = new ChildEngine(this, notebook.Folder, notebook.Name);
        await engine.PrepareAsync().ConfigureAwait(false);
        return engine;
    }

    public async ValueTask DisposeAsync()
    {
        foreach (CellProcess process in _processes)
        {
            await process.DisposeAsync().ConfigureAwait(false);
        }

        _starting.Dispose();
    }

    /// <summary>Starts an engine in the process that all share, or in a fresh one.</summary>
    /// <exception cref="CellProcessEndedException">The process ended or does not start.</exception>
    internal async Task<Seat> SeatAsync(string folder, bool alone)
    {
        Seat seat;
        await _starting.WaitAsync().ConfigureAwait(false);
        try
        {
            CellProcess? process = alone || _shared is { HasEnded: true } ? null : _shared;
            if (process is null)
            {
                process = CellProcess.Start();
                _processes.Add(process);
                _shared = alone ? _shared : process;
            }

            seat = new Seat(process, ++_numbers);
        }
        finally
        {
            _starting.Release();
        }

        await seat.Process.AskAsync(new CellRequest(CellTask.Start, seat.Number, kind, folder)).ConfigureAwait(false);
        return seat;
    }

    internal sealed record Seat(CellProcess Process, int Number);
}
