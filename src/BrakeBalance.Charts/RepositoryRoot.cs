namespace BrakeBalance.Charts;

/// <summary>Finds the repository this assembly or the working directory lies in.</summary>
public static class RepositoryRoot
{
    private const string Marker = "Notebooks.sln";

    /// <summary>
    /// Full path of the repository's root: at or above the working directory, else above this assembly; null when there is none.
    /// </summary>
    public static string? Find() => Above(Environment.CurrentDirectory) ?? Above(typeof(RepositoryRoot).Assembly.Location);

    /// <summary>Full path of something in the repository.</summary>
    /// <param name="relativePath">The path from the root.</param>
    /// <returns>The full path; whether anything is there is not checked.</returns>
    /// <exception cref="DirectoryNotFoundException">There is no repository.</exception>
    public static string File(string relativePath) => Path.GetFullPath(Path.Combine(
        Find() ?? throw new DirectoryNotFoundException(
            "Notebooks and invented cars are taken from a clone of the repository, and no folder at or above "
            + $"'{Environment.CurrentDirectory}' holds {Marker}. "
            + "Start inside a clone, or name a file of your own where the command takes one."),
        relativePath));

    private static string? Above(string start)
    {
        for (string? folder = start; !string.IsNullOrEmpty(folder); folder = Path.GetDirectoryName(folder))
        {
            if (System.IO.File.Exists(Path.Combine(folder, Marker)))
            {
                return folder;
            }
        }

        return null;
    }
}
