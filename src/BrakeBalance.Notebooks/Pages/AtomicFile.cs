using System.Text;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>Files that are either written whole or left as they were.</summary>
public static class AtomicFile
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Writes text as UTF-8 to a file beside the target, then moves it over the target.</summary>
    /// <param name="path">The file; its folder is created where it is missing.</param>
    /// <param name="text">The whole content.</param>
    /// <exception cref="IOException">The folder or the file cannot be written.</exception>
    public static void Write(string path, string text) => Write(path, Utf8.GetBytes(text));

    /// <summary>Writes data to a file beside the target, then moves it over the target.</summary>
    /// <param name="path">The file; its folder is created where it is missing.</param>
    /// <param name="data">The whole content.</param>
    /// <exception cref="IOException">The folder or the file cannot be written.</exception>
    public static void Write(string path, byte[] data)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        Directory.CreateDirectory(folder);
        string temporary = Path.Combine(folder, $".{Path.GetFileName(path)}.{Guid.NewGuid():N}.tmp");
        try
        {
            File.WriteAllBytes(temporary, data);
            File.Move(temporary, path, overwrite: true);
        }
        finally
        {
            File.Delete(temporary);
        }
    }
}
