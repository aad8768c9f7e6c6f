namespace BrakeBalance.Bench;

/// <summary>A hose or pipe from one port to another, in the direction of flow.</summary>
public sealed record PlumbingLine
{
    /// <summary>Port it comes from, as <c>part.port</c>.</summary>
    [Field("Port it comes from, as part.port", Required = true, Example = "pump.outlet")]
    public required string From { get; init; }

    /// <summary>Port it goes to, as <c>part.port</c>.</summary>
    [Field("Port it goes to, as part.port", Required = true, Example = "booster.pressure")]
    public required string To { get; init; }

    /// <summary>Inner diameter; 2 to 50 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 2 to 50 mm.</exception>
    [Field("Inner diameter", Required = true, Low = "2 mm", High = "50 mm", Example = "9.5 mm",
        HowToMeasure = "Dash number in sixteenths of an inch, or drill shanks as a gauge")]
    public required Length Bore { get; init => field = Require.Between(value, Length.FromMillimeters(2), Length.FromMillimeters(50)); }

    /// <summary>Length; above zero, to 20 m.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 1 mm to 20 m.</exception>
    [Field("Length", Required = true, Low = "1 mm", High = "20 m", Example = "0.9 m", HowToMeasure = "Tape along the hose")]
    public required Length Length { get; init => field = Require.Between(value, Length.FromMillimeters(1), Length.FromMeters(20)); }

    /// <summary>
    /// Sum of the loss coefficients of its fittings, bends, entry and exit [–]; 0 to 100; 1.5 unless said: entry 0.5 and exit 1
    /// (textbooks, from memory).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 100.</exception>
    [Field("Sum of the loss coefficients of fittings, bends, entry and exit; 1.5 when left out", Low = "0", High = "100", Example = "3",
        HowToMeasure = "Tables of pipe flow: sharp elbow about 1, wide bend 0.3, entry 0.5, exit 1")]
    public double LossCoefficient { get; init => field = Require.Between(value, 0, 100); } = 1.5;

    /// <summary>Highest working pressure of hose and fittings, gauge; null when not known.</summary>
    [Field("Working pressure of hose and fittings", Low = "0.5 bar", High = "1000 bar", Example = "180 bar",
        HowToMeasure = "Printed on the hose; the lower of hose and fittings")]
    public Pressure? WorkingPressure { get; init; }

    /// <summary>Name for messages: from and to.</summary>
    public string Name => $"{From} → {To}";
}
