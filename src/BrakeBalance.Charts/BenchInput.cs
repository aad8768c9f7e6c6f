namespace BrakeBalance.Charts;

/// <summary>
/// The bench file a notebook is run for; named like the vehicle file of <see cref="NotebookInput"/> by an environment variable.
/// </summary>
public static class BenchInput
{
    /// <summary>Environment variable with the path of the bench file; a relative path counts from the repository's root.</summary>
    public const string Variable = "BRAKE_BALANCE_BENCH";

    /// <summary>The invented job the notebooks show when no bench file is named; counts from the repository's root.</summary>
    public const string Default = "data/bench/booster-swap.json";

    /// <summary>The bench sheet of this run, read at each call.</summary>
    /// <exception cref="BenchFileException">The file cannot be read or has problems.</exception>
    /// <exception cref="DirectoryNotFoundException">The path is relative and no repository was found.</exception>
    public static BenchSheet Current
    {
        get
        {
            string named = Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } path ? path : Default;
            return BenchFile.Load(Path.IsPathRooted(named) ? named : RepositoryRoot.File(named));
        }
    }

    /// <summary>The invented job, whatever bench file is named.</summary>
    /// <exception cref="DirectoryNotFoundException">No repository was found.</exception>
    public static BenchSheet Example => BenchFile.Load(RepositoryRoot.File(Default));

    /// <summary>Makes a file the one of the notebooks run from now on in this process and those it starts.</summary>
    /// <param name="path">Path of the bench file.</param>
    public static void MakeCurrent(string path) => Environment.SetEnvironmentVariable(Variable, Path.GetFullPath(path));
}
