using BrakeBalance.Charts;

namespace BrakeBalance.Notebooks.Commands;

internal static class Repository
{
    /// <summary>Full path of something in the repository.</summary>
    /// <exception cref="BadInputException">There is no repository.</exception>
    public static string Folder(string relativePath)
    {
        try
        {
            return RepositoryRoot.File(relativePath);
        }
        catch (DirectoryNotFoundException exception)
        {
            throw new BadInputException(exception.Message);
        }
    }
}
