using BrakeBalance.Assist;
using BrakeBalance.Hydraulics;
using BrakeBalance.Pedals;

namespace BrakeBalance.Vehicles.Files;

internal sealed class PedalDocument
{
    [Field("Pivot to pad over pivot to rod pin; or give geometry", Typical = "3.5 .. 6.5", Low = "1", High = "12", Example = "4.0",
        HowToMeasure = "Tape in the car: pivot to middle of the pad over pivot to rod pin")]
    [Usual("2.5", "8", Below = "ratio between other points: pivot to pad over pivot to rod pin", Above = "the booster's ratio included")]
    public double? Ratio { get; set; }

    [Field("The linkage, in place of ratio, when the ratio changes over the travel", InPlaceOf = "ratio")]
    public LinkedLever? Geometry { get; set; }

    [Field("Share of the foot's work that reaches the rod; 0.95 when left out", Low = "0.5", High = "1", Example = "0.95",
        HowToMeasure = "Force gauges at pad and rod pin: output times its travel over input times its travel")]
    public double? Efficiency { get; set; }

    [Field("Force of the return spring at rest, at the pad; none when left out", Low = "0 N", High = "200 N", Example = "15 N",
        HowToMeasure = "Spring balance on the pad, rod disconnected")]
    public Force? ReturnSpring { get; set; }

    [Field("Rate of the return spring, at the pad; none when left out", Low = "0 N/mm", High = "10 N/mm", Example = "0.1 N/mm",
        HowToMeasure = "Spring balance on the pad, rod disconnected: rise of force over two rule readings of travel")]
    public ForcePerLength? ReturnSpringRate { get; set; }

    [Field("Travel of the pad before the rod moves; 4 mm when left out", Low = "0 mm", High = "40 mm", Example = "4 mm",
        HowToMeasure = "Rule at the pad, pressed by hand until it stiffens")]
    [Usual("0 mm", "20 mm", Above = "travel to the first resistance of the brakes")]
    public Length? FreePlay { get; set; }

    [Field("Travel of the pad from rest to floor or stop; 150 mm when left out", Low = "30 mm", High = "300 mm", Example = "150 mm",
        HowToMeasure = "Rule at the pad, a bleeder open into a bottle")]
    [Usual("60 mm", "220 mm")]
    public Length? Travel { get; set; }

    [Field("Force of the driver's foot in an emergency stop; 500 N when left out", Low = "50 N", High = "3000 N", Example = "500 N",
        HowToMeasure = "Bathroom scale against a wall, or a pedal force gauge: what you reach at once, not at a strain")]
    [Usual("200 N", "1500 N", Below = "kilograms or pounds given as newtons")]
    public Force? EmergencyForce { get; set; }
}

/// <summary>The assist as it is written; its <c>type</c> says of which kind.</summary>
[Kind("none", typeof(NoAssistDocument), "no booster")]
[Kind("vacuum", typeof(VacuumBoosterDocument), "vacuum booster")]
[Kind("hydraulic", typeof(HydraulicBoosterDocument), "hydraulic booster fed by the steering pump")]
internal abstract class AssistDocument;

internal sealed class NoAssistDocument : AssistDocument;

/// <summary>What both kinds of booster have, as it is written.</summary>
internal abstract class PoweredAssistDocument : AssistDocument
{
    [Field("Rise of output over rise of input while the assist lasts", Typical = "2.5 .. 6", Required = true, Low = "1.05", High = "15",
        Example = "4", HowToMeasure = "Line pressure at two pedal forces below the run-out, divided by what the pedal alone would give")]
    [Usual("1.5", "9", Below = "gain counted without the foot's part", Above = "the pedal ratio included")]
    public double? BoostRatio { get; set; }

    [Field("Force on the input rod at which the valve opens; 30 N when left out", Low = "0 N", High = "300 N", Example = "40 N",
        HowToMeasure = "Pedal force at which the line pressure begins to rise steeply, times the pedal ratio")]
    public Force? CutIn { get; set; }

    [Field("Output that appears at once when the valve opens; none when left out", Low = "0 N", High = "2000 N", Example = "200 N",
        HowToMeasure = "Line pressure that appears at once at that pedal force, times the master cylinder's area")]
    public Force? JumpIn { get; set; }

    [Field("Force of the booster's return spring and seals; none when left out", Low = "0 N", High = "1000 N", Example = "100 N",
        HowToMeasure = "Spring balance on the output rod, booster on the bench")]
    public Force? ReturnSpring { get; set; }
}

