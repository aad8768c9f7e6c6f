namespace BrakeBalance.Notebooks.Execution;

/// <summary>Makes engines, ready for their first cell.</summary>
internal static class CellEngines
{
    /// <summary>Starts an engine and compiles a first expression in it, so that the first cell does not wait for the compiler.</summary>
    /// <param name="kind">What runs the cells.</param>
    /// <param name="folder">The notebook's folder, from which <c>#load</c> lines count.</param>
    /// <returns>The engine; the caller disposes of it.</returns>
    public static async Task<ICellEngine> StartAsync(EngineKind kind, string folder)
    {
        ICellEngine engine = kind == EngineKind.Script ? new ScriptEngine(folder) : new InteractiveEngine(folder);
        await engine.RunAsync("0;", CancellationToken.None).ConfigureAwait(false);
        return engine;
    }
}
