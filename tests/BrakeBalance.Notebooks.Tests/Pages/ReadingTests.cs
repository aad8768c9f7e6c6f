using System.Globalization;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Notebooks.Tests.Browser;

namespace BrakeBalance.Notebooks.Tests.Pages;

/// <summary>Values read from a drawing, where the pointer, a finger or the arrow keys are, are those that the figure was made of.</summary>
public class ReadingTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    private const string Read = "[...document.querySelectorAll('.bb-read > *')].map(line => line.textContent.replaceAll('\\u00a0', ' '))";

    private static readonly (double Bar, double Kilonewtons)[] Points = [(10, 1.55), (25, 4.2), (40, 3.05), (90, 7.95)];

    [SkippableTheory]
    [InlineData(1280, null)]
    [InlineData(390, null)]
    [InlineData(1280, "12 345,6")]
    [InlineData(390, "12.345,6")]
    [InlineData(1280, "12’345.6")]
    public async Task Each_marker_and_bar_tells_its_own_numbers(int width, string? number)
    {
        await using WatchedPage page = await browser.OpenAsync(Page(number), width);
        for (int i = 0; i < Points.Length; i++)
        {
            await PointAsync(page, $"[id$=-tests] :is(circle, path):nth-of-type({i + 1})", width);
            string force = Points[i].Kilonewtons.ToString("0.##", CultureInfo.InvariantCulture);
            Assert.Equal(
                [
                    "Tests", $"Line pressure {Points[i].Bar.ToString("0.#", CultureInfo.InvariantCulture)} bar",
                    $"Force {force.Replace('.', number?[^2] ?? '.')} kN",
                ],
                await page.Page.EvaluateExpressionAsync<string[]>(Read));
        }

        await PointAsync(page, "[id$=-turns] path:nth-of-type(2)", width);
        Assert.Equal(["Turns", "rear", $"Turns of it {(number ?? "12345.6")[..^2]} turns"],
            await page.Page.EvaluateExpressionAsync<string[]>(Read));
        await PointAsync(page, "h1", width);
        Assert.Empty(await page.Page.EvaluateExpressionAsync<string[]>(Read));
        await page.AssertNoSidewaysScrollAsync();
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task Arrow_keys_go_along_a_line_and_to_the_next()
    {
        await using WatchedPage page = await browser.OpenAsync(Page());
        for (int tab = 0; tab < 20; tab++)
        {
            await page.Page.Keyboard.PressAsync("Tab");
            if (await page.Page.EvaluateExpressionAsync<bool>("document.activeElement.matches('.bb-static')"))
            {
                break;
            }
        }

        Assert.Contains("Arrow keys", string.Join(' ', await page.Page.EvaluateExpressionAsync<string[]>(Read)), StringComparison.Ordinal);
        Assert.Equal(["Rise", "Line pressure 50 bar", "Force 4 kN"], (await page.Page.EvaluateExpressionAsync<string[]>(Read))[..3]);
        await page.AssertAccessibleAsync();
        await page.Page.Keyboard.PressAsync("ArrowRight");
        string[] along = await page.Page.EvaluateExpressionAsync<string[]>(Read);
        Assert.Equal("Rise", along[0]);
        Assert.NotEqual("Line pressure 50 bar", along[1]);
        await page.Page.Keyboard.PressAsync("ArrowUp");
        Assert.Equal("Tests", (await page.Page.EvaluateExpressionAsync<string[]>(Read))[0]);
        await page.Page.Keyboard.PressAsync("Escape");
        Assert.Empty(await page.Page.EvaluateExpressionAsync<string[]>(Read));
    }

    private string Page(string? number = null)
    {
        Figure forces = new FigureBuilder("forces", UnitSystem.Si).Title("Force over pressure").Describe("A caption.", "A description.")
            .X("Line pressure", "p", Measure.LinePressure, 0, 1e7).Y("Force", "F", Measure.BrakeForce, 0, 8000)
            .Line("rise", [0, 1e7], [0, 8000])
            .Points("tests", [.. Points.Select(point => point.Bar * 1e5)], [.. Points.Select(point => point.Kilonewtons * 1e3)],
                shape: Marker.Triangle)
            .Build();
        Figure turns = new FigureBuilder("parts", UnitSystem.Si).Title("Turns").Describe("A caption.", "A description.")
            .Categories("Axle", "front", "rear").Y("Turns of it", "", Measure.Pure("turns", "turns", 1, 1)).Bars("turns", [21345, 12345])
            .Build();
        string pieces = forces.ToHtml() + turns.ToHtml();
        pieces = number is null ? pieces : HouseStyle.Read($$"""{ "number": "{{number}}" }""", []).Style!.Numbered(pieces);
        string file = Path.Combine(browser.Folder, "reading.html");
        File.WriteAllText(file, PageShell.Html(new(
            "Reading", $"<main id=\"content\"><h1>Reading</h1>\n{pieces}</main>\n", [], false, true)));
        return file;
    }

    // Into the middle of a mark in the drawing that is shown, and on a phone by a tap.
    private static async Task PointAsync(WatchedPage page, string selector, int width)
    {
        double[] at = await page.Page.EvaluateFunctionAsync<double[]>(
            """
            selector => {
              const mark = [...document.querySelectorAll(selector)].find(one => one.getClientRects().length > 0);
              mark.scrollIntoView({ block: "center", behavior: "instant" });
              const box = mark.getBoundingClientRect();
              return [box.x + box.width / 2, box.y + box.height / 2];
            }
            """, selector);
        if (width < 600)
        {
            await page.Page.Touchscreen.TapAsync((decimal)at[0], (decimal)at[1]);
        }
        else
        {
            await page.Page.Mouse.MoveAsync((decimal)at[0], (decimal)at[1]);
        }
    }
}
