using System.IO.Compression;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace BrakeBalance.Charts.Live;

/// <summary>A whole car as the few words behind a link's number sign, or in a picture to scan.</summary>
/// <remarks>
/// The file without its comments, packed after words that vehicle files use, so that these cost next to nothing. Links that are about
/// hold their places in <c>link-words.txt</c>: it never changes; other words need another <see cref="Start"/>.
/// </remarks>
internal static class LiveLink
{
    /// <summary>What the words of a car begin with.</summary>
    public const string Start = "CAR/";

    // 41³ just exceeds 256²: two bytes are three letters. A QR code packs each into 5.5 bits, a link takes them as they are, and the
    // last two, which messages may take for the end of a link, stand at no end.
    private const string Letters = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-/+:$";

    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private static readonly JsonSerializerOptions Laid = new(Plain) { WriteIndented = true };
    private static readonly Lazy<byte[]> Known = new(() =>
        Encoding.UTF8.GetBytes(FigureAssets.Read("link-words.txt").Replace("\n", "", StringComparison.Ordinal)));

    /// <summary>The words of a car.</summary>
    public static string Of(string text, params IEnumerable<(string Kind, string Text)> logs)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(Small(text) + string.Concat(logs.Select(log => $"\0{log.Kind}\0{log.Text}")));
        (MemoryStream packed, int known) = Packed(bytes);
        return Start + Written([.. Check(bytes), .. packed.ToArray().AsSpan(known)]);
    }

    /// <summary>The file of a car and its logs from its words or a link that ends with them; any other text as it is.</summary>
    /// <exception cref="ArgumentException">The words hold no car.</exception>
    public static (string Text, IReadOnlyDictionary<string, string> Logs) Opened(string text)
    {
        string words = text.Length > DocumentFile.MostCharacters ? "" : Uri.UnescapeDataString(string.Concat(text.Split()));
        int at = words.IndexOf(Start, StringComparison.OrdinalIgnoreCase);
        if (at < 0 || words.StartsWith('{') || (at > 0 && words[at - 1] != '#'))
        {
            return (text, new Dictionary<string, string>());
        }

        string[] parts = Unpacked(Bytes(words[(at + Start.Length)..].ToUpperInvariant()) ?? throw NoCar()).Split('\0');
        return (DocumentFile.Parse(parts[0]).Root is { } root ? root.ToJsonString(Laid).ReplaceLineEndings("\n") + "\n" : parts[0],
            parts.Skip(1).Chunk(2).Where(log => log.Length == 2).ToDictionary(log => log[0], log => log[1]));
    }

    /// <summary>A vehicle file without its comments and layout.</summary>
    public static string Small(string text) => DocumentFile.Parse(text).Root?.ToJsonString(Plain) ?? text;

    private static ArgumentException NoCar() =>
        new("The link holds no car that can be read. Accepted: all of it, from CAR/ to its last letter.");

    // Two bytes that tell whether the text came through.
    private static byte[] Check(ReadOnlySpan<byte> text)
    {
        int sum = 1;
        foreach (byte one in text)
        {
            sum = ((31 * sum) + one) % 65521;
        }

        return [(byte)(sum >> 8), (byte)sum];
    }

    private static (MemoryStream Packed, int Known) Packed(ReadOnlySpan<byte> text)
    {
        var packed = new MemoryStream();
        using var zip = new DeflateStream(packed, CompressionLevel.SmallestSize, leaveOpen: true);
        zip.Write(Known.Value);
        zip.Flush();
        int known = (int)packed.Length;
        zip.Write(text);
        return (packed, known);
    }

    private static string Unpacked(byte[] words)
    {
        (MemoryStream packed, int known) = Packed([]);
        packed.SetLength(known);
        packed.Position = known;
        packed.Write(words.AsSpan(Math.Min(2, words.Length)));
        packed.Position = 0;
        var text = new byte[Known.Value.Length + DocumentFile.MostCharacters];
        try
        {
            using var zip = new DeflateStream(packed, CompressionMode.Decompress);
            int length = zip.ReadAtLeast(text, text.Length, throwOnEndOfStream: false);
            ReadOnlySpan<byte> own = text.AsSpan(0, length)[Math.Min(length, Known.Value.Length)..];
            return words.AsSpan().StartsWith(Check(own)) ? Encoding.UTF8.GetString(own) : throw NoCar();
        }
        catch (InvalidDataException)
        {
            throw NoCar();
        }
    }

    private static string Written(ReadOnlySpan<byte> bytes)
    {
        var words = new StringBuilder();
        for (int i = 0; i < bytes.Length; i += 2)
        {
            bool two = i + 1 < bytes.Length;
            int value = two ? (bytes[i] << 8) | bytes[i + 1] : bytes[i];
            for (int letter = two ? 3 : 2; letter > 0; letter--, value /= Letters.Length)
            {
                words.Append(Letters[value % Letters.Length]);
            }
        }

        return words.ToString();
    }

    private static byte[]? Bytes(string words)
    {
        List<byte> bytes = [];
        for (int i = 0; i < words.Length; i += 3)
        {
            string part = words.Substring(i, Math.Min(3, words.Length - i));
            int value = part.Reverse().Aggregate(0, (sum, letter) =>
                Letters.IndexOf(letter, StringComparison.Ordinal) is >= 0 and int worth && sum >= 0 ? (sum * Letters.Length) + worth : -1);
            if (value < 0 || part.Length == 1 || value > (part.Length == 3 ? ushort.MaxValue : byte.MaxValue))
            {
                return null;
            }

            bytes.AddRange(part.Length == 3 ? [(byte)(value >> 8), (byte)value] : [(byte)value]);
        }

        return [.. bytes];
    }
}
