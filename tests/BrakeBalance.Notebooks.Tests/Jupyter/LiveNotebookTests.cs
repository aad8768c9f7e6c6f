using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Jupyter;
using BrakeBalance.Notebooks.Tests.Browser;
using BrakeBalance.Notebooks.Tests.Commands;

namespace BrakeBalance.Notebooks.Tests.Jupyter;

/// <summary>Notebook 01 in a real notebook server: values under the pointer, controls, an edited knee, a bad one.</summary>
public class LiveNotebookTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    private const string Marked =
        "Jupyter.notebook.get_cells().find(cell => cell.cell_type === 'code' && /change me/.test(cell.get_text()))";

    [SkippableFact]
    public async Task A_reader_points_moves_and_edits()
    {
        JupyterClientTests.SkipWhereItCannotRun("jupyter-notebook");
        using var folder = new TemporaryFolder();
        string[] own = [.. new[] { "notebooks", "jupyter" }.Select(name => Directory.CreateDirectory(folder.File(name)).FullName)];
        foreach (string name in new[] { "src", "data" })
        {
            Directory.CreateSymbolicLink(folder.File(name), RepositoryRoot.File(name));
        }

        foreach (string name in new[] { "Notebooks.sln", "notebooks/_setup.csx", "notebooks/01-brake-balance.ipynb" })
        {
            File.Copy(RepositoryRoot.File(name), folder.File(name));
        }

        new KernelSetup(own[1]).Install(JupyterClientTests.Program);
        int port = FreePort();
        using Process server = Start(own[0], own[1], port);
        try
        {
            await using WatchedPage page = await OpenAsync($"http://127.0.0.1:{port}/notebooks/01-brake-balance.ipynb", port);
            await page.Page.WaitForExpressionAsync(
                "globalThis.Jupyter?.notebook?._fully_loaded && Jupyter.notebook.kernel?.is_connected()", new() { Timeout = 60_000 });
            await page.Page.EvaluateExpressionAsync("Jupyter.notebook.set_autosave_interval(0); Jupyter.notebook.execute_all_cells()");
            await WaitAsync(page, "document.querySelectorAll('.bb-static[tabindex]').length > 10 && !document.querySelector('.running')");
            Assert.Equal(0, await page.Page.EvaluateExpressionAsync<int>("document.querySelectorAll('.output_error').length"));

            double[] middle = await page.Page.EvaluateExpressionAsync<double[]>(
                """
                (frame => {
                  frame.scrollIntoView({ block: "center" });
                  const box = frame.getBoundingClientRect();
                  return [box.x + box.width / 2, box.y + box.height / 2];
                })(document.querySelector("#brake-forces .bb-static"))
                """);
            await page.Page.Mouse.MoveAsync((decimal)middle[0], (decimal)middle[1]);
            Assert.Matches(@"Front brake force [\d.]+\u00a0kN", await page.Page.EvaluateExpressionAsync<string>(
                "document.querySelector('#brake-forces .bb-read')?.textContent || ''"));

            const string Shown = "document.querySelector('.bb-explorable .bb-state').textContent";
            string before = await page.Page.EvaluateExpressionAsync<string>(Shown);
            await page.Page.FocusAsync(".bb-controls input[type=range]");
            await page.Page.Keyboard.PressAsync("End");
            await WaitAsync(page, "document.querySelector('.bb-explorable').dataset.moved > 0");
            Assert.NotEqual(before, await page.Page.EvaluateExpressionAsync<string>(Shown));

            await EditAsync(page, "= [];", "= ['hydraulics.rearValves[0].knee=30 bar'];");
            await WaitAsync(page, @"/30\.0\sbar/.test(document.querySelector('#line-pressures .bb-title')?.textContent)");

            await EditAsync(page, "=30 bar\\\"];", "=30 barr\\\"];");
            await WaitAsync(page, "document.querySelectorAll('.output_error').length > 3");
            string[] errors = await page.Page.EvaluateExpressionAsync<string[]>(
                "[...document.querySelectorAll('.output_error')].map(error => error.textContent)");
            Assert.Contains("rearValves[0].knee: \"barr\" is not a unit of pressure. Accepted:", errors[0], StringComparison.Ordinal);
            Assert.All(errors.Skip(1), error => Assert.Contains("rests on a cell that failed", error, StringComparison.Ordinal));
            Assert.All(errors, error => Assert.DoesNotContain("   at ", error, StringComparison.Ordinal));
        }
        finally
        {
            server.Kill(entireProcessTree: true);
            await server.WaitForExitAsync();
        }
    }

    private static Task WaitAsync(WatchedPage page, string until) => page.Page.WaitForExpressionAsync(until, new() { Timeout = 60_000 });

    // The reader changes the marked line and runs it with all cells below.
    private static Task EditAsync(WatchedPage page, string from, string to) => page.Page.EvaluateExpressionAsync(
        $"(cell => {{ cell.set_text(cell.get_text().replace(\"{from}\", \"{to}\".replaceAll(\"'\", '\"')));"
            + $"Jupyter.notebook.select(Jupyter.notebook.find_cell_index(cell)); Jupyter.notebook.execute_cells_below(); }})({Marked})");

    // The server takes a moment until it answers.
    private async Task<WatchedPage> OpenAsync(string address, int port)
    {
        using var client = new HttpClient();
        for (int tries = 0; ; tries++)
        {
            try
            {
                await client.GetStringAsync(new Uri($"http://127.0.0.1:{port}/api"));
                return await browser.OpenAsync(address);
            }
            catch (HttpRequestException) when (tries < 150)
            {
                await Task.Delay(200);
            }
        }
    }

    private static Process Start(string notebooks, string jupyter, int port)
    {
        var start = new ProcessStartInfo("jupyter-notebook",
            [
                "--no-browser", "--ip=127.0.0.1", $"--port={port}", "--allow-root", "--NotebookApp.token=", "--NotebookApp.password=",
                $"--notebook-dir={notebooks}",
            ])
        { RedirectStandardError = true, RedirectStandardOutput = true, WorkingDirectory = notebooks };
        foreach (string name in new[] { "PATH", "CONFIG_DIR", "DATA_DIR", "RUNTIME_DIR" })
        {
            start.Environment["JUPYTER_" + name] = name == "PATH" ? jupyter : Path.Combine(jupyter, name);
        }

        Process server = Process.Start(start)!;
        server.BeginErrorReadLine();
        server.BeginOutputReadLine();
        return server;
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
