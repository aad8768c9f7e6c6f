using System.Net;
using System.Text.RegularExpressions;
using BrakeBalance.Charts;
using BrakeBalance.Measurements;
using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Notebooks.Publishing;
using BrakeBalance.Notebooks.Tests.Browser;
using BrakeBalance.Notebooks.Tests.Commands;
using BrakeBalance.Summaries;
using BrakeBalance.Vehicles.Files;
using PuppeteerSharp.Media;

namespace BrakeBalance.Notebooks.Tests.Publishing;

public class QuestionsPageTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    private static readonly Lazy<VehicleReading> Track = new(() => VehicleFile.Load(RepositoryRoot.File("data/vehicles/track-coupe.json")));
    private static readonly Lazy<RenderedPage> Page = new(
        () => QuestionsPage.Render(Track.Value, UnitSystem.Us, Notebooks, [new("Units", "US customary")]));

    private static string[] Notebooks =>
        [.. NotebookFile.In(RepositoryRoot.File("notebooks")).Select(path => Path.GetFileNameWithoutExtension(path)!)];

    [Fact]
    public void It_holds_the_answers_of_the_command_with_the_caution_and_what_lacks_on_top()
    {
        string words = Words(Page.Value.Html);
        IReadOnlyList<QuestionAnswer> answers = QuestionDesk.Answer(Track.Value, UnitSystem.Us);
        Assert.All(answers, answer => Assert.Contains(Words(answer.Answer ?? answer.Lacking[0]), words, StringComparison.Ordinal));
        int first = Page.Value.Html.IndexOf("id=\"q1\"", StringComparison.Ordinal);
        int firstWords = words.IndexOf("1. " + answers[0].Question, StringComparison.Ordinal);
        Assert.InRange(words.IndexOf(SettingWords.Caution, StringComparison.Ordinal), 0, firstWords);
        Assert.InRange(Page.Value.Html.IndexOf("Lacking in the file", StringComparison.Ordinal), 0, first);
        int open = answers.Count(answer => answer.Answer is null);
        Assert.Contains($"{answers.Count - open} from its file, {open} with the number that lacks", Page.Value.Summary);
    }

    [Fact]
    public void Its_links_lead_to_questions_of_its_own_and_to_notebooks_that_have_a_page()
    {
        string[] targets = [.. Regex.Matches(Page.Value.Html, "href=\"([^\"]+)\"").Select(match => match.Groups[1].Value)];
        string[] own = [.. targets.Where(target => target.StartsWith("#q", StringComparison.Ordinal)).Distinct()];
        Assert.Equal(QuestionDesk.Count, own.Length);
        Assert.All(own, target => Assert.Contains($"id=\"{target[1..]}\"", Page.Value.Html, StringComparison.Ordinal));
        string[] pages = [.. targets.Where(target => char.IsAsciiDigit(target[0])).Distinct()];
        Assert.NotEmpty(pages);
        Assert.All(pages, target => Assert.Contains(target, Notebooks.Select(PageNames.FileFor)));
        string alone = QuestionsPage.Render(Track.Value, UnitSystem.Us, [], []).Html;
        Assert.DoesNotMatch("href=\"\\d", alone);
        Assert.DoesNotContain("id=\"bb-code-all\"", alone, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_question_points_to_a_notebook_and_to_commands_that_there_are()
    {
        foreach (int number in Enumerable.Range(1, QuestionDesk.Count))
        {
            QuestionPointers more = QuestionPointers.Of(number);
            Assert.NotEmpty(more.Notebooks);
            Assert.All(more.Notebooks, notebook => Assert.Contains(Notebooks, name => name.StartsWith(notebook + "-")));
            foreach (string command in more.Commands)
            {
                (int code, string output, _) = await Shell.RunAsync([.. command.Split(' '), "--help"]);
                Assert.Equal(0, code);
                Assert.Contains("Usage:", output, StringComparison.Ordinal);
                Assert.Contains(command, output, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void The_index_names_it_before_the_notebooks()
    {
        string folder = Directory.CreateTempSubdirectory("bb-questions-").FullName;
        try
        {
            Site.Write([new SiteEntry(Tests.Pages.SampleNotebook.Create("01-a"))], folder, new SiteOptions { Answers = [Page.Value] });
            string index = File.ReadAllText(Path.Combine(folder, PageNames.Index));
            int link = index.IndexOf($"<a href=\"{QuestionsPage.FileName}\">", StringComparison.Ordinal);
            Assert.InRange(link, 1, index.IndexOf("01-a.html", StringComparison.Ordinal));
            string[] around = Page.Value.Html.Split(PageMenu.Place);
            string written = File.ReadAllText(Path.Combine(folder, QuestionsPage.FileName));
            Assert.StartsWith(around[0], written, StringComparison.Ordinal);
            Assert.EndsWith(around[1], written, StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [SkippableTheory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task It_fits_screen_and_phone_and_is_accessible(int width)
    {
        await using WatchedPage page = await browser.OpenAsync(await WrittenAsync(), width);
        await page.AssertNoSidewaysScrollAsync();
        await page.AssertAccessibleAsync();
        page.AssertQuiet();
        double size = await page.Page.EvaluateExpressionAsync<double>(
            "Math.min(...[...document.querySelectorAll('main p, main li, main h3')].map(e => parseFloat(getComputedStyle(e).fontSize)))");
        Assert.InRange(size, 14, 40);
    }

    [SkippableFact]
    public async Task It_prints_without_the_list_of_links_on_a_few_sheets()
    {
        await using WatchedPage page = await browser.OpenAsync(await WrittenAsync(), 1280);
        Assert.InRange(PdfFacts.Of(await page.PrintAsync(PaperFormat.A4)).Pages, 2, 8);
    }

    private async Task<string> WrittenAsync()
    {
        string path = Path.Combine(browser.Folder, QuestionsPage.FileName);
        await File.WriteAllTextAsync(path, Page.Value.Html);
        return path;
    }

    private static string Words(string html) =>
        Regex.Replace(
            WebUtility.HtmlDecode(Regex.Replace(Regex.Replace(html, "(?s)<(script|style).*?</\\1>", ""), "<[^>]+>", "")),
            @"\s+", " ");
}