internal sealed class VacuumBoosterDocument : PoweredAssistDocument
{
    [Field("Vacuum at the booster, engine hot and idling in gear, as the gauge shows it without its sign", Typical = "14 inHg .. 21 inHg",
        Required = true, Low = "0 inHg", High = "29.9 inHg", Example = "18 inHg",
        HowToMeasure = "Vacuum gauge in the booster's hose, engine hot, idling in gear")]
    [Usual("7 inHg", "25 inHg", Below = "kPa or psi given as inHg", Above = "absolute pressure")]
    public Pressure? Vacuum { get; set; }

    [Field("Altitude at which the vacuum was read; sea level when left out", Low = "-400 m", High = "5000 m", Example = "200 m",
        HowToMeasure = "Map or phone, where the vacuum was read")]
    public Length? Altitude { get; set; }

    [Field("Diameter of one diaphragm, as the booster's size is named", Typical = "7 in .. 10 in", Required = true, Low = "100 mm",
        High = "400 mm", Example = "9 in", HowToMeasure = "Outside of the shell less its rim")]
    [Usual("150 mm", "300 mm", Below = "radius given for diameter", Above = "both diaphragms added up: give one and diaphragms 2")]
    public Length? DiaphragmDiameter { get; set; }

    [Field("Number of diaphragms: 1 single, 2 tandem; 1 when left out", Whole = true, Low = "1", High = "2", Example = "1",
        HowToMeasure = "Look at the shell: a second bead round it makes a tandem")]
    public double? Diaphragms { get; set; }

    [Field("Share of the diaphragm's circle that works; 0.85 for a single, 0.78 for a tandem when left out", Typical = "0.74 .. 0.88",
        Low = "0.5", High = "1", Example = "0.85",
        HowToMeasure = "Run-out: output less input force there, over vacuum times the diaphragms' full area")]
    public double? EffectiveAreaShare { get; set; }

    [Field("Volume of the evacuated chamber with any reservoir; without it no reserve is told", Low = "0 l", High = "30 l",
        Example = "2.6 l", HowToMeasure = "Water or shell sizes: front half of the shell and any reservoir")]
    public Volume? VacuumChamber { get; set; }

    [Field("Volume of the chamber that air enters, pedal released", Low = "0 l", High = "10 l", Example = "0.5 l",
        HowToMeasure = "Water or shell sizes: rear half of the shell, pedal released")]
    public Volume? ApplyChamber { get; set; }
}

internal sealed class HydraulicBoosterDocument : PoweredAssistDocument
{
    [Field("Pressure at which the pump's relief valve opens", Typical = "70 bar .. 110 bar", Required = true, Low = "20 bar",
        High = "200 bar", Example = "95 bar", HowToMeasure = "Gauge and shut-off valve in the pump's outlet, closed for seconds only")]
    [Usual("40 bar", "150 bar", Above = "bar given for psi", Below = "psi given for bar")]
    public Pressure? ReliefPressure { get; set; }

    [Field("Flow of the pump at idle", Typical = "5 l/min .. 10 l/min", Required = true, Low = "0 l/min", High = "40 l/min",
        Example = "7 l/min", HowToMeasure = "Flow meter in the pump's outlet at idle, oil hot")]
    [Usual("2 l/min", "20 l/min")]
    public VolumeFlow? PumpFlow { get; set; }

    [Field("Diameter of the power piston", Typical = "25 mm .. 40 mm", Required = true, Low = "10 mm", High = "80 mm", Example = "35 mm",
        HowToMeasure = "Micrometer on the piston, or the booster's service manual")]
    [Usual("20 mm", "60 mm", Below = "radius given for diameter")]
    public Length? PowerPiston { get; set; }

    [Field("Flow that the steering takes at the same time; none when left out", Low = "0 l/min", High = "40 l/min", Example = "3 l/min",
        HowToMeasure = "Flow meter behind the booster while the wheel is turned briskly at rest")]
    public VolumeFlow? SteeringFlow { get; set; }

    [Field("Back-pressure in the return line; none when left out", Low = "0 bar", High = "20 bar", Example = "0.5 bar",
        HowToMeasure = "Low-pressure gauge in the return at the booster, while steering")]
    public Pressure? ReturnBackPressure { get; set; }

    [Field("The accumulator; left out when there is none")]
    public Accumulator? Accumulator { get; set; }
}

