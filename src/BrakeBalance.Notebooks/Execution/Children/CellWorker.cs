using System.Collections.Concurrent;
using System.Diagnostics;
using System.Runtime.InteropServices;

namespace BrakeBalance.Notebooks.Execution.Children;

/// <summary>This program as the process that runs the cells of another one: requests on its input, answers on its output.</summary>
/// <remarks>It ends when its input does, so it never outlives the program that started it.</remarks>
internal sealed class CellWorker(Stream output)
{
    /// <summary>The word on the command line that makes this program one.</summary>
    public const string Command = "cell-process";

    /// <summary>The most characters that a cell may put out.</summary>
    public const int MostOutput = 10_000_000;

    private const long MostMemory = 4L << 30;
    private static readonly TimeSpan Glance = TimeSpan.FromMilliseconds(200);

    private readonly ConcurrentDictionary<int, ICellEngine> _engines = new();
    private readonly Stream _output = output;
    private readonly Lock _writing = new();

    /// <summary>Answers requests until there are no more, then ends the process.</summary>
    /// <returns>Never reached; an exit code for the shape of a main program.</returns>
    public static int Run()
    {
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
        CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
        CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.InvariantCulture;
        using StreamReader requests = new(Console.OpenStandardInput(), Encoding.UTF8);
        var worker = new CellWorker(Console.OpenStandardOutput());

        // The streams belong to the protocol; cells that print do so into their engine.
        Console.SetIn(TextReader.Null);
        Console.SetOut(TextWriter.Null);

        // Ctrl-C reaches every process of the terminal: the parent decides what becomes of this one.
        using PosixSignalRegistration interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, context => context.Cancel = true);
        AppDomain.CurrentDomain.UnhandledException += (_, fault) =>
            worker.End("something that the cell left running failed: "
                + $"{((Exception)fault.ExceptionObject).Message.ReplaceLineEndings(" ")}");
        new Thread(worker.WatchMemory) { IsBackground = true }.Start();
        while (requests.ReadLine() is { } line)
        {
            if (CellMessages.Read<CellRequest>(line) is { } request)
            {
                _ = Task.Run(() => worker.TryAnswerAsync(request));
            }
        }

        Process.GetCurrentProcess().Kill();
        return 0;
    }

    private async Task TryAnswerAsync(CellRequest request)
    {
        try
        {
            await AnswerAsync(request).ConfigureAwait(false);
        }
        catch (Exception exception)
        {
            End($"its engine failed ({exception.GetType().Name})");
        }
    }

    private async Task AnswerAsync(CellRequest request)
    {
        switch (request.Task)
        {
            case CellTask.Start:
                _engines[request.Engine] = await CellEngines.StartAsync(request.Kind, request.Text).ConfigureAwait(false);
                Write(new CellAnswer(request.Engine, null));
                break;
            case CellTask.Run:
                CellRun run = await _engines[request.Engine].RunAsync(request.Text, CancellationToken.None).ConfigureAwait(false);
                Write(new CellAnswer(request.Engine, Readable(run)));
                break;
            case CellTask.End when _engines.TryRemove(request.Engine, out ICellEngine? engine):
                await engine.DisposeAsync().ConfigureAwait(false);
                Write(new CellAnswer(request.Engine, null));
                break;
        }
    }

    /// <summary>A page with more than the cap could not be opened; half of an output would look like the whole.</summary>
    private static CellRun Readable(CellRun run)
    {
        long length = run.Outputs.SelectMany(output => output.Data.Values).Sum(text => (long)text.Length);
        return length <= MostOutput
            ? run
            : new CellRun([], new CellFailure(Invariant.Text($"The cell put out {length / 1e6:0.#} million characters; "
                + $"a page takes at most {MostOutput / 1e6:0} million of a cell."), null, null));
    }

    private void WatchMemory()
    {
        long there = GC.GetGCMemoryInfo().TotalAvailableMemoryBytes;
        long most = there > 0 ? Math.Min(MostMemory, there / 4 * 3) : MostMemory;
        while (Environment.WorkingSet < most)
        {
            Thread.Sleep(Glance);
        }

        End(Invariant.Text($"the cells took more than {most / 1e9:0.#} GB of memory"));
    }

    private void End(string why)
    {
        Write(new CellAnswer(0, null, why));
        Process.GetCurrentProcess().Kill();
    }

    private void Write(CellAnswer answer)
    {
        // The line end in front parts the answer from what a cell may have written there itself.
        byte[] line = Encoding.UTF8.GetBytes($"\n{CellMessages.Line(answer)}\n");
        lock (_writing)
        {
            _output.Write(line);
            _output.Flush();
        }
    }
}
