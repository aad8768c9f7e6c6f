using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace BrakeBalance.Notebooks.Execution.Children;

/// <summary>What a process of cells is asked to do; one line of JSON each.</summary>
internal enum CellTask
{
    /// <summary>To start an engine for the folder in the request's text.</summary>
    Start,

    /// <summary>To run the cell in the request's text.</summary>
    Run,

    /// <summary>To let an engine go.</summary>
    End,
}

internal sealed record CellRequest(CellTask Task, int Engine, EngineKind Kind, string Text);

/// <summary>An answer of a process of cells.</summary>
/// <param name="Engine">The engine's number; 0 when the whole process ends.</param>
/// <param name="Run">What came of a cell; null when an engine has started or was let go.</param>
/// <param name="Ending">Why the process ends; null while it goes on.</param>
internal sealed record CellAnswer(int Engine, CellRun? Run, string? Ending = null);

internal static class CellMessages
{
    private static readonly JsonSerializerOptions Written = new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    };

    public static string Line<T>(T message) => JsonSerializer.Serialize(message, Written);

    /// <summary>Reads a line; null when it is no message, as when a cell writes to the process's own output.</summary>
    public static T? Read<T>(string line) where T : class
    {
        try
        {
            return line.StartsWith('{') ? JsonSerializer.Deserialize<T>(line, Written) : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
