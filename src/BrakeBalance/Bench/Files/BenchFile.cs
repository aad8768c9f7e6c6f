using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Bench.Files;

/// <summary>Reads bench files: JSON with comments, one job a file, every quantity a text with its unit.</summary>
public static class BenchFile
{
    /// <summary>Reads a bench file.</summary>
    /// <param name="path">Path of the file; a vehicle file it names is looked up from its folder.</param>
    /// <param name="overrides">Single values to take in place of the file's.</param>
    /// <exception cref="BenchFileException">The file cannot be read or has problems; all of them are listed.</exception>
    public static BenchSheet Load(string path, params IEnumerable<ValueOverride> overrides)
    {
        (string? text, Problem? fault) = DocumentFile.Load(path, "a bench file");
        return text is null ? throw new BenchFileException(path, [fault!])
            : Read(text, path, Path.GetDirectoryName(Path.GetFullPath(path))!, overrides);
    }

    /// <summary>Reads the text of a bench file.</summary>
    /// <param name="text">The text.</param>
    /// <param name="source">File name or other origin, for messages.</param>
    /// <param name="folder">Folder from which a vehicle file is looked up.</param>
    /// <param name="overrides">Single values to take in place of the text's.</param>
    /// <exception cref="BenchFileException">The text has problems; all of them are listed.</exception>
    public static BenchSheet Read(string text, string source, string folder, params IEnumerable<ValueOverride> overrides) =>
        Read(text, source, file => DocumentFile.Load(Path.GetFullPath(Path.Combine(folder, file)), "a vehicle file"), overrides);

    /// <summary>Reads a text where there are no files: the car with its old parts is that of <paramref name="vehicle"/>.</summary>
    internal static BenchSheet ReadFor(string vehicle, string text, string source) => Read(text, source, _ => (vehicle, null), []);

    private static BenchSheet Read(
        string text, string source, Func<string, (string?, Problem?)> vehicle, IEnumerable<ValueOverride> overrides)
    {
        DocumentReading<BenchDocument> reading = DocumentFile.Read<BenchDocument>(text, overrides);
        if (reading.Document is not { } document)
        {
            throw new BenchFileException(source, [.. reading.Problems, .. InSoundParts(reading, vehicle)]);
        }

        var builder = new BenchBuilder(vehicle);
        BenchSheet sheet = builder.Build(document) ?? throw new BenchFileException(source, builder.Problems);
        if (sheet.Plumbing is { } plumbing)
        {
            // The rest of the file may name others, which a page does not have.
            var own = new SourceText(VehicleText.Remove(text, "change"), [.. overrides]);
            SourceText.Remember(plumbing.Return, own);
            _ = plumbing.Release is { } job ? SourceText.Remember(job, own) : null;
        }

        return sheet;
    }

    // Parts that could be read whole are looked at further, so that all problems come at once.
    private static IEnumerable<Problem> InSoundParts(
        DocumentReading<BenchDocument> reading, Func<string, (string?, Problem?)> vehicle)
    {
        if (reading.Partial is not { } document)
        {
            return [];
        }

        bool Sound(string part) => reading.Problems.All(problem => !problem.Path.StartsWith(part, StringComparison.Ordinal));
        document.Hoses = document.Hoses?.Select((hose, i) => SoundPart(hose, Invariant.Text($"hoses[{i}]"), reading.Problems)!).ToList();
        document.Plumbing = Sound("plumbing") ? document.Plumbing : null;
        document.PushRod = Sound("pushRod") ? document.PushRod : null;
        document.Change = Sound("change") ? document.Change : null;
        var builder = new BenchBuilder(vehicle);
        builder.Build(document);
        return builder.Problems.Where(problem => problem.Path.Length > 0);
    }

    // A clearance that could not be read keeps nothing from being said of its hose.
    private static HoseDocument? SoundPart(HoseDocument? hose, string path, IReadOnlyList<Problem> problems)
    {
        bool Is(Problem problem, string part) => problem.Path.StartsWith(part, StringComparison.Ordinal);
        string rooms = path + ".clearances[";
        if (hose is null || problems.Any(problem => Is(problem, path) && !Is(problem, rooms)))
        {
            return null;
        }

        hose.Clearances = hose.Clearances?.Where((_, i) => !problems.Any(problem => Is(problem, Invariant.Text($"{rooms}{i}]")))).ToList();
        return hose;
    }

    /// <summary>The JSON Schema (draft 2020-12) of bench files.</summary>
    /// <returns>Indented JSON with a final line break.</returns>
    public static string Schema() => DocumentSchema.Text(
        typeof(BenchDocument), "Bench file",
            "One job on the bench for the brake balance notebooks; every quantity is a text with its unit.");
}

/// <summary>A bench file that cannot be used; carries every problem found.</summary>
/// <param name="source">File name or other origin of the text.</param>
/// <param name="problems">At least one problem.</param>
public sealed class BenchFileException(string source, IReadOnlyList<Problem> problems)
    : Exception(string.Join('\n', problems.Select(problem => source + ": " + problem)))
{
    /// <summary>Every problem found.</summary>
    public IReadOnlyList<Problem> Problems { get; } = problems;
}
