using BrakeBalance.Brakes;

namespace BrakeBalance.Vehicles.Files;

/// <summary>The brake of one wheel as it is written; its <c>type</c> says of which kind.</summary>
[Kind("disc", typeof(DiscBrakeDocument), "disc brake")]
[Kind("drum", typeof(DrumBrakeDocument), "drum brake")]
[Kind("measured", typeof(MeasuredBrakeDocument), "brake known by its measured torque per line pressure")]
internal abstract class BrakeDocument
{
    [Field("Friction coefficient of pad or lining", ByClass = true, Typical = "0.33 .. 0.55", Required = true, Low = "0.05", High = "1.2",
        Example = "0.42", HowToMeasure = "Torque wrench on the hub at two line pressures, or axle-by-axle test stops")]
    [Usual("0.25", "0.6", Below = "friction of glazed or wet linings", Above = "friction of both pads together")]
    public double? Friction { get; set; }

    [Field("Line pressure up to which the brake gives no torque; none when left out", ByClass = true, Typical = "0.2 bar .. 7 bar",
        Low = "0 bar", High = "20 bar", Example = "0.5 bar",
        HowToMeasure = "Gauge in the line, wheel off the ground: pressure at which the wheel begins to drag")]
    [Usual("0 bar", "8 bar", Above = "psi given as bar")]
    public Pressure? ThresholdPressure { get; set; }

    [Field("Share of the hydraulic force that arrives at pad or shoe; 1 when left out", Low = "0.5", High = "1", Example = "0.98",
        HowToMeasure = "Gauge in the line and force sensor under the piston; 0.95 to 0.99 is usual")]
    public double? Efficiency { get; set; }

    /// <summary>
    /// The friction of the file itself, its range at the middle: that at which its torque was taken, whatever is tried in its place.
    /// </summary>
    internal double? FrictionOfFile { get; set; }
}

internal sealed class DiscBrakeDocument : BrakeDocument
{
    [Field("Diameters of the pistons on one side of the disc (a sliding caliper's pistons count once)", ByClass = true,
        Typical = "33 mm .. 82 mm", Required = true, Fewest = 1, Most = 8, Low = "10 mm", High = "120 mm", Example = "54 mm",
        HowToMeasure = "Micrometer on the piston; one side only")]
    [Usual("20 mm", "85 mm", Below = "radius given for diameter", Above = "circumference, or several pistons added up")]
    public IReadOnlyList<Length>? PistonDiameters { get; set; }

    [Field("Mean radius at which the pad rubs; or give padInnerRadius and padOuterRadius", ByClass = true, Typical = "90 mm .. 150 mm",
        Low = "40 mm", High = "300 mm", Example = "125 mm",
        HowToMeasure = "Rule across the polished pad path: mean of its inner and outer radius")]
    [Usual("80 mm", "170 mm", Above = "diameter of the disc given for effective radius", Below = "inches and millimetres mixed")]
    public Length? EffectiveRadius { get; set; }

    [Field("Inner radius of the pad's path, in place of effectiveRadius", InPlaceOf = "effectiveRadius", Low = "20 mm", High = "300 mm",
        Example = "100 mm", HowToMeasure = "Rule from the hub's centre to the inner edge of the polished pad path")]
    [Usual("60 mm", "150 mm", Above = "diameter given for radius", Below = "inches and millimetres mixed")]
    public Length? PadInnerRadius { get; set; }

    [Field("Outer radius of the pad's path, in place of effectiveRadius", InPlaceOf = "effectiveRadius", Low = "40 mm", High = "300 mm",
        Example = "150 mm", HowToMeasure = "Rule from the hub's centre to the outer edge of the polished pad path")]
    [Usual("100 mm", "200 mm", Above = "diameter given for radius", Below = "inches and millimetres mixed")]
    public Length? PadOuterRadius { get; set; }
}

internal sealed class DrumBrakeDocument : BrakeDocument
{
    [Field("Arrangement of the shoes", ByClass = true, Required = true, Example = "duo-servo",
        HowToMeasure = "Look inside: an adjuster link between the shoes and one anchor pin make a duo-servo")]
    public ShoeArrangement? Shoes { get; set; }

