using BrakeBalance.Notebooks.Tests.Browser;
using PuppeteerSharp.Media;

namespace BrakeBalance.Notebooks.Tests.Pages;

/// <summary>Pages on a phone, in the dark, on paper, and with whatever fonts there are.</summary>
public class ReadablePagesTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    private const string SmallTexts =
        """
        (() => [...document.querySelectorAll("main svg text")].flatMap(text => {
          const svg = text.ownerSVGElement, style = getComputedStyle(text), box = text.getBoundingClientRect();
          if (box.height === 0 || /, 0\)$/.test(style.fill) || !text.textContent.trim()) return [];
          const view = svg.viewBox.baseVal, frame = svg.getBoundingClientRect();
          const scale = view && view.width > 0 ? Math.min(frame.width / view.width, frame.height / view.height) : 1;
          const size = parseFloat(style.fontSize) * scale;
          return size < 11 ? [`${size.toFixed(1)} px: ${text.textContent}`] : [];
        }))()
        """;

    public static TheoryData<string> Names => RenderedNotebooks.Names;

    [SkippableTheory]
    [MemberData(nameof(Names))]
    public async Task Text_in_figures_has_11_pixels_on_a_phone(string name)
    {
        string file = await RenderedNotebooks.PageAsync(name);
        await using WatchedPage page = await browser.OpenAsync(file, 390, 844, far: true);
        Assert.Empty(await page.Page.EvaluateExpressionAsync<string[]>(SmallTexts));
    }

    [SkippableTheory]
    [MemberData(nameof(Names))]
    public async Task Boxes_that_scroll_sideways_say_so_and_no_id_is_given_twice(string name)
    {
        await using WatchedPage page = await browser.OpenAsync(await RenderedNotebooks.PageAsync(name), 390, 844, far: true);
        string[] faults = await page.Page.EvaluateExpressionAsync<string[]>(
            """
            (() => {
              const ids = [...document.querySelectorAll("[id]")].map(element => element.id);
              const twice = ids.filter((id, i) => ids.indexOf(id) !== i).map(id => `id ${id} twice`);
              document.querySelectorAll("details").forEach(details => { details.open = true; });
              const mute = [...document.querySelectorAll("main *")].filter(box => {
                const style = getComputedStyle(box);
                return box.scrollWidth > box.clientWidth + 1 && /auto|scroll/.test(style.overflowX)
                  && !/local/.test(style.backgroundAttachment);
              });
              return [...twice, ...mute.map(box => box.outerHTML.slice(0, 80))];
            })()
            """);
        Assert.Empty(faults);
    }

    [SkippableFact]
    public async Task Drawings_are_dark_on_dark_pages_and_light_on_paper()
    {
        await using WatchedPage page = await browser.OpenAsync(await RenderedNotebooks.PageAsync("08-bench-sheets"), dark: true, far: true);
        const string Grounds = "[...document.querySelectorAll('.bb-drawing svg > rect')].map(ground => getComputedStyle(ground).fill)";
        string[] dark = await page.Page.EvaluateExpressionAsync<string[]>(Grounds);
        Assert.NotEmpty(dark);
        Assert.All(dark, colour => Assert.Equal("rgb(21, 25, 29)", colour));
        await page.Page.EmulateMediaTypeAsync(MediaType.Print);
        Assert.All(await page.Page.EvaluateExpressionAsync<string[]>(Grounds), colour => Assert.Equal("rgb(255, 255, 255)", colour));
    }

    [SkippableTheory]
    [InlineData("DejaVu Math TeX Gyre")]
    [InlineData("DejaVu Serif")]
    [InlineData("Liberation Serif")]
    public async Task A_subscript_hangs_below_its_letter_with_and_without_a_font_for_mathematics(string face)
    {
        await using WatchedPage page = await browser.OpenAsync(await RenderedNotebooks.PageAsync("01-brake-balance"), far: true);
        await page.Page.EvaluateExpressionAsync($"document.documentElement.style.setProperty('--math', '\"{face}\"')");
        double[] drops = await page.Page.EvaluateExpressionAsync<double[]>(
            """
            [...document.querySelectorAll("msub")].filter(sub => sub.offsetParent !== null || sub.getBoundingClientRect().height > 0)
              .map(sub => {
                const [letter, index] = sub.children, size = parseFloat(getComputedStyle(letter).fontSize);
                const pad = parseFloat(getComputedStyle(letter).paddingBottom);
                const a = letter.getBoundingClientRect(), b = index.getBoundingClientRect();
                return ((b.top + b.bottom) / 2 - (a.top + a.bottom - pad) / 2) / size;
              })
            """);
        Assert.True(drops.Length > 20);
        Assert.All(drops, drop => Assert.InRange(drop, 0.2, 0.75));
    }

    [SkippableFact]
    public async Task Short_tables_stay_whole_on_paper()
    {
        // What a printed page then shows is measured where pages are printed (PaperLayout); longer ones break between rows.
        await using WatchedPage page = await browser.OpenAsync(
            await RenderedNotebooks.PageAsync("05-from-test-stops-to-a-setting"), far: true);
        await page.Page.EmulateMediaTypeAsync(MediaType.Print);
        string[] split = await page.Page.EvaluateExpressionAsync<string[]>(
            """
            [...document.querySelectorAll("main table")].filter(table => table.offsetHeight > 0 && table.tBodies[0].rows.length <= 8
              && ![table, table.closest(".bb-table"), table.closest(".bb-scroll")].some(one =>
                one && getComputedStyle(one).breakInside === "avoid")).map(table => table.outerHTML.slice(0, 80))
            """);
        Assert.Empty(split);
    }
}
