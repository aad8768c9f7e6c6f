using System.Net;
using BrakeBalance.Balance;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Notebooks.Tests.Browser;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Notebooks.Tests.Pages;

/// <summary>Pages served by a web server and then used without it.</summary>
public class InstalledAppTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    [SkippableFact]
    public async Task Pages_that_were_served_once_open_and_compute_without_the_server()
    {
        string folder = Path.Combine(browser.Folder, "served");
        Site.Write([new SiteEntry(SampleNotebook.WithChart()), new SiteEntry(SampleNotebook.Create())], folder, new SiteOptions());
        int port = Random.Shared.Next(20_000, 60_000);
        string address = $"http://127.0.0.1:{port}/";
        var server = new HttpListener { Prefixes = { address } };
        server.Start();
        Task serving = Task.Run(() => ServeAsync(server, folder));
        await using WatchedPage page = await browser.OpenAsync(address + "01-chart.html");
        string kept = await page.Page.EvaluateExpressionAsync<string>(
            """
            (async () => {
              await navigator.serviceWorker.ready;
              const [name] = await caches.keys();
              return (await (await caches.open(name)).keys()).map(request => new URL(request.url).pathname).join();
            })()
            """);
        Assert.Contains("/assets/calculation.js", kept, StringComparison.Ordinal);
        Assert.Contains("/01-sample.html", kept, StringComparison.Ordinal);
        Assert.Contains("/assets/compiler.js", kept, StringComparison.Ordinal);
        var missing = await page.Page.Client.SendAsync<System.Text.Json.JsonElement>("Page.getInstallabilityErrors");
        Assert.Empty(missing.GetProperty("installabilityErrors").EnumerateArray().Select(error => error.ToString()));
        page.AssertQuietBut(address);
        server.Close();
        await serving;

        await page.Page.ReloadAsync();
        await page.Page.FocusAsync(".bb-controls input[type=range]");
        await page.Page.Keyboard.PressAsync("Home");
        await page.Page.WaitForExpressionAsync("document.querySelector('.bb-explorable').dataset.moved > 0", new() { Timeout = 60_000 });
        await page.Page.GoToAsync(address + "01-sample.html");
        Assert.Equal("Which axle locks first?", await page.Page.EvaluateExpressionAsync<string>("document.querySelector('h1').innerText"));
        await page.Page.GoToAsync(address);
        Assert.EndsWith("notebooks", await page.Page.GetTitleAsync(), StringComparison.Ordinal);
        await page.Page.EvaluateExpressionAsync(
            "navigator.serviceWorker.getRegistration().then(registration => registration.unregister())");
    }

    [SkippableFact]
    public async Task A_cell_is_edited_and_run_without_the_server_where_no_cell_was_edited_with_it()
    {
        const string Finding = "document.querySelector('#cell-brake-forces-figure .bb-title').innerText.replaceAll('\\u00a0', ' ')";
        const string Said = "document.querySelector('#cell-car .bb-run [role=status]')?.innerText";
        var patience = new PuppeteerSharp.WaitForFunctionOptions { Timeout = 120_000 };
        Vehicle car = VehicleFile.Load(RepositoryRoot.File("data/vehicles/coupe-1960s.json")).Vehicle;
        string Title(Vehicle vehicle) =>
            BalanceFigures.BrakeForces(new BalanceModel(vehicle, vehicle.LoadCases[0])).Title.Replace('\u00a0', ' ');
        string changed = Title(car.WithRearKnee(Pressure.FromBars(45)));
        Assert.NotEqual(Title(car), changed);
        string folder = Path.GetDirectoryName(await RenderedNotebooks.PageAsync("01-brake-balance"))!;
        string address = $"http://127.0.0.1:{Random.Shared.Next(20_000, 60_000)}/";
        var server = new HttpListener { Prefixes = { address } };
        server.Start();
        Task serving = Task.Run(() => ServeAsync(server, folder));
        await using WatchedPage page = await browser.OpenAsync(address + "01-brake-balance.html", 390);
        await page.Page.EvaluateExpressionAsync("navigator.serviceWorker.ready.then(() => true)");
        server.Close();
        await serving;

        await page.Page.SetOfflineModeAsync(true);
        await page.Page.ReloadAsync();
        Assert.Contains(Title(car), await page.Page.EvaluateExpressionAsync<string>(Finding), StringComparison.Ordinal);
        await page.Page.EvaluateExpressionAsync("document.querySelector('#cell-car [aria-label^=Edit]').click()");
        await page.Page.WaitForExpressionAsync(Said + " === 'Ready.'", patience);
        await page.Page.EvaluateExpressionAsync(
            """
            (() => {
              const area = document.querySelector("#cell-car textarea");
              area.value = area.value.replace("changes = []", 'changes = ["hydraulics.rearValves[0].knee=45 bar"]');
              area.dispatchEvent(new Event("input", { bubbles: true }));
              document.querySelector("#cell-car [aria-label^='Run from here']").click();
            })()
            """);
        await page.Page.WaitForExpressionAsync(Said + ".startsWith('Ran in ')", patience);
        Assert.Contains(changed, await page.Page.EvaluateExpressionAsync<string>(Finding), StringComparison.Ordinal);
        await page.Page.SetOfflineModeAsync(false);
        await page.Page.EvaluateExpressionAsync("localStorage.clear(); "
            + "navigator.serviceWorker.getRegistration().then(registration => registration.unregister())");
    }

    [Fact]
    public void Another_rendering_has_another_name_and_the_same_has_the_same()
    {
        string Worker(string text) => InstalledApp.Files([("a.html", text)], "a.html").Single(file => file.Name == "sw.js").Text;
        Assert.Equal(Worker("one"), Worker("one"));
        Assert.NotEqual(Worker("one"), Worker("two"));
    }

    private static async Task ServeAsync(HttpListener server, string folder)
    {
        try
        {
            while (true)
            {
                HttpListenerContext asked = await server.GetContextAsync();
                string file = Path.Combine(folder, asked.Request.Url!.AbsolutePath.TrimStart('/'));
                asked.Response.StatusCode = File.Exists(file) ? 200 : 404;
                asked.Response.ContentType = Path.GetExtension(file) switch
                {
                    ".html" => "text/html; charset=utf-8",
                    ".js" => "text/javascript; charset=utf-8",
                    ".svg" => "image/svg+xml",
                    ".webmanifest" => "application/manifest+json",
                    _ => "text/plain; charset=utf-8",
                };
                if (File.Exists(file))
                {
                    await asked.Response.OutputStream.WriteAsync(await File.ReadAllBytesAsync(file));
                }

                asked.Response.Close();
            }
        }
        catch (Exception exception) when (exception is HttpListenerException or ObjectDisposedException)
        {
            // The server was closed.
        }
    }
}
