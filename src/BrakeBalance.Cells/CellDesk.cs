using System.Text.Json.Nodes;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Notebooks.Execution;
using BrakeBalance.Notebooks.Pages;
using Microsoft.CodeAnalysis.CSharp;

namespace BrakeBalance.Cells;

/// <summary>Answers a page that edits a notebook: which cells a cell needs, what the compiler knows of one, what it puts out.</summary>
internal sealed class CellDesk
{
    // From here "_setup.csx" and "../_setup.csx" are the same file: begin writes it in both places.
    private const string Folder = "/notebooks/lessons";

    private CellSession? _session;
    private CellNames? _names;

    /// <summary>Answers a request; a fault of the request itself is an answer too.</summary>
    /// <param name="request">
    /// <c>{ "begin": { "assemblies", "files", "variables" } }</c>, <c>{ "needs": [sources] }</c>, <c>{ "check": [sources], "cell": 3 }</c>,
    /// <c>{ "names": [sources], "cell": 3, "place": 40 }</c>, <c>{ "explain": one of those names }</c> or <c>{ "run": [sources of the cells
    /// that it needs, and its own], "name": "01-brake-balance-4" }</c>.
    /// </param>
    public async Task<string> AnswerAsync(string request)
    {
        try
        {
            JsonNode asked = JsonNode.Parse(request)!;
            return asked["begin"] is { } begin ? Begin(begin)
                : asked["needs"] is { } needs ? Json("needs", new JsonArray(
                    [.. CellNeeds.Of(Texts(needs)).Select(above => new JsonArray([.. above.Select(at => JsonValue.Create(at))]))]))
                : asked["check"] is { } check ? Check(await ReadAsync(Texts(check), (int)asked["cell"]!))
                : asked["names"] is { } names ? Names(new((await ReadAsync(Texts(names), (int)asked["cell"]!)).Cell, (int)asked["place"]!))
                : asked["explain"] is { } name ? Explain((string)name!)
                : await RunAsync(Texts(asked["run"]!), (string)asked["name"]!);
        }
        catch (Exception exception)
        {
            return Json("fault", exception.ToString());
        }
    }

    private static string[] Texts(JsonNode list) => [.. list.AsArray().Select(one => (string)one!)];

    private string Begin(JsonNode begin)
    {
        foreach ((string path, JsonNode? text) in begin["files"]!.AsObject())
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, (string)text!);
        }

        foreach ((string name, JsonNode? value) in begin["variables"]!.AsObject())
            Environment.SetEnvironmentVariable(name, (string)value!);
        Directory.CreateDirectory(Folder);
        Environment.CurrentDirectory = Folder;
        _session = new CellSession(Texts(begin["assemblies"]!), Folder);
        return "{}";
    }

    private Task<(CSharpCompilation Cell, bool KnowsAll)> ReadAsync(string[] cells, int cell) =>
        _session!.ReadAsync([.. CellNeeds.Of(cells)[cell].Append(cell).Select(at => cells[at])]);

    // One of each line, and how it is written before what it means: one slip is often refused in many ways.
    private static string Check((CSharpCompilation Cell, bool KnowsAll) read) => Json("errors", new JsonArray([.. CellFailures
        .Errors(read.Cell.GetParseDiagnostics().Concat(read.KnowsAll ? read.Cell.GetDiagnostics() : []))
        .DistinctBy(CellFailures.Line).OrderBy(CellFailures.Line).Select(error => new JsonObject
        {
            ["from"] = error.Location.SourceSpan.Start,
            ["to"] = error.Location.SourceSpan.End,
            ["line"] = CellFailures.Line(error),
            ["message"] = $"{error.GetMessage(CultureInfo.InvariantCulture)} ({error.Id})",
        })]));

    private string Names(CellNames names)
    {
        _names = names;
        return new JsonObject
        {
            ["from"] = names.From,
            ["names"] = new JsonArray([.. names.All.Select(one => new JsonArray(one.Name, one.Kind.ToLowerInvariant()))]),
        }.ToJsonString();
    }

    private string Explain(string name) => Json("explained", new JsonArray(
        [.. _names!.Explain(name).Select(one => new JsonObject { ["declared"] = one.Declared, ["documented"] = one.Documented })]));

    private async Task<string> RunAsync(string[] cells, string name)
    {
        CellRun run = await _session!.RunAsync(cells);
        return new JsonObject
        {
            ["html"] = Explorable.Exported(string.Concat(run.Outputs.Select(output => OutputRenderer.Html(output, name)))),
            // A page has room for a line each.
            ["failure"] = run.Failure is { } failure
                ? OutputRenderer.Html(failure with { Message = failure.Message.Replace("; line ", "\nline ", StringComparison.Ordinal) })
                : null,
        }.ToJsonString();
    }

    private static string Json(string name, JsonNode value) => new JsonObject { [name] = value }.ToJsonString();
}
