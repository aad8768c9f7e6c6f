namespace BrakeBalance.Bench.Files;

internal sealed class HoseDocument
{
    [Field("Name of the assembly", Required = true, Example = "pump to booster")]
    public string? Name { get; set; }

    [Field("Class of the hose as the table of ratings names it", Words = typeof(HoseClassNames), Required = true, Example = "EN 853 1SN",
        HowToMeasure = "Printed on the hose")]
    public string? Class { get; set; }

    [Field("Size of the hose as a dash number; left out for classes with one rating", Example = "-6",
        HowToMeasure = "Printed on the hose; sixteenths of an inch of bore")]
    public string? Dash { get; set; }

    [Field("Length from seat to seat, to the centre line of a bent fitting's seat", Required = true, Low = "20 mm", High = "10 m",
        Example = "610 mm", HowToMeasure = "String along the route, then add the allowance for shortening")]
    public Length? OverallLength { get; set; }

    [Field("The first end", Required = true)]
    public HoseEnd? First { get; set; }

    [Field("The second end", Required = true)]
    public HoseEnd? Second { get; set; }

    [Field("Angle between two bent ends: first end hanging down, clockwise to the second, seen from the second end", Low = "0 °",
        High = "360 °", Example = "90 °", HowToMeasure = "Lay it in the car, mark both ends, take it out and read with a protractor")]
    public Angle? Orientation { get; set; }

    [Field("Outer diameter of the hose", Low = "5 mm", High = "80 mm", Example = "17 mm", HowToMeasure = "Caliper")]
    public Length? OutsideDiameter { get; set; }

    [Field("Longest way from seat to seat", Low = "20 mm", High = "10 m", Example = "585 mm",
        HowToMeasure = "String at full bump, droop and both locks; the longest counts")]
    public Length? RouteLength { get; set; }

    [Field("The bends of the route")]
    public RoutingDocument? Routing { get; set; }

    [Field("Distances to heat, moving parts and edges")]
    public IReadOnlyList<HoseClearance>? Clearances { get; set; }

    [Field("How many are made; 1 when left out", Whole = true, Low = "1", High = "100", Example = "1",
        HowToMeasure = "Chosen: how many the car needs")]
    public double? Pieces { get; set; }

    [Field("How many more are made to keep; none when left out", Whole = true, Low = "0", High = "100", Example = "1",
        HowToMeasure = "Chosen: one for the tool box is usual")]
    public double? Spares { get; set; }

    [Field("Side of the pump", Required = true, Example = "pressure",
        HowToMeasure = "Follow the line: behind the pump is pressure, back to the reservoir is return")]
    public HoseSide? Side { get; set; }

    [Field("Highest pressure it has to stand: the pump's relief on the pressure side", Required = true, Low = "0 bar", High = "400 bar",
        Example = "95 bar", HowToMeasure = "Gauge and shut-off valve behind the pump, closed for seconds only, or the manual")]
    public Pressure? HighestPressure { get; set; }

    [Field("How far the working pressure should lie above it; 0.25 when left out", Low = "0", High = "3", Example = "0.25",
        HowToMeasure = "Chosen: a quarter is usual")]
    public double? Margin { get; set; }

    [Field("Highest temperature of the fluid", Low = "20 °C", High = "200 °C", Example = "110 °C",
        HowToMeasure = "Thermometer in the reservoir after hard use")]
    public Temperature? Hottest { get; set; }
}

internal sealed class RoutingDocument
{
    [Field("Straight hose out of the first fitting", Required = true, Low = "0 mm", High = "10 m", Example = "60 mm",
        HowToMeasure = "Rule along the hose from the fitting to the start of the bend")]
    public Length? StraightAtFirst { get; set; }

    [Field("Straight hose into the second fitting", Required = true, Low = "0 mm", High = "10 m", Example = "60 mm",
        HowToMeasure = "Rule along the hose from the end of the bend to the fitting")]
    public Length? StraightAtSecond { get; set; }

    [Field("Straight hose between bends, all together; none when left out", Low = "0 mm", High = "10 m", Example = "80 mm",
        HowToMeasure = "Rule along the hose between the bends")]
    public Length? StraightBetween { get; set; }

    [Field("The bends in their order")]
    public IReadOnlyList<HoseBend>? Bends { get; set; }
}