/// <summary>The master cylinder as it is written; its <c>type</c> says of which kind.</summary>
[Kind("tandem", typeof(TandemCylinderDocument), "two pistons in line, one circuit each")]
[Kind("balance bar", typeof(TwinCylinderDocument), "two cylinders on a balance bar; bores and bar are given in hydraulics.split")]
[Kind("single", typeof(SingleCylinderDocument), "one piston for all four wheels")]
internal abstract class MasterCylinderDocument
{
    [Field("Travel of the rod from rest to its end (both chambers of a tandem together)", Typical = "28 mm .. 40 mm", Required = true,
        Low = "10 mm", High = "80 mm", Example = "38 mm",
        HowToMeasure = "Push the piston to its end on the bench with a rod, rule beside it")]
    [Usual("20 mm", "55 mm", Above = "travel of the pedal", Below = "stroke of one chamber of a tandem")]
    public Length? Stroke { get; set; }

    [Field("Travel of the rod before the ports are covered; 1.2 mm when left out", Low = "0 mm", High = "6 mm", Example = "1.2 mm",
        HowToMeasure = "Wire through the reservoir's compensating port while a rod pushes the piston, rule beside it")]
    public Length? PortTravel { get; set; }

    [Field("Force of the return springs; 100 N when left out", Low = "0 N", High = "500 N", Example = "100 N",
        HowToMeasure = "Spring balance on the piston, cylinder dry on the bench")]
    public Force? ReturnSpring { get; set; }

    [Field("Friction of the cups; none when left out", Low = "0 N", High = "300 N", Example = "40 N",
        HowToMeasure = "Spring balance on the piston: half the difference between pushing in and letting out")]
    public Force? SealFriction { get; set; }

    [Field("Measured fit of the booster's push rod; left out when not measured")]
    public PushRodFit? PushRod { get; set; }

    [Field("Pressure that a residual valve keeps in the front line; left out for none", Low = "0.05 bar", High = "2 bar", Example = "2 psi",
        HowToMeasure = "Low-pressure gauge in the front line a minute after release")]
    public Pressure? FrontResidual { get; set; }

    [Field("Pressure that a residual valve keeps in the rear line; left out for none", Low = "0.05 bar", High = "2 bar", Example = "10 psi",
        HowToMeasure = "Low-pressure gauge in the rear line a minute after release")]
    public Pressure? RearResidual { get; set; }
}

internal sealed class TandemCylinderDocument : MasterCylinderDocument
{
    [Field("Bore; of the front circuit's chamber when rearBore is given", Typical = "19 mm .. 28.6 mm", Required = true, Low = "9 mm",
        High = "51 mm", Example = "1 in", HowToMeasure = "Cast or stamped on the cylinder; bore gauge")]
    [Usual("14 mm", "32 mm", Below = "radius given for diameter", Above = "outside of the cylinder")]
    public Length? Bore { get; set; }

    [Field("Bore of the rear circuit's chamber of a stepped cylinder; the same as bore when left out", Low = "9 mm", High = "51 mm",
        Example = "22.2 mm", HowToMeasure = "Bore gauge; the pistons' cups differ in size")]
    [Usual("14 mm", "32 mm", Below = "radius given for diameter", Above = "outside of the cylinder")]
    public Length? RearBore { get; set; }

    [Field("Large bore of a quick-take-up cylinder, above bore; left out for a plain one", InPlaceOf = "rearBore", Low = "9 mm",
        High = "70 mm", Example = "34 mm", HowToMeasure = "Diameter of the wide end of the first piston")]
    public Length? QuickTakeUpBore { get; set; }

    [Field("Pressure at which the large bore blows off; 6 bar when left out", Needs = "quickTakeUpBore", Low = "0.5 bar", High = "30 bar",
        Example = "6 bar", HowToMeasure = "Gauge in the line: the pressure at which the pedal's travel suddenly grows slower")]
    public Pressure? QuickTakeUpPressure { get; set; }

    [Field("Share of the stroke that belongs to the front circuit's chamber; 0.5 when left out", Low = "0.2", High = "0.8", Example = "0.5",
        HowToMeasure = "Push each piston to its end on the bench; the front circuit's travel over both")]
    public double? FrontStrokeShare { get; set; }

    [Field("Which wheels each circuit serves; front-rear when left out", Example = "front-rear",
        HowToMeasure = "Follow the pipes from the cylinder")]
    public TandemCircuits? Circuits { get; set; }
}

/// <summary>Two master cylinders on a balance bar as they are written.</summary>
internal sealed class TwinCylinderDocument : MasterCylinderDocument;

internal sealed class SingleCylinderDocument : MasterCylinderDocument
{
    [Field("Bore", Typical = "19 mm .. 25.4 mm", Required = true, Low = "9 mm", High = "51 mm", Example = "1 in",
        HowToMeasure = "Cast or stamped on the cylinder; bore gauge")]
    [Usual("14 mm", "32 mm", Below = "radius given for diameter", Above = "outside of the cylinder")]
    public Length? Bore { get; set; }
}

