namespace BrakeBalance.Hydraulics;

/// <summary>The fit of the booster's push rod in the master cylinder's piston, from measured depths.</summary>
/// <remarks>
/// <para>
/// Gap = depth of the piston's seat below the cylinder's mounting face − step of the flange that enters the booster − projection of the
/// rod beyond the booster's face + gasket, as archived service texts measure it by subtraction. Positive is a gap, negative a preload.
/// </para>
/// <para>
/// Wanted: 0 to 0.5 mm with about 20 inHg on the booster in makers' manuals, 0.25 to 0.75 mm as a working value (common practice). A
/// vacuum booster's shell gives a little under vacuum, which lengthens the gap's reading at rest.
/// </para>
/// </remarks>
public sealed record PushRodFit
{
    /// <summary>Depth of the piston's seat below the face that meets the booster; 0 to 150 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 150 mm.</exception>
    [Field("Depth of the piston's seat below the cylinder's mounting face", Required = true, Low = "0 mm", High = "150 mm",
        Example = "24.0 mm",
        HowToMeasure = "Depth gauge from the mounting face into the piston's seat; take off what the flange enters the booster")]
    public required Length PistonDepth { get; init => field = Require.Between(value, Length.Zero, Length.FromMillimeters(150)); }

    /// <summary>How far the rod stands out beyond the booster's mounting face; 0 to 150 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 150 mm.</exception>
    [Field("How far the rod stands out beyond the booster's mounting face", Required = true, Low = "0 mm", High = "150 mm",
        Example = "23.6 mm", HowToMeasure = "Depth gauge on the booster's face, vacuum applied where the service manual asks for it")]
    public required Length RodProjection { get; init => field = Require.Between(value, Length.Zero, Length.FromMillimeters(150)); }

    /// <summary>Thickness of the gasket between the faces; 0 to 5 mm; none unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 5 mm.</exception>
    [Field("Thickness of the gasket between the faces; none when left out", Low = "0 mm", High = "5 mm", Example = "0.5 mm",
        HowToMeasure = "Caliper on the gasket, lightly pressed")]
    public Length Gasket { get; init => field = Require.Between(value, Length.Zero, Length.FromMillimeters(5)); } = Length.Zero;

    /// <summary>Possible error of each reading, plus or minus; 0 to 2 mm; 0.1 mm unless said, a depth gauge's.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 2 mm.</exception>
    [Field("Possible error of each reading, plus or minus; 0.1 mm when left out", Low = "0 mm", High = "2 mm", Example = "0.1 mm",
        HowToMeasure = "Read the same length five times: half the spread")]
    public Length ReadingError
    {
        get;
        init => field = Require.Between(value, Length.Zero, Length.FromMillimeters(2));
    } = Length.FromMillimeters(0.1);

    /// <summary>Least gap wanted; 0 unless said.</summary>
    public Length LeastGap { get; init; } = Length.Zero;

    /// <summary>Greatest gap wanted; 0.75 mm unless said (common practice).</summary>
    public Length GreatestGap { get; init; } = Length.FromMillimeters(0.75);

    /// <summary>The gap; negative is a preload: the rod is longer than the depth.</summary>
    public Length Gap => PistonDepth + Gasket - RodProjection;

    /// <summary>Possible error of the gap, plus or minus: the readings' errors added, the worst case.</summary>
    public Length GapError => ReadingError * (Gasket > Length.Zero ? 3 : 2);

    /// <summary>What the readings allow to be said.</summary>
    public PushRodVerdict Verdict =>
        Gap + GapError < Length.Zero ? PushRodVerdict.Preload
        : Gap - GapError < LeastGap ? PushRodVerdict.MayBePreload
        : Gap - GapError > GreatestGap ? PushRodVerdict.TooMuchGap
        : Gap + GapError > GreatestGap ? PushRodVerdict.MayBeTooMuchGap
        : PushRodVerdict.Good;

    /// <summary>The verdict in words, with the numbers.</summary>
    /// <param name="units">The system of units; both unless said.</param>
    /// <returns>One or two sentences.</returns>
    public string Describe(UnitSystem? units = null)
    {
        string metric = Invariant.Text($"{Math.Abs(Gap.Millimeters):0.00} ± {GapError.Millimeters:0.00} mm");
        string customary = Invariant.Text($"{Math.Abs(Gap.Inches):0.000} ± {GapError.Inches:0.000} in");
        string size = units switch { UnitSystem.Si => metric, UnitSystem.Us => customary, _ => $"{metric} ({customary})" };
        return Verdict switch
        {
            PushRodVerdict.Preload =>
                $"Preload of {size}: the rod is longer than the depth. The compensating port stays covered, pressure is locked in, "
                    + "the brakes drag and heat up. Shorten the rod or add a spacer before the car moves.",
            PushRodVerdict.MayBePreload =>
                $"{(Gap >= Length.Zero ? "Gap" : "Preload")} of {size}: the readings cannot rule out a preload. "
                    + "Measure again more finely, or check with soft clay on the rod's tip and fluid moving in the reservoir.",
            PushRodVerdict.TooMuchGap =>
                $"Gap of {size}: more than wanted. The pedal travels dead before anything happens. Lengthen the rod.",
            PushRodVerdict.MayBeTooMuchGap =>
                $"Gap of {size}: may be more than wanted. It does no harm but costs pedal travel; measure again more finely.",
            _ => $"Gap of {size}: within its limits.",
        };
    }
}

/// <summary>What depth readings say about a push rod.</summary>
public enum PushRodVerdict
{
    /// <summary>The gap lies in the wanted range, reading errors included.</summary>
    Good,

    /// <summary>The rod pushes on the piston at rest.</summary>
    Preload,

    /// <summary>The readings' errors leave room for a preload.</summary>
    MayBePreload,

    /// <summary>More gap than wanted.</summary>
    TooMuchGap,

    /// <summary>The readings' errors leave room for more gap than wanted.</summary>
    MayBeTooMuchGap,
}
