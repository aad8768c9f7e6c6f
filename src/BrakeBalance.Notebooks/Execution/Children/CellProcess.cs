using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.ComponentModel;
using System.Diagnostics;
using System.Runtime.InteropServices;

namespace BrakeBalance.Notebooks.Execution.Children;

/// <summary>The process of cells has ended; the message says why, as part of a sentence.</summary>
internal sealed class CellProcessEndedException(string why) : Exception(why);

/// <summary>A process that runs cells, seen from the program that started it.</summary>
internal sealed class CellProcess : IAsyncDisposable
{
    private const int Killed = 137, Broken = 128, KeptErrors = 4000;
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    private readonly Process _process;
    private readonly ConcurrentDictionary<int, TaskCompletionSource<CellAnswer>> _waiting = new();
    private readonly StringBuilder _errors = new();
    private readonly SemaphoreSlim _writing = new(1);
    private readonly StreamWriter _requests;
    private readonly Task _reading;
    private ImmutableList<string> _notebooks = [];
    private string? _ending;
    private volatile int _entered;
    private volatile bool _ended, _killed;

    private CellProcess(Process process)
    {
        _process = process;
        _requests = process.StandardInput;
        _process.ErrorDataReceived += (_, line) => Keep(line.Data);
        _process.BeginErrorReadLine();
        _reading = Task.Run(ReadAsync);
    }

    /// <summary>Whether it can run no more cells.</summary>
    public bool HasEnded => _ended;

    /// <summary>Starts one.</summary>
    /// <exception cref="CellProcessEndedException">It does not start.</exception>
    public static CellProcess Start()
    {
        string muxer = Path.GetFullPath(
            Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", "..", OperatingSystem.IsWindows()
            ? "dotnet.exe" : "dotnet"));
        var start = new ProcessStartInfo(File.Exists(muxer) ? muxer : "dotnet", [typeof(CellProcess).Assembly.Location, CellWorker.Command])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardInputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            StandardOutputEncoding = Encoding.UTF8,
        };
        try
        {
            return new CellProcess(Process.Start(start)!);
        }
        catch (Win32Exception exception)
        {
            throw new CellProcessEndedException($"the process that runs the cells does not start ({exception.Message})");
        }
    }

    /// <summary>Whether a cell has been told to be the end of it, or we ended it.</summary>
    public bool IsExplained
    {
        get => field || _killed || !_ended;
        set;
    }

    /// <summary>Why it ended, as part of a sentence; null while it goes on.</summary>
    public string? Ending => _ended ? _ending : null;

    /// <summary>The notebooks that ran or run here, in the order of their first cells.</summary>
    public ImmutableList<string> Notebooks => _notebooks;

    /// <summary>Whether more than one notebook has run here, those included that have left.</summary>
    public bool IsShared => _entered > 1;

    /// <summary>A notebook is about to run its first cell here.</summary>
    public void Enter(string notebook)
    {
        Interlocked.Increment(ref _entered);
        ImmutableInterlocked.Update(ref _notebooks, names => names.Add(notebook));
    }

    /// <summary>A notebook will run again elsewhere.</summary>
    public void Leave(string notebook) => ImmutableInterlocked.Update(ref _notebooks, names => names.Remove(notebook));

    /// <summary>Asks for something and waits for the answer of the same engine.</summary>
    /// <exception cref="CellProcessEndedException">The process ended before it answered.</exception>
    public async Task<CellAnswer> AskAsync(CellRequest request)
    {
        var answer = new TaskCompletionSource<CellAnswer>(TaskCreationOptions.RunContinuationsAsynchronously);
        _waiting[request.Engine] = answer;
        await SendAsync(request).ConfigureAwait(false);
        if (_ended)
        {
            answer.TrySetException(new CellProcessEndedException(_ending!));
        }

        return await answer.Task.ConfigureAwait(false);
    }

    private async Task SendAsync(CellRequest request)
    {
        await _writing.WaitAsync().ConfigureAwait(false);
        try
        {
            await _requests.WriteLineAsync(CellMessages.Line(request)).ConfigureAwait(false);
            await _requests.FlushAsync().ConfigureAwait(false);
        }
        catch (Exception exception) when (exception is IOException or ObjectDisposedException)
        {
            // The process has ended; whoever waits for an answer is told so by the reading.
        }
        finally
        {
            _writing.Release();
        }
    }

    /// <summary>Ends the process and all that it started.</summary>
    /// <param name="why">Why, as part of a sentence.</param>
    public async Task EndAsync(string why)
    {
        _killed |= Interlocked.CompareExchange(ref _ending, why, null) is null;
        try
        {
            _process.Kill(entireProcessTree: true);
        }
        catch (Exception exception) when (exception is InvalidOperationException or Win32Exception or AggregateException)
        {
            // It has ended by itself.
        }

        await _reading.ConfigureAwait(false);
    }

    public async ValueTask DisposeAsync()
    {
        await EndAsync("it is no longer needed").ConfigureAwait(false);
        _process.Dispose();
    }

    private async Task ReadAsync()
    {
        while (await _process.StandardOutput.ReadLineAsync().ConfigureAwait(false) is { } line)
        {
            if (CellMessages.Read<CellAnswer>(line) is not { } answer)
            {
                continue;
            }

            if (answer.Ending is { } why)
            {
                Interlocked.CompareExchange(ref _ending, why, null);
            }
            else if (_waiting.TryRemove(answer.Engine, out TaskCompletionSource<CellAnswer>? waiting))
            {
                waiting.TrySetResult(answer);
            }
        }

        await WaitAsync().ConfigureAwait(false);
        Interlocked.CompareExchange(ref _ending, Words(), null);
        _ended = true;
        foreach (TaskCompletionSource<CellAnswer> waiting in _waiting.Values)
        {
            waiting.TrySetException(new CellProcessEndedException(_ending));
        }
    }

    /// <summary>Waits until the process is gone; one that closed its output and lives on is killed.</summary>
    private async Task WaitAsync()
    {
        using var patience = new CancellationTokenSource(Patience);
        try
        {
            await _process.WaitForExitAsync(patience.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            _process.Kill(entireProcessTree: true);
            await _process.WaitForExitAsync().ConfigureAwait(false);
        }
    }

    private string Words()
    {
        lock (_errors)
        {
            if (_errors.ToString().Contains("Stack overflow", StringComparison.Ordinal))
            {
                return "calls went too deep (stack overflow), as when a function calls itself without end";
            }
        }

        return _process.ExitCode switch
        {
            Killed => "it was killed, as when memory runs out",
            > Broken and int code => Invariant.Text($"it broke off (exit code {code})"),
            int code => Invariant.Text($"something in a cell ended it (exit code {code}), as Environment.Exit does"),
        };
    }

    private void Keep(string? line)
    {
        lock (_errors)
        {
            if (_errors.Length < KeptErrors)
            {
                _errors.AppendLine(line);
            }
        }
    }
}
