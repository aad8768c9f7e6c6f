using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Execution;
using BrakeBalance.Notebooks.Execution.Children;
using BrakeBalance.Notebooks.Tests.Commands;

namespace BrakeBalance.Notebooks.Tests.Execution;

/// <summary>Cells in a process of their own: what a cell does there ends its notebook at most.</summary>
public class ChildEngineTests
{
    private static readonly TimeSpan Long = TimeSpan.FromSeconds(120);

    public static TheoryData<string, string> Deaths => new()
    {
        { "Environment.Exit(0);", "exit code 0" },
        { "int Deep(int n) => Deep(n + 1) + n;\nDeep(0)", "stack overflow" },
        { "new System.Threading.Thread(() => throw new InvalidOperationException(\"no vacuum\")).Start();\n"
            + "System.Threading.Thread.Sleep(60_000);", "no vacuum" },
        { "Environment.FailFast(\"gone\");", "broke off" },
        { "var kept = new List<byte[]>();\nwhile (true) { var block = new byte[100_000_000]; "
            + "Array.Fill(block, (byte)1); kept.Add(block); }", "memory" },
    };

    [Theory]
    [MemberData(nameof(Deaths))]
    public async Task A_cell_that_ends_its_process_fails_its_notebook_and_the_others_run(string cell, string said)
    {
        NotebookDocument bad = SampleNotebook.Of("bad", "# Bad", "var a = 1;", cell, "3"),
            after = SampleNotebook.Of("after", "# After", "40 + 2");
        await using var engines = new ChildEngines(EngineKind.Script, Long);
        IReadOnlyList<ExecutedNotebook> executed = await Runner(engines).RunAsync([bad, after], null, default);

        Assert.Equal([false, true], executed.Select(notebook => notebook.Succeeded));
        ExecutedCodeCell failed = Assert.IsType<ExecutedCodeCell>(executed[0].Cells[^1]);
        Assert.Equal("c2", failed.Id);
        Assert.Contains(said, failed.Failure!.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", failed.Failure.Message, StringComparison.Ordinal);
        Assert.Equal("42", Assert.IsType<ExecutedCodeCell>(executed[1].Cells[1]).Outputs.Single().Data[MediaTypes.Plain]);
    }

    [Fact]
    public async Task A_notebook_that_ends_a_process_it_shares_is_run_again_and_then_blamed()
    {
        using var marks = new Marks();
        await using var engines = new ChildEngines(EngineKind.Interactive, Long);
        NotebookDocument before = SampleNotebook.Of("before", "# Before", "1");
        NotebookDocument after = SampleNotebook.Of("after", "# After", "2", marks.Set("after"));
        NotebookDocument bad = SampleNotebook.Of("bad", "# Bad", marks.Await("after"), "Environment.Exit(3);");
        IReadOnlyList<ExecutedNotebook> executed = await Runner(engines)
            .RunAsync([before, bad, after], null, default);
        Assert.Equal([true, false, true], executed.Select(notebook => notebook.Succeeded));
        Assert.Contains("exit code 3", executed[1].Cells.OfType<ExecutedCodeCell>().Last().Failure?.Message, StringComparison.Ordinal);
        Assert.Empty(engines.LeftRunning);
    }

    [Theory]
    [InlineData(EngineKind.Interactive)]
    [InlineData(EngineKind.Script)]
    public async Task An_endless_cell_is_ended_at_the_limit(EngineKind kind)
    {
        await using var engines = new ChildEngines(kind, TimeSpan.FromSeconds(10));
        IReadOnlyList<ExecutedNotebook> executed = await Runner(engines).RunAsync(
            [SampleNotebook.Of("endless", "# Endless", "while (true) { }"), SampleNotebook.Of("after", "# After", "1")], null, default);
        Assert.Contains("longer than 10 s", executed[0].Cells.OfType<ExecutedCodeCell>()
            .Single().Failure?.Message, StringComparison.Ordinal);
        Assert.Contains("--cell-limit", executed[0].Cells.OfType<ExecutedCodeCell>().Single().Failure?.Message, StringComparison.Ordinal);
        Assert.True(executed[1].Succeeded);
    }

    [Fact]
    public async Task More_output_than_a_page_takes_fails_the_cell()
    {
        await using var engines = new ChildEngines(EngineKind.Interactive, Long);
        await using ICellEngine engine = await engines.StartAsync(SampleNotebook.Of("any", "# Any"));
        Assert.Equal(9_999_999, (await engine.RunAsync("Console.Write(new string('x', 9_999_999));", default)).Outputs.Single().Data[
            MediaTypes.Plain].Length);
        CellRun run = await engine.RunAsync("Console.Write(new string('x', 12_000_000));", default);
        Assert.Contains("12 million characters", run.Failure?.Message, StringComparison.Ordinal);
        Assert.Empty(run.Outputs);
        Assert.Null((await engine.RunAsync("1", default)).Failure);
    }

    [Fact]
    public async Task What_a_notebook_left_running_is_not_blamed_on_the_next()
    {
        using var marks = new Marks();
        NotebookDocument careless = SampleNotebook.Of("careless", "# Careless",
            $"new System.Threading.Thread(() => {{ {marks.Await("next")} throw new Exception(\"late\"); }}).Start();");
        // Its first run ends with the process, where it waits in vain; its second goes on at once.
        NotebookDocument next = SampleNotebook.Of("next", "# Next", "var a = 20;", $"if (!{marks.IsSet("next")})\n{{\n"
            + $"    {marks.Set("next")}\n    System.Threading.Thread.Sleep(60_000);\n}}", "a + 1");
        await using var engines = new ChildEngines(EngineKind.Interactive, Long);
        IReadOnlyList<ExecutedNotebook> executed = await Runner(engines).RunAsync([careless, next], null, default);
        Assert.True(executed[1].Succeeded, executed[1].Cells.OfType<ExecutedCodeCell>().Last().Failure?.Message);
        Assert.Equal("21", Assert.IsType<ExecutedCodeCell>(executed[1].Cells[^1]).Outputs.Single().Data[MediaTypes.Plain]);
        Assert.Equal(["careless: after its last cell the process that ran it ended: something that the cell left running failed: late. "
            + "Its page is whole."], engines.LeftRunning);
    }

    [Theory]
    [InlineData("throw new Exception(\"late\");", "that the cell left running failed: late")]
    [InlineData("Environment.FailFast(\"gone\");", "broke off")]
    public async Task What_the_last_cell_left_running_loses_no_page_and_is_told(string end, string said)
    {
        string cell = $"new System.Threading.Thread(() => {{ System.Threading.Thread.Sleep(1_500); {end} }}).Start();\n40 + 2";
        await using var engines = new ChildEngines(EngineKind.Script, Long);
        ExecutedNotebook executed =
            (await Runner(engines).RunAsync([SampleNotebook.Of("careless", "# Careless", cell)], null, default))
            .Single();
        Assert.Equal("42", Assert.IsType<ExecutedCodeCell>(executed.Cells[1]).Outputs.Single().Data[MediaTypes.Plain]);
        for (int i = 0; i < 200 && engines.LeftRunning.Count == 0; i++)
        {
            await Task.Delay(100);
        }

        Assert.Contains(said, Assert.Single(engines.LeftRunning), StringComparison.Ordinal);
        Assert.StartsWith("careless: after its last cell", engines.LeftRunning[0], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_notebook_that_leaves_a_failed_task_nobody_waits_for_ends_nothing()
    {
        NotebookDocument careless =
            SampleNotebook.Of("careless", "# Careless", "_ = System.Threading.Tasks.Task.Run(() => throw new Exception(\"unseen\"));",
            "System.Threading.Thread.Sleep(200); GC.Collect(); GC.WaitForPendingFinalizers(); 7");
        await using var engines = new ChildEngines(EngineKind.Script, Long);
        ExecutedNotebook executed = (await Runner(engines).RunAsync([careless], null, default)).Single();
        Assert.True(executed.Succeeded);
        Assert.Empty(engines.LeftRunning);
    }

    [Fact]
    public async Task What_a_cell_writes_past_its_engine_disturbs_nothing()
    {
        await using var engines = new ChildEngines(EngineKind.Interactive, Long);
        await using ICellEngine engine = await engines.StartAsync(SampleNotebook.Of("any", "# Any"));
        CellRun run = await engine.RunAsync(
            "using (var raw = Console.OpenStandardOutput()) raw.Write(\"{ stray\\n"
                + "{\\\"Engine\\\":\"u8);\nConsole.ReadLine() ?? \"nothing to read\"", default);
        Assert.Equal("nothing to read", run.Outputs.Single().Data[MediaTypes.Plain]);
    }

    [Fact]
    public async Task Notebooks_do_not_see_each_other()
    {
        await using var engines = new ChildEngines(EngineKind.Interactive, Long);
        IReadOnlyList<ExecutedNotebook> executed = await Runner(engines).RunAsync(
            [SampleNotebook.Of("one", "# One", "var a = 1;"), SampleNotebook.Of("two", "# Two", "a")], null, default);
        Assert.Contains("'a' does not exist", executed[1].Cells.OfType<ExecutedCodeCell>()
            .Single().Failure?.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("01-brake-balance")]
    [InlineData("lessons/01-static-load")]
    public async Task The_outputs_are_the_same_as_in_one_process(string name)
    {
        NotebookDocument notebook = NotebookFile.Read(RepositoryRoot.File($"notebooks/{name}.ipynb"));
        ExecutedNotebook here = (await EnginesCollection.RunAsync(EngineKind.Interactive, [notebook])).Single();
        await using var engines = new ChildEngines(EngineKind.Interactive, Long);
        ExecutedNotebook there = (await Runner(engines).RunAsync([notebook], null, default)).Single();
        Assert.True(here.Succeeded && there.Succeeded);
        Assert.Equal(Texts(here), Texts(there));

        static IEnumerable<string> Texts(ExecutedNotebook executed) =>
            executed.Cells.OfType<ExecutedCodeCell>().SelectMany(cell => cell.Outputs)
                .SelectMany(output => output.Data.Select(form => $"{form.Key}: {form.Value}"));
    }

    [Fact]
    public async Task A_cell_that_is_stopped_by_the_user_ends_the_run()
    {
        using var marks = new Marks();
        using var stop = new CancellationTokenSource();
        await using var engines = new ChildEngines(EngineKind.Interactive, Long);
        Task<IReadOnlyList<ExecutedNotebook>> run = Runner(engines).RunAsync(
            [SampleNotebook.Of("endless", "# Endless", marks.Set("running") + "\nwhile (true) { }")], null, stop.Token);
        await Commands.Program.UntilAsync(() => marks.Has("running"), "the cell runs");
        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => run);
    }

    [Fact]
    public async Task Notebooks_beside_one_another_print_each_into_its_own_cell()
    {
        const string Cell = "for (int i = 0; i < 20; i++)\n{\n    Console.Write(word);\n    System.Threading.Thread.Sleep(20);\n}";
        await using var engines = new ChildEngines(EngineKind.Interactive, Long);
        IReadOnlyList<ExecutedNotebook> executed = await Runner(engines).RunAsync(
            [.. new[] { "a", "b", "c" }.Select(word => SampleNotebook.Of(word, "# Prints", $"var word = \"{word}\";", Cell))],
            null, default);
        Assert.Equal([new string('a', 20), new string('b', 20), new string('c', 20)],
            executed.Select(notebook => notebook.Cells.OfType<ExecutedCodeCell>().Last().Outputs.Single().Data[MediaTypes.Plain]));
    }

    [Fact]
    public async Task Two_notebooks_that_each_end_the_process_they_share_are_both_blamed()
    {
        using var marks = new Marks();
        await using var engines = new ChildEngines(EngineKind.Interactive, Long);
        IReadOnlyList<ExecutedNotebook> executed = await Runner(engines).RunAsync(
        [
            SampleNotebook.Of("one", "# One", marks.Set("one") + marks.Await("two"), "Environment.Exit(3);"),
            SampleNotebook.Of("two", "# Two", marks.Set("two") + marks.Await("one"), "Environment.Exit(4);"),
            SampleNotebook.Of("three", "# Three", "3"),
        ], null, default);
        Assert.Equal([false, false, true], executed.Select(notebook => notebook.Succeeded));
        Assert.Contains("exit code 3", executed[0].Cells.OfType<ExecutedCodeCell>().Last().Failure?.Message, StringComparison.Ordinal);
        Assert.Contains("exit code 4", executed[1].Cells.OfType<ExecutedCodeCell>().Last().Failure?.Message, StringComparison.Ordinal);
        Assert.Empty(engines.LeftRunning);
    }

    /// <summary>Marks by which the cells of notebooks that run beside one another wait for each other; they outlast a process.</summary>
    private sealed class Marks : IDisposable
    {
        private readonly TemporaryFolder _folder = new();

        public void Dispose() => _folder.Dispose();

        public bool Has(string name) => File.Exists(_folder.File(name));

        public string IsSet(string name) => $"System.IO.File.Exists({Quoted(name)})";

        public string Set(string name) => $"System.IO.File.WriteAllText({Quoted(name)}, \"\");";

        /// <summary>Waits for a mark, and then until the cell that set it has told that it is done.</summary>
        public string Await(string name) =>
            $"while (!{IsSet(name)}) System.Threading.Thread.Sleep(20); System.Threading.Thread.Sleep(1_000);";

        private string Quoted(string name) => $"@\"{_folder.File(name)}\"";
    }

    private static NotebookRunner Runner(ChildEngines engines) => new(engines.StartAsync, engines.Kind == EngineKind.Script ? 1 : 2);
}
