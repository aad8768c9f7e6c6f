using System.Globalization;
using BrakeBalance.Notebooks.Publishing;
using PuppeteerSharp;

namespace BrakeBalance.Benchmarks;

/// <summary>
/// How fast the live page is on this machine: from opening, in a browser that is running, to the first computed answer; from a slider to
/// the new picture, once the page has exercised its runtime (it does while nobody asks).
/// </summary>
internal static class PageSpeed
{
    private static readonly TimeSpan Settling = TimeSpan.FromSeconds(3);

    private const string Turn =
        """
        async () => {
          const range = document.querySelector("#live-dock input"), figure = document.querySelector("figure[data-figure=brake-forces]");
          const low = Number(range.min), reach = Number(range.max) - low, took = [];
          for (let i = 0; i < 60; i++) {
            const was = figure.querySelector("svg"), began = performance.now();
            range.value = low + reach * (0.1 + 0.012 * i);
            range.dispatchEvent(new Event("input"));
            while (figure.querySelector("svg") === was) await new Promise(resolve => setTimeout(resolve, 1));
            took.push(performance.now() - began);
            await new Promise(resolve => setTimeout(resolve, 60));
          }
          return took;
        }
        """;

    /// <summary>Reads both at the machine's own speed and at a fourth of it.</summary>
    /// <param name="file">The live page.</param>
    /// <param name="line">Told what was read, a line each.</param>
    public static async Task ReadAsync(string file, Action<string> line)
    {
        await using IBrowser browser = await Puppeteer.LaunchAsync(new LaunchOptions
        {
            ExecutablePath = Chromium.Executable ?? throw new IOException(Chromium.Missing),
            Headless = true,
            Args = ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-dev-shm-usage"],
        });

        // What asks the page is compiled on a page with nothing in it, not on the time of the one that is measured.
        await using (IPage blank = await browser.NewPageAsync())
        {
            await blank.SetViewportAsync(new ViewPortOptions { Width = 1280, Height = 900 });
            await blank.EmulateCPUThrottlingAsync(1);
            for (int i = 0; i < 3; i++)
            {
                await blank.GoToAsync("data:text/html,<p></p>");
                await blank.WaitForFunctionAsync("() => performance.now() > 500");
                await blank.EvaluateExpressionAsync<double>("performance.now()");
            }
        }

        foreach (int throttling in (int[])[1, 4])
        {
            await using IPage page = await browser.NewPageAsync();
            await Task.Delay(Settling);
            page.DefaultTimeout = 120_000;
            await page.SetViewportAsync(new ViewPortOptions { Width = 1280, Height = 900 });
            await page.EmulateCPUThrottlingAsync(throttling);
            await page.GoToAsync(new Uri(Path.GetFullPath(file)).AbsoluteUri);
            await page.WaitForFunctionAsync("() => document.documentElement.dataset.live");
            double live = await page.EvaluateExpressionAsync<double>("performance.now()");
            await page.WaitForFunctionAsync("() => document.documentElement.dataset.warm");
            double ready = await page.EvaluateExpressionAsync<double>("performance.now()");
            await page.WaitForFunctionAsync("() => document.querySelector('#live-answer').childElementCount > 0");
            double[] took = await page.EvaluateFunctionAsync<double[]>(Turn), sorted = [.. took.Order()];
            line(string.Create(CultureInfo.InvariantCulture, $"CPU throttling {throttling}: opening to the first computed answer ")
                + string.Create(CultureInfo.InvariantCulture, $"{live / 1000:0.0} s, exercised after {ready / 1000:0.0} s; ")
                + string.Create(CultureInfo.InvariantCulture, $"slider to the new picture, {took.Length} turns, ")
                + string.Create(CultureInfo.InvariantCulture, $"median {sorted[took.Length / 2]:0} ms, ")
                + string.Create(CultureInfo.InvariantCulture, $"95th percentile {sorted[(int)(0.95 * took.Length)]:0} ms"));
        }
    }
}
