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
public class JupyterClientTests
{
    [SkippableFact]
    public async Task A_Jupyter_client_gets_the_same_outputs_as_our_pages()
    {
        SkipWhereItCannotRun("jupyter-nbconvert");
        string notebook = NotebookFile.In(RepositoryRoot.File("notebooks"))
            .First(path => Path.GetFileName(path).StartsWith("01-", StringComparison.Ordinal));
        using var folder = new TemporaryFolder();
        new KernelSetup(folder.File("jupyter")).Install(Program);

        List<List<IReadOnlyDictionary<string, string>>> theirs = Outputs(await ConvertAsync(notebook, folder.File("jupyter")));
        ExecutedNotebook executed =
            (await EnginesCollection.RunAsync(EngineKind.Interactive, [NotebookFile.Read(notebook)])).Single();
        ExecutedCodeCell[] ours = [.. executed.Cells.OfType<ExecutedCodeCell>()];

        Assert.True(executed.Succeeded);
        Assert.Equal(ours.Length, theirs.Count);

        Assert.Contains(theirs.SelectMany(outputs => outputs), output => output.ContainsKey("image/svg+xml")
            && JsonNode.Parse(output["application/vnd.plotly.v1+json"])!["data"]!.AsArray().Count > 0);

        // Before the first cell's own come the style and scripts of all figures.
        theirs[0].RemoveAt(0);
        for (int cell = 0; cell < ours.Length; cell++)
        {
            Assert.Equal(ours[cell].Outputs.Count, theirs[cell].Count);
            foreach ((CellOutput own, IReadOnlyDictionary<string, string> other) in ours[cell].Outputs.Zip(theirs[cell]))
            {
                foreach ((string mediaType, string content) in own.Data)
                {
                    if (mediaType.EndsWith("json", StringComparison.Ordinal))
                    {
                        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(content), JsonNode.Parse(other[mediaType])), mediaType);
                        continue;
                    }

                    Assert.Equal(content.TrimEnd('\n'), other[mediaType].TrimEnd('\n'));
                }
            }
        }
    }

    /// <summary>The program, beside the tests.</summary>
    internal static string Program => typeof(KernelSetup).Assembly.Location;

    internal static void SkipWhereItCannotRun(string program)
    {
        if (Environment.GetEnvironmentVariable("CI") is not null)
        {
            return;
        }

        Skip.IfNot((Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Any(path => File.Exists(Path.Combine(path, program))),
            $"{program} is not installed.");
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

        return JsonNode.Parse(output)!;
    }

    private static List<List<IReadOnlyDictionary<string, string>>> Outputs(JsonNode notebook) =>
    [
        .. notebook["cells"]!.AsArray().Where(cell => (string?)cell!["cell_type"] == "code").Select(cell =>
            cell!["outputs"]!.AsArray().Select(Data).ToList()),
    ];

    private static IReadOnlyDictionary<string, string> Data(JsonNode? output) => (string?)output!["output_type"] == "stream"
        ? new Dictionary<string, string> { ["text/plain"] = Text(output["text"]) }
        : output["data"]!.AsObject().ToDictionary(pair => pair.Key,
            pair => pair.Value is JsonObject chart ? chart.ToJsonString() : Text(pair.Value));

    private static string Text(JsonNode? node) =>
        node is JsonArray lines ? string.Concat(lines.Select(line => (string?)line)) : (string?)node ?? "";
}
