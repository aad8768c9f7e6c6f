using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Execution;

namespace BrakeBalance.Notebooks.Tests.Execution;

[Collection(EnginesCollection.Name)]
public class CellEngineTests
{
    public static TheoryData<EngineKind> Kinds => [EngineKind.Interactive, EngineKind.Script];

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task A_cell_sees_what_earlier_cells_defined(EngineKind kind)
    {
        await using ICellEngine engine = await CellEngines.StartAsync(kind, NotebooksFolder);
        await engine.RunAsync("var knee = 38;", default);

        Assert.Equal("40", Plain(await engine.RunAsync("knee + 2", default)));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task The_setup_script_brings_the_assemblies_and_their_names(EngineKind kind)
    {
        await using ICellEngine engine = await CellEngines.StartAsync(kind, NotebooksFolder);
        Assert.Null((await engine.RunAsync("#load \"_setup.csx\"", default)).Failure);

        Assert.Equal("38.5 bar", Plain(await engine.RunAsync("Pressure.FromBars(38.5)", default)));
        Assert.Equal("True", Plain(await engine.RunAsync(
            $"(typeof(IHtmlOutput).Module.ModuleVersionId.ToString() == \"{typeof(IHtmlOutput).Module.ModuleVersionId}\").ToString()",
                default)));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task The_setup_script_serves_lessons_one_folder_down(EngineKind kind)
    {
        await using ICellEngine engine = await CellEngines.StartAsync(kind, Path.Combine(NotebooksFolder, "lessons"));

        Assert.Null((await engine.RunAsync("#load \"../_setup.csx\"", default)).Failure);
        Assert.Equal("2 kN", Plain(await engine.RunAsync("Force.FromKilonewtons(2)", default)));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task A_missing_setup_script_fails_the_cell_in_words(EngineKind kind)
    {
        await using ICellEngine engine = await CellEngines.StartAsync(kind, Path.GetTempPath());
        CellFailure? failure = (await engine.RunAsync("\n#load \"_nowhere.csx\"", default)).Failure;

        Assert.Contains("There is no file", failure?.Message);
        Assert.Equal(2, failure?.Line);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task Printed_text_comes_before_the_value_and_is_one_output(EngineKind kind)
    {
        await using ICellEngine engine = await CellEngines.StartAsync(kind, NotebooksFolder);
        CellRun run = await engine.RunAsync("Console.WriteLine(\"front\");\nConsole.WriteLine(\"rear\");\n\"sum\"", default);

        Assert.Equal(["front\nrear\n", "sum"], run.Outputs.Select(output => output.Data["text/plain"]));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task A_thrown_exception_names_the_line_and_gives_no_stack_trace(EngineKind kind)
    {
        await using ICellEngine engine = await CellEngines.StartAsync(kind, NotebooksFolder);
        CellRun run = await engine.RunAsync(
            "var zero = 0;\nConsole.WriteLine(\"before\");\nvar rate = new[] { 1, 0 }\n    .Select(n => 10 / n)\n    .ToArray();", default);

        Assert.Equal(new CellFailure("Attempted to divide by zero.", 4, ".Select(n => 10 / n)"), run.Failure);
        Assert.Equal("before\n", run.Outputs.Single().Data["text/plain"]);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task A_compiler_error_names_the_line(EngineKind kind)
    {
        await using ICellEngine engine = await CellEngines.StartAsync(kind, NotebooksFolder);
        CellFailure? failure = (await engine.RunAsync("var mass = 1200;\nvar load = mass * gravitas;", default)).Failure;

        Assert.Equal(2, failure?.Line);
        Assert.Equal("var load = mass * gravitas;", failure?.SourceLine);
        Assert.Contains("'gravitas' does not exist", failure?.Message);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task A_cell_after_a_failed_one_still_runs(EngineKind kind)
    {
        await using ICellEngine engine = await CellEngines.StartAsync(kind, NotebooksFolder);
        await engine.RunAsync("var knee = 38;", default);
        await engine.RunAsync("throw new InvalidOperationException(\"no\");", default);

        Assert.Equal("38", Plain(await engine.RunAsync("knee", default)));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task A_frame_comes_as_an_escaped_table_and_as_text(EngineKind kind)
    {
        await using ICellEngine engine = await CellEngines.StartAsync(kind, NotebooksFolder);
        await engine.RunAsync("#load \"_setup.csx\"", default);
        CellRun run = await engine.RunAsync(
            "new DataFrame(new DoubleDataFrameColumn(\"Knee [bar]\", "
                + "new[] { 38.5, 40 }), new StringDataFrameColumn(\"Set-up\", new[] { \"a<b\", \"c\" }))",
            default);

        IReadOnlyDictionary<string, string> data = run.Outputs.Single().Data;
        Assert.Contains("<th scope=\"col\" class=\"number\">Knee [bar]</th>", data["text/html"]);
        Assert.Contains("<td>a&lt;b</td>", data["text/html"]);
        Assert.Equal("Knee [bar]  Set-up\n      38.5  a<b\n      40.0  c", data["text/plain"]);
    }

    [Fact]
    public async Task Both_engines_give_the_same_outputs()
    {
        string[] cells =
        [
            "#load \"_setup.csx\"", "1.0 / 3", "new[] { 1, 2, 3 }", "\"text\"", "true", "Pressure.FromBars(1234567)", "(object?)null",
            "new Dictionary<string, double> { [\"front\"] = 0.6 }", "new List<Force> { Force.FromNewtons(1), Force.FromKilonewtons(2) }",
            "new DataFrame(new DoubleDataFrameColumn(\"z [–]\", new[] { 0.1 }))", "var a = 3;", "await Task.Delay(1); a",
        ];
        List<List<string>> all = [];
        foreach (EngineKind kind in new[] { EngineKind.Interactive, EngineKind.Script })
        {
            await using ICellEngine engine = await CellEngines.StartAsync(kind, NotebooksFolder);
            List<string> texts = [];
            foreach (string cell in cells)
            {
                CellRun run = await engine.RunAsync(cell, default);
                Assert.Null(run.Failure);
                texts.Add(string.Join("|",
                    run.Outputs.SelectMany(output => output.Data.OrderBy(pair => pair.Key).Select(pair => $"{pair.Key}={pair.Value}"))));
            }

            all.Add(texts);
        }

        Assert.Equal(all[0], all[1]);
        Assert.Equal("text/plain=0.333333", all[0][1]);
        Assert.Equal("text/plain=1, 2, 3", all[0][2]);
        Assert.Equal("text/plain=1 N, 2 kN", all[0][8]);
    }

    private static string NotebooksFolder => RepositoryRoot.File("notebooks");

    private static string Plain(CellRun run)
    {
        Assert.Null(run.Failure);
        return run.Outputs.Single().Data["text/plain"];
    }
}
