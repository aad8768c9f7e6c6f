namespace BrakeBalance.Notebooks.Jupyter;

internal static class JupyterFolders
{
    /// <summary>The user's Jupyter data folder, as Jupyter's documentation gives it for each system.</summary>
    public static string UserData()
    {
        string home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
        return Set("JUPYTER_DATA_DIR") ?? (
            OperatingSystem.IsWindows() ? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.ApplicationData), "jupyter")
            : OperatingSystem.IsMacOS() ? Path.Combine(home, "Library", "Jupyter")
            : Path.Combine(Set("XDG_DATA_HOME") ?? Path.Combine(home, ".local", "share"), "jupyter"));
    }

    private static string? Set(string variable) => Environment.GetEnvironmentVariable(variable) is { Length: > 0 } value ? value : null;
}
