using System.Text.Json.Nodes;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Execution;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>
/// What cells that a reader edits in a page find around them: environment variables, and files beside those of the repository.
/// </summary>
/// <param name="Variables">Environment variables by name.</param>
/// <param name="Files">The user's files by their path in the page, with their texts.</param>
internal sealed record CellSurroundings(IReadOnlyDictionary<string, string> Variables, IReadOnlyDictionary<string, string> Files)
{
    // No path of this machine stands in a page; a log that lies beside or above the vehicle file is found all the same.
    private const string Own = "/your/own/files";

    /// <summary>Nothing beside the repository's files: the invented car.</summary>
    public static CellSurroundings None { get; } = new(new Dictionary<string, string>(), new Dictionary<string, string>());

    /// <summary>What the notebooks find here.</summary>
    public static CellSurroundings Of(NotebookInput input, string? bench, IEnumerable<string> logs)
    {
        Dictionary<string, string> variables = new()
        {
            [NotebookInput.OverridesVariable] = string.Join('\n', input.Overrides),
            [Display.Variable] = Display.Name(Display.Units),
        }, files = [];
        if (!input.IsDefault)
        {
            variables[NotebookInput.VehicleVariable] = Put(input.VehiclePath);
            logs.ToList().ForEach(log => Put(log));
        }

        if (bench is not null)
            variables[BenchInput.Variable] = Put(bench);
        return new(variables, files);

        string Put(string file)
        {
            string place = Path.GetFullPath(Path.Combine(Own, Path.GetRelativePath(Path.GetDirectoryName(input.VehiclePath)!, file)));
            files[place] = File.ReadAllText(file);
            return place;
        }
    }

    /// <summary>What a page's script needs to edit and run a notebook's cells.</summary>
    public string Json(ExecutedNotebook notebook) => new JsonObject
    {
        ["name"] = notebook.Name,
        ["notebook"] = CanonicalNotebook.Of(notebook.Cells.Select(cell =>
            new NotebookCell(cell.Id, cell is ExecutedCodeCell, cell.Source, (cell as ExecutedCodeCell)?.Tags ?? []))),
        ["variables"] = Texts(Variables),
        ["files"] = Texts(Files),
    }.ToJsonString();

    /// <summary>The files of the repository that notebooks read, by their path in the page.</summary>
    public static string Repository()
    {
        string root = Path.GetFullPath(RepositoryRoot.File("."));
        IEnumerable<string> data = Directory.EnumerateFiles(Path.Combine(root, "data"), "*", SearchOption.AllDirectories);
        string setup = File.ReadAllText(Path.Combine(root, "notebooks", "_setup.csx"));
        return Texts(new SortedDictionary<string, string>(
            data.ToDictionary(file => "/" + Path.GetRelativePath(root, file).Replace('\\', '/'), File.ReadAllText), StringComparer.Ordinal)
        {
            ["/Notebooks.sln"] = "",
            ["/notebooks/_setup.csx"] = setup,
            ["/notebooks/lessons/_setup.csx"] = setup,
        }).ToJsonString();
    }

    private static JsonObject Texts(IEnumerable<KeyValuePair<string, string>> texts) =>
        new(texts.Select(text => KeyValuePair.Create(text.Key, (JsonNode?)JsonValue.Create(text.Value))));
}
