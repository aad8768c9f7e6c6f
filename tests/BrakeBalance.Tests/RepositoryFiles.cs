namespace BrakeBalance.Tests;

/// <summary>Files of the repository, found from where the tests run.</summary>
internal static class RepositoryFiles
{
    /// <summary>The folder that holds the solution.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>The vehicle files that come with the repository.</summary>
    public static IEnumerable<string> Vehicles =>
        Directory.GetFiles(Path.Combine(Root, "data", "vehicles"), "*.json").Order(StringComparer.Ordinal);

    private static string FindRoot()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Notebooks.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("The tests do not run inside the repository: no Notebooks.sln above "
            + AppContext.BaseDirectory);
    }
}
