namespace BrakeBalance.Bench;

/// <summary>One end of a hose assembly: the fitting and what it takes off the hose's length.</summary>
public sealed record HoseEnd
{
    /// <summary>The fitting in words, such as "-6 female swivel, 37 degrees, bent 90 degrees".</summary>
    [Field("The fitting in words", Required = true, Example = "-6 female swivel 37°, straight")]
    public required string Fitting { get; init; }

    /// <summary>
    /// Cut-off allowance: from the end face of the hose inside the fitting to the point to which the overall length is measured (the seat,
    /// or the seat's centre line for a bent fitting), along the hose's axis; 0 to 250 mm. From the chart of that very fitting.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 250 mm.</exception>
    [Field("Cut-off allowance of this very fitting", Required = true, Low = "0 mm", High = "250 mm", Example = "28 mm",
        HowToMeasure = "The fitting's chart")]
    public required Length CutOff { get; init => field = Require.Between(value, Length.Zero, Length.FromMillimeters(250)); }

    /// <summary>Length of hose that the fitting's socket hides and stiffens; 0 to 100 mm; none unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 100 mm.</exception>
    [Field("Hose hidden in the fitting's socket; none when left out", Low = "0 mm", High = "100 mm", Example = "20 mm",
        HowToMeasure = "Caliper: depth of the socket to its shoulder")]
    public Length Insertion { get; init => field = Require.Between(value, Length.Zero, Length.FromMillimeters(100)); } = Length.Zero;

    /// <summary>By how much the fitting turns away from the hose's axis; 0 to 180 degrees; straight unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 180 degrees.</exception>
    [Field("Angle by which the fitting is bent; straight when left out", Low = "0 °", High = "180 °", Example = "90 °",
        HowToMeasure = "Protractor on the fitting, or its chart")]
    public Angle Bend { get; init => field = Require.Between(value, Angle.Zero, Angle.FromDegrees(180)); } = Angle.Zero;

    /// <summary>Highest working pressure of the connector, gauge; null when not known.</summary>
    [Field("Working pressure of the connector", Low = "1 bar", High = "1000 bar", Example = "250 bar",
        HowToMeasure = "The fitting's chart")]
    public Pressure? WorkingPressure { get; init; }

    /// <summary>Whether the fitting is bent, so that its direction about the hose's axis matters.</summary>
    public bool IsBent => Bend > Angle.Zero;
}
