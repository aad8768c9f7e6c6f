namespace BrakeBalance.Bench;

/// <summary>One part of the plumbing.</summary>
public sealed record PlumbingNode
{
    /// <summary>Its name, unique in the graph.</summary>
    public required string Name { get; init; }

    /// <summary>What it is.</summary>
    public required PlumbingPart Part { get; init; }

    /// <summary>
    /// Pressure lost in it at <see cref="LossAt"/>; not negative; for coolers and filters in a return; grows in proportion to the flow.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Pressure Loss { get; init => field = Require.NotNegative(value); } = Pressure.Zero;

    /// <summary>Flow for which <see cref="Loss"/> holds; above zero; 8 l/min unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public VolumeFlow LossAt { get; init => field = Require.Positive(value); } = VolumeFlow.FromLitersPerMinute(8);
}
