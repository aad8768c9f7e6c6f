namespace BrakeBalance.Bench;

/// <summary>One part of the plumbing.</summary>
public sealed record PlumbingNode
{
    /// <summary>Its name, unique in the graph.</summary>
    [Field("Name of the part", Required = true, Example = "booster")]
    public required string Name { get; init; }

    /// <summary>What it is.</summary>
    [Field("Kind of part", WordBreak = " ", Required = true, Example = "booster",
        HowToMeasure = "Look what it is")]
    public required PlumbingPart Part { get; init; }

    /// <summary>
    /// Pressure lost in it at <see cref="LossAt"/>; not negative; for coolers and filters in a return; grows in proportion to the flow.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    [Field("Cooler and filter: pressure lost at lossAt; none when left out", Low = "0 bar", High = "10 bar", Example = "0.3 bar",
        HowToMeasure = "The part's data sheet")]
    public Pressure Loss { get; init => field = Require.NotNegative(value); } = Pressure.Zero;

    /// <summary>Flow for which <see cref="Loss"/> holds; above zero; 8 l/min unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    [Field("Flow for which loss holds; 8 l/min when left out", Low = "0.5 l/min", High = "40 l/min", Example = "8 l/min",
        HowToMeasure = "The part's data sheet")]
    public VolumeFlow LossAt { get; init => field = Require.Positive(value); } = VolumeFlow.FromLitersPerMinute(8);
}
