namespace BrakeBalance.Charts;

/// <summary>The cells of a map joined into rows.</summary>
internal static class MapRuns
{
    /// <summary>The runs of neighbouring cells of one class: row, first and last column.</summary>
    public static IEnumerable<(int Row, int From, int To)> Of(MapLayer map, int wanted)
    {
        for (int row = 0; row < map.Y.Count; row++)
        {
            for (int from = 0; from < map.X.Count; from++)
            {
                if (map.Cells[row][from] != wanted)
                {
                    continue;
                }

                int to = from;
                while (to + 1 < map.X.Count && map.Cells[row][to + 1] == wanted)
                {
                    to++;
                }

                yield return (row, from, to);
                from = to;
            }
        }
    }
}
