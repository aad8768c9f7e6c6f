using System.Globalization;
using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Execution;

namespace BrakeBalance.Notebooks.Tests.Execution;

[Collection(EnginesCollection.Name)]
public class NotebookRunnerTests
{
    private static readonly NotebookDocument Succeeding = SampleNotebook.Of("succeeding", "# It works", "var a = 20;", "a + 1");
    private static readonly NotebookDocument Failing =
        SampleNotebook.Of("failing", "# It fails", "1", "var b = 2;\nthrow new InvalidOperationException(\"no vacuum\");", "3", "# After");

    [Theory]
    [InlineData(EngineKind.Interactive)]
    [InlineData(EngineKind.Script)]
    public async Task A_failing_cell_ends_its_notebook_and_the_next_one_still_runs(EngineKind kind)
    {
        IReadOnlyList<ExecutedNotebook> executed = await new NotebookRunner(kind).RunAsync([Failing, Succeeding], null, default);

        Assert.False(executed[0].Succeeded);
        Assert.Equal(["c0", "c1", "c2"], executed[0].Cells.Select(cell => cell.Id));
        Assert.Equal(
            new CellFailure("no vacuum", 2, "throw new InvalidOperationException(\"no vacuum\");"),
            Assert.IsType<ExecutedCodeCell>(executed[0].Cells[2]).Failure);
        Assert.True(executed[1].Succeeded);
        Assert.Equal("It works", executed[1].Title);
        Assert.Equal("21", Assert.IsType<ExecutedCodeCell>(executed[1].Cells[2]).Outputs.Single().Data["text/plain"]);
    }

    [Fact]
    public async Task Notebooks_do_not_see_each_other()
    {
        NotebookDocument other = SampleNotebook.Of("other", "# Other", "a");
        IReadOnlyList<ExecutedNotebook> executed = await new NotebookRunner(EngineKind.Interactive)
            .RunAsync([Succeeding, other], null, default);

        Assert.Contains("'a' does not exist", executed[1].Cells.OfType<ExecutedCodeCell>().Single().Failure?.Message);
    }

    [Fact]
    public async Task Progress_tells_of_the_start_and_of_each_code_cell()
    {
        var steps = new List<string>();
        await new NotebookRunner(EngineKind.Script).RunAsync([Succeeding], new Steps(steps), default);

        Assert.Equal(["succeeding 0/2 ", "succeeding 1/2 c1", "succeeding 2/2 c2"], steps);
    }

    [Theory]
    [InlineData(EngineKind.Interactive)]
    [InlineData(EngineKind.Script)]
    public async Task Cells_run_in_the_invariant_culture(EngineKind kind)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            NotebookDocument notebook = SampleNotebook.Of("culture", "# Culture", "$\"{0.5}\"");
            ExecutedNotebook executed = (await new NotebookRunner(kind).RunAsync([notebook], null, default)).Single();

            Assert.Equal("0.5", executed.Cells.OfType<ExecutedCodeCell>().Single().Outputs.Single().Data["text/plain"]);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public async Task Engines_beside_one_another_are_disposed_of_when_the_run_is_cancelled()
    {
        var engines = new List<CountingEngine>();
        using var cancellation = new CancellationTokenSource();
        var runner = new NotebookRunner(_ =>
        {
            var engine = new CountingEngine(cancellation);
            lock (engines)
            {
                engines.Add(engine);
            }

            return Task.FromResult<ICellEngine>(engine);
        }, 2);

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => runner.RunAsync([Succeeding, Failing], null, cancellation.Token));
        Assert.NotEmpty(engines);
        Assert.All(engines, engine => Assert.Equal(1, engine.Disposals));
    }

    private sealed class Steps(List<string> steps) : IProgress<RunStep>
    {
        public void Report(RunStep value) => steps.Add($"{value.Notebook.Name} {value.Done}/{value.Of} {value.Cell?.Id}");
    }

    /// <summary>Cancels the run at its first cell.</summary>
    private sealed class CountingEngine(CancellationTokenSource cancellation) : ICellEngine
    {
        public int Disposals { get; private set; }

        public async Task<CellRun> RunAsync(string code, CancellationToken token)
        {
            await cancellation.CancelAsync();
            token.ThrowIfCancellationRequested();
            return new CellRun([], null);
        }

        public ValueTask DisposeAsync()
        {
            Disposals++;
            return ValueTask.CompletedTask;
        }
    }
}
