using BrakeBalance.Charts;
using BrakeBalance.Charts.Lessons;
using BrakeBalance.Notebooks.Execution;
using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Notebooks.Publishing;
using BrakeBalance.Notebooks.Tests.Browser;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Notebooks.Tests.Pages;

/// <summary>The index as the first page of three kinds of readers.</summary>
public class IndexTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    private static readonly Lazy<RenderedPage> Questions = new(() => QuestionsPage.Render(
        VehicleFile.Load(RepositoryRoot.File("data/vehicles/coupe-1960s.json")), UnitSystem.Si, [], []));

    [SkippableTheory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task It_has_three_doors_with_pictures_and_next_steps_that_exist(int width)
    {
        string folder = Write();
        await using WatchedPage page = await browser.OpenAsync(Path.Combine(folder, "index.html"), width);
        string[] doors = await page.Page.EvaluateExpressionAsync<string[]>(
            "[...document.querySelectorAll('.bb-doors section')].map(door => [door.querySelector('h2').textContent, "
                + "door.querySelectorAll('img').length, ...[...door.querySelectorAll('a')].map(a => a.getAttribute('href'))].join())");
        Assert.Equal(["I race", "I teach", "I write"], doors.Select(door => door.Split(',')[0]));
        Assert.Equal("I race,2,05-from-test-stops-to-a-setting.html", doors[0]);
        Assert.Equal("I teach,1,01-static-load.html,01-brake-balance.html", doors[1]);
        foreach (string address in doors.SelectMany(door => door.Split(',').Skip(2)))
        {
            Assert.True(File.Exists(Path.Combine(folder, address)), address);
        }

        int loaded = await page.Page.EvaluateExpressionAsync<int>(
            "[...document.querySelectorAll('.bb-index img')].filter(image => image.complete && image.naturalWidth > 0).length");
        Assert.Equal(await page.Page.EvaluateExpressionAsync<int>("document.querySelectorAll('.bb-index img').length"), loaded);
        Assert.True(loaded > 3);
        string[] dimmed = await page.Page.EvaluateExpressionAsync<string[]>("['light', 'dark'].map(theme => { "
            + "document.documentElement.dataset.theme = theme; "
            + "return getComputedStyle(document.querySelector('.bb-index img')).filter; })");
        Assert.Equal(["none", "invert(0.9) hue-rotate(180deg)"], dimmed);
        await page.Page.EvaluateExpressionAsync("delete document.documentElement.dataset.theme");
        await page.AssertAccessibleAsync();
        page.AssertQuiet();
    }

    [Fact]
    public void A_card_gives_question_finding_and_picture_and_a_lesson_its_minutes()
    {
        string html = File.ReadAllText(Path.Combine(Write(), "index.html"));
        string card = html[html.IndexOf("<ul class=\"bb-cards\">", html.IndexOf("<h2>Notebooks</h2>", StringComparison.Ordinal),
            StringComparison.Ordinal)..];
        card = card[..card.IndexOf("</li>", StringComparison.Ordinal)];
        Assert.Contains("<img alt=\"\" ", card, StringComparison.Ordinal);
        Assert.Contains("<a href=\"01-brake-balance.html\">Chart</a>", card, StringComparison.Ordinal);
        string finding = LessonSheet.Of("knee", seed: 2026, units: UnitSystem.Si).Figure.Start.Figures[0].Title;
        Assert.Contains($"<p class=\"bb-finding\">{finding}</p>".Replace('\u00a0', ' '), card.Replace('\u00a0', ' '),
            StringComparison.Ordinal);
        Assert.Contains("<p class=\"bb-minutes\">5 minutes</p>", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<text", Uri.UnescapeDataString(card), StringComparison.Ordinal);
    }

    [SkippableFact]
    public async Task The_search_finds_titles_headings_and_questions_by_keyboard_and_leads_there()
    {
        await using WatchedPage page = await browser.OpenAsync(Path.Combine(Write(), "index.html"));
        const string Found = "[...document.querySelectorAll('#bb-results a')].map(a => a.getAttribute('href'))";
        await page.Page.FocusAsync("#bb-search");
        await page.Page.Keyboard.TypeAsync("BENDS line");
        Assert.Contains("01-static-load.html#the-valve-bends-the-line", await page.Page.EvaluateExpressionAsync<string[]>(Found));
        await page.Page.EvaluateExpressionAsync("document.getElementById('bb-search').value = ''");
        PageHeading question = Questions.Value.Headings[4];
        await page.Page.Keyboard.TypeAsync(System.Net.WebUtility.HtmlDecode(question.Html)[..^1]);
        Assert.Equal($"questions.html#{question.Id}", (await page.Page.EvaluateExpressionAsync<string[]>(Found))[0]);
        await page.AssertAccessibleAsync();
        await page.Page.Keyboard.PressAsync("ArrowDown");
        await Task.WhenAll(page.Page.WaitForNavigationAsync(), page.Page.Keyboard.PressAsync("Enter"));
        Assert.EndsWith($"questions.html#{question.Id}", page.Page.Url, StringComparison.Ordinal);
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task The_search_says_when_it_finds_nothing_and_is_not_there_without_scripts()
    {
        string file = Path.Combine(Write(), "index.html");
        await using WatchedPage page = await browser.OpenAsync(file);
        await page.Page.FocusAsync("#bb-search");
        await page.Page.Keyboard.TypeAsync("<script> zzz");
        Assert.Equal("Nothing found.", await page.Page.EvaluateExpressionAsync<string>("document.getElementById('bb-found').textContent"));
        await using WatchedPage still = await browser.OpenAsync(file, script: false);
        Assert.Equal(0, await still.Page.EvaluateExpressionAsync<int>("document.querySelector('.bb-search').offsetHeight"));
    }

    [Fact]
    public void A_part_of_the_notebooks_leaves_the_index_of_all_as_it_is()
    {
        using var folder = new Commands.TemporaryFolder();
        Site.Write([new SiteEntry(SampleNotebook.Create("01-a")), new SiteEntry(SampleNotebook.Create("02-b"))], folder.Path,
            new SiteOptions());
        string whole = File.ReadAllText(folder.File("index.html"));
        Site.Write([new SiteEntry(SampleNotebook.Create("02-b"))], folder.Path, new SiteOptions { IsWhole = false });
        Assert.Equal(whole, File.ReadAllText(folder.File("index.html")));
    }

    private string Write()
    {
        string folder = Path.Combine(browser.Folder, "index");
        if (!Directory.Exists(folder))
        {
            ExecutedNotebook chart = SampleNotebook.WithChart();
            Site.Write(
                [
                    new SiteEntry(chart with { Name = "01-brake-balance" }),
                    new SiteEntry(chart with { Name = "02-choosing-the-setting" }),
                    new SiteEntry(chart with { Name = "06-what-happens-when-an-axle-locks" }),
                    new SiteEntry(SampleNotebook.Create("01-static-load"), NotebookGroup.Lesson),
                    new SiteEntry(chart with { Name = "03-ideal-curve" }, NotebookGroup.Lesson),
                    new SiteEntry(SampleNotebook.Create("05-from-test-stops-to-a-setting")),
                ],
                folder, new SiteOptions { Answers = [Questions.Value] });
        }

        return folder;
    }
}