    [Field("Inside radius of the drum", ByClass = true, Typical = "100 mm .. 153 mm", Required = true, Low = "70 mm", High = "250 mm",
        Example = "127 mm", HowToMeasure = "Drum gauge or inside caliper: half the inside diameter")]
    [Usual("85 mm", "170 mm", Above = "diameter given for radius", Below = "inches and millimetres mixed")]
    public Length? DrumRadius { get; set; }

    [Field("Bore of the wheel cylinder", ByClass = true, Typical = "15.8 mm .. 28.6 mm", Required = true, Low = "10 mm", High = "60 mm",
        Example = "22.2 mm", HowToMeasure = "Bore gauge, or the size cast on the cylinder or its cups")]
    [Usual("14 mm", "32 mm", Below = "radius given for diameter", Above = "bore of the master cylinder, or the drum's width")]
    public Length? WheelCylinderDiameter { get; set; }

    [Field("Brake factor C* (circumferential force at the drum over the force of one piston) at this friction; or give geometry",
        Low = "0.3", High = "20", Example = "4.2", HowToMeasure = "Torque wrench on the hub at two line pressures")]
    [Usual("0.8", "7")]
    public double? BrakeFactor { get; set; }

    [Field("Friction for which brakeFactor holds; the friction of this file when left out", Needs = "brakeFactor",
        Low = "0.05", High = "1.2", Example = "0.38",
        HowToMeasure = "The friction that the source of brakeFactor states, or that of the linings at the torque reading")]
    public double? BrakeFactorFriction { get; set; }

    [Field("Relative change of the brake factor per relative change of friction; typical for the arrangement when left out",
        Needs = "brakeFactor", Low = "0.3", High = "6", Example = "2.7",
        HowToMeasure = "Brake factor at two known frictions: relative change of the one over that of the other")]
    public double? FrictionSensitivity { get; set; }

    [Field("Geometry of leading and trailing shoes, in place of brakeFactor", InPlaceOf = "brakeFactor")]
    public ShoeGeometryDocument? Geometry { get; set; }

    [Field("Geometry of a duo-servo brake, in place of brakeFactor", InPlaceOf = "brakeFactor")]
    public DuoServoDocument? DuoServoGeometry { get; set; }
}

/// <summary>The geometry of leading and trailing shoes as it is written.</summary>
internal sealed class ShoeGeometryDocument
{
    [Field("Distance from the drum's centre to the pivot or abutment of a shoe", Required = true, Low = "20 mm", High = "250 mm",
        Example = "100 mm", HowToMeasure = "Caliper on the back plate: drum's centre to the centre of the pivot or the abutment face")]
    public Length? PivotDistance { get; set; }

    [Field("Lever arm of the wheel-cylinder force about the pivot", Required = true, Low = "20 mm", High = "500 mm", Example = "180 mm",
        HowToMeasure = "Caliper on the back plate: pivot to the wheel cylinder's axis, square to that axis")]
    public Length? ActuatingArm { get; set; }

    [Field("Angle from the pivot at which the lining begins", Required = true, Low = "0 °", High = "180 °", Example = "20 °",
        HowToMeasure = "Protractor at the drum's centre, from the line to the pivot to the lining's first edge")]
    public Angle? LiningStart { get; set; }

    [Field("Angle from the pivot at which the lining ends", Required = true, Low = "0 °", High = "180 °", Example = "130 °",
        HowToMeasure = "Protractor at the drum's centre, from the line to the pivot to the lining's last edge")]
    public Angle? LiningEnd { get; set; }

    [Field("How the shoe's end is held; pivoted when left out", Example = "pivoted",
        HowToMeasure = "Look: a pin through the shoe's end is pivoted, a flat end against a face is sliding")]
    public ShoeSupport? Support { get; set; }
}

