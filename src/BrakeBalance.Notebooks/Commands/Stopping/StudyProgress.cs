using System.Diagnostics;
using Spectre.Console;

namespace BrakeBalance.Notebooks.Commands.Stopping;

/// <summary>Shows how far a study of many cases has come: a moving bar for a person, a line every few seconds otherwise.</summary>
internal static class StudyProgress
{
    /// <summary>Runs something that reports how many cases are done.</summary>
    /// <param name="terminal">Where the progress is shown; plain lines go to its problems' side so that the answer stays clean.</param>
    /// <param name="stops">How many there are.</param>
    /// <param name="run">What is run.</param>
    /// <param name="what">What the cases are.</param>
    public static T Show<T>(Terminal terminal, int stops, Func<IProgress<int>, T> run, string what = "stops")
    {
        if (!terminal.IsInteractive)
        {
            return run(new Lines(terminal.Error, stops, what));
        }

        T? result = default;
        terminal.Watched().Progress()
            .Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn(), new RemainingTimeColumn())
            .Start(context =>
            {
                ProgressTask task = context.AddTask(what, maxValue: stops);
                result = run(new Bar(task));
            });
        return result!;
    }

    private sealed class Bar(ProgressTask task) : IProgress<int>
    {
        public void Report(int value) => task.Value = Math.Max(task.Value, value);
    }

    private sealed class Lines(TextWriter output, int stops, string what) : IProgress<int>
    {
        private static readonly TimeSpan Apart = TimeSpan.FromSeconds(2);
        private readonly Stopwatch _since = Stopwatch.StartNew();
        private readonly Lock _lock = new();

        public void Report(int value)
        {
            lock (_lock)
            {
                if (_since.Elapsed >= Apart)
                {
                    _since.Restart();
                    output.WriteLine(FormattableString.Invariant($"{value} of {stops} {what}"));
                }
            }
        }
    }
}
