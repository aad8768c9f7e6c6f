namespace BrakeBalance.Vehicles.Files;

/// <summary>The logs measured on the car itself, as they are written.</summary>
internal sealed class MeasurementsDocument
{
    [Field("Log of front and rear line pressures read together (CSV); its path counts from this file's folder", Example = "gauges.csv",
        HowToMeasure = "Two gauges, pedal pressed and eased slowly at several turns of the adjuster; "
            + "'measure starter gauges' writes the form")]
    public string? Gauges { get; set; }

    [Field("Log of test stops (CSV); its path counts from this file's folder", Example = "stops.csv",
        HowToMeasure = "Test stops off public roads, one line each; 'measure plan' lists them, 'measure starter stops' writes the form")]
    public string? Stops { get; set; }

    [Field("Logger's or phone's readings over time (CSV); its path counts from this file's folder", Example = "series.csv",
        HowToMeasure = "Logger or phone in a mount, 10 to 200 samples a second, over the whole test")]
    public string? Series { get; set; }

    [Field("true when what these logs say stands in this file already, so that it does not count twice; 'measure setting --write' sets it",
        Example = "false", HowToMeasure = "Chosen")]
    public bool? Fitted { get; set; }

    [Field("Highest knee that the fitted stops allow: no answer of a fitted file goes above it; 0 bar when they allow none",
        Needs = "fitted", Low = "0 bar", High = "400 bar", Example = "12.4 bar", HowToMeasure = "'measure setting --write' sets it")]
    public Pressure? SafeKnee { get; set; }

    [Field("The same of a balance bar: the least front share of the rod force that they allow; 1 when they allow none",
        Needs = "fitted", Low = "0.2", High = "1", Example = "0.625", HowToMeasure = "'measure setting --write' sets it")]
    public double? SafeFrontShare { get; set; }
}
