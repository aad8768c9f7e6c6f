namespace BrakeBalance;

internal static class RandomNumbers
{
    /// <summary>A standard normal number (Box–Muller).</summary>
    public static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    /// <summary>
    /// A generator for one of several streams; the framework's generators of neighbouring seeds begin alike, so the seed is mixed first.
    /// </summary>
    public static Random Stream(int seed, int stream)
    {
        ulong x = ((ulong)(uint)seed << 32 | (uint)stream) + 0x9E3779B97F4A7C15UL;
        x = (x ^ x >> 30) * 0xBF58476D1CE4E5B9UL;
        x = (x ^ x >> 27) * 0x94D049BB133111EBUL;
        return new Random((int)(x ^ x >> 31));
    }
}