/// <summary>The geometry of a duo-servo brake as it is written.</summary>
internal sealed class DuoServoDocument
{
    [Field("Distance from the drum's centre to the wheel cylinder's axis", Required = true, Low = "0 mm", High = "250 mm",
        Example = "90 mm", HowToMeasure = "Caliper on the back plate: drum's centre to the wheel cylinder's axis")]
    public Length? CylinderDistance { get; set; }

    [Field("Distance from the drum's centre to the anchor pin", Required = true, Low = "20 mm", High = "250 mm", Example = "105 mm",
        HowToMeasure = "Caliper on the back plate: drum's centre to the anchor pin's centre")]
    public Length? AnchorDistance { get; set; }

    [Field("Distance from the drum's centre to the adjuster link", Required = true, Low = "20 mm", High = "250 mm", Example = "95 mm",
        HowToMeasure = "Caliper on the back plate: drum's centre to the adjuster link's axis")]
    public Length? LinkDistance { get; set; }

    [Field("Angle from the link at which the primary lining begins", Required = true, Low = "0 °", High = "180 °", Example = "40 °",
        HowToMeasure = "Protractor at the drum's centre, from the line to the link to the primary lining's first edge")]
    public Angle? PrimaryStart { get; set; }

    [Field("Angle from the link at which the primary lining ends", Required = true, Low = "0 °", High = "180 °", Example = "130 °",
        HowToMeasure = "Protractor at the drum's centre, from the line to the link to the primary lining's last edge")]
    public Angle? PrimaryEnd { get; set; }

    [Field("Angle from the anchor at which the secondary lining begins", Required = true, Low = "0 °", High = "180 °", Example = "30 °",
        HowToMeasure = "Protractor at the drum's centre, from the line to the anchor to the secondary lining's first edge")]
    public Angle? SecondaryStart { get; set; }

    [Field("Angle from the anchor at which the secondary lining ends", Required = true, Low = "0 °", High = "180 °", Example = "140 °",
        HowToMeasure = "Protractor at the drum's centre, from the line to the anchor to the secondary lining's last edge")]
    public Angle? SecondaryEnd { get; set; }
}

internal sealed class MeasuredBrakeDocument : BrakeDocument
{
    [Field(
        "Construction; asked for when the file has a fluid section, because a wheel cylinder has two pistons (a caliper there says disc)",
        Example = "disc", HowToMeasure = "Look behind the wheel")]
    public BrakeConstruction? Construction { get; set; }

    [Field("Torque of one wheel at torquePressure, threshold taken off", Required = true, Low = "1 N·m", High = "20000 N·m",
        Example = "620 N·m", HowToMeasure = "Torque wrench on the hub, wheel off the ground, gauge in the line")]
    public Torque? Torque { get; set; }

    [Field("Line pressure above the threshold at which the torque was read", Required = true, Low = "1 bar", High = "200 bar",
        Example = "50 bar", HowToMeasure = "Gauge in the line at the torque reading, less the pressure at which the wheel begins to drag")]
    public Pressure? TorquePressure { get; set; }

    [Field("Relative change of the torque per relative change of friction: 1 for a disc; 1 when left out", Low = "0.3", High = "6",
        Example = "1", HowToMeasure = "1 for a disc; for a drum the torque at two known frictions")]
    public double? FrictionSensitivity { get; set; }

    [Field("Diameters of the pistons on one side (wheel-cylinder bore for a drum), for the fluid volume", Required = true, Fewest = 1,
        Most = 8, Low = "10 mm", High = "120 mm", Example = "54 mm",
        HowToMeasure = "Micrometer on the piston, or bore gauge in the wheel cylinder; one side only")]
    [Usual("14 mm", "85 mm", Below = "radius given for diameter", Above = "circumference, or several pistons added up")]
    public IReadOnlyList<Length>? PistonDiameters { get; set; }

    [Field("Effective radius of the disc or inside radius of the drum", Required = true, Low = "40 mm", High = "300 mm", Example = "125 mm",
        HowToMeasure = "Rule across the polished pad path, or half the drum's inside diameter")]
    [Usual("80 mm", "170 mm", Above = "diameter given for radius", Below = "inches and millimetres mixed")]
    public Length? EffectiveRadius { get; set; }
}
