
namespace BrakeBalance.Notebooks;

/// <summary>Files that are either written whole or left as they were.</summary>
internal static class AtomicFile
{
    private static readonly Lock Writing = new();
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Writes text as UTF-8 to a file beside the target and moves it there; makes its folder where that is missing.</summary>
    /// <exception cref="BadInputException">The folder or the file cannot be written.</exception>
    public static void Write(string path, string text) => Write(path, Bytes(text));

    /// <summary>Text as it is written to files: UTF-8 without a mark in front.</summary>
    public static byte[] Bytes(string text) => Utf8.GetBytes(text);

    /// <summary>Writes data to a file beside the target and moves it there; makes its folder where that is missing.</summary>
    /// <exception cref="BadInputException">The folder or the file cannot be written.</exception>
    public static void Write(string path, byte[] data)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(path))!;

        // Short, so that any file name that the system takes can be written.
        string temporary = Path.Combine(folder, $".{Guid.NewGuid():N}.tmp");
        lock (Writing)
        {
            Write(path, data, folder, temporary);
        }
    }

    /// <summary>Waits for the file that is being written, before the process ends under it.</summary>
    public static void Finish()
    {
        lock (Writing)
        {
        }
    }

    private static void Write(string path, byte[] data, string folder, string temporary)
    {
        try
        {
            Directory.CreateDirectory(folder);
            File.WriteAllBytes(temporary, data);
            File.Move(temporary, path, overwrite: true);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // The system's words would name the temporary file, which means nothing to the user.
            string reason = exception is UnauthorizedAccessException
                ? "there is no permission" : "the system refused it, as when a disk is full";
            throw new BadInputException($"{path}: cannot be written; {reason}.");
        }
        finally
        {
            File.Delete(temporary);
        }
    }
}
