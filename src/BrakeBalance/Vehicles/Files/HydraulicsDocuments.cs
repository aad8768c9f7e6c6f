using BrakeBalance.Hydraulics;

namespace BrakeBalance.Vehicles.Files;

internal sealed class HydraulicsDocument
{
    [Field("How the circuits share the pedal's force; a tandem cylinder when left out")]
    public MasterSplit? Split { get; set; }

    [Field("Valves in the front line, master cylinder first", Most = 4, Example = "metering")]
    public IReadOnlyList<ValveDocument>? FrontValves { get; set; }

    [Field("Valves in the rear line, master cylinder first", Most = 4)]
    public IReadOnlyList<ValveDocument>? RearValves { get; set; }

    [Field("Highest line pressure considered; 140 bar when left out", Low = "20 bar", High = "300 bar", Example = "140 bar",
        HowToMeasure = "Gauge under the hardest push of the foot; or keep 140 bar")]
    [Usual("70 bar", "200 bar", Above = "bar given for psi", Below = "psi given for bar")]
    public Pressure? MaximumPressure { get; set; }
}

/// <summary>A valve as it is written; its <c>type</c> says of which kind.</summary>
[Kind("proportioning", typeof(ProportioningDocument), "proportioning valve, fixed or adjustable")]
[Kind("limiting", typeof(LimitingDocument), "pressure limiter")]
[Kind("load-sensing", typeof(LoadSensingDocument), "load-sensing proportioning valve")]
[Kind("metering", typeof(MeteringDocument), "metering valve")]
public abstract class ValveDocument;

internal sealed class ProportioningDocument : ValveDocument
{
    [Field("Inlet pressure at which the outlet stops following one to one", ByClass = true, Typical = "200 psi .. 900 psi", Required = true,
        Low = "0 bar", High = "300 bar", Example = "35 bar",
        HowToMeasure = "Two gauges, one each side of the valve: inlet pressure at which they part")]
    [Usual("10 bar", "75 bar", Above = "bar given for psi", Below = "psi given for bar")]
    public Pressure? Knee { get; set; }

    [Field("Rise of the outlet over rise of the inlet above the knee", ByClass = true, Typical = "0.2 .. 0.5", Required = true, Low = "0",
        High = "1", Example = "0.4",
        HowToMeasure = "Two gauges: difference of outlet over difference of inlet between two readings above the knee")]
    [Usual("0.2", "0.5", Above = "percent reduction given for slope (a 57 % reduction is a slope of 0.43)")]
    public double? Slope { get; set; }

    [Field("How much higher the outlet stands at the same inlet on release than on application, above the knee; none when left out",
        Low = "0 bar", High = "40 bar", Example = "3 bar",
        HowToMeasure = "Two gauges, rising and falling: difference of the outlets at the same inlet")]
    public Pressure? Hysteresis { get; set; }

    [Field("The adjuster, when the valve has one")]
    public KneeAdjustment? Adjuster { get; set; }

    [Field("Whether the valve opens fully when the front circuit is lost, as some combination valves do; false when left out",
        Example = "true", HowToMeasure = "Two gauges, front circuit open at a bleeder: does the rear follow one to one?")]
    public bool? BypassWhenFrontLost { get; set; }
}

internal sealed class LimitingDocument : ValveDocument
{
    [Field("Highest outlet pressure", Required = true, Low = "0 bar", High = "300 bar", Example = "45 bar",
        HowToMeasure = "Gauge behind the valve under a hard push")]
    [Usual("15 bar", "100 bar", Above = "bar given for psi", Below = "psi given for bar")]
    public Pressure? Limit { get; set; }

    [Field("How much higher the outlet stands at the same inlet on release than on application, above the limit; none when left out",
        Low = "0 bar", High = "40 bar", Example = "3 bar",
        HowToMeasure = "Two gauges, rising and falling: difference of the outlets at the same inlet")]
    public Pressure? Hysteresis { get; set; }

    [Field("Whether the valve opens fully when the front circuit is lost, as some combination valves do; false when left out",
        Example = "true", HowToMeasure = "Two gauges, front circuit open at a bleeder: does the rear follow one to one?")]
    public bool? BypassWhenFrontLost { get; set; }
}

internal sealed class LoadSensingDocument : ValveDocument
{
    [Field("Knee when the rear axle carries referenceLoad", Required = true, Low = "0 bar", High = "300 bar", Example = "30 bar",
        HowToMeasure = "Two gauges at the valve, rear axle on scales: inlet pressure at which they part")]
    [Usual("10 bar", "75 bar", Above = "bar given for psi", Below = "psi given for bar")]
    public Pressure? KneeAtReference { get; set; }

    [Field("Rear axle load for which kneeAtReference holds", Required = true, Low = "0.5 kN", High = "50 kN", Example = "6 kN",
        HowToMeasure = "Scales under both rear wheels at that reading")]
    public Force? ReferenceLoad { get; set; }

    [Field("Rise of the knee for each kilonewton more on the rear axle", Required = true, Low = "0 bar", High = "50 bar", Example = "8 bar",
        HowToMeasure = "The same at a second load: rise of the knee over rise of the load")]
    public Pressure? KneePerKilonewton { get; set; }

    [Field("Rise of the outlet over rise of the inlet above the knee", Required = true, Low = "0", High = "1", Example = "0.35",
        HowToMeasure = "Two gauges: difference of outlet over difference of inlet between two readings above the knee")]
    [Usual("0.2", "0.5", Above = "percent reduction given for slope (a 57 % reduction is a slope of 0.43)")]
    public double? Slope { get; set; }

    [Field("Knee with the rear suspension unloaded; 0 bar when left out", Low = "0 bar", High = "200 bar", Example = "5 bar",
        HowToMeasure = "Two gauges, car lifted until the rear wheels hang")]
    public Pressure? LowestKnee { get; set; }

    [Field("Time constant with which the valve follows the rear axle load in a stop; none when left out", Low = "0 ms", High = "2000 ms",
        Example = "50 ms",
        HowToMeasure = "Pressure logger in both lines while the tail is dropped: time to 63 % of the change")]
    public Duration? Lag { get; set; }

    [Field("How much higher the outlet stands at the same inlet on release than on application, above the knee; none when left out",
        Low = "0 bar", High = "40 bar", Example = "3 bar",
        HowToMeasure = "Two gauges, rising and falling: difference of the outlets at the same inlet")]
    public Pressure? Hysteresis { get; set; }
}

internal sealed class MeteringDocument : ValveDocument
{
    [Field("Inlet pressure at which the valve begins to open", Required = true, Low = "0 bar", High = "30 bar", Example = "7 bar",
        HowToMeasure = "Two gauges: inlet pressure at which the outlet begins to rise")]
    [Usual("1 bar", "15 bar", Above = "bar given for psi", Below = "psi given for bar")]
    public Pressure? OpeningPressure { get; set; }

    [Field("Inlet pressure from which outlet and inlet are equal; above openingPressure", Required = true, Low = "0.5 bar", High = "60 bar",
        Example = "20 bar", HowToMeasure = "Two gauges: inlet pressure at which they meet")]
    [Usual("5 bar", "50 bar", Above = "bar given for psi", Below = "psi given for bar")]
    public Pressure? BlendPressure { get; set; }
}
