using System.Collections.Concurrent;
using System.Globalization;
using System.Text.Json;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Notebooks.Tests.Browser;
using BrakeBalance.Tests.Vehicles;
using PuppeteerSharp;

namespace BrakeBalance.Notebooks.Tests.Pages;

/// <summary>A reader edits cells of a page opened from disk and runs them.</summary>
public class EditedCellsTests(BrowserFixture browser, EditedCellsTests.Warm warm)
    : IClassFixture<BrowserFixture>, IClassFixture<EditedCellsTests.Warm>
{
    private const string Notebook = "01-brake-balance", Figure = "brake-forces-figure";

    private static readonly string[] Cars = ["coupe-1960s", "big-cam-saloon", "an ordinary car"];
    private static readonly ConcurrentDictionary<string, Lazy<Task<string>>> Sites = new();

    private static readonly WaitForFunctionOptions Patience = new() { Timeout = 120_000 };

    [Fact]
    public void All_parts_weigh_at_most_12_MB_packed_of_which_6_before_a_cell_is_edited()
    {
        int before = LiveAssets.Parts.Sum(Packed), all = before + LiveAssets.CellParts.Sum(Packed);
        Assert.InRange(before, 1_000_000, 6_000_000);
        Assert.InRange(all, before + 1_000_000, 12_000_000);

        static int Packed((string Name, string Text) part) =>
            int.Parse(part.Text.AsSpan(0, part.Text.IndexOf(' ', StringComparison.Ordinal)), CultureInfo.InvariantCulture);
    }

    /// <summary>
    /// Each notebook with the car that it is published with, and each notebook and lesson with one of three cars in turn; with each car
    /// when BRAKE_BALANCE_EVERY_CAR is set.
    /// </summary>
    public static TheoryData<string, string> Replayed
    {
        get
        {
            TheoryData<string, string> runs = [];
            bool all = Environment.GetEnvironmentVariable("BRAKE_BALANCE_EVERY_CAR") is { Length: > 0 };
            foreach ((int at, string path) in NotebookFile.In(RepositoryRoot.File("notebooks")).Index())
            {
                string name = Path.GetRelativePath(RepositoryRoot.File("notebooks"), Path.ChangeExtension(path, null));
                foreach (string car in Cars.Where((_, of) =>
                    all || of == (at + 2) % Cars.Length || (of == 0 && !name.Contains(Path.DirectorySeparatorChar))))
                {
                    runs.Add(name, car);
                }
            }

            return runs;
        }
    }

    [SkippableTheory]
    [MemberData(nameof(Replayed))]
    public async Task Every_cell_puts_out_in_the_page_byte_for_byte_what_the_program_wrote_there(string notebook, string car)
    {
        string name = Path.GetFileName(notebook);
        string file = car == Cars[0] ? await RenderedNotebooks.PageAsync(name)
            : Path.Combine(await Sites.GetOrAdd(car, _ => new(() => RenderAsync(car))).Value, PageNames.FileFor(name));
        string text = await File.ReadAllTextAsync(file);
        WatchedPage page = await warm.PageAsync(browser, car, file);
        JsonElement replies = await page.Page.EvaluateFunctionAsync<JsonElement>(
            """
            async page => {
              globalThis.desk ??= bbDesk.start("BrakeBalance.Cells");
              await desk.ready;
              const assemblies = [...bbDesk.kits["BrakeBalance.Cells"].parts.keys()]
                .filter(name => name.endsWith(".dll")).map(name => name.slice(0, -4));
              const opened = new DOMParser().parseFromString(page, "text/html");
              const book = JSON.parse(opened.getElementById("bb-notebook").textContent);
              await desk.ask("begin", { begin: { assemblies, files: { ...bbDesk.data, ...book.files }, variables: book.variables } });
              const cells = book.notebook.cells.filter(cell => cell.cell_type === "code"), texts = cells.map(cell => cell.source.join(""));
              const { needs } = await desk.ask("needs", { needs: texts }), replies = [];
              for (const [i, cell] of cells.entries())
                replies.push({ id: cell.id, ...await desk.ask("run",
                  { run: [...needs[i], i].map(at => texts[at]), name: `${book.name}-${i + 1}` }) });
              return replies;
            }
            """, text);
        Assert.Equal(text.Split("<section class=\"bb-cell\"").Length - 1, replies.GetArrayLength());
        foreach (JsonElement reply in replies.EnumerateArray())
        {
            JsonElement failure = reply.GetProperty("failure");
            Assert.True(failure.ValueKind == JsonValueKind.Null, failure.ToString());
            string cell = reply.GetProperty("id").GetString()!, id = $"id=\"cell-{cell}\"";
            string html = CellRenderer.Typeset(reply.GetProperty("html").GetString()!, new ProseRenderer(name), cell);
            string section = text[text.IndexOf(id, StringComparison.Ordinal)..].Split("<section class=\"bb-cell\"")[0];
            Assert.True(section.Contains($"#{CellRenderer.FirstScreenId}", StringComparison.Ordinal)
                ? text.Contains($"aria-label=\"The finding\">\n{html}</section>\n", StringComparison.Ordinal)
                : section.Contains($"</details>\n{html}</section>\n", StringComparison.Ordinal), id);
        }

        page.AssertQuiet();
    }

    /// <summary>The pages of the notebooks that are replayed with a car, as a user makes them.</summary>
    private async Task<string> RenderAsync(string car)
    {
        string folder = Path.Combine(browser.Folder, car.Replace(' ', '-')), file = RepositoryRoot.File($"data/vehicles/{car}.json");
        Directory.CreateDirectory(folder);
        if (!File.Exists(file))
        {
            file = Path.Combine(folder, "car.json");
            await File.WriteAllTextAsync(file, OrdinaryCar.Measured(1).First());
        }

        using Commands.Program program = Commands.Program.Start(folder, ["render", "--vehicle", file, "--output", folder,
            .. Replayed.Where(run => (string)run[1] == car).SelectMany(run => (string[])["--notebook", (string)run[0]])]);
        Assert.True(await program.ExitAsync() == 0, program.Error);
        return folder;
    }

    [SkippableFact]
    public async Task An_edited_knee_brings_another_figure_by_keyboard_on_a_phone_and_reset_brings_the_first_back()
    {
        await using WatchedPage page = await OpenAsync(width: 390);
        Assert.False(await page.Page.EvaluateExpressionAsync<bool>("!!document.querySelector('script[src*=compiler]')"));
        string before = await page.Page.EvaluateExpressionAsync<string>(Shown(Figure));
        await EditAsync(page, Figure,
            "BalanceFigures.BrakeForces(new BalanceModel(car.WithRearKnee(Pressure.FromBars(60)), car.LoadCases[0]))");
        await RunAsync(page, Figure);
        string after = await page.Page.EvaluateExpressionAsync<string>(Shown(Figure));
        Assert.NotEqual(before, after);
        Assert.Contains("the rear axle locks first", after, StringComparison.Ordinal);
        await page.AssertNoSidewaysScrollAsync();
        await page.AssertAccessibleAsync();
        await page.Page.ClickAsync($"#cell-{Figure} [aria-label^=Reset]");
        await page.Page.WaitForExpressionAsync($"{Shown(Figure)} === {JsonSerializer.Serialize(before)}", Patience);
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task Cells_that_rest_on_an_edited_one_say_so_and_run_from_there()
    {
        await using WatchedPage page = await OpenAsync();
        string own = NotebookFile.Read(RepositoryRoot.File($"notebooks/{Notebook}.ipynb")).Cells.Single(cell => cell.Id == "car").Source;
        await EditAsync(page, "car", own + " )");
        await RunAsync(page, "car");
        string[] stale = await page.Page.EvaluateExpressionAsync<string[]>(
            "[...document.querySelectorAll('.bb-stale')].map(one => one.closest('section').id)");
        Assert.Contains("cell-" + Figure, stale);
        Assert.DoesNotContain("cell-check-car", stale);
        Assert.Contains("(CS", await FailureAsync(page, "car"), StringComparison.Ordinal);
        await EditAsync(page, "car", own.Replace("car.LoadCases[0]", "car.LoadCases[^1]", StringComparison.Ordinal));
        string before = await page.Page.EvaluateExpressionAsync<string>(Shown(Figure));
        await ActAsync(page, () => page.Page.ClickAsync("#cell-car [aria-label^='Run from here']"));
        Assert.Equal(0, await page.Page.EvaluateExpressionAsync<int>("document.querySelectorAll('.bb-stale').length"));
        Assert.NotEqual(before, await page.Page.EvaluateExpressionAsync<string>(Shown(Figure)));
        page.AssertQuiet();
        await ForgetAsync(page);
    }

    [SkippableFact]
    public async Task A_failure_shows_its_message_first_and_an_endless_cell_can_be_stopped()
    {
        await using WatchedPage page = await OpenAsync();
        await EditAsync(page, Figure, "var limit = 3;\nlimit = \"bar\";\nlimit");
        await RunAsync(page, Figure);
        string failure = await FailureAsync(page, Figure);
        Assert.Contains("Cannot implicitly convert type 'string' to 'int' (CS0029)", failure, StringComparison.Ordinal);
        Assert.Contains("Line 2: limit = \"bar\";", failure, StringComparison.Ordinal);
        await EditAsync(page, Figure, "car.WithRearKnee(Pressure.FromBars(-3)).Name");
        await RunAsync(page, Figure);
        failure = await FailureAsync(page, Figure);
        Assert.Contains("-3", failure, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", failure, StringComparison.Ordinal);
        await EditAsync(page, Figure, "var left = 2;\nwhile (12 / left > 0)\n{\n    left--;\n}\nleft");
        await RunAsync(page, Figure);
        Assert.Contains("Line 2: while (12 / left > 0)", await FailureAsync(page, Figure), StringComparison.Ordinal);
        await EditAsync(page, Figure, "var knee = car.WithRearKnee(\n    Pressure.FromBars(24));\n\nPressure[] none = [];\n"
            + "if (knee.Name.Length > 0)\n    none.Select(one => one * 2).First();\n1");
        await RunAsync(page, Figure);
        Assert.Contains("Line 6: none.Select(", await FailureAsync(page, Figure), StringComparison.Ordinal);
        await EditAsync(page, Figure, "while (true) { }\n");
        await page.Page.ClickAsync($"#cell-{Figure} [aria-label^='Run cell']");
        await page.Page.WaitForExpressionAsync(
            $"document.querySelector('#cell-{Figure} .bb-run [role=status]').innerText.startsWith('Running cell ')", Patience);
        await page.Page.ClickAsync($"#cell-{Figure} [data-do=stop]");
        await EditAsync(page, Figure, "1 + 1");
        await RunAsync(page, Figure);
        Assert.Equal("2", await page.Page.EvaluateExpressionAsync<string>(
            $"document.querySelector('#cell-{Figure} .bb-output').innerText.trim()"));
        page.AssertQuiet();
        await ForgetAsync(page);
    }

    [SkippableFact]
    public async Task The_compiler_says_under_a_cell_that_is_typed_what_it_would_refuse_and_runs_nothing()
    {
        await using WatchedPage page = await OpenAsync(width: 390);
        await EditAsync(page, Figure, "var limit = 3;\nlimit = \"bar\";\nlimit.None(limit");
        string ran = await page.Page.EvaluateExpressionAsync<string>("document.documentElement.dataset.ran"), shown = Shown(Figure);
        string before = await page.Page.EvaluateExpressionAsync<string>(shown);
        await page.Page.WaitForExpressionAsync($"document.querySelectorAll('#cell-{Figure} .bb-errors p').length > 0", Patience);
        Assert.Equal(
            ["Line 2: Cannot implicitly convert type 'string' to 'int' (CS0029)|Line 3: ) expected (CS1026)", "\"bar\"|t", "true", "true"],
            await page.Page.EvaluateExpressionAsync<string[]>(
                $$"""
                (() => {
                  const cell = document.getElementById("cell-{{Figure}}"), area = cell.querySelector("textarea");
                  const told = document.getElementById(area.getAttribute("aria-describedby"));
                  const texts = query => [...cell.querySelectorAll(query)].map(one => one.textContent).join("|");
                  return [texts(".bb-errors p"), texts("mark"), area.getAttribute("aria-invalid"),
                    String(told.getAttribute("role") === "status")];
                })()
                """));
        await page.AssertNoSidewaysScrollAsync();
        await page.AssertAccessibleAsync();
        await EditAsync(page, Figure, "var limit = 3;\nlimit = 4;\nlimit");
        await page.Page.WaitForExpressionAsync($"document.querySelector('#cell-{Figure} textarea').ariaInvalid === 'false'", Patience);
        Assert.Equal(0, await page.Page.EvaluateExpressionAsync<int>("document.querySelectorAll('.bb-errors p, .bb-marks mark').length"));
        Assert.Equal(ran, await page.Page.EvaluateExpressionAsync<string>("document.documentElement.dataset.ran"));
        Assert.Equal(before, await page.Page.EvaluateExpressionAsync<string>(shown));
        page.AssertQuiet();
        await ForgetAsync(page);
    }

    [SkippableTheory]
    [InlineData(390)]
    [InlineData(1280)]
    public async Task Names_that_fit_are_offered_explained_and_put_in_by_keyboard_or_button(int width)
    {
        const string Told = $"document.querySelector('#cell-{Figure} .bb-told').innerText";
        await using WatchedPage page = await OpenAsync(width);
        await EditAsync(page, Figure, "var light = car.WithRearK");
        await SuggestAsync();
        Assert.Equal(["WithRearKnee|method"], await OfferedAsync());
        await page.Page.WaitForExpressionAsync(
            $"{Told}.includes('Vehicle.WithRearKnee(Pressure knee') && {Told}.includes('another knee')", Patience);
        await page.AssertNoSidewaysScrollAsync();
        await page.AssertAccessibleAsync();
        await page.Page.Keyboard.PressAsync("Enter");
        Assert.Equal("var light = car.WithRearKnee", await SourceAsync(page, Figure));

        // What is not chosen leaves the text alone; what is typed narrows the list.
        await page.Page.Keyboard.SendCharacterAsync("(Pressure.FromBars(30));\nlight.LoadCases.");
        await SuggestAsync();
        Assert.Contains("Select|method", await OfferedAsync());
        await page.Page.Keyboard.TypeAsync("OrderBy");
        Assert.Equal(["OrderBy|method", "OrderByDescending|method"], await OfferedAsync());
        Assert.True(await page.Page.EvaluateExpressionAsync<bool>(
            $"document.getElementById(document.activeElement.getAttribute('aria-activedescendant')).textContent.startsWith('OrderBym')"));
        await page.Page.Keyboard.PressAsync("ArrowDown");
        await page.Page.Keyboard.PressAsync("Escape");
        Assert.Empty(await OfferedAsync());
        Assert.EndsWith("light.LoadCases.OrderBy", await SourceAsync(page, Figure), StringComparison.Ordinal);

        await EditAsync(page, Figure, "var odd = new ProportioningValve { Sl");
        await page.Page.ClickAsync($"#cell-{Figure} [aria-label^='Suggest names']");
        await ShownAsync();
        Assert.Equal(["Slope|property"], await OfferedAsync());
        await page.Page.ClickAsync($"#cell-{Figure} .bb-names li");
        Assert.EndsWith("{ Slope", await SourceAsync(page, Figure), StringComparison.Ordinal);
        await page.Page.WaitForExpressionAsync($"{Told}.includes('ProportioningValve.Slope') && {Told}.includes('[–]')", Patience);
        page.AssertQuiet();
        await ForgetAsync(page);

        async Task SuggestAsync()
        {
            await page.Page.Keyboard.DownAsync("Control");
            await page.Page.Keyboard.PressAsync("Space");
            await page.Page.Keyboard.UpAsync("Control");
            await ShownAsync();
        }

        Task ShownAsync() => page.Page.WaitForExpressionAsync($"!document.querySelector('#cell-{Figure} .bb-names').hidden", Patience);

        Task<string[]> OfferedAsync() => page.Page.EvaluateExpressionAsync<string[]>(
            $"[...document.querySelectorAll('#cell-{Figure} .bb-names:not([hidden]) li')]"
                + ".map(one => `${one.firstChild.textContent}|${one.lastChild.textContent}`)");
    }

    [SkippableFact]
    public async Task Edits_stay_on_the_device_and_are_saved_as_a_notebook_that_opens_again()
    {
        string own = RepositoryRoot.File($"notebooks/{Notebook}.ipynb");
        await using WatchedPage page = await OpenAsync();
        Assert.Equal(await File.ReadAllTextAsync(own), await SavedAsync(page));
        await EditAsync(page, Figure, "// ¾ \"edited\"\nBalanceFigures.BrakeForces(laden)");
        string saved = await SavedAsync(page);
        NotebookDocument before = NotebookFile.Read(own), after = NotebookFile.Parse(saved, own);
        Assert.Equal(CanonicalNotebook.Text(saved, own), saved);
        Assert.Equal(before.Cells.Select(cell => cell.Id == Figure ? "// ¾ \"edited\"\nBalanceFigures.BrakeForces(laden)" : cell.Source),
            after.Cells.Select(cell => cell.Source));
        await page.Page.ReloadAsync();
        Assert.StartsWith("// ¾", await SourceAsync(page, Figure), StringComparison.Ordinal);
        await ForgetAsync(page);
        await page.Page.ReloadAsync();
        Assert.Equal("", await SourceAsync(page, Figure));
        string file = Path.Combine(browser.Folder, Notebook + ".ipynb");
        await File.WriteAllTextAsync(file, saved);
        IElementHandle picker = await page.Page.QuerySelectorAsync("#bb-edits input[type=file]");
        await picker.UploadFileAsync(file);
        await page.Page.WaitForExpressionAsync($"!!document.querySelector('#cell-{Figure} textarea')", Patience);
        Assert.StartsWith("// ¾", await SourceAsync(page, Figure), StringComparison.Ordinal);
        page.AssertQuiet();
        await ForgetAsync(page);
    }

    private static string Shown(string cell) =>
        $"[...document.querySelectorAll('#cell-{cell} > .bb-output')].map(one => one.outerHTML).join('')";

    private async Task<WatchedPage> OpenAsync(int width = 1280)
    {
        WatchedPage page = await browser.OpenAsync(await RenderedNotebooks.PageAsync(Notebook), width);
        await ForgetAsync(page);
        await page.Page.ReloadAsync();
        await page.Page.ClickAsync("#bb-code-all");
        return page;
    }

    private static async Task ActAsync(WatchedPage page, Func<Task> act)
    {
        string ran = await page.Page.EvaluateExpressionAsync<string>("document.documentElement.dataset.ran || ''");
        await act();
        await page.Page.WaitForExpressionAsync($"(document.documentElement.dataset.ran || '') !== '{ran}'", Patience);
    }

    /// <summary>Opens a cell's editor by keyboard where it is not open, and puts another text in.</summary>
    private static async Task EditAsync(WatchedPage page, string cell, string source)
    {
        string area = $"#cell-{cell} textarea";
        if (await page.Page.QuerySelectorAsync(area) is null)
        {
            await page.Page.FocusAsync($"#cell-{cell} .bb-edit button");
            await ActAsync(page, () => page.Page.Keyboard.PressAsync("Enter"));
        }

        await page.Page.FocusAsync(area);
        await page.Page.EvaluateExpressionAsync("document.activeElement.select()");
        await page.Page.Keyboard.SendCharacterAsync(source);
    }

    private static Task RunAsync(WatchedPage page, string cell) => ActAsync(page, async () =>
    {
        await page.Page.FocusAsync($"#cell-{cell} textarea");
        await page.Page.Keyboard.DownAsync("Control");
        await page.Page.Keyboard.PressAsync("Enter");
        await page.Page.Keyboard.UpAsync("Control");
    });

    private static Task<string> SourceAsync(WatchedPage page, string cell) =>
        page.Page.EvaluateExpressionAsync<string>($"document.querySelector('#cell-{cell} textarea')?.value || ''");

    private static Task<string> FailureAsync(WatchedPage page, string cell) =>
        page.Page.EvaluateExpressionAsync<string>($"document.querySelector('#cell-{cell} > .bb-failure').innerText");

    private static Task<string> SavedAsync(WatchedPage page) => page.Page.EvaluateExpressionAsync<string>(
        """
        (async () => {
          const make = URL.createObjectURL;
          let saved = null;
          URL.createObjectURL = blob => { saved = blob; return make.call(URL, blob); };
          [...document.querySelectorAll("#bb-edits button")].find(one => one.textContent.startsWith("Save")).click();
          URL.createObjectURL = make;
          return saved.text();
        })()
        """);

    private static Task ForgetAsync(WatchedPage page) =>
        page.Page.EvaluateExpressionAsync($"localStorage.removeItem('bb-cells {Notebook}')");

    /// <summary>
    /// A page for each car whose worker has compiled before: the notebooks of a site are replayed in the one that was opened first.
    /// </summary>
    public sealed class Warm
    {
        private readonly ConcurrentDictionary<string, Lazy<Task<WatchedPage>>> _pages = new();

        internal Task<WatchedPage> PageAsync(BrowserFixture browser, string car, string file) =>
            _pages.GetOrAdd(car, _ => new(() => browser.OpenAsync(file))).Value;
    }
}
