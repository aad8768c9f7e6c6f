using BrakeBalance.Charts.Exploring;

namespace BrakeBalance.Charts.Tests;

internal static class EveryState
{
    /// <summary>All states, each computed; the setting of the last control changes fastest.</summary>
    public static IReadOnlyList<Frame> Frames(this Explorable explorable)
    {
        var all = new Frame[explorable.Controls.Aggregate(1, (product, control) => product * control.Settings.Count)];
        Parallel.For(0, all.Length, state =>
        {
            int rest = state;
            int[] places = new int[explorable.Controls.Count];
            for (int c = places.Length - 1; c >= 0; c--)
            {
                (rest, places[c]) = Math.DivRem(rest, explorable.Controls[c].Settings.Count);
            }

            all[state] = explorable.At(places);
        });
        return all;
    }
}
