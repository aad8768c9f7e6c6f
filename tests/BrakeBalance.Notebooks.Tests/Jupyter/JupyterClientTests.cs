using System.Diagnostics;
using System.Text.Json.Nodes;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Execution;
using BrakeBalance.Notebooks.Jupyter;
using BrakeBalance.Notebooks.Tests.Commands;

namespace BrakeBalance.Notebooks.Tests.Jupyter;

/// <summary>
/// Notebook 01 in a real Jupyter client shows what our pages show: each output the same text, figures and their data included.
/// </summary>
[Collection(EnginesCollection.Name)]
public class JupyterClientTests
{
    [SkippableFact]
    public async Task A_Jupyter_client_gets_the_same_outputs_as_our_pages()
    {
        SkipWhereItCannotRun("jupyter-nbconvert");
        string notebook = NotebookFile.In(RepositoryRoot.File("notebooks"))
            .First(path => Path.GetFileName(path).StartsWith("01-", StringComparison.Ordinal));
        using var folder = new TemporaryFolder();
        string tool = await KernelTool.FolderAsync(RepositoryRoot.File("."), default);
        new KernelSetup(folder.File("jupyter")).Install(tool, AppContext.BaseDirectory);

        List<List<IReadOnlyDictionary<string, string>>> theirs = Outputs(await ConvertAsync(notebook, folder.File("jupyter")));
        ExecutedNotebook executed =
            (await new NotebookRunner(EngineKind.Interactive).RunAsync([NotebookFile.Read(notebook)], null, default)).Single();
        ExecutedCodeCell[] ours = [.. executed.Cells.OfType<ExecutedCodeCell>()];

        Assert.True(executed.Succeeded);
        Assert.Equal(ours.Length, theirs.Count);

        // The first cell's output in a Jupyter client is the kernel's own start script.
        for (int cell = 1; cell < ours.Length; cell++)
        {
            Assert.Equal(ours[cell].Outputs.Count, theirs[cell].Count);
            foreach ((CellOutput own, IReadOnlyDictionary<string, string> other) in ours[cell].Outputs.Zip(theirs[cell]))
            {
                foreach ((string mediaType, string content) in own.Data)
                {
                    Assert.Equal(content.TrimEnd('\n'), other[mediaType].TrimEnd('\n'));
                }
            }
        }
    }

    internal static void SkipWhereItCannotRun(string program)
    {
        if (Environment.GetEnvironmentVariable("CI") is not null)
        {
            return;
        }

        Skip.IfNot((Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Any(path => File.Exists(Path.Combine(path, program))),
            $"{program} is not installed.");
        var release = new FileInfo(RepositoryRoot.File("src/BrakeBalance.Charts/bin/Release/net10.0/BrakeBalance.Charts.dll"));
        DateTime newestSource = Directory.EnumerateFiles(RepositoryRoot.File("src"), "*.cs", SearchOption.AllDirectories)
            .Where(path => !path.Contains("BrakeBalance.Notebooks", StringComparison.Ordinal)
                && !path.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Max(File.GetLastWriteTimeUtc);
        Skip.IfNot(release.Exists
            && release.LastWriteTimeUtc > newestSource, "The release build is older than the code: run 'dotnet build -c Release'.");
    }

    private static async Task<JsonNode> ConvertAsync(string notebook, string data)
    {
        var start = new ProcessStartInfo("jupyter",
            ["nbconvert", "--execute", "--to", "notebook", "--stdout", $"--ExecutePreprocessor.kernel_name={KernelSetup.Name}", notebook])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["JUPYTER_PATH"] = data;
        using Process process = Process.Start(start)!;
        Task<string> error = process.StandardError.ReadToEndAsync();
        string output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == 0, await error);

        // The kernel's host writes its log before the notebook.
        return JsonNode.Parse(output[output.IndexOf("{\n", StringComparison.Ordinal)..])!;
    }

    private static List<List<IReadOnlyDictionary<string, string>>> Outputs(JsonNode notebook) =>
    [
        .. notebook["cells"]!.AsArray().Where(cell => (string?)cell!["cell_type"] == "code").Select(cell =>
            cell!["outputs"]!.AsArray().Select(Data).ToList()),
    ];

    private static IReadOnlyDictionary<string, string> Data(JsonNode? output) => (string?)output!["output_type"] == "stream"
        ? new Dictionary<string, string> { ["text/plain"] = Text(output["text"]) }
        : output["data"]!.AsObject().ToDictionary(pair => pair.Key, pair => Text(pair.Value));

    private static string Text(JsonNode? node) =>
        node is JsonArray lines ? string.Concat(lines.Select(line => (string?)line)) : (string?)node ?? "";
}
