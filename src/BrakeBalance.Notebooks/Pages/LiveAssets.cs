using System.IO.Compression;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>The calculation assembly for browsers, and the scripts that start it and ask it.</summary>
internal static class LiveAssets
{
    private const string Folder = "Live.";

    private static readonly Lazy<string> LazyParts = new(Packed);

    /// <summary>The page's script.</summary>
    public static string Script => PageAssets.Read("Pages.live.js");

    /// <summary>The page's style.</summary>
    public static string Style => PageAssets.Read("Pages.live.css");

    /// <summary>The worker's script as a JSON text.</summary>
    public static string Worker => JsonSerializer.Serialize(PageAssets.Read("Pages.live-worker.js"));

    /// <summary>The licence of the .NET runtime that the page carries, and the notices of what is in it.</summary>
    public static string Notices => "your-car.html carries the .NET runtime for browsers. Its licence and notices:\n\n"
        + PageAssets.Read("Notices.1") + "\n\n" + PageAssets.Read("Notices.2");

    /// <summary>The runtime's and the assembly's files by name, each packed (gzip) and written in base64.</summary>
    public static string Parts => LazyParts.Value;

    private static string Packed()
    {
        System.Reflection.Assembly own = typeof(LiveAssets).Assembly;
        string[] names = [.. own.GetManifestResourceNames().Where(name => name.StartsWith(Folder, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)];
        var parts = new JsonObject();
        foreach ((string name, string text) in names.AsParallel().AsOrdered().Select(name => (name, Pack(own, name))))
        {
            parts[name[Folder.Length..]] = text;
        }

        return parts.ToJsonString(new JsonSerializerOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
    }

    private static string Pack(System.Reflection.Assembly own, string name)
    {
        using var packed = new MemoryStream();
        using (Stream part = own.GetManifestResourceStream(name)!)
        using (var gzip = new GZipStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
        {
            part.CopyTo(gzip);
        }

        return Convert.ToBase64String(packed.GetBuffer(), 0, (int)packed.Length);
    }
}
