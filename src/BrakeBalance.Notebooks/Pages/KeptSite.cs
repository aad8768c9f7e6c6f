using System.Security.Cryptography;
using System.Text.Json;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>Which pages a folder holds and what they were made of, so that nothing is made twice.</summary>
/// <param name="Key">What stands for all that the pages were made of.</param>
/// <param name="Files">The files by their path in the folder, each with what stands for its bytes.</param>
/// <param name="Notebooks">How many notebooks ran.</param>
internal sealed record KeptSite(string Key, IReadOnlyDictionary<string, string> Files, int Notebooks)
{
    /// <summary>Where runs and this are kept in a folder of pages.</summary>
    public const string Place = ".kept";

    private const string Name = "site.json";

    /// <summary>What was kept, when the folder still holds it byte by byte; null otherwise.</summary>
    /// <param name="folder">The folder of the pages.</param>
    /// <param name="key">What stands for all that the pages are to be made of.</param>
    public static KeptSite? Standing(string folder, string key)
    {
        try
        {
            return JsonSerializer.Deserialize<KeptSite>(File.ReadAllText(Path.Combine(folder, Place, Name))) is { } kept && kept.Key == key
                && kept.Files.AsParallel().All(file => Stamp(Path.Combine(folder, file.Key)) == file.Value) ? kept : null;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or JsonException
            or AggregateException { InnerException: IOException or UnauthorizedAccessException })
        {
            return null;
        }
    }

    /// <summary>Keeps what was written.</summary>
    /// <param name="folder">The folder of the pages.</param>
    /// <param name="key">What stands for all that they were made of.</param>
    /// <param name="written">The files' paths.</param>
    /// <param name="notebooks">How many notebooks ran.</param>
    public static void Keep(string folder, string key, IEnumerable<string> written, int notebooks) =>
        AtomicFile.Write(Path.Combine(folder, Place, Name), JsonSerializer.Serialize(new KeptSite(
            key, written.Distinct().ToDictionary(path => Path.GetRelativePath(folder, path), Stamp), notebooks)));

    private static string Stamp(string path)
    {
        using FileStream file = File.OpenRead(path);
        return Convert.ToHexStringLower(SHA256.HashData(file));
    }
}
