namespace BrakeBalance.Bench;

/// <summary>One bend of a hose's route.</summary>
public sealed record HoseBend
{
    /// <summary>Radius of the hose's centre line; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    [Field("Radius of the hose's centre line", Required = true, Low = "5 mm", High = "5 m", Example = "140 mm",
        HowToMeasure = "Template cut from card")]
    public required Length Radius { get; init => field = Require.Positive(value); }

    /// <summary>Angle through which the hose turns; above 0, to 360 degrees.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 1 to 360 degrees.</exception>
    [Field("Angle through which the hose turns", Required = true, Low = "1 °", High = "360 °", Example = "90 °",
        HowToMeasure = "Protractor, or a template cut from card")]
    public required Angle Turn { get; init => field = Require.Between(value, Angle.FromDegrees(1), Angle.FromDegrees(360)); }

    /// <summary>Length of hose in the bend: radius × angle.</summary>
    public Length Arc => Radius * Turn.Radians;
}

/// <summary>The way a hose takes: straight out of the first fitting, through its bends, straight into the second.</summary>
/// <remarks>Assumes bends that are arcs of circles in one plane each. Source: geometry.</remarks>
public sealed record HoseRouting
{
    /// <summary>Straight hose out of the first fitting before the first bend; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public required Length StraightAtFirst { get; init => field = Require.NotNegative(value); }

    /// <summary>Straight hose into the second fitting after the last bend; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public required Length StraightAtSecond { get; init => field = Require.NotNegative(value); }

    /// <summary>The bends in their order.</summary>
    public ImmutableArray<HoseBend> Bends { get; init; } = [];

    /// <summary>Straight hose between bends, all together; not negative; none unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Length StraightBetween { get; init => field = Require.NotNegative(value); } = Length.Zero;

    /// <summary>Free hose that the route takes: straights and arcs.</summary>
    public Length FreeLength =>
        Length.FromMeters(StraightAtFirst.Meters + StraightAtSecond.Meters + StraightBetween.Meters + Bends.Sum(bend => bend.Arc.Meters));
}
