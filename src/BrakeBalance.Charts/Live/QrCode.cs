namespace BrakeBalance.Charts.Live;

/// <summary>A QR code of the lowest level of error correction, which holds most in the fewest modules.</summary>
/// <remarks>ISO/IEC 18004, from memory; the tests let a decoder that others wrote read every version.</remarks>
internal sealed class QrCode
{
    /// <summary>Modules of white that a reader needs on each side.</summary>
    public const int Quiet = 4;

    private const string Alphanumeric = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";
    private const int Byte = 4, Pairs = 2, Largest = 40;

    // Of each version: blocks, and the bytes of correction in each, at level L.
    private static readonly byte[] Blocks =
    [
        1, 1, 1, 1, 1, 2, 2, 2, 2, 4, 4, 4, 4, 4, 6, 6, 6, 6, 7, 8,
        8, 9, 9, 10, 12, 12, 12, 13, 14, 15, 16, 17, 18, 19, 19, 20, 21, 22, 24, 25,
    ];

    private static readonly byte[] Correction =
    [
        7, 10, 15, 20, 26, 18, 20, 24, 30, 18, 20, 24, 26, 30, 22, 24, 28, 30, 28, 28,
        28, 28, 30, 30, 26, 28, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30,
    ];

    private readonly bool[,] _dark, _fixed;

    private QrCode(int version)
    {
        Version = version;
        Size = (4 * version) + 17;
        (_dark, _fixed) = (new bool[Size, Size], new bool[Size, Size]);
    }

    /// <summary>From 1 to 40.</summary>
    public int Version { get; }

    /// <summary>Modules along a side.</summary>
    public int Size { get; }

    /// <summary>Whether a module is dark.</summary>
    public bool this[int x, int y] => _dark[y, x];

    /// <summary>The code of a text: its end in the letters that pack tightly, what stands before as bytes.</summary>
    /// <returns>The smallest code; null for a text that fits none.</returns>
    public static QrCode? Of(string text)
    {
        int tail = text.Length;
        for (; tail > 0 && Alphanumeric.Contains(text[tail - 1], StringComparison.Ordinal); tail--)
        {
        }

        byte[] head = Encoding.UTF8.GetBytes(text[..tail]);
        for (int version = 1; version <= Largest; version++)
        {
            int room = 8 * DataBytes(version);
            if (Data(head, text[tail..], version) is { } bits && bits.Count <= room)
            {
                var code = new QrCode(version);
                code.DrawFixed();
                code.DrawData(Corrected(Filled(bits, room), version));
                code.Mask();
                return code;
            }
        }

        return null;
    }

    /// <summary>The dark modules as one path, moved in by the quiet zone.</summary>
    public string Path()
    {
        var path = new StringBuilder();
        for (int y = 0; y < Size; y++)
        {
            for (int x = 0, run; x < Size; x += run)
            {
                for (run = 1; x + run < Size && _dark[y, x + run] == _dark[y, x]; run++)
                {
                }

                if (_dark[y, x])
                {
                    path.Append(CultureInfo.InvariantCulture, $"M{x + Quiet} {y + Quiet}h{run}v1h-{run}z");
                }
            }
        }

        return path.ToString();
    }

    // ---- Bits.
    private static List<bool>? Data(byte[] head, string tail, int version)
    {
        List<bool> bits = [];
        void Put(int value, int count)
        {
            for (int i = count - 1; i >= 0; i--)
            {
                bits.Add(((value >> i) & 1) == 1);
            }
        }

        int wide = version < 10 ? 0 : version < 27 ? 1 : 2, most = version < 10 ? byte.MaxValue : ushort.MaxValue;
        if (head.Length > most || tail.Length >= 1 << (9 + (2 * wide)))
        {
            return null;
        }

        if (head.Length > 0)
        {
            Put(Byte, 4);
            Put(head.Length, wide == 0 ? 8 : 16);
            Array.ForEach(head, one => Put(one, 8));
        }

        if (tail.Length > 0)
        {
            Put(Pairs, 4);
            Put(tail.Length, 9 + (2 * wide));
            for (int i = 0; i < tail.Length; i += 2)
            {
                int first = Alphanumeric.IndexOf(tail[i], StringComparison.Ordinal);
                bool two = i + 1 < tail.Length;
                Put(two ? (45 * first) + Alphanumeric.IndexOf(tail[i + 1], StringComparison.Ordinal) : first, two ? 11 : 6);
            }
        }

        return bits;
    }

