namespace BrakeBalance.Bench;

/// <summary>Repeated readings of one length.</summary>
/// <remarks>
/// Value: mean of the readings. Error: the greater of the gauge's own and half the spread, a worst case. Source: arithmetic.
/// </remarks>
public sealed record RepeatedReading
{
    /// <summary>What is read, in words.</summary>
    public required string Name { get; init; }

    /// <summary>The readings; at least one.</summary>
    /// <exception cref="ArgumentException">There are none.</exception>
    public required ImmutableArray<Length> Readings
    {
        get;
        init => field = value.IsDefaultOrEmpty ? throw new ArgumentException("At least one reading is needed.", nameof(Readings)) : value;
    }

    /// <summary>Mean of the readings.</summary>
    public Length Mean => Length.FromMeters(Readings.Average(reading => reading.Meters));

    /// <summary>Greatest less least.</summary>
    public Length Spread => Length.FromMeters(Readings.Max(reading => reading.Meters) - Readings.Min(reading => reading.Meters));

    /// <summary>Possible error of the mean, plus or minus.</summary>
    /// <param name="gauge">The gauge's own error, plus or minus.</param>
    public Length Error(Length gauge) => Spread / 2 > gauge ? Spread / 2 : gauge;
}
