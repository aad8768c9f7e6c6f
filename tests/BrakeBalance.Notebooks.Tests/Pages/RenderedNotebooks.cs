using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Execution;
using BrakeBalance.Notebooks.Pages;

namespace BrakeBalance.Notebooks.Tests.Pages;

/// <summary>The repository's notebooks as pages, run and written once for all tests that look at them.</summary>
public sealed class RenderedNotebooks
{
    /// <summary>Cells share the console of the process: held by whoever runs any beside other tests.</summary>
    internal static readonly SemaphoreSlim Running = new(1);

    private static readonly string Folder = Directory.CreateTempSubdirectory("bb-pages-").FullName;
    private static readonly Lazy<Task<SiteResult>> Site = new(WriteAsync);

    static RenderedNotebooks()
    {
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(Folder, recursive: true);
    }

    /// <summary>The notebooks' names.</summary>
    public static TheoryData<string> Names => [.. Files.Select(path => Path.GetFileNameWithoutExtension(path))];

    private static IReadOnlyList<string> Files => NotebookFile.In(RepositoryRoot.File("notebooks"));

    /// <summary>What came of writing the pages.</summary>
    internal Task<SiteResult> SiteAsync() => Site.Value;

    /// <summary>The file of a page.</summary>
    public async Task<string> PageAsync(string name)
    {
        await SiteAsync();
        return Path.Combine(Folder, PageNames.FileFor(name));
    }

    private static async Task<SiteResult> WriteAsync()
    {
        IReadOnlyList<NotebookDocument> documents = [.. Files.Select(NotebookFile.Read)];
        await Running.WaitAsync();
        try
        {
            IReadOnlyList<ExecutedNotebook> executed = await new NotebookRunner(EngineKind.Interactive)
                .RunAsync(documents, null, CancellationToken.None);
            return Notebooks.Pages.Site.Write([.. executed.Select(notebook => new SiteEntry(notebook))], Folder, new SiteOptions());
        }
        finally
        {
            Running.Release();
        }
    }
}
