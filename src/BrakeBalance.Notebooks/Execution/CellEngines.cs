namespace BrakeBalance.Notebooks.Execution;

internal static class CellEngines
{
    // More would be faster on more processors, and take more memory.
    private const int Most = 2;

    /// <summary>Starts an engine and compiles a first expression in it, so that the first cell does not wait for the compiler.</summary>
    /// <returns>The engine; the caller disposes of it.</returns>
    public static Task<ICellEngine> StartAsync(EngineKind kind, string folder) =>
        WarmAsync<ICellEngine>(kind == EngineKind.Script ? new ScriptEngine(folder) : new InteractiveEngine(folder));

    /// <summary>How many notebooks run beside one another.</summary>
    /// <remarks>Scripting catches what cells print by replacing the console's writers, so its cells run one at a time.</remarks>
    public static int Beside(EngineKind kind) => kind == EngineKind.Script ? 1 : Math.Min(Most, Environment.ProcessorCount);

    /// <summary>Compiles a first expression in an engine.</summary>
    public static async Task<T> WarmAsync<T>(T engine)
        where T : ICellEngine
    {
        await engine.RunAsync("0;", CancellationToken.None).ConfigureAwait(false);
        return engine;
    }
}
