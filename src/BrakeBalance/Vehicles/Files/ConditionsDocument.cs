namespace BrakeBalance.Vehicles.Files;

/// <summary>What answers about the setting have to hold for, as it is written.</summary>
internal sealed class ConditionsDocument
{
    [Field("true for a car on track tyres and closed ground only: decides what stands for the entries left out here", Example = "false",
        HowToMeasure = "Chosen")]
    public bool? ClosedTrack { get; set; }

    [Field("Slipperiest road that the setting has to suit; "
        + "0.2 when left out, 0.3 on a closed track (regulations judge from a deceleration of 0.15 g)",
        Low = "0.05", High = "2", Example = "0.2", HowToMeasure = "Chosen: the worst road the car is driven on")]
    public double? LowestAdhesion { get; set; }

    [Field("Grippiest road and tyre that the setting has to suit; 1.0 when left out, 1.3 on a closed track (common practice)",
        Low = "0.05", High = "2", Example = "1.0", HowToMeasure = "Test stops at the limit on the best road, or chosen")]
    public double? HighestAdhesion { get; set; }

    [Field("Lowest speed; standstill when left out, where lift and drag are least", Low = "0 km/h", High = "450 km/h", Example = "0 km/h",
        HowToMeasure = "Chosen")]
    public Speed? LowestSpeed { get; set; }

    [Field("Highest speed; the car's maximum speed when left out, 130 km/h when that is not given", Low = "0 km/h",
        High = "450 km/h", Example = "130 km/h", HowToMeasure = "Chosen: the highest speed the car is braked from")]
    public Speed? HighestSpeed { get; set; }

    [Field("Names of the load cases that the setting has to suit; all when left out: a car is driven in each", Fewest = 1, Most = 12,
        Example = "driver only", HowToMeasure = "Chosen among the names under loadCases")]
    public IReadOnlyList<string>? LoadCases { get; set; }

    [Field("States of the brakes; normal, cold, hot in front and grabbing at the rear when left out (common practice)", Fewest = 1,
        Most = 12)]
    public IReadOnlyList<BrakeState>? BrakeStates { get; set; }

    [Field("How far the front friction may be off, as a fraction in either direction; "
        + "from its range or the class's when left out, else 0.08 (common practice)",
        Low = "0", High = "0.5", Example = "0.08", HowToMeasure = "Scatter of the friction over test stops with one set of pads")]
    public double? FrontFrictionSpread { get; set; }

    [Field("The same for the rear friction", Low = "0", High = "0.5", Example = "0.08",
        HowToMeasure = "Scatter of the friction over test stops with one set of pads")]
    public double? RearFrictionSpread { get; set; }

    [Field("Once the car's own stops are fitted: highest chance that the rear locks first in any condition; "
        + "0.02 when left out, 0.05 on a closed track (common practice)",
        Low = "0.001", High = "0.5", Example = "0.02", HowToMeasure = "Chosen")]
    public double? RearFirstChance { get; set; }
}