    private static byte[] Filled(List<bool> bits, int room)
    {
        bits.AddRange(Enumerable.Repeat(false, Math.Min(4, room - bits.Count)));
        var bytes = new byte[room / 8];
        for (int i = 0; i < bits.Count; i++)
        {
            bytes[i / 8] |= (byte)(bits[i] ? 128 >> (i % 8) : 0);
        }

        for (int i = (bits.Count + 7) / 8, pad = 0xEC; i < bytes.Length; i++, pad ^= 0xEC ^ 0x11)
        {
            bytes[i] = (byte)pad;
        }

        return bytes;
    }

    // ---- Error correction: Reed and Solomon's, in blocks that are laid one byte of each in turn.
    private static int AllBytes(int version)
    {
        int marks = Marks(version).Length, size = (4 * version) + 17;
        int aligned = marks == 0 ? 0 : (25 * ((marks * marks) - 3)) - (10 * (marks - 2));
        return ((size * size) - (3 * 64) - (2 * (size - 16)) - 31 - aligned - (version < 7 ? 0 : 36)) / 8;
    }

    private static int DataBytes(int version) => AllBytes(version) - (Blocks[version - 1] * Correction[version - 1]);

    private static List<byte> Corrected(byte[] data, int version)
    {
        int blocks = Blocks[version - 1], longer = data.Length % blocks, shortest = data.Length / blocks;
        byte[] divisor = Divisor(Correction[version - 1]);
        List<byte[]> parts = [], rests = [];
        for (int i = 0, at = 0; i < blocks; at += parts[i].Length, i++)
        {
            parts.Add(data[at..(at + shortest + (i < blocks - longer ? 0 : 1))]);
            rests.Add(Rest(parts[i], divisor));
        }

        IEnumerable<byte> InTurn(List<byte[]> all) => Enumerable.Range(0, all[^1].Length)
            .SelectMany(i => all.Where(part => i < part.Length).Select(part => part[i]));
        return [.. InTurn(parts), .. InTurn(rests)];
    }

    private static byte[] Divisor(int degree)
    {
        var divisor = new byte[degree];
        divisor[^1] = 1;
        for (int i = 0, root = 1; i < degree; i++, root = Times(root, 2))
        {
            for (int j = 0; j < degree; j++)
            {
                divisor[j] = (byte)(Times(divisor[j], root) ^ (j + 1 < degree ? divisor[j + 1] : 0));
            }
        }

        return divisor;
    }

    private static byte[] Rest(byte[] data, byte[] divisor)
    {
        var rest = new byte[divisor.Length];
        foreach (byte one in data)
        {
            int factor = one ^ rest[0];
            for (int j = 0; j < rest.Length; j++)
            {
                rest[j] = (byte)((j + 1 < rest.Length ? rest[j + 1] : 0) ^ Times(divisor[j], factor));
            }
        }

        return rest;
    }

    // A product in the field of 256 elements, modulo x⁸ + x⁴ + x³ + x² + 1.
    private static int Times(int a, int b)
    {
        int product = 0;
        for (int i = 7; i >= 0; i--)
        {
            product = (product << 1) ^ ((product >> 7) * 0x11D) ^ (((b >> i) & 1) * a);
        }

        return product;
    }

    // ---- Modules.
    private static int[] Marks(int version)
    {
        if (version == 1)
        {
            return [];
        }

        int count = (version / 7) + 2, last = (4 * version) + 10;
        int step = version == 32 ? 26 : ((4 * version) + (2 * count) + 1) / ((2 * count) - 2) * 2;
        return [6, .. Enumerable.Range(0, count - 1).Select(i => last - (step * (count - 2 - i)))];
    }

    private void Set(int x, int y, bool dark)
    {
        _dark[y, x] = dark;
        _fixed[y, x] = true;
    }

    private void DrawFixed()
    {
        for (int i = 0; i < Size; i++)
        {
            Set(6, i, i % 2 == 0);
            Set(i, 6, i % 2 == 0);
        }

        foreach ((int x, int y) in new[] { (3, 3), (Size - 4, 3), (3, Size - 4) })
        {
            Rings(x, y, 4, ring => ring is not (2 or 4));
        }

        int[] marks = Marks(Version);
        foreach (int x in marks)
        {
            foreach (int y in marks.Where(y => (x != 6 || (y != 6 && y != marks[^1])) && (y != 6 || x != marks[^1])))
            {
                Rings(x, y, 2, ring => ring != 1);
            }
        }

        DrawFormat(0);
        if (Version >= 7)
        {
            int bits = Checked(Version, 12, 0x1F25);
            for (int i = 0; i < 18; i++)
            {
                bool dark = ((bits >> i) & 1) == 1;
                Set(Size - 11 + (i % 3), i / 3, dark);
                Set(i / 3, Size - 11 + (i % 3), dark);
            }
        }
    }

