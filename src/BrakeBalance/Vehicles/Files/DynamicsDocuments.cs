namespace BrakeBalance.Vehicles.Files;

/// <summary>Heat capacity and cooling of one wheel's brake, as they are written.</summary>
internal sealed class HeatDocument
{
    [Field("Mass of the disc's rubbing ring or the drum's shell", Required = true, Low = "0.3 kg", High = "60 kg", Example = "6.5 kg",
        HowToMeasure = "Weigh the whole part, and share it between ring and hat by its sizes")]
    public Mass? RingMass { get; set; }

    [Field("Mass of hat and hub behind the ring; none when left out", Low = "0 kg", High = "60 kg", Example = "2.5 kg",
        HowToMeasure = "Weigh the whole part, and share it between ring and hat by its sizes")]
    public Mass? HatMass { get; set; }

    [Field("Surface of the ring that air sweeps, ducts included", Required = true, Low = "0.005 m²", High = "2 m²", Example = "0.14 m²",
        HowToMeasure = "Rule: both faces and the edge, and the walls of the ducts")]
    public Area? CoolingArea { get; set; }

    [Field("Convection added at 10 m/s of car speed; 30 W/m²·K when left out", Low = "0 W/m²·K", High = "500 W/m²·K",
        Example = "30 W/m²·K", HowToMeasure = "Thermometer on the disc while it cools at a steady 36 km/h: time constant")]
    public HeatTransferCoefficient? ConvectionAtTenMetresPerSecond { get; set; }

    [Field("Invented material whose friction against temperature gives the shape; or give frictionPoints",
        Words = typeof(FrictionMaterialNames), Example = "road pad",
        HowToMeasure = "Chosen: the one nearest in use; measured frictionPoints are better")]
    public string? FrictionMaterial { get; set; }

    [Field("Measured friction against temperature, coldest first, in place of frictionMaterial", InPlaceOf = "frictionMaterial",
        Fewest = 2)]
    public IReadOnlyList<FrictionPointDocument>? FrictionPoints { get; set; }
}

/// <summary>One measured point of friction against temperature, as it is written.</summary>
internal sealed class FrictionPointDocument
{
    [Field("Temperature of the rubbing surface", Required = true, Low = "-60 °C", High = "1500 °C", Example = "100 °C",
        HowToMeasure = "Contact thermometer or rubbing thermocouple at the reading")]
    public Temperature? Temperature { get; set; }

    [Field("Friction coefficient", Required = true, Low = "0.02", High = "1.2", Example = "0.38",
        HowToMeasure = "Dynamometer sheet, or deceleration over line pressure of single stops from that temperature")]
    public double? Friction { get; set; }
}
