using System.Buffers.Binary;
using System.IO.Compression;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>The calculation assembly for browsers, and the scripts that start it and ask it.</summary>
internal static class LiveAssets
{
    private const string Folder = "Live.";
    private const string Letters = "0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ.-:+=^!/*?|~()[]{}@%$#_";

    private static readonly Lazy<string> LazyParts = new(Packed);

    /// <summary>The script that starts the assembly and asks it.</summary>
    public static string Desk => PageAssets.Read("Pages.desk.js")
        .Replace("__BB_SHARED__", PageNames.SharedScript, StringComparison.Ordinal)
        .Replace("__BB_LETTERS__", Letters, StringComparison.Ordinal);

    /// <summary>The script that moves the explorables of a page.</summary>
    public static string Explore => PageAssets.Read("Pages.explore.js");

    /// <summary>The script of the page of one's own car.</summary>
    public static string Script => PageAssets.Read("Pages.live.js");

    /// <summary>The style of the page of one's own car.</summary>
    public static string Style => PageAssets.Read("Pages.live.css");

    /// <summary>The script that pages share: all parts, for <see cref="Desk"/>.</summary>
    public static string Shared => $"globalThis.bbParts = {Parts};\n";

    /// <summary>The worker's script as a JSON text.</summary>
    public static string Worker => JsonSerializer.Serialize(PageAssets.Read("Pages.live-worker.js"));

    /// <summary>The licence of the .NET runtime that the page carries, and the notices of what is in it.</summary>
    public static string Notices => "These pages carry the .NET runtime for browsers. Its licence and notices:\n\n"
        + PageAssets.Read("Notices.1") + "\n\n" + PageAssets.Read("Notices.2");

    /// <summary>The runtime's and the assembly's files by name, each packed (gzip) and written as text.</summary>
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

        return Text(packed.ToArray());
    }

    // Four bytes as five letters, none of which HTML or JSON reserves: a sixteenth less than base64. desk.js reads it.
    private static string Text(byte[] packed)
    {
        var text = new StringBuilder((packed.Length * 5 / 4) + 8);
        Span<byte> four = stackalloc byte[4];
        Span<char> five = stackalloc char[5];
        for (int i = 0; i < packed.Length; i += 4)
        {
            four.Clear();
            packed.AsSpan(i, Math.Min(4, packed.Length - i)).CopyTo(four);
            uint value = BinaryPrimitives.ReadUInt32BigEndian(four);
            for (int digit = 4; digit >= 0; digit--)
            {
                five[digit] = Letters[(int)(value % 85)];
                value /= 85;
            }

            text.Append(five);
        }

        return string.Create(CultureInfo.InvariantCulture, $"{packed.Length} {text}");
    }
}
