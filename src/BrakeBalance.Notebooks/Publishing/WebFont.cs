using System.Buffers.Binary;
using System.IO.Compression;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>A TrueType font as a file for pages, with the outlines of some letters only.</summary>
/// <remarks>Source: OpenType specification (tables "cmap", "glyf", "loca", "post") and WOFF File Format 1.0, W3C, from memory.</remarks>
internal static class WebFont
{
    private const int Directory = 12, Entry = 16, WoffHeader = 44, WoffEntry = 20, MoreComponents = 0x20;

    private static readonly string[] Kept =
        ["OS/2", "cmap", "cvt ", "fpgm", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post", "prep"];

    /// <summary>The file.</summary>
    /// <param name="font">A TrueType font.</param>
    /// <param name="letters">The letters that stay, with the numbers of their glyphs; what these are made of stays too.</param>
    public static byte[] Of(byte[] font, IReadOnlyCollection<(int Glyph, char Letter)> letters)
    {
        Dictionary<string, byte[]> tables = Enumerable.Range(0, Short(font, 4)).Select(i => Directory + Entry * i)
            .ToDictionary(at => Encoding.ASCII.GetString(font, at, 4), at => font[Long(font, at + 8)..][..Long(font, at + 12)]);
        (tables["glyf"], tables["loca"]) = Only(tables, [0, .. letters.Select(one => one.Glyph)]);
        tables["cmap"] = Map([.. letters.OrderBy(one => one.Letter)]);
        BinaryPrimitives.WriteInt16BigEndian(tables["head"].AsSpan(50), 1);
        tables["post"] = [0, 3, 0, 0, .. tables["post"][4..32]];
        return Woff([.. tables.Where(table => Kept.Contains(table.Key)).OrderBy(table => table.Key, StringComparer.Ordinal)]);
    }

    // One table for Unicode: format 12, a group a letter.
    private static byte[] Map((int Glyph, char Letter)[] letters)
    {
        byte[] map = new byte[28 + 12 * letters.Length];
        Write(map, 1, 3 << 16 | 10, 12, 12 << 16, map.Length - 12, 0, letters.Length);
        for (int i = 0; i < letters.Length; i++)
        {
            Write(map.AsSpan(28 + 12 * i), letters[i].Letter, letters[i].Letter, letters[i].Glyph);
        }

        return map;
    }

    private static (byte[] Glyphs, byte[] Places) Only(Dictionary<string, byte[]> tables, HashSet<int> kept)
    {
        (byte[] glyf, byte[] loca) = (tables["glyf"], tables["loca"]);
        bool isLong = Short(tables["head"], 50) == 1;
        int count = Short(tables["maxp"], 4);
        int Place(int glyph) => isLong ? Long(loca, 4 * glyph) : 2 * Short(loca, 2 * glyph);
        var waiting = new Queue<int>(kept);
        while (waiting.TryDequeue(out int glyph))
        {
            foreach (int part in Parts(glyf.AsSpan(Place(glyph)..Place(glyph + 1))).Where(kept.Add))
            {
                waiting.Enqueue(part);
            }
        }

        List<byte> outlines = [];
        byte[] places = new byte[4 * (count + 1)];
        for (int glyph = 0; glyph < count; glyph++)
        {
            BinaryPrimitives.WriteInt32BigEndian(places.AsSpan(4 * glyph), outlines.Count);
            outlines.AddRange(kept.Contains(glyph) ? glyf.AsSpan(Place(glyph)..Place(glyph + 1)) : []);
            outlines.AddRange(new byte[-outlines.Count & 3]);
        }

        BinaryPrimitives.WriteInt32BigEndian(places.AsSpan(4 * count), outlines.Count);
        return ([.. outlines], places);
    }

    // The glyphs that a glyph is made of: a negative count of contours, then flags, number and placing of each.
    private static List<int> Parts(ReadOnlySpan<byte> glyph)
    {
        List<int> parts = [];
        if (glyph.Length < 10 || BinaryPrimitives.ReadInt16BigEndian(glyph) >= 0)
        {
            return parts;
        }

        for (int at = 10, flags = MoreComponents; (flags & MoreComponents) != 0;)
        {
            flags = BinaryPrimitives.ReadUInt16BigEndian(glyph[at..]);
            parts.Add(BinaryPrimitives.ReadUInt16BigEndian(glyph[(at + 2)..]));
            at += 4 + ((flags & 1) != 0 ? 4 : 2) + ((flags & 0x80) != 0 ? 8 : (flags & 0x40) != 0 ? 4 : (flags & 8) != 0 ? 2 : 0);
        }

        return parts;
    }

    private static byte[] Woff(KeyValuePair<string, byte[]>[] tables)
    {
        using var data = new MemoryStream();
        byte[] head = new byte[WoffHeader + WoffEntry * tables.Length];
        for (int i = 0; i < tables.Length; i++)
        {
            (string tag, byte[] table) = tables[i];
            using var packed = new MemoryStream();
            using (var zip = new ZLibStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
            {
                zip.Write(table);
            }

            byte[] stored = packed.Length < table.Length ? packed.ToArray() : table;
            Span<byte> entry = head.AsSpan(WoffHeader + WoffEntry * i);
            Encoding.ASCII.GetBytes(tag, entry);
            Write(entry[4..], head.Length + (int)data.Length, stored.Length, table.Length, Sum(table));
            data.Write([.. stored, .. new byte[-stored.Length & 3]]);
        }

        int whole = Directory + Entry * tables.Length + tables.Sum(table => table.Value.Length + 3 & ~3);
        Write(head, 0x774F4646, 0x00010000, head.Length + (int)data.Length, tables.Length << 16, whole, 0x00010000);
        return [.. head, .. data.ToArray()];
    }

    private static int Sum(byte[] table)
    {
        byte[] padded = [.. table, .. new byte[-table.Length & 3]];
        return Enumerable.Range(0, padded.Length / 4).Aggregate(0, (sum, i) => unchecked(sum + Long(padded, 4 * i)));
    }

    private static void Write(Span<byte> to, params ReadOnlySpan<int> numbers)
    {
        for (int i = 0; i < numbers.Length; i++)
        {
            BinaryPrimitives.WriteInt32BigEndian(to[(4 * i)..], numbers[i]);
        }
    }

    private static int Short(byte[] from, int at) => BinaryPrimitives.ReadUInt16BigEndian(from.AsSpan(at));

    private static int Long(byte[] from, int at) => BinaryPrimitives.ReadInt32BigEndian(from.AsSpan(at));
}
