using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Execution;

namespace BrakeBalance.Notebooks.Tests.Documents;

/// <summary>Every notebook of the repository is in its canonical form, keeps the rules and runs to its end.</summary>
[Collection(EnginesCollection.Name)]
public class RepositoryNotebooksTests
{
    public static TheoryData<string> Notebooks =>
        [.. NotebookFile.In(RepositoryRoot.File("notebooks")).Select(path => Path.GetRelativePath(RepositoryRoot.File("."), path))];

    [Fact]
    public void There_are_notebooks() => Assert.NotEmpty(Notebooks);

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
    [MemberData(nameof(Notebooks))]
    public Task It_runs_to_its_end(string notebook) => RunAsync(notebook, EngineKind.Interactive);

    [Theory]
    [MemberData(nameof(Notebooks))]
    public Task It_runs_to_its_end_without_the_kernel(string notebook) => RunAsync(notebook, EngineKind.Script);

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
