using System.Text.Json.Nodes;
using BrakeBalance.Notebooks.Documents;

namespace BrakeBalance.Notebooks.Tests;

/// <summary>Small notebooks made in memory.</summary>
internal static class SampleNotebook
{
    public static NotebookDocument Of(string name, params string[] cells) => NotebookFile.Parse(Json(cells), $"/nowhere/{name}.ipynb");

    /// <summary>Cells that start with '#' and a blank are prose, the others are code.</summary>
    public static string Json(params string[] cells) => new JsonObject
    {
        ["nbformat"] = 4,
        ["nbformat_minor"] = 5,
        ["metadata"] = new JsonObject(),
        ["cells"] = new JsonArray([.. cells.Select((source, index) => new JsonObject
        {
            ["cell_type"] = source.StartsWith("# ", StringComparison.Ordinal) ? "markdown" : "code",
            ["id"] = $"c{index}",
            ["metadata"] = new JsonObject(),
            ["source"] = source,
        })]),
    }.ToJsonString();
}
