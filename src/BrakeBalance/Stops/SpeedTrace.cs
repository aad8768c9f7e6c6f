namespace BrakeBalance.Stops;

/// <summary>Speed over time, as a lap gives it.</summary>
public sealed record SpeedTrace
{
    private SpeedTrace(IReadOnlyList<double> seconds, IReadOnlyList<double> metresPerSecond) =>
        (Seconds, MetresPerSecond) = (seconds, metresPerSecond);

    /// <summary>Times in seconds, rising.</summary>
    public IReadOnlyList<double> Seconds { get; }

    /// <summary>Speeds in metres per second, one for each time.</summary>
    public IReadOnlyList<double> MetresPerSecond { get; }

    /// <summary>A trace through points.</summary>
    /// <param name="points">At least two points; the times rise, the speeds lie between 0 and 150 m/s.</param>
    /// <exception cref="ArgumentException">There are fewer than two points, or the times do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A speed is negative, above 150 m/s or not finite.</exception>
    public static SpeedTrace Through(IEnumerable<(Duration Time, Speed Speed)> points)
    {
        (Duration Time, Speed Speed)[] all = [.. points];
        Refuse.If(all.Length < 2, $"A speed trace needs at least two points; {all.Length} can be used.", nameof(points));

        Refuse.If(!all.Zip(all.Skip(1)).All(pair => pair.Second.Time > pair.First.Time),
            "The times of a speed trace must rise.", nameof(points));

        return new([.. all.Select(point => point.Time.Seconds)],
            [.. all.Select(point => Require.Between(point.Speed.MetersPerSecond, 0, 150, nameof(points)))]);
    }
}
