namespace BrakeBalance.Vehicles.Files;

/// <summary>A vehicle file as it is written: the entries in their order.</summary>
internal sealed class VehicleDocument
{
    [Field("Name of the car", Required = true, Example = "My coupe")]
    public string? Name { get; set; }

    [Field("Anything a reader should know of this car or file", Example = "Weighed on 12 May, driver aboard, half a tank")]
    public string? Note { get; set; }

    [Field(
        "Class of car whose typical ranges stand in for what is left out", Words = typeof(CarClassNames),
        Example = "1960s coupe", HowToMeasure = "Chosen: the class nearest to the car")]
    public string? CarClass { get; set; }

    [Field("Distance between the axles, hub centre to hub centre", ByClass = true, Typical = "2.10 m .. 3.45 m", Required = true,
        Low = "1 m", High = "6 m", Example = "2.60 m", HowToMeasure = "Tape measure, hub centre to hub centre, both sides")]
    [Usual("1.9 m", "3.6 m", Above = "overall length", Below = "track width given for wheelbase")]
    public Length? Wheelbase { get; set; }

    [Field("States of load, lightest first", ByClass = true, Required = true, Fewest = 1, Most = 12)]
    public IReadOnlyList<LoadCaseDocument>? LoadCases { get; set; }

    [Field("Front axle: tyre and the brake of one wheel", ByClass = true, Required = true)]
    public AxleDocument? Front { get; set; }

    [Field("Rear axle: tyre and the brake of one wheel", ByClass = true, Required = true)]
    public AxleDocument? Rear { get; set; }

    [Field("Circuit split and valves; a tandem cylinder without valves when left out")]
    public HydraulicsDocument? Hydraulics { get; set; }

    [Field("The pedal; left out together with assist and masterCylinder when only line pressures matter")]
    public PedalDocument? Pedal { get; set; }

    [Field("The booster, or type none")]
    public AssistDocument? Assist { get; set; }

    [Field("The master cylinder or cylinders")]
    public MasterCylinderDocument? MasterCylinder { get; set; }

    [Field("Fluid, and what brakes and hoses displace of it; left out when the pedal's travel is not asked for")]
    public FluidDocument? Fluid { get; set; }

    [Field("Drag and lift as areas (coefficient times reference area); left out for none")]
    public Aerodynamics? Aerodynamics { get; set; }

    [Field("Rolling resistance over load", Low = "0", High = "0.1", Example = "0.015",
        HowToMeasure = "Coast down from 20 km/h on a level road: deceleration over g")]
    [Usual("0.005", "0.03")]
    public double? RollingResistance { get; set; }

    [Field("How the car moves in a stop; typical values stand in for what is left out")]
    public VehicleDynamics? Dynamics { get; set; }

    [Field("Drag of the engine in gear; left out for a declutched stop")]
    public EngineBraking? EngineBraking { get; set; }

    [Field("What the setting has to hold for; the usual conditions stand for what is left out")]
    public ConditionsDocument? Conditions { get; set; }

    [Field("Logs measured on this car; every answer then uses them")]
    public MeasurementsDocument? Measurements { get; set; }

    [Field("true for a car made up for teaching or trial, so that whatever is published of it says so", Example = "false",
        HowToMeasure = "Chosen")]
    public bool? Invented { get; set; }
}

internal sealed class LoadCaseDocument
{
    [Field("Name of the load case", Required = true, Example = "driver only")]
    public string? Name { get; set; }

    [Field("Mass of the car with driver, fuel and load", ByClass = true, Typical = "780 kg .. 2200 kg", Low = "200 kg", High = "7500 kg",
        Example = "1350 kg", HowToMeasure = "Scales under all four wheels or a weighbridge, driver aboard, fuel noted")]
    [Usual("500 kg", "3000 kg", Above = "pounds given for kilograms", Below = "mass on one axle or at one wheel")]
    public Mass? Mass { get; set; }

    [Field("Front axle's share of the weight at rest; or give frontAxleToCentreOfGravity, or the two axle masses", ByClass = true,
        Typical = "0.37 .. 0.60", Low = "0.15", High = "0.85", Example = "0.53",
        HowToMeasure = "Front axle on the scales over the sum of both")]
    [Usual("0.35", "0.68")]
    public double? FrontShare { get; set; }

    [Field("Distance from the front axle back to the centre of gravity, in place of frontShare", InPlaceOf = "frontShare", Low = "0.01 m",
        High = "6 m", Example = "1.22 m", HowToMeasure = "Rear axle's weight over the sum of both, times the wheelbase")]
    public Length? FrontAxleToCentreOfGravity { get; set; }