/// <summary>Fluid and the volumes of the two circuits as they are written.</summary>
internal sealed class FluidDocument
{
    [Field("Grade by FMVSS 116; DOT 4 when left out", Words = typeof(FluidGradeNames), Example = "DOT 4",
        HowToMeasure = "Reservoir cap or the bottle that it was filled from")]
    public string? Grade { get; set; }

    [Field("Temperature of the fluid; 20 °C when left out", Low = "0 °C", High = "200 °C", Example = "20 °C",
        HowToMeasure = "Thermometer in the reservoir, or contact thermometer on the caliper after the run")]
    public Temperature? Temperature { get; set; }

    [Field("Share of the circuits' volume that is air; none when left out", Low = "0", High = "0.2", Example = "0.002",
        HowToMeasure = "Reservoir level pressed and released, over the circuits' volume; bleed until it is none")]
    public double? TrappedAir { get; set; }

    [Field("Fluid displacement of the front brakes", Required = true)]
    public CircuitDocument? Front { get; set; }

    [Field("Fluid displacement of the rear brakes", Required = true)]
    public CircuitDocument? Rear { get; set; }
}

/// <summary>Fluid displacement of one axle's brakes, as it is written.</summary>
internal sealed class CircuitDocument
{
    [Field("Disc brakes only: kind of caliper; a fixed caliper's pistons on both sides move fluid", OnlyFor = "disc", Example = "sliding",
        HowToMeasure = "Look: pistons on both sides of the disc make a fixed caliper")]
    public CaliperKind? Caliper { get; set; }

    [Field("Drum brakes only: temperature of a hot drum for the pedal's travel with hot drums; 300 °C when left out", OnlyFor = "drum",
        Low = "20 °C", High = "600 °C", Example = "300 °C", HowToMeasure = "Contact thermometer inside the drum after a hard descent")]
    public Temperature? DrumTemperature { get; set; }

    [Field("Drum brakes only: linear expansion of the drum's material per kelvin; 11e-6, grey cast iron, when left out", OnlyFor = "drum",
        Low = "1e-6", High = "5e-5", Example = "11e-6", HowToMeasure = "Table of materials: grey cast iron 11e-6, aluminium 23e-6")]
    public double? DrumExpansionPerKelvin { get; set; }

    [Field("Travel of each piston before pads or shoes touch: clearance and roll-back", Required = true, Low = "0 mm", High = "10 mm",
        Example = "0.4 mm",
        HowToMeasure = "Feeler gauge between pad and disc, or shoe and drum; about 0.4 mm for discs, 1.3 mm for drums in adjustment")]
    public Length? Clearance { get; set; }

    [Field("Free length of flexible hose on the axle, all together; none when left out", Low = "0 m", High = "20 m", Example = "0.8 m",
        HowToMeasure = "Tape along each hose between its fittings")]
    public Length? HoseLength { get; set; }

    [Field("Bore of the hoses; 1/8 in when left out", Low = "2 mm", High = "8 mm", Example = "3.2 mm",
        HowToMeasure = "Printed on the hose, or drill shanks as a gauge")]
    public Length? HoseBore { get; set; }

    [Field("Whether the hoses are of the low-expansion grade; false when left out", Example = "true",
        HowToMeasure = "Printed on the hose: HL for low, HR for regular expansion")]
    public bool? LowExpansion { get; set; }

    [Field("Compliance: volume by which calipers or drums of the axle yield at complianceAt; none when left out", Low = "0 cm³",
        High = "30 cm³",
        Example = "2.5 cm³", HowToMeasure = "Syringe or reservoir level at complianceAt, hoses clamped off and clearance taken away")]
    public Volume? Compliance { get; set; }

    [Field("Line pressure for which compliance holds; 100 bar when left out", Low = "5 bar", High = "200 bar", Example = "100 bar",
        HowToMeasure = "Gauge in the line at the reading of compliance")]
    public Pressure? ComplianceAt { get; set; }

    [Field("Fluid in the circuit with its brakes; none when left out", Low = "0 cm³", High = "2000 cm³", Example = "150 cm³",
        HowToMeasure = "Measuring cup: what comes out when the circuit is emptied")]
    public Volume? Volume { get; set; }
}

/// <summary>Which wheels the circuits of a tandem cylinder serve.</summary>
internal enum TandemCircuits
{
    /// <summary>One the front axle, one the rear.</summary>
    FrontRear,

    /// <summary>Each one front wheel and the rear wheel across.</summary>
    Diagonal,
}

internal enum CaliperKind
{
    /// <summary>It slides; pistons stand on one side of the disc.</summary>
    Sliding,

    /// <summary>It is fixed; pistons stand on both sides of the disc.</summary>
    Fixed,
}
