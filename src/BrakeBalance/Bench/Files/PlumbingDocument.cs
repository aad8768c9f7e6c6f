namespace BrakeBalance.Bench.Files;

/// <summary>The plumbing of a pump-fed booster as it is written.</summary>
internal sealed class PlumbingDocument
{
    [Field("Pressure at which the pump's relief valve opens", Required = true, Low = "20 bar", High = "200 bar", Example = "95 bar",
        HowToMeasure = "Gauge and shut-off valve behind the pump, closed for seconds only, or the manual")]
    public Pressure? ReliefPressure { get; set; }

    [Field("Flow of the pump that comes back from the steering gear", Required = true, Low = "0.5 l/min", High = "40 l/min",
        Example = "9 l/min", HowToMeasure = "Flow meter at idle, or the manual")]
    public VolumeFlow? PumpFlow { get; set; }

    [Field("Temperature of the oil", Required = true, Low = "-40 °C", High = "150 °C", Example = "60 °C",
        HowToMeasure = "Thermometer in the reservoir after a drive")]
    public Temperature? OilTemperature { get; set; }

    [Field("The oil; a usual steering fluid when left out")]
    public HydraulicOil? Oil { get; set; }

    [Field("The parts", Required = true, Fewest = 1)]
    public IReadOnlyList<PlumbingNode>? Parts { get; set; }

    [Field("The lines, each in the direction of flow", Required = true, Fewest = 1)]
    public IReadOnlyList<PlumbingLine>? Lines { get; set; }

    [Field("Booster and master cylinder, for what the return does to the pedal")]
    public ReleaseDocument? Release { get; set; }
}

/// <summary>Booster and master cylinder for the release, as they are written.</summary>
internal sealed class ReleaseDocument
{
    [Field("Diameter of the booster's power piston", Required = true, Low = "10 mm", High = "80 mm", Example = "35 mm",
        HowToMeasure = "Micrometer on the piston, or the booster's service manual")]
    public Length? PowerPiston { get; set; }

    [Field("Force of the booster's return spring with the pedal released", Required = true, Low = "0 N", High = "1000 N", Example = "150 N",
        HowToMeasure = "Spring balance on the output rod, booster on the bench")]
    public Force? BoosterSpring { get; set; }

    [Field("Bore of the master cylinder", Required = true, Low = "9 mm", High = "51 mm", Example = "1.125 in",
        HowToMeasure = "Cast or stamped on the cylinder; bore gauge")]
    public Length? MasterBore { get; set; }

    [Field("Force of the master cylinder's return springs; 100 N when left out", Low = "0 N", High = "500 N", Example = "100 N",
        HowToMeasure = "Spring balance on the piston, cylinder dry on the bench")]
    public Force? MasterSpring { get; set; }

    [Field("Travel of the rod that is let go", Required = true, Low = "1 mm", High = "80 mm", Example = "14 mm",
        HowToMeasure = "Pedal travel at a firm stop over the pedal ratio")]
    public Length? RodTravel { get; set; }

    [Field("Highest back-pressure that the booster's maker allows", Low = "0 bar", High = "20 bar", Example = "1 bar",
        HowToMeasure = "The booster's service manual")]
    public Pressure? MakersLimit { get; set; }
}
