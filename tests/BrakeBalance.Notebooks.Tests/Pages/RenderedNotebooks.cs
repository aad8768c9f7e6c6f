using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Execution;
using BrakeBalance.Notebooks.Pages;

namespace BrakeBalance.Notebooks.Tests.Pages;

/// <summary>The repository's notebooks as pages, run and written once for all tests that look at them.</summary>
public sealed class RenderedNotebooks : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("bb-pages-").FullName;
    private readonly Lazy<Task<SiteResult>> _site;

    public RenderedNotebooks()
    {
        _site = new(WriteAsync);
    }

    /// <summary>The notebooks' names.</summary>
    public static TheoryData<string> Names => [.. Files.Select(path => Path.GetFileNameWithoutExtension(path))];

    private static IReadOnlyList<string> Files => NotebookFile.In(RepositoryRoot.File("notebooks"));

    /// <summary>What came of writing the pages.</summary>
    internal Task<SiteResult> SiteAsync() => _site.Value;

    /// <summary>The file of a page.</summary>
    public async Task<string> PageAsync(string name)
    {
        await SiteAsync();
        return Path.Combine(_folder, PageNames.FileFor(name));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private async Task<SiteResult> WriteAsync()
    {
        IReadOnlyList<NotebookDocument> documents = [.. Files.Select(NotebookFile.Read)];
        IReadOnlyList<ExecutedNotebook> executed = await new NotebookRunner(EngineKind.Interactive)
            .RunAsync(documents, null, CancellationToken.None);
        return Site.Write([.. executed.Select(notebook => new SiteEntry(notebook))], _folder, new SiteOptions());
    }
}
