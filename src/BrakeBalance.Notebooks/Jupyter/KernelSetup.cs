using System.Text.Json;
using System.Text.Json.Nodes;
using BrakeBalance.Notebooks.Documents;

namespace BrakeBalance.Notebooks.Jupyter;

/// <summary>The notebooks' kernel in a Jupyter data folder.</summary>
/// <remarks>
/// Everything lies in the kernel's own folder there, a copy of the kernel tool included. The copy is needed: the tool
/// brings an older FSharp.Core than the charting library was built for, and both in one process do not work together,
/// so the newer one is laid over it.
/// </remarks>
/// <param name="dataFolder">The Jupyter data folder.</param>
internal sealed class KernelSetup(string dataFolder)
{
    /// <summary>The kernel's name for Jupyter.</summary>
    public const string Name = CanonicalNotebook.KernelName;

    private const string SharedLibrary = "FSharp.Core.dll";

    /// <summary>Names the folders that <see cref="Install"/> had to make, so that <see cref="Remove"/> leaves none behind.</summary>
    private const string MadeFolders = "made-folders.txt";

    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, NewLine = "\n" };

    /// <summary>The kernel's folder: a whole path, since Jupyter starts the kernel from the notebook's folder.</summary>
    public string Folder { get; } = Path.GetFullPath(Path.Combine(dataFolder, "kernels", Name));

    /// <summary>Sets the kernel up, in place of one set up before.</summary>
    /// <param name="tool">The folder with the kernel tool's files.</param>
    /// <param name="program">The folder with this program's files.</param>
    public void Install(string tool, string program)
    {
        string kernels = Path.GetDirectoryName(Folder)!;
        string[] made = File.Exists(Path.Combine(Folder, MadeFolders))
            ? File.ReadAllLines(Path.Combine(Folder, MadeFolders)) : [.. Missing(kernels)];
        Directory.CreateDirectory(kernels);
        string staged = Path.Combine(kernels, $".{Name}-{Environment.ProcessId}");
        try
        {
            string copy = Path.Combine(staged, "tool");
            Copy(new DirectoryInfo(tool), copy);
            File.Copy(Path.Combine(program, SharedLibrary), Path.Combine(copy, SharedLibrary), overwrite: true);
            File.WriteAllText(Path.Combine(staged, "kernel.json"), Specification().ToJsonString(Indented) + "\n");
            File.WriteAllLines(Path.Combine(staged, MadeFolders), made);
            Delete(Folder);
            Directory.Move(staged, Folder);
        }
        finally
        {
            Delete(staged);
        }
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
        Delete(Folder);
        foreach (string folder in made.Where(folder => Directory.Exists(folder) && !Directory.EnumerateFileSystemEntries(folder).Any()))
        {
            Directory.Delete(folder);
        }

        return true;
    }

    private JsonObject Specification() => new()
    {
        ["argv"] = new JsonArray(
            "dotnet", Path.Combine(Folder, "tool", KernelTool.Assembly), "jupyter", "--http-local-only", "--default-kernel", "csharp",
                "{connection_file}"),
        ["display_name"] = CanonicalNotebook.KernelTitle,
        ["env"] = new JsonObject
        {
            ["DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT"] = "1",
            ["DOTNET_INTERACTIVE_SKIP_FIRST_TIME_EXPERIENCE"] = "1",
        },
        ["language"] = "C#",
    };

    /// <summary>The folder and those above it that do not exist, the deepest first.</summary>
    private static IEnumerable<string> Missing(string folder)
    {
        for (string? path = folder; path is not null && !Directory.Exists(path); path = Path.GetDirectoryName(path))
        {
            yield return path;
        }
    }

    private static void Copy(DirectoryInfo from, string to)
    {
        Directory.CreateDirectory(to);
        foreach (FileInfo file in from.EnumerateFiles())
        {
            string copy = Path.Combine(to, file.Name);
            file.CopyTo(copy, overwrite: true);
            File.SetAttributes(copy, FileAttributes.Normal);
        }

        foreach (DirectoryInfo folder in from.EnumerateDirectories())
        {
            Copy(folder, Path.Combine(to, folder.Name));
        }
    }

    private static void Delete(string folder)
    {
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
