namespace BrakeBalance.Vehicles.Files;

/// <summary>Finds the known word that a mistyped one most likely meant.</summary>
internal static class Nearest
{
    /// <summary>The closest of some known words.</summary>
    /// <param name="word">The word as typed.</param>
    /// <param name="known">The words that would have been right.</param>
    /// <returns>The closest by edits, capitals aside; null when none is close.</returns>
    public static string? Of(string word, IEnumerable<string> known) =>
        known.Select(candidate => (candidate, distance: Edits(word.ToUpperInvariant(), candidate.ToUpperInvariant())))
            .Where(pair => pair.distance <= Math.Max(2, word.Length / 3))
            .OrderBy(pair => pair.distance)
            .ThenBy(pair => pair.candidate, StringComparer.Ordinal)
            .Select(pair => pair.candidate)
            .FirstOrDefault();

    private static int Edits(string a, string b)
    {
        int[] row = [.. Enumerable.Range(0, b.Length + 1)];
        for (int i = 1; i <= a.Length; i++)
        {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                (row[j], diagonal) = (Math.Min(Math.Min(row[j], row[j - 1]) + 1, diagonal + (a[i - 1] == b[j - 1] ? 0 : 1)), row[j]);
            }
        }

        return row[^1];
    }
}
