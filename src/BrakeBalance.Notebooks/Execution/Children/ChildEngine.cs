namespace BrakeBalance.Notebooks.Execution.Children;

/// <summary>Runs the cells of one notebook in a process of cells.</summary>
internal sealed class ChildEngine(ChildEngines engines, string folder, string name) : ICellEngine
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);
    private readonly List<string> _done = [];
    private ChildEngines.Seat? _seat;
    private CellProcess? _earlier;
    private bool _entered, _again, _running;

    private bool IsAlone => _again || _seat is { Process.IsShared: false };

    /// <summary>Starts the engine; when its process ends meanwhile, the first cell tries again.</summary>
    public async Task PrepareAsync()
    {
        try
        {
            _seat = await engines.SeatAsync(folder, alone: false).ConfigureAwait(false);
        }
        catch (CellProcessEndedException)
        {
            _seat = null;
        }
    }

    /// <remarks>
    /// What another notebook does, or left running, may end the process under this one. So a notebook whose process was not its own
    /// is run again in a fresh one, alone, and only what happens there is its own doing.
    /// </remarks>
    public async Task<CellRun> RunAsync(string code, CancellationToken cancellation)
    {
        try
        {
            try
            {
                return await SubmitAsync(code, cancellation).ConfigureAwait(false);
            }
            catch (CellProcessEndedException) when (!IsAlone && !cancellation.IsCancellationRequested)
            {
                _earlier = _seat?.Process;
                _earlier?.Leave(name);
                (_seat, _entered, _again) = (null, false, true);
                foreach (string earlier in _done)
                {
                    await SubmitAsync(earlier, cancellation).ConfigureAwait(false);
                }

                return await SubmitAsync(code, cancellation).ConfigureAwait(false);
            }
            finally
            {
                _done.Add(code);
            }
        }
        catch (CellProcessEndedException exception)
        {
            cancellation.ThrowIfCancellationRequested();
            Explain(_seat?.Process);
            Explain(_earlier);
            return new CellRun([], CellFailures.At(code, $"The process that runs the cells ended: {exception.Message}.", null));
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (_seat is { } seat && !_running)
        {
            // The answer gives what the notebook left running the time to fail while its name is known.
            Task<CellAnswer> gone = seat.Process.AskAsync(new CellRequest(CellTask.End, seat.Number, engines.Kind, ""));
            await ((Task)gone).WaitAsync(Patience).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            if (_again)
            {
                await seat.Process.EndAsync("it is no longer needed").ConfigureAwait(false);
            }
        }
    }

    private static void Explain(CellProcess? process)
    {
        if (process is not null)
        {
            process.IsExplained = true;
        }
    }

    private async Task<CellRun> SubmitAsync(string code, CancellationToken cancellation)
    {
        _seat ??= await engines.SeatAsync(folder, _again).ConfigureAwait(false);
        if (!_entered)
        {
            _entered = true;
            _seat.Process.Enter(name);
        }

        CellProcess process = _seat.Process;
        _running = true;
        Task<CellAnswer> answer = process.AskAsync(new CellRequest(CellTask.Run, _seat.Number, engines.Kind, code));
        try
        {
            CellRun run = (await answer.WaitAsync(engines.CellLimit, cancellation).ConfigureAwait(false)).Run!;
            _running = false;
            return run;
        }
        catch (TimeoutException)
        {
            await process.EndAsync("a cell took too long").ConfigureAwait(false);
            await ((Task)answer).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            return new CellRun([], CellFailures.At(code, Invariant.Text(
                $"The cell took longer than {engines.CellLimit.TotalSeconds:0.###} s and was ended; --cell-limit gives it more time."),
                    null));
        }
    }
}
