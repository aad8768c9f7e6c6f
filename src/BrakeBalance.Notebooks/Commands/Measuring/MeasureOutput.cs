using Spectre.Console;

namespace BrakeBalance.Notebooks.Commands.Measuring;

/// <summary>Writes named tables and runs long work with a progress bar.</summary>
internal static class MeasureOutput
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    public static void Sentences(IAnsiConsole console, IEnumerable<string> sentences)
    {
        foreach (string sentence in sentences)
        {
            console.WriteLine(sentence);
        }
    }

    /// <summary>Does work; where a person watches and it takes longer than a second, a bar shows how far it is.</summary>
    public static T WithProgress<T>(Terminal terminal, string what, Func<IProgress<double>, T> work)
    {
        var part = new Latest();
        Task<T> task = Task.Run(() => work(part));
        if (!terminal.IsInteractive || Task.WhenAny(task, Task.Delay(Patience)).GetAwaiter().GetResult() == task)
        {
            return task.GetAwaiter().GetResult();
        }

        terminal.Watched().Progress().AutoClear(true).Start(context =>
        {
            ProgressTask bar = context.AddTask(what);
            while (!task.IsCompleted)
            {
                bar.Value = 100 * part.Value;
                Thread.Sleep(60);
            }
        });
        return task.GetAwaiter().GetResult();
    }

    private sealed class Latest : IProgress<double>
    {
        private double _value;

        public double Value => Volatile.Read(ref _value);

        public void Report(double value)
        {
            if (value > Volatile.Read(ref _value))
            {
                Volatile.Write(ref _value, value);
            }
        }
    }
}
