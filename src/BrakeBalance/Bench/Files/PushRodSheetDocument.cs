namespace BrakeBalance.Bench.Files;

/// <summary>Readings of the push rod as they are written; each a list, for a length read more than once.</summary>
internal sealed class PushRodSheetDocument
{
    [Field("Depth from the cylinder's outermost face to the piston's seat", Required = true, Fewest = 1, Low = "0 mm", High = "200 mm",
        Example = "28.1 mm", HowToMeasure = "Depth gauge across the spigot, three times round")]
    public IReadOnlyList<Length>? SeatDepth { get; set; }

    [Field("How far the spigot stands out of the mounting face; left out when the depth was read from that face", Fewest = 1, Low = "0 mm",
        High = "100 mm", Example = "4.0 mm", HowToMeasure = "Depth gauge from the spigot's face to the flange, three times round")]
    public IReadOnlyList<Length>? SpigotHeight { get; set; }

    [Field("How far the rod stands out of the booster's face; or give rodLength and rodSeatDepth", Fewest = 1, Low = "0 mm",
        High = "150 mm", Example = "23.6 mm",
        HowToMeasure = "Depth gauge over the rod's tip, rod pushed home; vacuum boosters as the manual says")]
    public IReadOnlyList<Length>? RodProjection { get; set; }

    [Field("Length of the loose rod, with rodSeatDepth", InPlaceOf = "rodProjection", Fewest = 1, Low = "5 mm", High = "300 mm",
        Example = "96.0 mm", HowToMeasure = "Caliper")]
    public IReadOnlyList<Length>? RodLength { get; set; }

    [Field("Depth of the rod's seat below the booster's face, with rodLength", InPlaceOf = "rodProjection", Fewest = 1, Low = "0 mm",
        High = "300 mm", Example = "72.4 mm", HowToMeasure = "Depth gauge")]
    public IReadOnlyList<Length>? RodSeatDepth { get; set; }

    [Field("Thickness of the gasket between the faces, pressed; none when left out", Low = "0 mm", High = "5 mm", Example = "0.5 mm",
        HowToMeasure = "Caliper on the gasket, lightly pressed")]
    public Length? Gasket { get; set; }

    [Field("The gauge's own error, plus or minus; 0.1 mm when left out", Low = "0 mm", High = "1 mm", Example = "0.05 mm",
        HowToMeasure = "The gauge's certificate, or gauge blocks")]
    public Length? GaugeError { get; set; }

    [Field("Least gap wanted; 0 when left out", Low = "-1 mm", High = "5 mm", Example = "0.1 mm", HowToMeasure = "The manual")]
    public Length? LeastGap { get; set; }

    [Field("Greatest gap wanted; 0.75 mm when left out", Low = "0 mm", High = "5 mm", Example = "0.75 mm", HowToMeasure = "The manual")]
    public Length? GreatestGap { get; set; }
}
