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

    /// <summary>Whose job the sheet is, and which of its parts are the example's, in sentences.</summary>
    /// <exception cref="BenchFileException">The file cannot be read or has problems.</exception>
    /// <exception cref="DirectoryNotFoundException">A path is relative and no repository was found.</exception>
    public static string Whose
    {
        get
        {
            BenchSheet sheet = Current, example = Example;
            if (IsOwn)
            {
                string[] lacks = [.. new[]
                {
                    (sheet.Hoses.IsEmpty, "hoses"), (sheet.Plumbing is null, "plumbing"), (sheet.PushRod is null, "push rod"),
                    (sheet.Change is null, "change of parts"),
                }.Where(part => part.Item1).Select(part => part.Item2)];
                return $"This is the job \"{sheet.Name}\", as its bench file describes it." + (lacks.Length == 0 ? ""
                    : $" It names no {string.Join(", no ", lacks)}; there the page shows the example \"{example.Name}\".");
            }

            NotebookInput input = NotebookInput.Current;
            return $"Example: \"{example.Name}\", an invented job on an invented car." + (input.IsDefault ? ""
                : $" No bench file is named, so nothing on this page is said of the {input.Load().Vehicle.Name}.");
        }
    }

    /// <summary>Whether a bench file of the reader's own is named.</summary>
    /// <exception cref="DirectoryNotFoundException">A path is relative and no repository was found.</exception>
    public static bool IsOwn => Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } path
        && Path.GetFullPath(Path.IsPathRooted(path) ? path : RepositoryRoot.File(path)) != Path.GetFullPath(RepositoryRoot.File(Default));

    /// <summary>The invented job, whatever bench file is named.</summary>
    /// <exception cref="DirectoryNotFoundException">No repository was found.</exception>
    public static BenchSheet Example => BenchFile.Load(RepositoryRoot.File(Default));

    /// <summary>Makes a file the one of the notebooks run from now on in this process and those it starts.</summary>
    /// <param name="path">Path of the bench file.</param>
    public static void MakeCurrent(string path) => Environment.SetEnvironmentVariable(Variable, Path.GetFullPath(path));
}
