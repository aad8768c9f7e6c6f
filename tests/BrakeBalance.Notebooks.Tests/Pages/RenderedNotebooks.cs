using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Execution;
using BrakeBalance.Notebooks.Pages;

namespace BrakeBalance.Notebooks.Tests.Pages;

/// <summary>The repository's notebooks as pages, run and written once for all tests that look at them.</summary>
internal static class RenderedNotebooks
{
    private static readonly Lazy<Task<IReadOnlyList<ExecutedNotebook>>> Executed = new(() =>
        EnginesCollection.RunAsync(EngineKind.Interactive, [.. Files.Select(NotebookFile.Read)]));

    private static readonly Lazy<Task<string>> Folder = new(WriteAsync);

    /// <summary>The notebooks' names.</summary>
    public static TheoryData<string> Names => [.. Files.Select(path => Path.GetFileNameWithoutExtension(path))];

    private static IReadOnlyList<string> Files => NotebookFile.In(RepositoryRoot.File("notebooks"));

    /// <summary>The file of a page.</summary>
    public static async Task<string> PageAsync(string name) => Path.Combine(await Folder.Value, PageNames.FileFor(name));

    /// <summary>What a notebook put out, run beside the others.</summary>
    public static async Task<ExecutedNotebook> ExecutedAsync(string name) =>
        (await Executed.Value).Single(notebook => notebook.Name == name);

    private static async Task<string> WriteAsync()
    {
        string folder = Directory.CreateTempSubdirectory("bb-pages-").FullName;
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(folder, recursive: true);
        Site.Write([.. (await Executed.Value).Select(notebook => new SiteEntry(notebook))], folder, new SiteOptions());
        return folder;
    }
}
