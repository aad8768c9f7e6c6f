namespace BrakeBalance.Notebooks.Execution;

/// <summary>Runs the code cells of one notebook, one after the other; a cell sees what the cells before it defined.</summary>
internal interface ICellEngine : IAsyncDisposable
{
    /// <summary>Runs one cell.</summary>
    /// <param name="code">C# script; a <c>#load</c> line counts from the engine's folder.</param>
    /// <param name="cancellation">Stops waiting for the cell.</param>
    /// <returns>What the cell printed and returned, and why it failed if it did.</returns>
    /// <exception cref="OperationCanceledException"><paramref name="cancellation"/> was requested.</exception>
    Task<CellRun> RunAsync(string code, CancellationToken cancellation);
}
