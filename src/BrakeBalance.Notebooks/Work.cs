using System.Diagnostics;

namespace BrakeBalance.Notebooks;

/// <summary>
/// What a command is busy with, and the line that says so: on the problems' side, once a second has passed, and only where a person sees
/// it.
/// </summary>
internal sealed class Work
{
    private const int BarWidth = 24;
    private const string Mark = "###";
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan Apart = TimeSpan.FromMilliseconds(100);

    private readonly Lock _lock = new();
    private Stage _stage = new("working");
    private TextWriter? _shown;

    /// <summary>Whether the command shows its progress itself.</summary>
    public bool ShowsItself { get; set; }

    /// <summary>Does a part of the work that may take long.</summary>
    public T Do<T>(string what, Func<IProgress<double>, T> work)
    {
        (Stage before, Stage stage) = (_stage, new Stage(what));
        _stage = stage;
        try
        {
            return work(stage);
        }
        finally
        {
            _stage = before;
        }
    }

    /// <summary>The same of work that is awaited.</summary>
    public async Task<T> DoAsync<T>(string what, Func<IProgress<double>, Task<T>> work)
    {
        (Stage before, Stage stage) = (_stage, new Stage(what));
        _stage = stage;
        try
        {
            return await work(stage).ConfigureAwait(false);
        }
        finally
        {
            _stage = before;
        }
    }

    /// <summary>The same of work that counts.</summary>
    public T Do<T>(string what, int count, Func<IProgress<int>, T> work) =>
        Do(what, progress => work(new Counted(progress, Math.Max(1, count))));

    /// <summary>Shows the line until a task has ended, and takes it away.</summary>
    public async Task ShowAsync(Task running, TextWriter error, int width)
    {
        var since = Stopwatch.StartNew();
        await Task.WhenAny(running, Task.Delay(Patience)).ConfigureAwait(false);
        while (!running.IsCompleted)
        {
            if (!ShowsItself)
            {
                Write(error, Line(since.Elapsed, width));
            }

            await Task.WhenAny(running, Task.Delay(Apart)).ConfigureAwait(false);
        }

        Clear();
    }

    /// <summary>Takes the line away, so that something else can be written.</summary>
    public void Clear()
    {
        lock (_lock)
        {
            _shown?.Write("\r\u001b[K");
            _shown?.Flush();
            _shown = null;
        }
    }

    private void Write(TextWriter error, string line)
    {
        lock (_lock)
        {
            error.Write("\r" + line + "\u001b[K");
            error.Flush();
            _shown = error;
        }
    }

    private string Line(TimeSpan passed, int width)
    {
        Stage stage = _stage;
        string bar = stage.Part is { } part
            ? Invariant.Text($"[{new string('#', (int)(BarWidth * part)),-BarWidth}] {100 * part:0} %") : $"[{Moving(passed)}]";
        string line = Invariant.Text($"{stage.What} {bar}, {passed.TotalSeconds:0} s; Ctrl-C stops");
        return line.Length < width ? line : line[..Math.Max(0, width - 1)];
    }

    // A mark that runs to and fro where nobody knows how much is left.
    private static string Moving(TimeSpan passed)
    {
        int way = BarWidth - Mark.Length, at = (int)(passed / Apart) % (2 * way);
        return (new string(' ', at <= way ? at : 2 * way - at) + Mark).PadRight(BarWidth);
    }

    private sealed class Stage(string what) : IProgress<double>
    {
        private double _part = -1;

        public string What => what;

        public double? Part => Volatile.Read(ref _part) is >= 0 and double part ? part : null;

        public void Report(double value)
        {
            if (value > Volatile.Read(ref _part))
            {
                Volatile.Write(ref _part, Math.Min(1, value));
            }
        }
    }

    private sealed class Counted(IProgress<double> part, int count) : IProgress<int>
    {
        public void Report(int value) => part.Report(value / (double)count);
    }
}

/// <summary>Writes text on where a line of progress may stand, which is taken away first.</summary>
internal sealed class ClearingWriter(TextWriter inner, Work work) : TextWriter(CultureInfo.InvariantCulture)
{
    public override Encoding Encoding => inner.Encoding;

    public override void Write(char value)
    {
        work.Clear();
        inner.Write(value);
    }

    public override void Write(string? value)
    {
        work.Clear();
        inner.Write(value);
    }

    public override void Flush() => inner.Flush();
}
