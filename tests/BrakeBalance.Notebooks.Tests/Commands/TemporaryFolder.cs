namespace BrakeBalance.Notebooks.Tests.Commands;

/// <summary>A folder that is gone after the test.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("brake-balance-").FullName;

    public string File(string name) => System.IO.Path.Combine(Path, name);

    public string Write(string name, string text)
    {
        System.IO.File.WriteAllText(File(name), text);
        return File(name);
    }

    public IEnumerable<string> Names =>
        Directory.EnumerateFileSystemEntries(Path, "*", SearchOption.AllDirectories)
        .Select(path => System.IO.Path.GetRelativePath(Path, path)).Order();

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
