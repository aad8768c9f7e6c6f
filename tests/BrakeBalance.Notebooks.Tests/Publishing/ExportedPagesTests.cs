using BrakeBalance.Charts;
using BrakeBalance.Charts.Sheets;
using BrakeBalance.Notebooks.Classroom;
using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Execution;
using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Notebooks.Publishing;
using BrakeBalance.Notebooks.Tests.Browser;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using PuppeteerSharp.Media;

namespace BrakeBalance.Notebooks.Tests.Publishing;

/// <summary>Every page that readers get: lessons, sheets, key, story and card, as the program writes them.</summary>
[Collection(BrowserTests.Name)]
public class ExportedPagesTests(BrowserFixture browser)
{
    private static readonly Lock Writing = new();
    private static readonly string[] Papers = ["sheets.html", "key.html", StoryPage.FileName, "card.html"];

    public static TheoryData<string> Pages
    {
        get
        {
            TheoryData<string> pages = [.. Lessons.Select(path => PageNames.FileFor(Path.GetFileNameWithoutExtension(path)))];
            foreach (string paper in Papers)
            {
                pages.Add(paper);
            }

            pages.Add(PageNames.Index);
            return pages;
        }
    }

    private static IReadOnlyList<string> Lessons => NotebookFile.In(RepositoryRoot.File("notebooks/lessons"));

    [Fact]
    public void There_are_ten_lessons() => Assert.Equal(10, Lessons.Count);

    [SkippableTheory]
    [MemberData(nameof(Pages))]
    public async Task It_fits_screen_and_phone_and_is_accessible_on_both(string name)
    {
        foreach (int width in new[] { 1280, 390 })
        {
            await using WatchedPage page = await browser.OpenAsync(Site(name), width);
            await page.AssertNoSidewaysScrollAsync();
            await page.Page.EvaluateExpressionAsync("document.querySelectorAll('details').forEach(details => { details.open = true; })");
            await page.AssertAccessibleAsync();
            page.AssertQuiet();
        }
    }

    [SkippableTheory]
    [MemberData(nameof(Pages))]
    public async Task It_prints_on_A4_and_Letter_with_nothing_cut_off(string name)
    {
        foreach ((PaperFormat paper, int width) in new[] { (PaperFormat.A4, 718), (PaperFormat.Letter, 740) })
        {
            await using WatchedPage page = await browser.OpenAsync(Site(name), width);
            await page.Page.EmulateMediaTypeAsync(MediaType.Print);
            await page.AssertNoSidewaysScrollAsync();
            Assert.InRange(PdfFacts.Of(await page.PrintAsync(paper)).Pages, 1, 60);
            if (!Papers.Contains(name) || name == StoryPage.FileName)
            {
                (await PaperLayout.OfAsync(page, paper)).AssertGood($"{name}, {paper.Width} in wide");
            }

            page.AssertQuiet();
        }
    }

    [SkippableTheory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task The_figure_of_every_lesson_moves_by_keyboard(int width)
    {
        foreach (string lesson in Lessons)
        {
            await using WatchedPage page =
                await browser.OpenAsync(Site(PageNames.FileFor(Path.GetFileNameWithoutExtension(lesson))), width);
            await page.Page.WaitForSelectorAsync(".bb-controls:not([hidden]) input[type=range]", new() { Timeout = 30_000 });
            const string Text = "(e => e.getAttribute('aria-valuetext'))(document.querySelector('.bb-controls input[type=range]'))";
            string before = await page.Page.EvaluateExpressionAsync<string>(Text);
            bool atEnd = await page.Page.EvaluateExpressionAsync<bool>(
                "(e => e.value === e.max)(document.querySelector('.bb-controls input[type=range]'))");
            await page.Page.FocusAsync(".bb-controls input[type=range]");
            await page.Page.Keyboard.PressAsync(atEnd ? "Home" : "End");
            await page.Page.WaitForExpressionAsync($"{Text} !== {System.Text.Json.JsonSerializer.Serialize(before)}");
            page.AssertQuiet();
        }
    }

    /// <summary>Path of a page; all are written with the first.</summary>
    private string Site(string name)
    {
        string folder = Path.Combine(browser.Folder, "exported");
        lock (Writing)
        {
            if (!File.Exists(Path.Combine(folder, PageNames.Index)))
            {
                Write(folder);
            }
        }

        return Path.Combine(folder, name);
    }

    private static void Write(string folder)
    {
        Vehicle car = VehicleFile.Load(RepositoryRoot.File(NotebookInput.DefaultVehicle)).Vehicle;
        var plan = new ClassPlan { Secret = "a test secret", Students = [1, 2] };
        AtomicFile.Write(Path.Combine(folder, "sheets.html"), ClassSheets.Students(plan));
        AtomicFile.Write(Path.Combine(folder, "key.html"), ClassSheets.Key(plan));
        AtomicFile.Write(Path.Combine(folder, "card.html"),
            PocketCardPage.Html(PocketCard.Of(car, car.LoadCases[0], UnitSystem.Si), CardPaper.A5));
        NotebookDocument[] documents = [.. Lessons.Select(NotebookFile.Read)];
        IReadOnlyList<ExecutedNotebook> executed = new NotebookRunner(EngineKind.Script).RunAsync(documents, null, CancellationToken.None)
            .GetAwaiter().GetResult();
        Assert.All(executed, lesson => Assert.True(lesson.Succeeded, lesson.Name));
        Notebooks.Pages.Site.Write(
            [.. executed.Select(lesson => new SiteEntry(lesson, NotebookGroup.Lesson))], folder, new SiteOptions
            {
                Stories = [StoryPage.Render(car, UnitSystem.Si, [])],
            });
    }
}
