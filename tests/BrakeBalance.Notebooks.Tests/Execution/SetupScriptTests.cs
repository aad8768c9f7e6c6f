using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Execution;
using BrakeBalance.Notebooks.Tests.Commands;
using Microsoft.CodeAnalysis.CSharp.Scripting;
using Microsoft.CodeAnalysis.Scripting;

namespace BrakeBalance.Notebooks.Tests.Execution;

[Collection(EnginesCollection.Name)]
public class SetupScriptTests
{
    private static readonly string Setup = File.ReadAllText(RepositoryRoot.File("notebooks/_setup.csx"));

    [Fact]
    public void Where_nothing_is_built_the_error_says_what_to_run()
    {
        using var folder = new TemporaryFolder();
        ScriptOptions options = ScriptOptions.Default
            .WithFilePath(folder.File("notebooks/_setup.csx"))
            .WithMetadataResolver(ScriptMetadataResolver.Default.WithBaseDirectory(folder.File("notebooks")));

        string errors = string.Join('\n', CSharpScript.Create(Setup, options).Compile());
        Assert.Contains("NOT BUILT YET - in the folder of the repository run: dotnet build -c Release", errors);
    }

    [Fact]
    public void Every_stage_of_the_calculation_and_the_figures_are_at_hand()
    {
        IEnumerable<string?> stages = typeof(PerAxle<>).Assembly.GetExportedTypes().Select(type => type.Namespace)
            .Where(name => name is not null && !name.EndsWith(".Files", StringComparison.Ordinal));
        string?[] figures = ["BrakeBalance.Charts", "BrakeBalance.Charts.Figures", "BrakeBalance.Charts.Exploring"];
        foreach (string? name in stages.Concat(figures).Distinct())
        {
            Assert.Contains($"\nglobal using {name};\n", Setup);
        }
    }

    [Fact]
    public async Task No_name_at_hand_means_two_things()
    {
        Type[] types =
        [
            .. typeof(PerAxle<>).Assembly.GetExportedTypes()
                .Where(type => type.Namespace?.EndsWith(".Files", StringComparison.Ordinal) != true),
            .. typeof(NotebookInput).Assembly.GetExportedTypes()
                .Where(type => type.Namespace is "BrakeBalance.Charts" or "BrakeBalance.Charts.Figures" or "BrakeBalance.Charts.Exploring"),
        ];
        await using var engine = new ScriptEngine(RepositoryRoot.File("notebooks"));
        await engine.RunAsync("#load \"_setup.csx\"", default);
        string names = string.Join(", ", types.Where(type => !type.IsNested && !type.IsGenericType).Select(type => $"nameof({type.Name})"));
        Assert.Null((await engine.RunAsync($"string[] names = [{names}];", default)).Failure);
    }

    [Fact]
    public async Task A_failing_setup_fails_the_cell_that_loads_it_and_is_named()
    {
        using var folder = new TemporaryFolder();
        folder.Write("own.csx", "var a = 1;\nvar b = nothing;");
        await using var engine = new ScriptEngine(folder.Path);
        CellFailure? failure = (await engine.RunAsync("#load \"own.csx\"", default)).Failure;

        Assert.StartsWith("own.csx: ", failure?.Message);
        Assert.Equal((2, "var b = nothing;"), (failure?.Line, failure?.SourceLine));
    }
}
