using System.Security.Cryptography;
using System.Text.Json;
using BrakeBalance.Notebooks.Documents;

namespace BrakeBalance.Notebooks.Execution;

/// <summary>
/// What notebooks put out, kept beside their pages: a notebook runs again only when its text, or anything that it could read, has changed.
/// </summary>
internal sealed class KeptRuns(string folder, string inputs)
{
    /// <summary>What stands for texts and files: another when any of them is another.</summary>
    public static string Fingerprint(IEnumerable<string> words, IEnumerable<string> files)
    {
        using var all = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (byte[] part in words.Select(Encoding.UTF8.GetBytes)
            .Concat(files.SelectMany(file => (byte[][])[Encoding.UTF8.GetBytes(file), File.Exists(file) ? File.ReadAllBytes(file) : []])))
        {
            all.AppendData(SHA256.HashData(part));
        }

        return Convert.ToHexStringLower(all.GetHashAndReset());
    }

    /// <summary>What stands for a notebook as it was read, and for all that it could read.</summary>
    public string Key(NotebookDocument notebook) => Fingerprint(
        [inputs, notebook.Path, .. notebook.Cells.SelectMany(cell => (string[])
            [cell.Id, cell.IsCode ? "code" : "prose", cell.Source, string.Join(' ', cell.Tags)])], []);

    /// <summary>The notebook as it ran the last time; null when it has to run again.</summary>
    public ExecutedNotebook? Find(NotebookDocument notebook)
    {
        try
        {
            return JsonSerializer.Deserialize<Kept>(File.ReadAllText(FileOf(notebook))) is { } kept && kept.Key == Key(notebook)
                ? ExecutedNotebook.Of(notebook, kept.Runs) : null;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or JsonException)
        {
            return null;
        }
    }

    /// <summary>Keeps a run; one with a failure is not kept, for the next may succeed.</summary>
    public void Keep(NotebookDocument notebook, ExecutedNotebook run)
    {
        if (run.Succeeded)
        {
            CellRun[] runs = [.. run.Cells.OfType<ExecutedCodeCell>().Select(cell => new CellRun(cell.Outputs, null))];
            AtomicFile.Write(FileOf(notebook), JsonSerializer.Serialize(new Kept(Key(notebook), runs)));
        }
    }

    private string FileOf(NotebookDocument notebook) => Path.Combine(folder, notebook.Name + ".json");

    private sealed record Kept(string Key, IReadOnlyList<CellRun> Runs);
}
