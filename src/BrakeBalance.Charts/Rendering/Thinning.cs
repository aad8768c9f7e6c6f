namespace BrakeBalance.Charts.Rendering;

internal static class Thinning
{
    /// <summary>
    /// The places of the points to keep: all when there are few enough, otherwise the ends and, of each run, the least and the greatest.
    /// </summary>
    /// <param name="y">The ordinates.</param>
    /// <param name="most">How many points may stay; at least four.</param>
    /// <returns>Places in rising order.</returns>
    public static IReadOnlyList<int> Keep(IReadOnlyList<double> y, int most)
    {
        if (y.Count <= most)
        {
            return [.. Enumerable.Range(0, y.Count)];
        }

        var keep = new SortedSet<int> { 0, y.Count - 1 };
        int runs = (most - 2) / 2;
        for (int run = 0; run < runs; run++)
        {
            int from = 1 + (int)((long)run * (y.Count - 2) / runs), to = 1 + (int)((long)(run + 1) * (y.Count - 2) / runs);
            int least = from, greatest = from;
            for (int i = from; i < to; i++)
            {
                least = y[i] < y[least] ? i : least;
                greatest = y[i] > y[greatest] ? i : greatest;
            }

            keep.Add(least);
            keep.Add(greatest);
        }

        return [.. keep];
    }
}
