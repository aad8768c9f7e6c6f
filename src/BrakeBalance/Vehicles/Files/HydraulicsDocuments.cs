using BrakeBalance.Hydraulics;

namespace BrakeBalance.Vehicles.Files;

internal sealed class HydraulicsDocument
{
    [Field("How the circuits share the pedal's force; a tandem cylinder when left out")]
    public MasterSplit? Split { get; set; }

    [Field("Valves in the front line, master cylinder first", Most = 4, Example = "metering")]
    public IReadOnlyList<PressureValve>? FrontValves { get; set; }

    [Field("Valves in the rear line, master cylinder first", Most = 4)]
    public IReadOnlyList<PressureValve>? RearValves { get; set; }

    [Field("Highest line pressure considered; 140 bar when left out", Low = "20 bar", High = "300 bar", Example = "140 bar",
        HowToMeasure = "Gauge under the hardest push of the foot; or keep 140 bar")]
    [Usual("70 bar", "200 bar", Above = "bar given for psi", Below = "psi given for bar")]
    public Pressure? MaximumPressure { get; set; }
}
