using System.Collections.Concurrent;
using System.Net;
using System.Text.RegularExpressions;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Execution;
using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Notebooks.Tests.Pages;

namespace BrakeBalance.Notebooks.Tests.Documents;

/// <summary>Every notebook of the repository is in its canonical form, keeps the rules and runs to its end.</summary>
[Collection(EnginesCollection.Name)]
public partial class RepositoryNotebooksTests
{
    public static TheoryData<string> Notebooks => [.. In("notebooks"), .. In("notebooks/lessons")];

    /// <summary>The notebooks that are no lessons.</summary>
    public static TheoryData<string> Numbered => [.. In("notebooks")];

    public static TheoryData<string> Lessons => [.. In("notebooks/lessons")];

    private static IEnumerable<string> In(string folder) => NotebookFile.In(RepositoryRoot.File("notebooks"))
        .Select(path => Path.GetRelativePath(RepositoryRoot.File("."), path)).Where(path => Path.GetDirectoryName(path) == folder);

    [Fact]
    public void There_are_notebooks() => Assert.Equal(9, Numbered.Count);

    [Theory]
    [MemberData(nameof(Notebooks))]
    public void It_is_in_the_form_kept_in_git(string notebook)
    {
        string text = File.ReadAllText(RepositoryRoot.File(notebook));
        Assert.Equal(CanonicalNotebook.Text(text, notebook), text);
    }

    [Theory]
    [MemberData(nameof(Notebooks))]
    public void It_keeps_the_rules(string notebook) => Assert.Empty(NotebookRules.Broken(NotebookFile.Read(RepositoryRoot.File(notebook))));

    [Theory]
    [MemberData(nameof(Notebooks))]
    public void One_cell_opens_its_page(string notebook) =>
        Assert.Single(NotebookFile.Read(RepositoryRoot.File(notebook)).Cells, cell => cell.Tags.Contains(NotebookRules.FirstScreen));

    [Theory]
    [MemberData(nameof(Notebooks))]
    public void Its_main_figure_is_followed_by_what_to_see_there(string notebook) => Assert.Contains("What to see",
        NotebookFile.Read(RepositoryRoot.File(notebook)).Cells
            .SkipWhile(cell => !cell.Tags.Contains(NotebookRules.FirstScreen)).ElementAt(1).Source, StringComparison.Ordinal);

    [Theory]
    [MemberData(nameof(Numbered))]
    public void A_row_of_a_table_below_evaluates_each_displayed_equation(string notebook)
    {
        IReadOnlyList<NotebookCell> cells = NotebookFile.Read(RepositoryRoot.File(notebook)).Cells;
        string[] missing =
        [
            .. from at in cells.Index()
               where !at.Item.IsCode
               let tables = cells.Skip(at.Index + 1)
                   .TakeWhile(cell => cell.IsCode || !cell.Source.StartsWith("## ", StringComparison.Ordinal))
                   .Where(cell => cell.IsCode && cell.Source.Contains("EquationTable.Of(", StringComparison.Ordinal))
               from name in DisplayedEquations.Names(at.Item.Source)
               where name != NotEvaluated && !tables.Any(cell => DisplayedEquations.IsNamed(name, cell.Source))
               select $"{at.Item.Id}: {name}",
        ];
        Assert.Empty(missing);
    }

    [Theory]
    [InlineData(@"$$E = \frac{1}{2} m v^2, \qquad \Delta T = 3$$", "E", "Δ T")]
    [InlineData(@"$$\text{front: } T_1 = k$$ and $$I_z \dot{r} = 2$$", "T₁", "I_z ṙ")]
    [InlineData(@"$$\sqrt{F_x^2 + F_y^2} \le \mu N$$", "√(F_x² + F_y²)")]
    public void A_displayed_equation_is_named_by_its_left_side(string prose, params string[] names)
    {
        Assert.Equal(names, DisplayedEquations.Names(prose));
        Assert.All(names, name => Assert.True(DisplayedEquations.IsNamed(name, $"(\"{name} of the car\", 1)")));
        Assert.All(names, name => Assert.False(DisplayedEquations.IsNamed(name, $"(\"{name}x\", {name})")));
    }

    [Theory]
    [MemberData(nameof(Numbered))]
    public async Task It_runs_without_the_kernel_and_from_the_line_marked_to_be_changed_the_cells_below_follow(string notebook)
    {
        (NotebookCell marked, ExecutedCodeCell[] now, ExecutedCodeCell[] changed) = await InPoundsAsync(notebook);
        Assert.All(now.Concat(changed), cell => Assert.True(cell.Failure is null, $"{cell.Id}: {cell.Failure?.Message}"));
        Assert.Contains(now.Zip(changed), pair => pair.First.Id != marked.Id && Shown(pair.First) != Shown(pair.Second));
    }

    [Theory]
    [MemberData(nameof(Numbered))]
    public async Task In_pounds_and_inches_no_cell_shows_a_metric_number_alone(string notebook)
    {
        (_, ExecutedCodeCell[] cells, _) = await InPoundsAsync(notebook);
        Assert.Contains(cells, cell => Shown(cell).Contains("psi", StringComparison.Ordinal));
        ILookup<string, string> alone = (
            from cell in cells
            where !cell.Id.StartsWith("check", StringComparison.Ordinal)
            from Match found in Metric().Matches(WebUtility.HtmlDecode(Markup().Replace(Shown(cell), " ")))
            select (Cell: $"{Path.GetFileName(notebook)[..2]} {cell.Id}", found.Value)).ToLookup(one => one.Cell, one => one.Value);
        Assert.Equal(
            MetricStays.Select(one => one.Cell).Where(cell => cell.StartsWith(Path.GetFileName(notebook)[..2], StringComparison.Ordinal)),
            alone.Select(one => one.Key));
    }

