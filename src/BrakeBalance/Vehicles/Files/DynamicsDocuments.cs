namespace BrakeBalance.Vehicles.Files;

internal sealed class DynamicsDocument
{
    [Field("Moment of inertia about the vertical axis; mass times the distances of the axles from the centre of gravity when left out",
        Low = "50 kg·m²", High = "30000 kg·m²", Example = "2100 kg·m²",
        HowToMeasure = "Swing on a pivot with known springs: period; or mass times the distances of the axles from the centre of gravity")]
    public MassMomentOfInertia? YawInertia { get; set; }

    [Field("Natural frequency of pitch on the springs; load transfer follows at once when left out", Low = "0.5 Hz", High = "10 Hz",
        Example = "1.5 Hz", HowToMeasure = "Push one end down, let go and count the swings in ten seconds, or take it from video")]
    public Frequency? PitchFrequency { get; set; }

    [Field("Damping ratio of pitch; 0.35 when left out", Low = "0.05", High = "2", Example = "0.35",
        HowToMeasure = "Video of the swing after a push: logarithm of two following peaks' ratio, over 2π")]
    public double? PitchDamping { get; set; }

    [Field(
        "Share of the load transfer that the links pass to the tyres at once, "
            + "without the springs (anti-dive and anti-lift); 0 when left out",
        Low = "0", High = "1", Example = "0.2",
        HowToMeasure = "Side-view angles of the links: slope to the instant centre over the slope of full compensation")]
    public double? AntiDive { get; set; }

    [Field("Front axle's share of the lateral load transfer; 0.55 when left out", Low = "0", High = "1", Example = "0.55",
        HowToMeasure = "Roll stiffness of springs and bars by axle, from rates and motion ratios")]
    public double? FrontRollShare { get; set; }

    [Field("Maximum speed, for the fade test; 160 km/h when left out", Low = "30 km/h", High = "450 km/h", Example = "180 km/h",
        HowToMeasure = "Registration papers, or a satellite speedometer")]
    public Speed? MaximumSpeed { get; set; }

    [Field("Time from first touch to the full push of the foot in an emergency stop; 0.25 s when left out", Low = "0.02 s", High = "5 s",
        Example = "0.25 s",
        HowToMeasure = "Pressure logger in the front line: first rise to 90 % in an emergency stop")]
    public Duration? EmergencyRiseTime { get; set; }

    [Field("Time constant with which the assist follows the foot; 60 ms when left out, none in a car without assist", Low = "0 ms",
        High = "1000 ms", Example = "60 ms",
        HowToMeasure = "Pressure logger and pedal force: delay of the pressure to a stamp on the pedal")]
    public Duration? AssistLag { get; set; }
}

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
