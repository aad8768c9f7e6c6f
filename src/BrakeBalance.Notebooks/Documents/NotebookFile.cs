using System.Text.Json.Nodes;

namespace BrakeBalance.Notebooks.Documents;

/// <summary>Reads notebook files (Jupyter's format, version 4).</summary>
internal static class NotebookFile
{
    /// <summary>Reads a notebook.</summary>
    /// <exception cref="NotebookFormatException">The file is no notebook of version 4.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public static NotebookDocument Read(string path) => Parse(File.ReadAllText(path), Path.GetFullPath(path));

    /// <summary>What is read of each file; what cannot be read is a problem.</summary>
    public static List<T> ReadAll<T>(IEnumerable<string> paths, Func<string, T> read, List<string> problems)
    {
        List<T> all = [];
        foreach (string path in paths)
        {
            try
            {
                all.Add(read(path));
            }
            catch (NotebookFormatException exception)
            {
                problems.Add(exception.Message);
            }
            catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
            {
                problems.Add($"{path}: there is no such file, or it cannot be read.");
            }
        }

        return all;
    }

    /// <summary>Reads a notebook from its text.</summary>
    /// <returns>The notebook; in canonical form, so that every cell has an id.</returns>
    /// <exception cref="NotebookFormatException">The text is no notebook of version 4.</exception>
    public static NotebookDocument Parse(string json, string path)
    {
        JsonObject root = CanonicalNotebook.Node(json, path);
        return new NotebookDocument(path, [.. root["cells"]!.AsArray().Select(cell => new NotebookCell(
            (string)cell!["id"]!,
            (string)cell["cell_type"]! == "code",
            string.Concat(cell["source"]!.AsArray().Select(line => (string)line!)),
            [.. (cell["metadata"]!["tags"] as JsonArray ?? []).Select(tag => (string)tag!)]))]);
    }

    /// <summary>The notebooks of a folder, then those of its sub-folders, each in the order of their names.</summary>
    public static IReadOnlyList<string> In(string folder) =>
    [
        .. Directory.EnumerateFiles(folder, "*.ipynb").Order(StringComparer.Ordinal),
        .. Directory.EnumerateDirectories(folder)
            .Where(inner => !Path.GetFileName(inner).StartsWith('.'))
            .Order(StringComparer.Ordinal)
            .SelectMany(In),
    ];
}
