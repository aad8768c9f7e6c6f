using BrakeBalance.Notebooks.Tests.Browser;
using PuppeteerSharp;
using PuppeteerSharp.Media;

namespace BrakeBalance.Notebooks.Tests.Pages;

/// <summary>What a reader of a notebook page sees first, and where the page's links lead.</summary>
public class FirstScreenTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    private const string Seen =
        """
        (() => {
          const first = document.querySelector(".bb-first"), inside = box => box.top >= 0 && box.bottom <= innerHeight && box.height > 10;
          const boxOf = element => element.getBoundingClientRect();
          const picture = [...first.querySelectorAll(".bb-static")].find(part => part.offsetHeight > 100);
          const bar = first.querySelector(".bb-controls"), control = first.querySelector(".bb-controls :is(input, select)");
          const faults = [];
          if (!inside(boxOf(document.querySelector("h1")))) faults.push("title");
          if (!inside(boxOf(first.querySelector(".bb-title")))) faults.push("finding");
          if (!(boxOf(first.querySelector(".bb-title")).bottom <= boxOf(picture).top)) faults.push("finding below the picture");
          if (!inside(boxOf(picture))) faults.push(`picture ends at ${boxOf(picture).bottom}`);
          if (control && bar.checkVisibility({ visibilityProperty: true })) {
            const box = boxOf(control), hit = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
            if (!inside(box) || hit !== control) faults.push(`control at ${box.top}`);
            const beside = boxOf(bar).left >= boxOf(picture).right, below = boxOf(bar).top >= boxOf(picture).bottom;
            if (!beside && !below) faults.push(`controls at ${boxOf(bar).top} cover the picture to ${boxOf(picture).bottom}`);
          }
          return faults.join("; ");
        })()
        """;

    public static TheoryData<string> Names => RenderedNotebooks.Names;

    [SkippableTheory]
    [MemberData(nameof(Names))]
    public async Task It_opens_with_its_finding_its_picture_and_its_first_control(string name)
    {
        foreach ((int width, int height, bool script) in
            new[] { (1280, 900, true), (390, 844, true), (1280, 900, false), (390, 844, false) })
        {
            await using WatchedPage page = await browser.OpenAsync(
                await RenderedNotebooks.PageAsync(name), width, height, script: script, far: script);
            Assert.Equal("", await page.Page.EvaluateExpressionAsync<string>(Seen));
        }
    }

    [SkippableTheory]
    [MemberData(nameof(Names))]
    public async Task Each_link_of_the_contents_lands_on_its_heading(string name)
    {
        foreach (int width in new[] { 1280, 390 })
        {
            await using WatchedPage page = await browser.OpenAsync(await RenderedNotebooks.PageAsync(name), width, 900, far: true);
            await page.Page.EmulateMediaFeaturesAsync(
                [new MediaFeatureValue { MediaFeature = MediaFeature.PrefersReducedMotion, Value = "reduce" }]);
            string[] off = await page.Page.EvaluateFunctionAsync<string[]>(
                """
                async () => {
                  const frame = () => new Promise(done => requestAnimationFrame(done)), off = [];
                  const settled = async () => {
                    for (let was = -1, same = 0; same < 2; await frame()) {
                      same = scrollY === was ? same + 1 : 0;
                      was = scrollY;
                    }
                  };
                  const links = [...document.querySelectorAll(".bb-contents a")].map(link => link.hash.slice(1));
                  const wanted = parseFloat(getComputedStyle(document.documentElement).scrollPaddingTop);
                  for (const id of links.toReversed()) {
                    location.hash = id;
                    await settled();
                    const atEnd = Math.ceil(scrollY + innerHeight) >= document.documentElement.scrollHeight;
                    const top = document.getElementById(id).getBoundingClientRect().top;
                    if (!(Math.abs(top - wanted) <= 5 || atEnd && top > wanted && top < innerHeight)) off.push(`${id}: ${top - wanted}`);
                  }
                  return off;
                }
                """);
            Assert.Empty(off);
        }
    }

    [SkippableFact]
    public async Task A_caution_is_one_line_until_it_is_asked_for_and_whole_on_paper()
    {
        await using WatchedPage page = await browser.OpenAsync(await RenderedNotebooks.PageAsync("01-brake-balance"), far: true);
        const string Heights = "[document.querySelector('.bb-caution').offsetHeight, document.querySelector('.bb-rest').offsetHeight]";
        double[] folded = await page.Page.EvaluateExpressionAsync<double[]>(Heights);
        await page.Page.EvaluateExpressionAsync("document.querySelector('.bb-more').open = true");
        double[] open = await page.Page.EvaluateExpressionAsync<double[]>(Heights);
        await page.Page.EvaluateExpressionAsync("document.querySelector('.bb-more').open = false");
        await page.Page.EmulateMediaTypeAsync(MediaType.Print);
        double[] paper = await page.Page.EvaluateExpressionAsync<double[]>(Heights);

        Assert.InRange(folded[0], 20, 60);
        Assert.Equal(0, folded[1]);
        Assert.True(open[1] > 15 && paper[1] > 10, $"{open[1]} px open, {paper[1]} px on paper");
        Assert.Contains("A car whose rear axle locks first can spin",
            await page.Page.EvaluateExpressionAsync<string>("document.querySelector('.bb-rest').innerText"), StringComparison.Ordinal);
    }

    [SkippableFact]
    public async Task Text_has_one_left_edge_and_lines_of_38_to_68_characters()
    {
        foreach (int width in new[] { 1280, 390 })
        {
            await using WatchedPage page = await browser.OpenAsync(await RenderedNotebooks.PageAsync("01-brake-balance"), width, far: true);
            string[] faults = await page.Page.EvaluateFunctionAsync<string[]>(
                """
                () => {
                  const edge = document.querySelector("main > h1").getBoundingClientRect().left, faults = [];
                  for (const part of document.querySelectorAll("main > *, main .bb-figure, main .bb-explorable")) {
                    const off = Math.abs(part.getBoundingClientRect().left - edge);
                    if (part.offsetHeight > 0 && off > 1) faults.push(part.outerHTML.slice(0, 60));
                  }
                  for (const text of document.querySelectorAll("main > p:not(:has(math))")) {
                    const lines = Math.round(text.offsetHeight / parseFloat(getComputedStyle(text).lineHeight));
                    const most = text.innerText.length / Math.max(1, lines - 1), least = text.innerText.length / lines;
                    if (lines > 3 && (least > 68 || most < 38)) faults.push(`${least} to ${most}: ${text.innerText.slice(0, 40)}`);
                  }
                  return faults;
                }
                """);
            Assert.Empty(faults);
        }
    }

    [SkippableFact]
    public async Task Code_of_cells_that_show_nothing_opens_with_all_the_others_only()
    {
        string file = await RenderedNotebooks.PageAsync("01-brake-balance");
        const string Shown = "[...document.querySelectorAll('.bb-code')].filter(code => code.offsetHeight > 0 && (code.open || "
            + "code.querySelector('summary').offsetHeight > 0)).length";
        const string All = "document.querySelectorAll('.bb-code').length", Quiet = "document.querySelectorAll('.bb-quiet').length";
        await using WatchedPage page = await browser.OpenAsync(file, far: true);
        int all = await page.Page.EvaluateExpressionAsync<int>(All), quiet = await page.Page.EvaluateExpressionAsync<int>(Quiet);
        Assert.True(quiet > 0);
        Assert.Equal(all - quiet, await page.Page.EvaluateExpressionAsync<int>(Shown));
        Assert.Equal(0, await page.Page.EvaluateExpressionAsync<int>("document.querySelectorAll('.bb-code[open]').length"));
        await page.Page.ClickAsync("#bb-code-all");
        Assert.Equal(all, await page.Page.EvaluateExpressionAsync<int>(Shown));

        await using WatchedPage still = await browser.OpenAsync(file, script: false);
        Assert.Equal(all, await still.Page.EvaluateExpressionAsync<int>(Shown));
    }

    [SkippableFact]
    public async Task The_menu_of_all_pages_opens_by_keyboard_and_closes_by_escape()
    {
        await using WatchedPage page = await browser.OpenAsync(await RenderedNotebooks.PageAsync("01-brake-balance"), 390);
        await page.Page.FocusAsync(".bb-menu > summary");
        await page.Page.Keyboard.PressAsync("Enter");
        await page.Page.WaitForExpressionAsync("document.querySelector('.bb-menu nav').offsetHeight > 100");
        await page.AssertNoSidewaysScrollAsync();
        Assert.Equal("01-brake-balance.html",
            await page.Page.EvaluateExpressionAsync<string>("document.querySelector('.bb-menu [aria-current]').getAttribute('href')"));
        await page.AssertAccessibleAsync();
        await page.Page.Keyboard.PressAsync("Escape");
        await page.Page.WaitForExpressionAsync("!document.querySelector('.bb-menu').open");
        page.AssertQuiet();
    }
}
