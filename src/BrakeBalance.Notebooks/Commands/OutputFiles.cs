using BrakeBalance.Charts;

namespace BrakeBalance.Notebooks.Commands;

/// <summary>Looks at the places that a command will write to before it starts to work.</summary>
/// <remarks>
/// A file that is there already is written over only when this program wrote it and nobody fills it in (a page carries
/// <see cref="PageMark"/>), or with <c>--force</c>.
/// </remarks>
/// <param name="problems">Where problems are added.</param>
/// <param name="force">Whether <c>--force</c> is given.</param>
internal sealed class OutputFiles(List<string> problems, bool force)
{
    private const int HeadLength = 4096;

    /// <summary>The option that lets files be written over.</summary>
    public static System.CommandLine.Option<bool> Force() => new("--force") { Description = "Writes over files that are already there" };

    /// <summary>A file to write.</summary>
    public string File(string path, string option = "")
    {
        string full = Path.GetFullPath(path), name = option.Length > 0 ? $"{option} {path}" : path;
        if (Directory.Exists(full))
        {
            problems.Add($"{name}: this is a folder; name a file in it.");
        }
        else if (System.IO.File.Exists(full) && !force && !IsOurs(full))
        {
            problems.Add($"{name}: there is a file already; --force writes over it.");
        }

        Writable(Path.GetDirectoryName(full)!, name);
        return full;
    }

    /// <summary>A folder to write into; it is made when it is not there.</summary>
    public string Folder(string path, string option = "--output")
    {
        string full = Path.GetFullPath(path);
        Writable(full, $"{option} {path}");
        return full;
    }

    // The nearest folder that is there decides: what is missing below it will be made in it.
    private void Writable(string folder, string name)
    {
        string? there = folder;
        while (there is not null && !Directory.Exists(there))
        {
            if (System.IO.File.Exists(there))
            {
                problems.Add($"{name}: {there} is a file; a folder is needed there.");
                return;
            }

            there = Path.GetDirectoryName(there);
        }

        try
        {
            string probe = Path.Combine(there ?? folder, $".{Guid.NewGuid():N}");
            System.IO.File.Create(probe, 1, FileOptions.DeleteOnClose).Dispose();
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            problems.Add($"{name}: the folder {there} cannot be written to. Accepted: a folder of your own.");
        }
    }

    private static bool IsOurs(string path)
    {
        try
        {
            using StreamReader reader = new(path);
            char[] head = new char[HeadLength];
            return new string(head, 0, reader.ReadBlock(head)).Contains(PageMark.Html, StringComparison.Ordinal);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }
}
