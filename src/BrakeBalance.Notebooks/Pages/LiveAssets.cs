using System.Buffers.Binary;
using System.IO.Compression;
using System.Text.Json;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>The calculation assembly for browsers, and the scripts that start it and ask it.</summary>
internal static class LiveAssets
{
    private const string Folder = "Live.", CellsFolder = "Cells.";
    private const string Letters = "0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ.-:+=^!/*?|~()[]{}@%$#_";

    // What the others wait for comes first.
    private static readonly string[] First =
        ["dotnet.js", "dotnet.runtime.js", "dotnet.native.js", "dotnet.native.wasm", "System.Private.CoreLib.dll"];

    private static readonly Lazy<(string Name, string Text)[]> LazyParts = new(() => Packed(Folder));
    private static readonly Lazy<(string Name, string Text)[]> LazyCells = new(() =>
        [.. Packed(CellsFolder), ("summaries", Text(Gzip(Encoding.UTF8.GetBytes(MemberSummaries.Text()))))]);

    /// <summary>What stands behind each part in a page that carries them: it hands the part on.</summary>
    public static string TakePart => "bbDesk.partHere(document.currentScript.previousElementSibling)";

    /// <summary>The script that starts the assembly and asks it.</summary>
    /// <param name="carriesParts">Whether the page carries the parts itself.</param>
    /// <param name="startsAtOnce">Whether the assembly starts before the page's own script asks.</param>
    public static string Desk(bool carriesParts, bool startsAtOnce) => PageAssets.Read("Pages.desk.js")
        .Replace("__BB_SHARED__", carriesParts ? "" : PageNames.SharedScript, StringComparison.Ordinal)
        .Replace("__BB_CELLS__", PageNames.CellsScript, StringComparison.Ordinal)
        .Replace("__BB_LETTERS__", Letters, StringComparison.Ordinal) + (startsAtOnce ? "bbDesk.begin();\n" : "");

    public static string Script => PageAssets.Read("Pages.live.js");

    /// <summary>The style of the page of one's own car.</summary>
    public static string Style => PageAssets.Read("Pages.live.css");

    /// <summary>The script that pages share: all parts, for <see cref="Desk"/>.</summary>
    public static string Shared => string.Concat(Parts.Select(part => $"bbDesk.part(\"{part.Name}\",\"{part.Text}\");\n"));

    /// <summary>The script that edits and runs the cells of a page.</summary>
    public static string Edit => PageAssets.Read("Pages.cells.js");

    /// <summary>The script that pages share when a cell is edited: the compiler and what cells use.</summary>
    public static string Cells => $"bbDesk.data = {HtmlText.ScriptBody(CellSurroundings.Repository())};\n"
        + string.Concat(CellParts.Select(part => $"bbDesk.part(\"{part.Name}\",\"{part.Text}\",\"BrakeBalance.Cells\");\n"));

    /// <summary>The worker's script as a JSON text.</summary>
    public static string Worker => JsonSerializer.Serialize(PageAssets.Read("Pages.live-worker.js"));

    /// <summary>The licence of the .NET runtime that the page carries, and the notices of what is in it.</summary>
    public static string Notices => "These pages carry the .NET runtime for browsers and, for edited cells, the C# compiler (.NET Compiler "
        + "Platform, MIT license, .NET Foundation and Contributors). Licence and notices of the runtime:\n\n"
        + PageAssets.Read("Notices.1") + "\n\n" + PageAssets.Read("Notices.2");

    /// <summary>The runtime's and the assembly's files by name, each packed (gzip) and written as text.</summary>
    public static IReadOnlyList<(string Name, string Text)> Parts => LazyParts.Value;

    /// <summary>Those of <see cref="Parts"/> that load the others.</summary>
    public static IEnumerable<(string Name, string Text)> Scripts =>
        Parts.Where(part => part.Name.EndsWith(".js", StringComparison.Ordinal));

    /// <summary>
    /// The compiler's files, those of what cells use, and its documentation, in the same form; the runtime is that of <see cref="Parts"/>.
    /// </summary>
    public static IReadOnlyList<(string Name, string Text)> CellParts => LazyCells.Value;

    // The files are embedded as the build packed them.
    private static (string Name, string Text)[] Packed(string folder)
    {
        string[] names = [.. typeof(LiveAssets).Assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(folder, StringComparison.Ordinal)).Select(name => name[folder.Length..])
            .Order(StringComparer.Ordinal)];
        return [.. First.Intersect(names).Union(names).Select(name => (name, Text(PageAssets.ReadBytes(folder + name))))];
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

        return Invariant.Text($"{packed.Length} {text}");
    }

    private static byte[] Gzip(byte[] whole)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.SmallestSize))
        {
            gzip.Write(whole);
        }

        return packed.ToArray();
    }
}
