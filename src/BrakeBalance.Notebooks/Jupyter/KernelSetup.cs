using System.Text.Json;
using System.Text.Json.Nodes;
using BrakeBalance.Notebooks.Documents;

namespace BrakeBalance.Notebooks.Jupyter;

/// <summary>The notebooks' kernel in a Jupyter data folder: this program, which a client starts.</summary>
internal sealed class KernelSetup(string dataFolder)
{
    /// <summary>The kernel's name for Jupyter.</summary>
    public const string Name = CanonicalNotebook.KernelName;

    private const string Specification = "kernel.json";

    /// <summary>Names the folders that <see cref="Install"/> had to make, so that <see cref="Remove"/> leaves none behind.</summary>
    private const string MadeFolders = "made-folders.txt";

    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, NewLine = "\n" };

    /// <summary>The kernel's folder: a whole path, since Jupyter starts the kernel from the notebook's folder.</summary>
    public string Folder { get; } = Path.GetFullPath(Path.Combine(dataFolder, "kernels", Name));

    /// <summary>Sets the kernel up, in place of one set up before.</summary>
    public void Install(string program)
    {
        string list = Path.Combine(Folder, MadeFolders);
        string[] made = File.Exists(list) ? File.ReadAllLines(list) : [.. Missing(Path.GetDirectoryName(Folder)!)];
        var specification = new JsonObject
        {
            ["argv"] = new JsonArray("dotnet", program, "jupyter", "serve", "{connection_file}"),
            ["display_name"] = CanonicalNotebook.KernelTitle,
            ["interrupt_mode"] = "message",
            ["language"] = "C#",
        };
        Remove();
        Directory.CreateDirectory(Folder);
        File.WriteAllLines(list, made);
        AtomicFile.Write(Path.Combine(Folder, Specification), specification.ToJsonString(Indented) + "\n");
    }

    /// <summary>Deletes the kernel and the folders that were made for it, if nothing else lies in them by now.</summary>
    public bool Remove()
    {
        if (!Directory.Exists(Folder))
        {
            return false;
        }

        string list = Path.Combine(Folder, MadeFolders);
        string[] made = File.Exists(list) ? File.ReadAllLines(list) : [];
        Directory.Delete(Folder, recursive: true);
        foreach (string folder in made.Where(folder => Directory.Exists(folder) && !Directory.EnumerateFileSystemEntries(folder).Any()))
        {
            Directory.Delete(folder);
        }

        return true;
    }

    /// <summary>The folder and those above it that do not exist, the deepest first.</summary>
    private static IEnumerable<string> Missing(string folder)
    {
        for (string? path = folder; path is not null && !Directory.Exists(path); path = Path.GetDirectoryName(path))
        {
            yield return path;
        }
    }
}