    /// <summary>Cells whose metric numbers are not the car's. A cell "check…" has a source's own numbers.</summary>
    private static readonly (string Cell, string Why)[] MetricStays =
    [
        ("04 rules", "conditions of the rules, which are in km/h, m and N"),
        ("09 targets", "names of parts, as their list writes them"),
        ("09 front", "the same"),
        ("09 miss", "the same"),
        ("09 shopping", "the same"),
    ];

    private static readonly ConcurrentDictionary<string, Task<(NotebookCell, ExecutedCodeCell[], ExecutedCodeCell[])>> Runs = new();

    [Theory]
    [InlineData(UnitSystem.Si, "not more than 500 N on")]
    [InlineData(UnitSystem.Us, "not more than 112 lbf on")]
    public void A_page_s_text_shows_the_system_of_units_chosen(UnitSystem units, string expected)
    {
        UnitSystem before = Display.Units;
        Display.Units = units;
        try
        {
            var cell = new ExecutedMarkdownCell("c", "With not more than 500 N (112 lbf) on the pedal.");
            Assert.Contains(expected, new CellRenderer("n", new ProseRenderer("n")).Html(cell), StringComparison.Ordinal);
        }
        finally
        {
            Display.Units = before;
        }
    }

    /// <summary>The notebook in United States units, as it stands and with its marked line as the line proposes.</summary>
    private static Task<(NotebookCell Marked, ExecutedCodeCell[] Now, ExecutedCodeCell[] Changed)> InPoundsAsync(string notebook) =>
        Runs.GetOrAdd(notebook, async _ =>
        {
            NotebookDocument document = NotebookFile.Read(RepositoryRoot.File(notebook));
            NotebookCell marked = Assert.Single(document.Cells, cell => cell.Source.Contains("// change me: ", StringComparison.Ordinal));
            Match line = ChangeMe().Match(marked.Source);
            Assert.True(line.Success, marked.Source);
            Group value = line.Groups["value"];
            NotebookCell other = marked with
            {
                Source = marked.Source.Remove(value.Index, value.Length).Insert(value.Index, line.Groups["other"].Value),
            };
            UnitSystem before = Display.Units;
            Display.Units = UnitSystem.Us;
            try
            {
                IReadOnlyList<ExecutedNotebook> executed = await new NotebookRunner(EngineKind.Script).RunAsync(
                    [document, document with { Cells = [.. document.Cells.Select(cell => cell == marked ? other : cell)] }], null, default);
                return (marked, [.. executed[0].Cells.OfType<ExecutedCodeCell>()], [.. executed[1].Cells.OfType<ExecutedCodeCell>()]);
            }
            finally
            {
                Display.Units = before;
            }
        });

    private static string Shown(ExecutedCodeCell cell) => string.Join('\n', cell.Outputs.Select(output =>
        output.Data.GetValueOrDefault("text/html") ?? string.Join('\n', output.Data.Values)));

    [GeneratedRegex(@"(?s)<(script|style)\b.*?</\1>|<[^>]*>")]
    private static partial Regex Markup();

    // A number, or the brackets of a heading, before the unit; "12 mm (0.47 in)" has both.
    [GeneratedRegex(@"\S*(?:\d\s?|\[)(?:bar|kPa|MPa|kN|N·m|N|mm|cm|km/h|km|m/s²|m²|m|kg|°C|l/min|cm³|cm²)(?![\w·/³²])(?!\s?\()")]
    private static partial Regex Metric();

    // A statement about all unknown numbers at once: the table of the estimate below it is its evaluation, and chains check that.
    private const string NotEvaluated = "P(θ | stops)";

    [GeneratedRegex(@"(?m)^[\w\[\]]+ \w+ = (?<value>.+); // change me: .+, such as (?<other>.+)$")]
    private static partial Regex ChangeMe();

    [Theory]
    [MemberData(nameof(Notebooks))]
    public async Task It_runs_to_its_end(string notebook) =>
        RanToItsEnd(notebook, await RenderedNotebooks.ExecutedAsync(Path.GetFileNameWithoutExtension(notebook)));

    [Theory]
    [MemberData(nameof(Lessons))]
    public async Task A_lesson_runs_to_its_end_without_the_kernel(string notebook) => RanToItsEnd(notebook,
        (await new NotebookRunner(EngineKind.Script).RunAsync([NotebookFile.Read(RepositoryRoot.File(notebook))], null, default)).Single());

    private static void RanToItsEnd(string notebook, ExecutedNotebook executed)
    {
        ExecutedCodeCell? failed = executed.Cells.OfType<ExecutedCodeCell>().FirstOrDefault(cell => cell.Failure is not null);
        Assert.True(failed is null,
            $"cell {failed?.Id}, line {failed?.Failure?.Line}: {failed?.Failure?.Message}\n{failed?.Failure?.SourceLine}");
        Assert.Equal(NotebookFile.Read(RepositoryRoot.File(notebook)).Cells.Count, executed.Cells.Count);
    }
}
