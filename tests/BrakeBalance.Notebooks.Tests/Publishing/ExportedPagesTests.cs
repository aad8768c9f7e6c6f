using System.Text;
using System.Text.RegularExpressions;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Sheets;
using BrakeBalance.Notebooks.Classroom;
using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Execution;
using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Notebooks.Publishing;
using BrakeBalance.Notebooks.Tests.Browser;
using BrakeBalance.Notebooks.Tests.Commands;
using BrakeBalance.Teaching;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using PuppeteerSharp.Media;

namespace BrakeBalance.Notebooks.Tests.Publishing;

/// <summary>Every page that readers get: lessons, sheets, key, story and card, as the program writes them.</summary>
public class ExportedPagesTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    private static readonly Lock Writing = new();
    private static readonly string[] Papers = ["sheets.html", "key.html", "booklet.html", StoryPage.FileName, "card.html"];

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

    [SkippableFact]
    public async Task Each_lesson_works_an_example_on_another_car_with_typeset_formulas_and_says_what_is_often_believed()
    {
        foreach (Lesson lesson in Lesson.All)
        {
            string file = PageNames.FileFor(Path.GetFileNameWithoutExtension(Lessons[lesson.Number - 1]));
            await using WatchedPage page = await browser.OpenAsync(Site(file), 390);
            string worked = await page.Page.EvaluateExpressionAsync<string>(
                "document.querySelector('#cell-worked .bb-output').innerHTML");
            Exercise other = Exercises.For(new ClassNumber { Seed = 2026, Student = 2 })
                .Single(exercise => exercise.Lesson == lesson && exercise.Level == 2);
            Assert.Contains(other.Answer.Text(us: false), worked, StringComparison.Ordinal);
            Assert.Contains("<math", worked, StringComparison.Ordinal);
            Assert.DoesNotContain("$", worked, StringComparison.Ordinal);
            string said = await page.Page.EvaluateExpressionAsync<string>("document.querySelector('#cell-class').textContent");
            Assert.All(lesson.Misconceptions, one => Assert.Contains(one.Fact, said, StringComparison.Ordinal));
            Assert.All(lesson.Discussion, question => Assert.Contains(question, said, StringComparison.Ordinal));
            Assert.All(lesson.Misconceptions, one => Assert.NotEqual(one.Belief, one.Fact));
        }
    }

    [SkippableFact]
    public async Task Each_page_of_a_sheet_bears_its_students_number_and_name_line_and_a_sheet_has_three_pages()
    {
        foreach (PaperFormat paper in new[] { PaperFormat.A4, PaperFormat.Letter })
        {
            await using WatchedPage page = await browser.OpenAsync(Site("sheets.html"), 1280);
            string[] heads = await page.Page.EvaluateExpressionAsync<string[]>(
                """
                [...document.querySelectorAll(".bb-running")].map((head, i) => {
                  const link = document.createElement("a");
                  link.href = `http://head/${i + 1}`;
                  link.textContent = "x";
                  head.firstElementChild.append(link);
                  return head.textContent.replace(/\s+/g, " ").trim();
                })
                """);
            Assert.True(heads.Length > 1);
            Assert.All(heads.Index(), head => Assert.Matches(
                $@"^Class \w{{8}}, student number {head.Index + 1}\. Namex$", head.Item));
            string pdf = Encoding.Latin1.GetString(await page.PrintAsync(paper));
            string[] links = [.. Regex.Matches(pdf, @"(?m)^(\d+) 0 obj\n<<[^<>]*?/Subtype /Link[^<>]*?<<[^<>]*?/URI \(http://head/(\d+)\)")
                .Select(link => $"{link.Groups[1].Value} {link.Groups[2].Value}")];
            string[] sheets = [.. Regex.Matches(pdf, @"<</Type /Page\n.*?endobj", RegexOptions.Singleline).Select(one => one.Value)];
            string[] students = [.. sheets.Select(sheet => string.Join(' ', links.Where(link => Regex.IsMatch(
                sheet, $@"/Annots \[[^\]]*\b{link.Split(' ')[0]} 0 R")).Select(link => link.Split(' ')[1])))];
            // The last page is everybody's: the symbols.
            Assert.Equal([.. heads.SelectMany((_, i) => Enumerable.Repeat($"{i + 1}", 3)), ""], students);
        }
    }

    [SkippableFact]
    public async Task The_report_of_a_chosen_set_prints_without_a_word_torn_apart()
    {
        using var folder = new TemporaryFolder();
        string parts = folder.Write("parts.csv", "part,name,sets\nratio,long lever,pedal.ratio = 5\n");
        string targets = folder.Write(
            "targets.json", """{ "frontFirst": false, "failures": false, "rearMargin": 0, "pedalForceFull": "900 N" }""");
        (int code, _, string error) = await Shell.RunAsync("choose", RepositoryRoot.File("data/vehicles/big-cam-saloon.json"),
            "--parts", parts, "--targets", targets, "--write", folder.File("sets"));
        Assert.True(code == 0, error);
        await using WatchedPage page = await browser.OpenAsync(folder.File("sets/set-1.html"), 718);
        await page.Page.EmulateMediaTypeAsync(MediaType.Print);
        await page.AssertNoSidewaysScrollAsync();
        string[] torn = await page.Page.EvaluateExpressionAsync<string[]>(
            """
            [...document.querySelectorAll(".bb-scroll :is(td, th)")].flatMap(cell => {
              const torn = [], texts = document.createTreeWalker(cell, NodeFilter.SHOW_TEXT);
              for (let node; (node = texts.nextNode());) for (const word of node.data.matchAll(/[\w.]+/g)) {
                const range = document.createRange();
                range.setStart(node, word.index);
                range.setEnd(node, word.index + word[0].length);
                if (range.getClientRects().length > 1) torn.push(word[0]);
              }
              return torn;
            })
            """);
        Assert.Empty(torn);
    }

    [SkippableTheory]
    [MemberData(nameof(Pages))]
    public async Task It_prints_on_A4_and_Letter_with_nothing_cut_off(string name)
    {
        foreach ((PaperFormat paper, int width) in new[] { (PaperFormat.A4, 718), (PaperFormat.Letter, 740) })
        {
            await using WatchedPage page = await browser.OpenAsync(Site(name), width, far: true);
            await page.Page.EmulateMediaTypeAsync(MediaType.Print);
            await page.AssertNoSidewaysScrollAsync();
            if (!Papers.Contains(name) || name == StoryPage.FileName)
            {
                PaperLayout layout = Assert.Single(await PaperLayout.OfAsync(page, paper));
                layout.AssertGood($"{name}, {paper.Width} in wide");
                Assert.InRange(layout.Fills.Count, 1, 60);
            }
            else
            {
                Assert.InRange(PdfFacts.Of(await page.PrintAsync(paper)).Pages, 1, 60);
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
        AtomicFile.Write(Path.Combine(folder, "booklet.html"), ClassSheets.Booklet(plan));
        AtomicFile.Write(Path.Combine(folder, "key.html"), ClassSheets.Key(plan));
        AtomicFile.Write(Path.Combine(folder, "card.html"),
            PocketCardPage.Html(PocketCard.Of(car, car.LoadCases[0], UnitSystem.Si), CardPaper.A5));
        IReadOnlyList<ExecutedNotebook> executed =
            EnginesCollection.RunAsync(EngineKind.Script, [.. Lessons.Select(NotebookFile.Read)]).GetAwaiter().GetResult();
        Assert.All(executed, lesson => Assert.True(lesson.Succeeded, lesson.Name));
        Notebooks.Pages.Site.Write(
            [.. executed.Select(lesson => new SiteEntry(lesson, NotebookGroup.Lesson))], folder, new SiteOptions
            {
                Stories = [StoryPage.Render(car, UnitSystem.Si, [])],
            });
    }
}
