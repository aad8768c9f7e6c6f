namespace BrakeBalance.Charts.Live;

/// <summary>What was made last, by what it was made from, so that it is not made again for each question.</summary>
internal sealed class Lately<T>(int most)
{
    private readonly List<(string Key, T Made)> _kept = [];

    /// <summary>The one of a key; made when it is not kept any more.</summary>
    public T Of(string key, Func<T> make)
    {
        int at = _kept.FindIndex(kept => kept.Key == key);
        (string, T) found = at >= 0 ? _kept[at] : (key, make());
        if (at >= 0)
        {
            _kept.RemoveAt(at);
        }

        _kept.Insert(0, found);
        _kept.RemoveRange(Math.Min(most, _kept.Count), Math.Max(0, _kept.Count - most));
        return found.Item2;
    }
}
