using BrakeBalance.Notebooks.Tests.Browser;
using PuppeteerSharp;

namespace BrakeBalance.Notebooks.Tests.Pages;

/// <summary>The stop seen from above, as a reader plays it.</summary>
public class StopPagesTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    private const string Page = "06-what-happens-when-an-axle-locks";
    private const string Time = "Number(document.getElementById('above-time').value)";
    private const string Button = "document.querySelector('#above [data-play]')";

    [SkippableFact]
    public async Task It_plays_and_pauses()
    {
        await using WatchedPage page = await browser.OpenAsync(await RenderedNotebooks.PageAsync(Page));
        await page.Page.EvaluateExpressionAsync($"{Button}.scrollIntoView()");
        double before = await page.Page.EvaluateExpressionAsync<double>(Time);
        await page.Page.EvaluateExpressionAsync($"{Button}.click()");
        await page.Page.WaitForExpressionAsync($"{Time} > {before + 2}", new() { Timeout = 60_000 });
        await page.Page.EvaluateExpressionAsync($"{Button}.click()");
        Assert.Equal("Play", await page.Page.EvaluateExpressionAsync<string>($"{Button}.textContent"));
        double paused = await page.Page.EvaluateExpressionAsync<double>(Time);
        await Task.Delay(600);
        Assert.Equal(paused, await page.Page.EvaluateExpressionAsync<double>(Time));
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task With_reduced_motion_it_goes_one_step_at_a_time()
    {
        await using WatchedPage page = await browser.OpenAsync(await RenderedNotebooks.PageAsync(Page));
        await page.Page.EmulateMediaFeaturesAsync(
            [new MediaFeatureValue { MediaFeature = MediaFeature.PrefersReducedMotion, Value = "reduce" }]);
        await page.Page.ReloadAsync();
        Assert.Equal("Next step", await page.Page.EvaluateExpressionAsync<string>($"{Button}.textContent"));
        double before = await page.Page.EvaluateExpressionAsync<double>(Time);
        await page.Page.EvaluateExpressionAsync($"{Button}.click()");
        await page.Page.WaitForExpressionAsync("document.querySelector('#above').dataset.moved > 0", new() { Timeout = 60_000 });
        Assert.Equal(before + 1, await page.Page.EvaluateExpressionAsync<double>(Time));
        page.AssertQuiet();
    }
}
