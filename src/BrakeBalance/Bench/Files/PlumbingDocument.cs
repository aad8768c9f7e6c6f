using BrakeBalance.Vehicles.Files;

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
    public OilDocument? Oil { get; set; }

    [Field("The parts", Required = true, Fewest = 1)]
    public IReadOnlyList<PlumbingPartDocument>? Parts { get; set; }

    [Field("The lines, each in the direction of flow", Required = true, Fewest = 1)]
    public IReadOnlyList<PlumbingLineDocument>? Lines { get; set; }

    [Field("Booster and master cylinder, for what the return does to the pedal")]
    public ReleaseDocument? Release { get; set; }
}

internal sealed class OilDocument
{
    [Field("Density; 860 kg/m³ when left out", Low = "700 kg/m³", High = "1100 kg/m³", Example = "860 kg/m³",
        HowToMeasure = "The fluid's data sheet")]
    public Density? Density { get; set; }

    [Field("Kinematic viscosity at 40 °C; 36 mm²/s when left out", Low = "2 mm²/s", High = "1000 mm²/s", Example = "36 mm²/s",
        HowToMeasure = "The fluid's data sheet")]
    public KinematicViscosity? At40Celsius { get; set; }

    [Field("Kinematic viscosity at 100 °C; 7.2 mm²/s when left out", Low = "1 mm²/s", High = "100 mm²/s", Example = "7.2 mm²/s",
        HowToMeasure = "The fluid's data sheet")]
    public KinematicViscosity? At100Celsius { get; set; }
}

internal sealed class PlumbingPartDocument
{
    [Field("Name of the part", Required = true, Example = "booster")]
    public string? Name { get; set; }

    [Field("Kind of part", WordBreak = " ", Required = true, Example = "booster",
        HowToMeasure = "Look what it is")]
    public PlumbingPart? Part { get; set; }

    [Field("Cooler and filter: pressure lost at lossAt; none when left out", Low = "0 bar", High = "10 bar", Example = "0.3 bar",
        HowToMeasure = "The part's data sheet")]
    public Pressure? Loss { get; set; }

    [Field("Flow for which loss holds; 8 l/min when left out", Low = "0.5 l/min", High = "40 l/min", Example = "8 l/min",
        HowToMeasure = "The part's data sheet")]
    public VolumeFlow? LossAt { get; set; }
}

internal sealed class PlumbingLineDocument
{
    [Field("Port it comes from, as part.port", Required = true, Example = "pump.outlet")]
    public string? From { get; set; }

    [Field("Port it goes to, as part.port", Required = true, Example = "booster.pressure")]
    public string? To { get; set; }

    [Field("Inner diameter", Required = true, Low = "2 mm", High = "50 mm", Example = "9.5 mm",
        HowToMeasure = "Dash number in sixteenths of an inch, or drill shanks as a gauge")]
    public Length? Bore { get; set; }

    [Field("Length", Required = true, Low = "1 mm", High = "20 m", Example = "0.9 m", HowToMeasure = "Tape along the hose")]
    public Length? Length { get; set; }

    [Field("Sum of the loss coefficients of fittings, bends, entry and exit; 1.5 when left out", Low = "0", High = "100", Example = "3",
        HowToMeasure = "Tables of pipe flow: sharp elbow about 1, wide bend 0.3, entry 0.5, exit 1")]
    public double? LossCoefficient { get; set; }

    [Field("Working pressure of hose and fittings", Low = "0.5 bar", High = "1000 bar", Example = "180 bar",
        HowToMeasure = "Printed on the hose; the lower of hose and fittings")]
    public Pressure? WorkingPressure { get; set; }
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
