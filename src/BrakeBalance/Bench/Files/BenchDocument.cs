using System.Text.Json.Nodes;

namespace BrakeBalance.Bench.Files;

/// <summary>A bench file as it is written: what was measured before the car moves. Every part may be left out.</summary>
internal sealed class BenchDocument
{
    [Field("Name of the job", Required = true, Example = "Booster swap")]
    public string? Name { get; set; }

    [Field("Anything a reader should know of this job or file", Example = "Measured on 12 May, car on stands")]
    public string? Note { get; set; }

    [Field("Hose assemblies to make up")]
    public IReadOnlyList<HoseDocument>? Hoses { get; set; }

    [Field("How hose is cut and sold")]
    public HosePurchase? Purchase { get; set; }

    [Field("Plumbing of a pump-fed booster")]
    public PlumbingDocument? Plumbing { get; set; }

    [Field("Readings of the push rod between booster and master cylinder")]
    public PushRodSheetDocument? PushRod { get; set; }

    [Field("Old parts against new ones on a car")]
    public ChangeDocument? Change { get; set; }
}

internal sealed class ChangeDocument
{
    [Field("Vehicle file of the car with its old parts, as a path from this file's folder", Required = true,
        Example = "../vehicles/my-car.json")]
    public string? Vehicle { get; set; }

    [Field("The new parts: entries of a vehicle file, only those that change", Required = true)]
    public JsonObject? NewParts { get; set; }

    [Field("Name of the load case; the car's first when left out", Example = "driver only",
        HowToMeasure = "Chosen: a load case of the vehicle file")]
    public string? LoadCase { get; set; }

    [Field("Deceleration over g of the hard stop; 0.8 when left out", Low = "0.1", High = "1.5", Example = "0.8",
        HowToMeasure = "Chosen: a hard stop below the lock")]
    public double? Deceleration { get; set; }

    [Field("Speed from which one stop heats the brakes; 100 km/h when left out", Low = "20 km/h", High = "400 km/h", Example = "60 mph",
        HowToMeasure = "Chosen: the speed of the hard stop")]
    public Speed? Speed { get; set; }

    [Field("Mass of one old front disc's rubbing ring (or drum shell)", Low = "0.5 kg", High = "60 kg", Example = "6 kg",
        HowToMeasure = "Disc on the scales, less hat and flange")]
    public Mass? OldFrontRing { get; set; }

    [Field("Mass of one old rear disc's rubbing ring (or drum shell)", Low = "0.5 kg", High = "60 kg", Example = "7 kg",
        HowToMeasure = "Disc on the scales, less hat and flange")]
    public Mass? OldRearRing { get; set; }

    [Field("Mass of one new front disc's rubbing ring; the old one's when left out", Low = "0.5 kg", High = "60 kg", Example = "8 kg",
        HowToMeasure = "Disc on the scales, less hat and flange")]
    public Mass? NewFrontRing { get; set; }

    [Field("Mass of one new rear disc's rubbing ring; the old one's when left out", Low = "0.5 kg", High = "60 kg", Example = "7 kg",
        HowToMeasure = "Disc on the scales, less hat and flange")]
    public Mass? NewRearRing { get; set; }
}
