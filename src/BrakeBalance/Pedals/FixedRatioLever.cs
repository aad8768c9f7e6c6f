namespace BrakeBalance.Pedals;

/// <summary>Pedal lever whose ratio is taken as the same over the whole travel.</summary>
/// <remarks>
/// <para>i = b / a, pivot to pad over pivot to rod pin, both measured square to their forces.</para>
/// <para>Source: law of the lever. About 6:1 without assist, 3 to 4:1 with a vacuum booster (common practice).</para>
/// </remarks>
public sealed record FixedRatioLever : PedalLever
{
    /// <summary>Pedal ratio [–]; 1 to 12.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 1 to 12.</exception>
    public required double Ratio { get; init => field = Require.Between(value, 1, 12); }

    /// <inheritdoc/>
    public override double RatioAt(Length padTravel)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(padTravel, Length.Zero);
        return Ratio;
    }

    /// <inheritdoc/>
    public override Length RodTravel(Length padTravel)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(padTravel, Length.Zero);
        return padTravel / Ratio;
    }

    /// <inheritdoc/>
    public override Length? PadTravel(Length rodTravel)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rodTravel, Length.Zero);
        return rodTravel * Ratio;
    }
}