    [Field("What the scales show under the front axle, in place of mass and frontShare", InPlaceOf = "mass frontShare", Low = "50 kg",
        High = "5000 kg", Example = "716 kg", HowToMeasure = "Scales under both front wheels, driver aboard")]
    [Usual("200 kg", "1500 kg", Above = "pounds given for kilograms", Below = "mass at one wheel")]
    public Mass? FrontAxleMass { get; set; }

    [Field("What the scales show under the rear axle, in place of mass and frontShare", InPlaceOf = "mass frontShare", Low = "50 kg",
        High = "5000 kg", Example = "634 kg", HowToMeasure = "Scales under both rear wheels, driver aboard")]
    [Usual("200 kg", "1800 kg", Above = "pounds given for kilograms", Below = "mass at one wheel")]
    public Mass? RearAxleMass { get; set; }

    [Field("Height of the centre of gravity above the road", ByClass = true, Typical = "0.42 m .. 0.75 m", Required = true, Low = "0.15 m",
        High = "2 m", Example = "0.47 m",
        HowToMeasure = "Axle weights level and with one end raised more than 15 degrees, suspension locked")]
    [Usual("0.35 m", "0.85 m", Above = "height of the roof or of the bonnet", Below = "height above the sill or the hubs, not the road")]
    public Length? CentreOfGravityHeight { get; set; }
}

internal sealed class AxleDocument
{
    [Field("Tyre of this axle", ByClass = true, Required = true)]
    public TyreDocument? Tyre { get; set; }

    [Field("Brake of one wheel of this axle", ByClass = true, Required = true)]
    public BrakeDocument? Brake { get; set; }

    [Field("Moment of inertia of one wheel with tyre and disc or drum; 1 kg·m² when left out", Low = "0.05 kg·m²", High = "50 kg·m²",
        Example = "1.1 kg·m²", HowToMeasure = "Hang the wheel with its disc on three strings, twist it and time ten swings")]
    public MassMomentOfInertia? WheelInertia { get; set; }

    [Field("Distance between the tyres' centre planes; 1.45 m when left out", Low = "0.8 m", High = "2.6 m", Example = "1.48 m",
        HowToMeasure = "Tape measure from tyre to tyre at hub height, centre to centre")]
    [Usual("1.1 m", "1.8 m", Above = "width over the wings")]
    public Length? Track { get; set; }

    [Field("(Stronger − weaker)/stronger of the two brakes of this axle, positive when the right one is the stronger; 0 when left out",
        Low = "-0.9", High = "0.9", Example = "0.1",
        HowToMeasure = "Roller test sheet: imbalance across the axle, with the side that brakes more")]
    public double? BrakeImbalance { get; set; }

    [Field("Heat capacity and cooling of one wheel's brake; estimated from its size when left out")]
    public HeatDocument? Heat { get; set; }
}

internal sealed class TyreDocument
{
    [Field("Distance from hub centre to road, car down", ByClass = true, Typical = "275 mm .. 385 mm", Required = true, Low = "150 mm",
        High = "600 mm", Example = "315 mm",
        HowToMeasure = "Rule from the floor to the hub centre, car on its wheels at working tyre pressure")]
    [Usual("240 mm", "400 mm", Above = "diameter given for radius", Below = "radius of the rim")]
    public Length? LoadedRadius { get; set; }

    [Field("Adhesion of this tyre over the nominal adhesion of the surface", Low = "0.3", High = "2", Example = "1.0",
        HowToMeasure = "Stops from the lock on one surface, these tyres against the reference tyres")]
    public double? AdhesionFactor { get; set; }

    [Field("Share of the adhesion lost when the wheel load doubles from referenceLoad", Low = "0", High = "0.4", Example = "0.08",
        HowToMeasure = "Stops at the lock, empty and laden: loss of adhesion over change of load")]
    public double? LoadSensitivity { get; set; }

    [Field("Load of one wheel at which the adhesion is nominal; 4 kN when left out", Low = "0.5 kN", High = "30 kN", Example = "3.3 kN",
        HowToMeasure = "Scales under one wheel in the state in which the adhesion was found")]
    public Force? ReferenceLoad { get; set; }

    [Field("Published slip curve that gives the shape of adhesion against slip; chosen by the surface's adhesion when left out",
        Words = typeof(SlipCurveNames), Example = "dry asphalt", HowToMeasure = "Chosen: the surface nearest to the road")]
    public string? SlipCurve { get; set; }

    [Field("Lateral over longitudinal slip stiffness of the rolling tyre; 0.5 when left out", Low = "0.05", High = "1", Example = "0.5",
        HowToMeasure = "Tyre test sheet: cornering stiffness per radian over slip stiffness")]
    public double? LateralStiffnessRatio { get; set; }
}
