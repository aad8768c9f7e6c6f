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