    private void Rings(int x, int y, int reach, Func<int, bool> dark)
    {
        for (int dy = -reach; dy <= reach; dy++)
        {
            for (int dx = -reach; dx <= reach; dx++)
            {
                if (x + dx >= 0 && x + dx < Size && y + dy >= 0 && y + dy < Size)
                {
                    Set(x + dx, y + dy, dark(Math.Max(Math.Abs(dx), Math.Abs(dy))));
                }
            }
        }
    }

    private void DrawFormat(int mask)
    {
        int bits = Checked((1 << 3) | mask, 10, 0x537) ^ 0x5412;
        for (int i = 0; i < 15; i++)
        {
            bool dark = ((bits >> i) & 1) == 1;
            Set(i < 8 ? 8 : i == 8 ? 7 : 14 - i, i < 6 ? i : i < 8 ? i + 1 : 8, dark);
            Set(i < 8 ? Size - 1 - i : 8, i < 8 ? 8 : Size - 15 + i, dark);
        }

        Set(8, Size - 8, true);
    }

    // A number followed by its remainder, so that a reader can mend it.
    private static int Checked(int value, int places, int divisor)
    {
        int rest = value;
        for (int i = 0; i < places; i++)
        {
            rest = (rest << 1) ^ ((rest >> (places - 1)) * divisor);
        }

        return (value << places) | rest;
    }

    // Up and down in columns of two from the right, past the column that keeps time.
    private void DrawData(List<byte> bytes)
    {
        int at = 0;
        for (int right = Size - 1; right > 0; right -= right == 8 ? 3 : 2)
        {
            bool up = ((right + 1) & 2) == 0;
            for (int i = 0; i < Size; i++)
            {
                int y = up ? Size - 1 - i : i;
                for (int x = right; x > right - 2; x--)
                {
                    if (!_fixed[y, x] && at < 8 * bytes.Count)
                    {
                        _dark[y, x] = ((bytes[at / 8] >> (7 - (at % 8))) & 1) == 1;
                        at++;
                    }
                }
            }
        }
    }

    // The mask that leaves least of what misleads a reader.
    private void Mask()
    {
        int best = 0, least = int.MaxValue;
        for (int mask = 0; mask < 8; mask++)
        {
            Apply(mask);
            if (Penalty() is var penalty && penalty < least)
            {
                (best, least) = (mask, penalty);
            }

            Apply(mask);
        }

        Apply(best);
    }

    private void Apply(int mask)
    {
        DrawFormat(mask);
        for (int y = 0; y < Size; y++)
        {
            for (int x = 0; x < Size; x++)
            {
                _dark[y, x] ^= !_fixed[y, x] && (mask switch
                {
                    0 => (x + y) % 2,
                    1 => y % 2,
                    2 => x % 3,
                    3 => (x + y) % 3,
                    4 => ((x / 3) + (y / 2)) % 2,
                    5 => (x * y % 2) + (x * y % 3),
                    6 => ((x * y % 2) + (x * y % 3)) % 2,
                    _ => (((x + y) % 2) + (x * y % 3)) % 2,
                }) == 0;
            }
        }
    }

    private int Penalty()
    {
        int penalty = 0, dark = 0;
        for (int y = 0; y < Size; y++)
        {
            penalty += Line(i => _dark[y, i]) + Line(i => _dark[i, y]);
            for (int x = 0; x < Size; x++)
            {
                bool one = _dark[y, x];
                dark += one ? 1 : 0;
                penalty += x > 0 && y > 0 && one == _dark[y - 1, x] && one == _dark[y, x - 1] && one == _dark[y - 1, x - 1] ? 3 : 0;
            }
        }

        int all = Size * Size;
        return penalty + (Math.Abs((20 * dark) - (10 * all)) / all * 10);
    }

    // Runs of five and more, and what looks like a corner's square beside white.
    private int Line(Func<int, bool> dark)
    {
        int penalty = 0, run = 0, last = 0;
        for (int i = 0; i < Size; i++)
        {
            bool one = dark(i);
            run = i > 0 && one == dark(i - 1) ? run + 1 : 1;
            penalty += run == 5 ? 3 : run > 5 ? 1 : 0;
            last = ((last << 1) | (one ? 1 : 0)) & 0x7FF;
            penalty += i >= 10 && last is 0b10111010000 or 0b00001011101 ? 40 : 0;
        }

        return penalty;
    }
}
