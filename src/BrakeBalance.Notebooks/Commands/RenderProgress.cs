using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Execution;
using Spectre.Console;

namespace BrakeBalance.Notebooks.Commands;

/// <summary>Shows how far a run has come: moving bars for a person, a line for each cell otherwise.</summary>
internal static class RenderProgress
{
    /// <summary>Runs something that reports its steps.</summary>
    public static async Task<T> ShowAsync<T>(Terminal terminal, IReadOnlyList<NotebookDocument> notebooks,
        Func<IProgress<RunStep>, Task<T>> run)
    {
        if (!terminal.IsInteractive)
        {
            return await run(new Lines(terminal.Live)).ConfigureAwait(false);
        }

        terminal.Work.ShowsItself = true;
        try
        {
            return await terminal.Watched().Progress()
                .Columns(new TaskDescriptionColumn { Alignment = Justify.Left }, new ProgressBarColumn(), new PercentageColumn(),
                    new ElapsedTimeColumn())
                .StartAsync(context => run(new Bars(notebooks, context))).ConfigureAwait(false);
        }
        finally
        {
            terminal.Work.ShowsItself = false;
        }
    }

    private sealed class Lines(TextWriter output) : IProgress<RunStep>
    {
        public void Report(RunStep value)
        {
            if (value.Cell is { } cell)
            {
                string outcome = cell.Failure is null ? "" : ", FAILED";
                output.WriteLine(Invariant.Text($"{value.Notebook.Name}: cell {value.Done} of {value.Of} ({cell.Id}), "
                    + $"{value.Took.TotalSeconds:0.00} s{outcome}"));
            }
            else
            {
                output.WriteLine($"{value.Notebook.Name}: {value.Notebook.Title}");
            }
        }
    }

    private sealed class Bars(IReadOnlyList<NotebookDocument> notebooks, ProgressContext context) : IProgress<RunStep>
    {
        private readonly Dictionary<NotebookDocument, ProgressTask> _bars = notebooks.ToDictionary(
            notebook => notebook,
            notebook => context.AddTask(Markup.Escape(notebook.Name), autoStart: false,
                maxValue: Math.Max(1, notebook.Cells.Count(cell => cell.IsCode))));

        public void Report(RunStep value)
        {
            ProgressTask bar = _bars[value.Notebook];
            if (value.Cell is null)
            {
                bar.StartTask();
                return;
            }

            bar.Value = value.Done;
            if (value.Cell.Failure is not null)
            {
                bar.Description = $"{Markup.Escape(value.Notebook.Name)} [red]failed in cell {value.Done}[/]";
                bar.StopTask();
            }
            else if (value.Done == value.Of)
            {
                bar.StopTask();
            }
        }
    }
}
