using BrakeBalance.Notebooks.Documents;

namespace BrakeBalance.Notebooks.Tests.Commands;

public class NotebooksCommandTests
{
    private static readonly string Untidy = SampleNotebook.Json("# Title", "#load \"_setup.csx\"", "1");

    [Fact]
    public async Task Verify_names_an_untidy_file_and_ends_with_1()
    {
        using var folder = new TemporaryFolder();
        string file = folder.Write("a.ipynb", Untidy);
        (int code, string output, string error) = await Shell.RunAsync("notebooks", "verify", file);
        Assert.Equal((1, "1 notebooks looked at, 1 problems.\n"), (code, output));
        Assert.Contains($"{file}: not in the form kept in git", error);
    }

    [Fact]
    public async Task Strip_brings_it_in_order_and_leaves_nothing_else()
    {
        using var folder = new TemporaryFolder();
        string file = folder.Write("a.ipynb", Untidy);
        Assert.Equal(0, (await Shell.RunAsync("notebooks", "strip", file)).Code);
        Assert.Equal(CanonicalNotebook.Text(Untidy, file), File.ReadAllText(file));
        Assert.Equal(["a.ipynb"], folder.Names);
        Assert.Equal(0, (await Shell.RunAsync("notebooks", "verify", file)).Code);
    }

    [Fact]
    public async Task Nothing_is_written_when_one_file_is_no_notebook()
    {
        using var folder = new TemporaryFolder();
        string good = folder.Write("good.ipynb", Untidy);
        string bad = folder.Write("bad.ipynb", "{");
        (int code, string _, string error) = await Shell.RunAsync("notebooks", "strip", good, bad, folder.File("none.ipynb"));
        Assert.Equal(2, code);
        Assert.Contains("bad.ipynb", error);
        Assert.Contains("none.ipynb", error);
        Assert.Equal(Untidy, File.ReadAllText(good));
    }
}
