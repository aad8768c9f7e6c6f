using BrakeBalance.Notebooks.Documents;

namespace BrakeBalance.Notebooks.Tests.Documents;

public class NotebookRulesTests
{
    private const string Setup = "#load \"_setup.csx\"";

    [Fact]
    public void A_notebook_in_order_breaks_no_rule() =>
        Assert.Empty(NotebookRules.Broken(SampleNotebook.Of("good", "# Title", Setup, "var a = 1;\na + 1")));

    [Theory]
    [InlineData("using System.Text;\nvar a = 1;", "using directives belong in _setup.csx")]
    [InlineData("#r \"x.dll\"\nvar a = 1;", "#r and #load belong in the first code cell")]
    [InlineData("#load \"x.csx\"", "#r and #load belong in the first code cell")]
    [InlineData("int Twice(int n) => 2 * n;", "types and methods belong in the assemblies")]
    [InlineData("record Point(double X);", "types and methods belong in the assemblies")]
    [InlineData("#!time\nvar a = 1;", "magic commands (#!…) run in one kernel only")]
    [InlineData("1;\n2;\n3;\n4;\n5;\n6;\n7;\n8;\n9;\n10;\n11;\n12;\n13;", "13 lines of code; at most 12")]
    public void A_cell_that_breaks_a_rule_is_named(string source, string problem) =>
        Assert.Contains($"cell c2: {problem}", NotebookRules.Broken(SampleNotebook.Of("bad", "# Title", Setup, source)));

    [Fact]
    public void Blank_lines_do_not_count() =>
        Assert.Empty(NotebookRules.Broken(
            SampleNotebook.Of("good", "# Title", Setup, string.Join("\n\n", Enumerable.Range(1, 12).Select(n => $"var a{n} = {n};")))));

    [Fact]
    public void The_first_code_cell_only_loads_the_setup() =>
        Assert.Contains("cell c1: ", NotebookRules.Broken(SampleNotebook.Of("bad", "# Title", Setup + "\nvar a = 1;")).Single());

    [Fact]
    public void One_code_cell_at_most_opens_the_page()
    {
        NotebookDocument good = SampleNotebook.Of("tags", "# Title", Setup, "1", "2");
        Assert.Empty(NotebookRules.Broken(Tagged(good, 2)));
        Assert.Contains("first-screen", NotebookRules.Broken(Tagged(good, 2, 3)).Single());
        Assert.Contains("first-screen", NotebookRules.Broken(Tagged(good, 0)).Single());

        static NotebookDocument Tagged(NotebookDocument notebook, params int[] tagged) => notebook with
        {
            Cells = [.. notebook.Cells.Select((cell, i) => tagged.Contains(i) ? cell with { Tags = [NotebookRules.FirstScreen] } : cell)],
        };
    }

    [Fact]
    public void The_title_comes_first_and_only_once()
    {
        Assert.Equal(2, NotebookRules.Broken(SampleNotebook.Of("bad", Setup)).Count);
        Assert.Contains("one top-level heading, not 2", NotebookRules.Broken(SampleNotebook.Of("bad", "# One", Setup, "# Two")).Single());
    }
}
