namespace BrakeBalance.Notebooks.Commands;

/// <summary>Renders again whenever something that the pages rest on changes, until it is stopped.</summary>
internal static class RenderWatch
{
    /// <summary>Folders of the repository from which notebooks read.</summary>
    public static readonly string[] Shared = ["data", "notebooks"];

    // An editor writes a file in several steps.
    private static readonly TimeSpan Settling = TimeSpan.FromMilliseconds(200);

    /// <summary>Renders, waits for a change, and renders again.</summary>
    /// <param name="terminal">Where each outcome is told.</param>
    /// <param name="render">Renders once, and names the user's own files that it rests on.</param>
    /// <param name="cancellation">Ends the watch.</param>
    public static async Task<int> RunAsync(Terminal terminal, Func<ICollection<string>, Task<int>> render, CancellationToken cancellation)
    {
        while (true)
        {
            HashSet<string> own = [];
            try
            {
                await render(own).ConfigureAwait(false);
            }
            catch (BadInputException exception)
            {
                exception.Problems.ToList().ForEach(terminal.Error.WriteLine);
            }

            terminal.Output.WriteLine("Waiting for a change; Ctrl+C ends.");
            terminal.Release();
            await ChangeAsync(own, cancellation).ConfigureAwait(false);
        }
    }

    private static async Task ChangeAsync(HashSet<string> own, CancellationToken cancellation)
    {
        var changed = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        string[] shared = [.. Shared.Select(Repository.Folder)];
        IEnumerable<(string Folder, bool IsOwn)> places = shared.Select(folder => (folder, false))
            .Concat(own.Select(file => Path.GetDirectoryName(file)!).Distinct().Select(folder => (folder, true)));
        List<FileSystemWatcher> watchers = [];
        try
        {
            foreach ((string folder, bool isOwn) in places)
            {
                var watcher = new FileSystemWatcher(folder) { IncludeSubdirectories = !isOwn };
                void Told(object _, FileSystemEventArgs one)
                {
                    if (!isOwn || own.Contains(one.FullPath))
                    {
                        changed.TrySetResult();
                    }
                }

                watcher.Changed += Told;
                watcher.Created += Told;
                watcher.Deleted += Told;
                watcher.Renamed += Told;
                watcher.EnableRaisingEvents = true;
                watchers.Add(watcher);
            }

            await changed.Task.WaitAsync(cancellation).ConfigureAwait(false);
            await Task.Delay(Settling, cancellation).ConfigureAwait(false);
        }
        finally
        {
            watchers.ForEach(watcher => watcher.Dispose());
        }
    }
}
