using System.Text.Json.Nodes;
using BrakeBalance.Notebooks.Documents;

namespace BrakeBalance.Notebooks.Tests.Documents;

public class CanonicalNotebookTests
{
    private const string Untidy =
        """
        {"nbformat":4,"nbformat_minor":2,"metadata":{"vscode":{"a":1},"kernelspec":{"name":"other"}},
         "cells":[
          {"cell_type":"markdown","source":["# Knee\r\n","line “two”"],"metadata":{"collapsed":true}},
          {"cell_type":"code","id":"keep-me","execution_count":7,"source":"var knee = 38;\nknee","metadata":{"tags":["figure"],"vscode":{}},
           "outputs":[{"output_type":"stream","text":"noise"}]},
          {"cell_type":"code","id":"keep-me","source":[],"metadata":{},"outputs":[]}]}
        """;

    private static readonly JsonNode Canonical = JsonNode.Parse(CanonicalNotebook.Text(Untidy, "test"))!;

    [Fact]
    public void Outputs_and_counts_are_gone()
    {
        JsonNode cell = Canonical["cells"]![1]!;
        Assert.Empty(cell["outputs"]!.AsArray());
        Assert.Null(cell["execution_count"]);
        Assert.True(cell.AsObject().ContainsKey("execution_count"));
    }

    [Fact]
    public void Tags_stay_and_other_metadata_goes()
    {
        Assert.Equal("""{"tags":["figure"]}""", Canonical["cells"]![1]!["metadata"]!.ToJsonString());
        Assert.Equal("{}", Canonical["cells"]![0]!["metadata"]!.ToJsonString());
        Assert.Equal(["kernelspec", "language_info"], Canonical["metadata"]!.AsObject().Select(pair => pair.Key));
        Assert.Equal("brake-balance-csharp", (string?)Canonical["metadata"]!["kernelspec"]!["name"]);
    }

    [Fact]
    public void Every_cell_has_an_id_of_its_own_and_keeps_one_it_has()
    {
        string[] ids = [.. Canonical["cells"]!.AsArray().Select(cell => (string)cell!["id"]!)];
        Assert.Equal(3, ids.Distinct().Count());
        Assert.Equal("keep-me", ids[1]);
        Assert.Equal("keep-me-2", ids[2]);
        Assert.Matches("^[0-9a-f]{8}$", ids[0]);
    }

    [Fact]
    public void Lines_end_in_LF_and_letters_are_not_escaped()
    {
        string text = CanonicalNotebook.Text(Untidy, "test");
        Assert.DoesNotContain('\r', text);
        Assert.EndsWith("}\n", text);
        Assert.Contains("line “two”", text);
        Assert.Contains("\n \"cells\": [\n  {\n", text);
    }

    [Fact]
    public void Applying_it_again_changes_nothing()
    {
        string once = CanonicalNotebook.Text(Untidy, "test");
        Assert.Equal(once, CanonicalNotebook.Text(once, "test"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("not json")]
    [InlineData("""{"nbformat":3,"worksheets":[]}""")]
    [InlineData("""{"nbformat":4}""")]
    [InlineData("""{"nbformat":4,"cells":[{"source":"x"}]}""")]
    [InlineData("""{"nbformat":4,"cells":[5]}""")]
    public void What_is_no_notebook_is_refused_by_name(string text)
    {
        var exception = Assert.Throws<NotebookFormatException>(() => CanonicalNotebook.Text(text, "some/file.ipynb"));
        Assert.StartsWith("'some/file.ipynb' is not a notebook of format 4: ", exception.Message);
    }
}
