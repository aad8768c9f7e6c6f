using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Tests.Vehicles;

/// <summary>A demo car and the class that is named after its kind agree.</summary>
public class DemoCarClassTests
{
    private static readonly Dictionary<string, Func<Vehicle, double>> Numbers = new()
    {
        ["wheelbase"] = car => car.Wheelbase.Meters,
        ["loadCases[0].mass"] = car => car.LoadCases[0].Mass.Kilograms,
        ["loadCases[0].frontShare"] = car => 1 - car.LoadCases[0].FrontAxleToCentreOfGravity / car.Wheelbase,
        ["loadCases[0].centreOfGravityHeight"] = car => car.LoadCases[0].CentreOfGravityHeight.Meters,
        ["front.tyre.loadedRadius"] = car => car.Tyres.Front.LoadedRadius.Meters,
        ["rear.tyre.loadedRadius"] = car => car.Tyres.Rear.LoadedRadius.Meters,
        ["front.brake.pistonDiameters[0]"] = car => Diameter(car.Brakes.Front),
        ["rear.brake.pistonDiameters[0]"] = car => Diameter(car.Brakes.Rear),
        ["rear.brake.wheelCylinderDiameter"] = car => Diameter(car.Brakes.Rear),
        ["front.brake.effectiveRadius"] = car => car.Brakes.Front.EffectiveRadius.Meters,
        ["rear.brake.effectiveRadius"] = car => car.Brakes.Rear.EffectiveRadius.Meters,
        ["rear.brake.drumRadius"] = car => car.Brakes.Rear.EffectiveRadius.Meters,
        ["front.brake.friction"] = car => car.Brakes.Front.FrictionCoefficient,
        ["rear.brake.friction"] = car => car.Brakes.Rear.FrictionCoefficient,
        ["rear.brake.thresholdPressure"] = car => car.Brakes.Rear.ThresholdPressure.Pascals,
        ["hydraulics.rearValves[0].knee"] = car => ((ProportioningValve)car.Hydraulics.RearValves[0]).Knee.Pascals,
        ["hydraulics.rearValves[0].slope"] = car => ((ProportioningValve)car.Hydraulics.RearValves[0]).Slope,
    };

    [Theory]
    [InlineData("coupe-1960s.json", "1960s coupe")]
    [InlineData("track-coupe.json", "track coupe")]
    [InlineData("rear-engined-sports-car.json", "rear-engined car")]
    public void The_numbers_of_a_demo_car_lie_within_the_ranges_of_its_class(string file, string name)
    {
        Vehicle car = VehicleFile.Load(Path.Combine(RepositoryFiles.Root, "data", "vehicles", file)).Vehicle;
        string valve = car.Hydraulics.RearValves.IsEmpty ? "" : """, "hydraulics": { "rearValves": [{ "type": "proportioning" }] }""";
        IReadOnlyList<ValueRange> ranges = VehicleFile.Read($$"""{ "name": "x", "carClass": "{{name}}"{{valve}} }""", name).Ranges;
        Assert.True(ranges.Count >= 12);
        Assert.All(ranges, range => Assert.InRange(Numbers[range.Path](car), 0.999 * Si(range.Low), 1.001 * Si(range.High)));
    }

    private static double Diameter(Brake brake) => Math.Sqrt(4 * brake.PistonArea.SquareMeters / Math.PI);

    private static double Si(string text) =>
        QuantityOption.Read<Length>(text).Value?.Meters ?? QuantityOption.Read<Mass>(text).Value?.Kilograms
            ?? QuantityOption.Read<Pressure>(text).Value?.Pascals
        ?? double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
