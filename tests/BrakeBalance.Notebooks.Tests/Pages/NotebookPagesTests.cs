using System.Text.RegularExpressions;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Execution;
using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Notebooks.Tests.Browser;
using BrakeBalance.Teaching;
using PuppeteerSharp.Media;

namespace BrakeBalance.Notebooks.Tests.Pages;

/// <summary>Every page of the repository's notebooks, as a reader opens it from disk.</summary>
public partial class NotebookPagesTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    private const long LargestPage = 420_000;

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
        long length = new FileInfo(await RenderedNotebooks.PageAsync(name)).Length;
        Assert.True(length < LargestPage, $"{name}: {length} bytes");
    }

    [Fact]
    public async Task What_an_equation_gives_in_a_cell_is_what_the_calculation_answers()
    {
        HashSet<string> pages = [];
        int rows = 0;
        foreach (string path in NotebookFile.In(RepositoryRoot.File("notebooks")))
        {
            string name = Path.GetFileNameWithoutExtension(path);
            string html = await File.ReadAllTextAsync(await RenderedNotebooks.PageAsync(name));
            foreach (Match table in EquationTables().Matches(html))
            {
                string[] differences = [.. LastCells().Matches(table.Value).Select(cell => cell.Groups[1].Value)];
                Assert.All(differences, difference => Assert.Equal("none", difference));
                rows += differences.Length;
                pages.Add(name);
            }
        }

        Assert.True(pages.Count == 19 && rows >= 73, $"{pages.Count} pages, {rows} equations");
    }

    [GeneratedRegex("(?s)<th scope=\"col\">By the equation</th>.*?</table>")]
    private static partial Regex EquationTables();

    [GeneratedRegex("<td[^>]*>([^<]*)</td></tr>")]
    private static partial Regex LastCells();

    [SkippableTheory]
    [MemberData(nameof(Names))]
    public async Task It_opens_quietly_and_fits_a_desk_and_a_phone(string name)
    {
        foreach (int width in new[] { 1280, 390 })
        {
            await using WatchedPage page = await browser.OpenAsync(await RenderedNotebooks.PageAsync(name), width);
            await page.AssertNoSidewaysScrollAsync();
            page.AssertQuiet();
        }
    }

    [SkippableTheory]
    [MemberData(nameof(Names))]
    public async Task It_is_accessible(string name)
    {
        await using WatchedPage page = await browser.OpenAsync(await RenderedNotebooks.PageAsync(name));
        await page.AssertAccessibleAsync();
        page.AssertQuiet();
    }

    [SkippableTheory]
    [MemberData(nameof(Names))]
    public async Task Each_slider_changes_an_answer_by_keyboard(string name)
    {
        await using WatchedPage page = await browser.OpenAsync(await RenderedNotebooks.PageAsync(name));
        await SameAtTheStartAsync(page);
        string[] sliders = await page.Page.EvaluateExpressionAsync<string[]>(
            "[...document.querySelectorAll('.bb-explorable input[type=range]')].map(input => input.id)");
        foreach (string slider in sliders)
        {
            string answers = $"document.getElementById('{slider}').closest('.bb-explorable').querySelector('.bb-readouts').innerText "
                + $"+ document.getElementById('{slider}').closest('.bb-explorable').querySelector('.bb-title').innerText";
            string before = await page.Page.EvaluateExpressionAsync<string>(answers);
            await page.Page.FocusAsync("#" + slider);
            bool atEnd = await page.Page.EvaluateExpressionAsync<bool>(
                $"document.getElementById('{slider}').value === document.getElementById('{slider}').max");
            await page.Page.Keyboard.PressAsync(atEnd ? "Home" : "End");
            await page.Page.WaitForExpressionAsync($"{answers} !== {System.Text.Json.JsonSerializer.Serialize(before)}",
                new() { Timeout = 60_000 });
        }

        page.AssertQuiet();
    }

    [SkippableTheory]
    [InlineData("01-static-load")]
    [InlineData("05-knee")]
    public async Task A_lesson_shows_the_car_of_a_sheet_by_class_code_and_student_number(string name)
    {
        await using WatchedPage page = await browser.OpenAsync(await RenderedNotebooks.PageAsync(name), 390, 844);
        const string Said = "document.querySelector('.bb-explorable .bb-shown').innerText", Forget = "localStorage.clear()";
        await page.Page.EvaluateExpressionAsync(Forget);
        await page.Page.ReloadAsync();
        string before = await page.Page.EvaluateExpressionAsync<string>(Said);
        async Task Ask(string code, string student) => await page.Page.EvaluateFunctionAsync(
            """
            (code, student) => {
              const sheet = document.querySelector(".bb-ask-car");
              sheet.elements.code.value = code;
              sheet.elements.student.value = student;
              sheet.requestSubmit();
            }
            """, code, student);
        await Ask("ABCDEFG0", "7");
        await page.Page.WaitForExpressionAsync("document.querySelector('.bb-explorable').innerText.includes('is no class code')",
            new() { Timeout = 60_000 });
        const string Verdict = "document.querySelector('.bb-explorable .bb-verdict').innerText";
        string refused = await page.Page.EvaluateExpressionAsync<string>(Verdict);
        Assert.DoesNotContain("Arg_", refused, StringComparison.Ordinal);
        Assert.EndsWith("The figure still shows the car of this page.", refused, StringComparison.Ordinal);
        Assert.Equal(before, await page.Page.EvaluateExpressionAsync<string>(Said));
        foreach ((string code, string student) in new[] { ("ABCDEFGH", ""), ("ABCDEFGH", "10000"), ("ABCDEFGH", "1.5"), (" ", "7") })
        {
            await Ask(code, student);
            string lacking = await page.Page.EvaluateExpressionAsync<string>(Verdict);
            Assert.StartsWith(student == "7" ? "A class code has eight letters" : "A student number is a whole number", lacking);
            Assert.EndsWith("The figure still shows the car of this page.", lacking, StringComparison.Ordinal);
        }

        await Ask(ClassNumber.CodeOf("a class of mine"), "7");
        const string Own = Said + ".includes('The car of your sheet')";
        await page.Page.WaitForExpressionAsync(Own, new() { Timeout = 60_000 });
        await page.Page.ReloadAsync();
        await page.Page.WaitForExpressionAsync(Own, new() { Timeout = 60_000 });
        Assert.Equal(0, await page.Page.EvaluateExpressionAsync<int>(
            "document.querySelectorAll('.bb-shown :is(dd, table, [data-read], [tabindex])').length"));
        Assert.Equal("7", await page.Page.EvaluateExpressionAsync<string>("document.querySelector('.bb-ask-car').elements.student.value"));
        await page.Page.EvaluateExpressionAsync(Forget);
        page.AssertQuiet();
    }

    // The page's own calculation says at the start what was written into it.
    private static async Task SameAtTheStartAsync(WatchedPage page)
    {
        string[] differ = await page.Page.EvaluateExpressionAsync<string[]>(
            """
            (async () => {
              const differ = [];
              for (const root of document.querySelectorAll(".bb-explorable")) {
                const shown = root.querySelector(".bb-shown");
                const said = () => [...shown.querySelectorAll(".bb-title, .bb-caption, dd, .bb-verdict, .bb-state, td, details p")]
                  .map(one => one.textContent.trim()).join("|");
                const was = said();
                root.querySelector(".bb-controls input, .bb-controls select").dispatchEvent(new Event("input"));
                for (let i = 0; i < 3000 && !root.dataset.moved; i++) await new Promise(done => setTimeout(done, 20));
                if (!root.dataset.moved || said() !== was) differ.push(root.id);
              }
              return differ;
            })()
            """);
        Assert.Empty(differ);
    }

    [SkippableTheory]
    [MemberData(nameof(Names))]
    public async Task It_prints_one_drawing_of_each_figure_on_sheets_at_least_half_full_with_nothing_torn(string name)
    {
        PaperFormat[] papers = [PaperFormat.A4, PaperFormat.Letter];
        await using WatchedPage page = await browser.OpenAsync(await RenderedNotebooks.PageAsync(name), far: true);
        await page.Page.EmulateMediaTypeAsync(MediaType.Print);
        Assert.True(await page.Page.EvaluateExpressionAsync<bool>(
            "[...document.querySelectorAll('.bb-figure')].every(f => f.querySelector('.bb-wide').offsetHeight > 100 "
                + "&& f.querySelector('.bb-narrow').offsetHeight === 0)"));
        Assert.All((await PaperLayout.OfAsync(page, papers)).Zip(papers),
            one => one.First.AssertGood($"{name}, {one.Second.Width} in wide"));
        page.AssertQuiet();
    }
}
