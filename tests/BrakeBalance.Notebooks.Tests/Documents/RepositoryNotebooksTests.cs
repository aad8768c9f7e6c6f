using System.Text.RegularExpressions;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Execution;

namespace BrakeBalance.Notebooks.Tests.Documents;

/// <summary>Every notebook of the repository is in its canonical form, keeps the rules and runs to its end.</summary>
[Collection(EnginesCollection.Name)]
public partial class RepositoryNotebooksTests
{
    public static TheoryData<string> Notebooks =>
        [.. NotebookFile.In(RepositoryRoot.File("notebooks")).Select(path => Path.GetRelativePath(RepositoryRoot.File("."), path))];

    /// <summary>The lessons, and the other notebooks, which carry a number.</summary>
    public static TheoryData<string> Lessons => [.. Notebooks.Select(row => row.Data).Except(Numbered.Select(row => row.Data))];

    public static TheoryData<string> Numbered =>
        [.. Directory.EnumerateFiles(RepositoryRoot.File("notebooks"), "0*.ipynb").Order(StringComparer.Ordinal)
            .Select(path => Path.GetRelativePath(RepositoryRoot.File("."), path))];

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
        NotebookDocument document = NotebookFile.Read(RepositoryRoot.File(notebook));
        NotebookCell marked = Assert.Single(document.Cells, cell => cell.Source.Contains("// change me: ", StringComparison.Ordinal));
        Match line = ChangeMe().Match(marked.Source);
        Assert.True(line.Success, marked.Source);
        Group value = line.Groups["value"];
        string changed = marked.Source.Remove(value.Index, value.Length).Insert(value.Index, line.Groups["other"].Value);
        IReadOnlyList<ExecutedNotebook> executed = await new NotebookRunner(EngineKind.Script).RunAsync(
            [document, document with { Cells = [.. document.Cells.Select(cell => cell == marked ? cell with { Source = changed } : cell)] }],
            null, default);
        ExecutedCodeCell[][] codes = [.. executed.Select(one => one.Cells.OfType<ExecutedCodeCell>().ToArray())];
        Assert.All(codes.SelectMany(one => one), cell => Assert.True(cell.Failure is null, $"{cell.Id}: {cell.Failure?.Message}"));
        string[] follow = [.. codes[0].Zip(codes[1]).Where(pair => Shown(pair.First) != Shown(pair.Second)).Select(pair => pair.First.Id)];
        Assert.Contains(follow, id => id != marked.Id);

        static string Shown(ExecutedCodeCell cell) => string.Join('\n', cell.Outputs.SelectMany(output => output.Data.Values));
    }

    // A statement about all unknown numbers at once: the table of the estimate below it is its evaluation, and chains check that.
    private const string NotEvaluated = "P(θ | stops)";

    [GeneratedRegex(@"(?m)^[\w\[\]]+ \w+ = (?<value>.+); // change me: .+, such as (?<other>.+)$")]
    private static partial Regex ChangeMe();

    [Theory]
    [MemberData(nameof(Notebooks))]
    public Task It_runs_to_its_end(string notebook) => RunAsync(notebook, EngineKind.Interactive);

    [Theory]
    [MemberData(nameof(Lessons))]
    public Task A_lesson_runs_to_its_end_without_the_kernel(string notebook) => RunAsync(notebook, EngineKind.Script);

    private static async Task RunAsync(string notebook, EngineKind kind)
    {
        NotebookDocument document = NotebookFile.Read(RepositoryRoot.File(notebook));
        ExecutedNotebook executed = (await new NotebookRunner(kind).RunAsync([document], null, default)).Single();

        ExecutedCodeCell? failed = executed.Cells.OfType<ExecutedCodeCell>().FirstOrDefault(cell => cell.Failure is not null);
        Assert.True(failed is null,
            $"cell {failed?.Id}, line {failed?.Failure?.Line}: {failed?.Failure?.Message}\n{failed?.Failure?.SourceLine}");
        Assert.Equal(document.Cells.Count, executed.Cells.Count);
    }
}
