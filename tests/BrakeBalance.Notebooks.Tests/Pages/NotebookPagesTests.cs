using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Execution;
using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Notebooks.Tests.Browser;
using PuppeteerSharp;
using PuppeteerSharp.Media;
using Xunit.Abstractions;

namespace BrakeBalance.Notebooks.Tests.Pages;

/// <summary>Every page of the repository's notebooks, as a reader opens it from disk.</summary>
[Collection(BrowserTests.Name)]
public class NotebookPagesTests(BrowserFixture browser, RenderedNotebooks notebooks, ITestOutputHelper output)
{
    private const long LargestPage = 500_000;

    public static TheoryData<string> Names => RenderedNotebooks.Names;

    [Fact]
    public void Every_formula_and_link_of_every_notebook_can_be_set()
    {
        foreach (string path in NotebookFile.In(RepositoryRoot.File("notebooks")))
        {
            NotebookDocument document = NotebookFile.Read(path);
            ExecutedCell[] prose = [.. document.Cells.Where(cell => !cell.IsCode)
                .Select(cell => new ExecutedMarkdownCell(cell.Id, cell.Source))];
            Assert.Empty(PageRenderer.Render(new ExecutedNotebook(document.Name, document.Title, prose), new SiteOptions()).Problems);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task The_page_without_the_shared_script_stays_small(string name)
    {
        long length = new FileInfo(await notebooks.PageAsync(name)).Length;
        Assert.True(length < LargestPage, $"{name}: {length} bytes");
    }

    [SkippableTheory]
    [MemberData(nameof(Names))]
    public async Task It_opens_quietly_and_fits_a_desk_and_a_phone(string name)
    {
        foreach (int width in new[] { 1280, 390 })
        {
            await using WatchedPage page = await browser.OpenAsync(await notebooks.PageAsync(name), width);
            await ScrollThroughAsync(page);
            await page.AssertNoSidewaysScrollAsync();
            Assert.Equal(0, await page.Page.EvaluateExpressionAsync<int>(
                "document.querySelectorAll('.bb-figure:has(.bb-live):not(.bb-on)').length"));
            page.AssertQuiet();
        }
    }

    [SkippableFact]
    public async Task The_first_chart_is_there_within_a_second_of_opening()
    {
        await using WatchedPage page = await browser.OpenAsync(await notebooks.PageAsync("01-brake-balance"));
        await page.Page.EvaluateFunctionOnNewDocumentAsync(
            """
            () => document.addEventListener('DOMContentLoaded', () => {
              const figure = document.querySelector('.bb-figure:has(.bb-live)');
              figure.scrollIntoView();
              new MutationObserver(() => { if (figure.classList.contains('bb-on')) window.firstChart ??= performance.now(); })
                .observe(figure, { attributes: true });
            })
            """);
        double best = double.PositiveInfinity;
        for (int i = 0; i < 5; i++)
        {
            await page.Page.ReloadAsync();
            IJSHandle handle = await page.Page.WaitForExpressionAsync("window.firstChart");
            best = Math.Min(best, await handle.JsonValueAsync<double>());
        }

        output.WriteLine(FormattableString.Invariant($"first chart after {best:0} ms"));

        // Other tests may hold both cores meanwhile: twice the second that a quiet machine has to keep.
        Assert.True(best < 2000, FormattableString.Invariant($"first chart after {best:0} ms"));
    }

    [SkippableTheory]
    [MemberData(nameof(Names))]
    public async Task It_is_accessible(string name)
    {
        await using WatchedPage page = await browser.OpenAsync(await notebooks.PageAsync(name));
        await ScrollThroughAsync(page);
        await page.AssertAccessibleAsync();
        page.AssertQuiet();
    }

    [SkippableTheory]
    [MemberData(nameof(Names))]
    public async Task Each_slider_changes_an_answer_by_keyboard(string name)
    {
        await using WatchedPage page = await browser.OpenAsync(await notebooks.PageAsync(name));
        string[] sliders = await page.Page.EvaluateExpressionAsync<string[]>(
            "[...document.querySelectorAll('.bb-explorable input[type=range]')].map(input => input.id)");
        foreach (string slider in sliders)
        {
            string answers = $"document.getElementById('{slider}').closest('.bb-explorable').querySelector('.bb-readouts').innerText "
                + $"+ document.getElementById('{slider}').closest('.bb-explorable').querySelector('.bb-title').innerText";
            string before = await page.Page.EvaluateExpressionAsync<string>(answers);
            await page.Page.FocusAsync("#" + slider);
            await page.Page.Keyboard.PressAsync("End");
            await page.Page.WaitForExpressionAsync($"{answers} !== {System.Text.Json.JsonSerializer.Serialize(before)}",
                new() { Timeout = 20_000 });
        }

        page.AssertQuiet();
    }

    [SkippableTheory]
    [MemberData(nameof(Names))]
    public async Task It_prints_the_static_drawings_on_A4_and_Letter(string name)
    {
        foreach (PaperFormat paper in new[] { PaperFormat.A4, PaperFormat.Letter })
        {
            await using WatchedPage page = await browser.OpenAsync(await notebooks.PageAsync(name));
            await page.Page.EmulateMediaTypeAsync(MediaType.Print);
            Assert.True(await page.Page.EvaluateExpressionAsync<bool>(
                "[...document.querySelectorAll('.bb-figure:has(.bb-live)')].every(f => f.querySelector('.bb-live').offsetHeight "
                    + "=== 0 && f.querySelector('.bb-static').offsetHeight > 100)"));
            Assert.True((await page.PrintAsync(paper)).Length > 10_000);
            page.AssertQuiet();
        }
    }

    // Charts start when they come near the view.
    private static Task ScrollThroughAsync(WatchedPage page) => page.Page.EvaluateFunctionAsync(
        """
        async () => {
          for (const figure of document.querySelectorAll('.bb-figure:has(.bb-live)')) {
            figure.scrollIntoView();
            for (let i = 0; i < 200 && !figure.classList.contains('bb-on'); i++) await new Promise(done => setTimeout(done, 50));
          }
          scrollTo(0, 0);
        }
        """);
}
