using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Tests.Browser;
using BrakeBalance.Notebooks.Tests.Commands;

namespace BrakeBalance.Notebooks.Tests.Publishing;

public class ChartPageTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    [SkippableTheory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task A_chart_is_one_file_that_draws_itself_and_names_the_point_under_the_pointer(int width)
    {
        using var folder = new TemporaryFolder();
        (int code, string _, string error) = await Shell.RunAsync("figures", RepositoryRoot.File("data/vehicles/coupe-1960s.json"),
            "--figure", "braking-efficiency", "--format", "html", "--output", folder.Path);
        Assert.Equal((0, ""), (code, error));
        await using WatchedPage page = await browser.OpenAsync(folder.File("coupe-1960s-braking-efficiency-si.html"), width);
        await page.Page.WaitForSelectorAsync("#chart svg.main-svg", new() { Timeout = 30_000 });
        double[] at = await page.Page.EvaluateExpressionAsync<double[]>(
            "(() => { const box = document.querySelector('#chart .nsewdrag').getBoundingClientRect(); "
                + "return [box.left + box.width / 3, box.top, box.height]; })()");
        string named = "";
        for (int step = 1; step < 40 && named.Length == 0; step++)
        {
            await page.Page.Mouse.MoveAsync((decimal)at[0], (decimal)(at[1] + (at[2] * step / 40)));
            await Task.Delay(100);
            named = await page.Page.EvaluateExpressionAsync<string>(
                "document.querySelector('#chart .hoverlayer .hovertext')?.textContent ?? ''");
        }

        Assert.Contains("%", named, StringComparison.Ordinal);
        string title = await page.Page.EvaluateExpressionAsync<string>("document.querySelector('h1').innerText");
        Assert.Equal(title, await page.Page.GetTitleAsync());
        await page.AssertNoSidewaysScrollAsync();
        await page.AssertAccessibleAsync();
        page.AssertQuiet();
    }
}
