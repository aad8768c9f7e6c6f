namespace BrakeBalance.Measurements;

/// <summary>Normal random numbers from a seeded generator.</summary>
internal static class RandomNumbers
{
    /// <summary>A standard normal number (Box–Muller).</summary>
    public static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
