namespace BrakeBalance.Choosing;

/// <summary>Targets as they are written; what is left out is common practice.</summary>
internal sealed class TargetsDocument
{
    [Field("Name of the load case in which pedal, travel and pressure are judged; the car's first when left out", Example = "driver only",
        HowToMeasure = "Chosen: a load case of the vehicle file")]
    public string? LoadCase { get; set; }

    [Field("Greatest pedal force at 0.5 g; 200 N when left out (common practice)", Low = "10 N", High = "2000 N", Example = "200 N",
        HowToMeasure = "Chosen: what the weakest driver gives in every stop")]
    public Force? PedalForceHalf { get; set; }

    [Field("Greatest pedal force at 1.0 g; 400 N when left out (common practice)", Low = "10 N", High = "3000 N", Example = "400 N",
        HowToMeasure = "Chosen: what the weakest driver gives in an emergency")]
    public Force? PedalForceFull { get; set; }

    [Field("Least pedal force at 1.0 g, below which the pedal is touchy; 20 lbf when left out (common practice)", Low = "0 N",
        High = "1000 N", Example = "20 lbf", HowToMeasure = "Chosen: light enough that it can still be metered")]
    public Force? LightPedal { get; set; }

    [Field("Greatest pedal force at 0.5 g without assist; 1000 N when left out: twice what the rules allow at 0.25 g (common practice)",
        Low = "10 N", High = "3000 N", Example = "1000 N", HowToMeasure = "Chosen: what the weakest driver gives")]
    public Force? PedalForceHalfNoAssist { get; set; }

    [Field("Greatest pedal force at 1.0 g without assist; not asked for when left out", Low = "10 N", High = "5000 N", Example = "1300 N",
        HowToMeasure = "Chosen: for cars without a booster")]
    public Force? PedalForceFullNoAssist { get; set; }

    [Field("Greatest travel of the pad at 1.0 g; 100 mm when left out (common practice)", Low = "10 mm", High = "300 mm",
        Example = "100 mm", HowToMeasure = "Chosen: two thirds of the way to the floor at most")]
    public Length? PedalTravelFull { get; set; }

    [Field("Least travel left to the floor at the first lock-up on a dry road; 50 mm when left out (common practice)", Low = "0 mm",
        High = "250 mm", Example = "50 mm", HowToMeasure = "Chosen: what a lost circuit may still take")]
    public Length? TravelLeftAtLock { get; set; }

    [Field("Whether the front has to lock first in all conditions of the vehicle file; true when left out", Example = "true",
        HowToMeasure = "Chosen; a car whose rear axle locks first spins")]
    public bool? FrontFirst { get; set; }

    [Field("How much stronger the rear brakes could be against the front ones before the rear locks first; 0.10 when left out "
        + "(common practice)", Low = "0", High = "1", Example = "0.10", HowToMeasure = "Chosen: pads differ by 5 to 10 % within one type")]
    public double? RearMargin { get; set; }

    [Field("Least mean braking efficiency over the conditions; 0.75 when left out (common practice)", Low = "0.1", High = "1",
        Example = "0.75", HowToMeasure = "Chosen: what of the road's adhesion is used before an axle locks")]
    public double? Efficiency { get; set; }

    [Field("Whether the car has to stop within the rules, sound, with a failed circuit and without assist; true when left out",
        Example = "true", HowToMeasure = "Chosen; the rules are those that 'summary' judges by")]
    public bool? Failures { get; set; }

    [Field("Least presses of 0.5 g from the store after the engine has stopped, in a car with assist; 2 when left out (common practice)",
        Low = "0", High = "8", Whole = true, Example = "2", HowToMeasure = "Chosen")]
    public double? StoredStops { get; set; }

    [Field("Pedal force at which the line pressure has to stay under the rating of the parts; 500 N when left out, "
        + "the most in the tests of 49 CFR 571.135 (read)",
        Low = "50 N", High = "3000 N", Example = "500 N", HowToMeasure = "Chosen: a stamping foot")]
    public Force? HighestPedalForce { get; set; }

    [Field("Line pressure that the parts which stay are rated for; when left out only the ratings of the new parts count",
        Low = "20 bar", High = "300 bar", Example = "140 bar", HowToMeasure = "The least of the ratings of hoses, cylinder and brakes")]
    public Pressure? Rating { get; set; }

    [Field("A use over which the discs may not get too hot; not asked for when left out")]
    public UseDocument? Use { get; set; }
}

internal sealed class UseDocument
{
    [Field("How many stops in a row", Required = true, Low = "1", High = "200", Whole = true, Example = "10", HowToMeasure = "Chosen")]
    public double? Stops { get; set; }

    [Field("Speed at which each begins", Required = true, Low = "20 km/h", High = "400 km/h", Example = "120 km/h",
        HowToMeasure = "Chosen: as the road or the track has it")]
    public Speed? From { get; set; }

    [Field("Speed at which each ends; a standstill when left out", Low = "0 km/h", High = "390 km/h", Example = "60 km/h",
        HowToMeasure = "Chosen: as the road or the track has it")]
    public Speed? To { get; set; }

    [Field("Deceleration over g; 0.5 when left out", Low = "0.1", High = "1.5", Example = "0.5", HowToMeasure = "Chosen")]
    public double? Deceleration { get; set; }

    [Field("Time from the start of one stop to the start of the next", Required = true, Low = "5 s", High = "3600 s", Example = "60 s",
        HowToMeasure = "Chosen: as the road or the track has it")]
    public Duration? Interval { get; set; }

    [Field("Highest temperature of a disc or drum; 450 °C when left out (common practice for road pads)", Low = "50 °C",
        High = "1000 °C", Example = "450 °C", HowToMeasure = "The pad maker's data")]
    public Temperature? Hottest { get; set; }
}
