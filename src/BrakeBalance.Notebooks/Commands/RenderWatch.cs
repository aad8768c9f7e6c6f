namespace BrakeBalance.Notebooks.Commands;

/// <summary>Renders again whenever something that the pages rest on changes, until it is stopped.</summary>
internal static class RenderWatch
{
    private static readonly TimeSpan Apart = TimeSpan.FromMilliseconds(300);

    // An editor writes a file in several steps.
    private static readonly TimeSpan Settling = TimeSpan.FromMilliseconds(200);

    /// <summary>All files of the repository from which notebooks read, and the notebooks.</summary>
    public static IEnumerable<string> Shared() => ((string[])["data", "notebooks"]).SelectMany(folder =>
        Directory.GetFiles(Repository.Folder(folder), "*", SearchOption.AllDirectories)).Order(StringComparer.Ordinal);

    /// <summary>Renders, waits for a change, and renders again; what changes meanwhile counts too.</summary>
    /// <param name="terminal">Where each outcome is told.</param>
    /// <param name="render">Renders once, and tells the user's own files that it rests on before it begins.</param>
    /// <param name="cancellation">Ends the watch.</param>
    public static async Task<int> RunAsync(Terminal terminal, Func<Action<string>, Task<int>> render, CancellationToken cancellation)
    {
        while (true)
        {
            Dictionary<string, string> own = [];
            string shared = string.Join('\n', Shared().Select(Stamp));
            try
            {
                await render(file => own[file] = Stamp(file)).ConfigureAwait(false);
            }
            catch (BadInputException exception)
            {
                exception.Problems.ToList().ForEach(terminal.Error.WriteLine);
            }

            terminal.Output.WriteLine("Waiting for a change; Ctrl+C ends.");
            terminal.Release();
            while (own.All(file => Stamp(file.Key) == file.Value) && string.Join('\n', Shared().Select(Stamp)) == shared)
            {
                await Task.Delay(Apart, cancellation).ConfigureAwait(false);
            }

            await Task.Delay(Settling, cancellation).ConfigureAwait(false);
        }
    }

    private static string Stamp(string file) => Invariant.Text($"{file} {File.GetLastWriteTimeUtc(file).Ticks}");
}
