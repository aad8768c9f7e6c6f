using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Summaries;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Tests.Summaries;

/// <summary>What a car's ranges make of its numbers.</summary>
public class BandedTests
{
    private static readonly string Coupe = File.ReadAllText(Path.Combine(RepositoryFiles.Root, "data", "vehicles", "coupe-1960s.json"));

    internal static Vehicle Ranged(string friction = "0.34 .. 0.41") => VehicleFile.Read(Coupe, "coupe",
        new ValueOverride("front.brake.friction", friction),
            new ValueOverride("loadCases[0].centreOfGravityHeight", "0.50 m .. 0.58 m")).Vehicle;

    private static Vehicle Read(string car, params (string Path, string Value)[] ranges) => VehicleFile.Read(
        File.ReadAllText(Path.Combine(RepositoryFiles.Root, "data", "vehicles", car + ".json")), car,
        [.. ranges.Select(range => new ValueOverride(range.Path, range.Value))]).Vehicle;

    [Fact]
    public void Without_ranges_there_is_no_band()
    {
        Banded<BalanceSummary> bands = BalanceSummary.Of(VehicleFile.Read(Coupe, "coupe").Vehicle).Bands();
        Assert.False(bands.HasBand);
        Assert.Equal("0.50", bands.Text(_ => "0.50"));
    }

    [Fact]
    public void The_band_of_a_first_lock_up_reaches_nearly_to_that_of_the_ends_and_holds_the_middle()
    {
        Vehicle car = Ranged();
        double At(Vehicle of) => new BalanceModel(of, of.LoadCases[0]).FirstLockUp(0.9)!.At.LinePressures.Front.Bars;
        var bands = Banded.Of(car, of => new BalanceModel(of, of.LoadCases[0]));
        double[] drawn = [.. bands.Drawn.Select(model => model.FirstLockUp(0.9)!.At.LinePressures.Front.Bars)];
        double low = At(Ranged("0.41")), high = At(Ranged("0.34"));
        Assert.True(drawn.Min() < At(car) && At(car) < drawn.Max());
        Assert.InRange(drawn.Min(), low - 0.05 * (high - low), low + 0.1 * (high - low));
        Assert.InRange(drawn.Max(), high - 0.1 * (high - low), high + 0.05 * (high - low));
    }

    [Fact]
    public void A_car_changed_in_its_hydraulics_keeps_the_ranges_and_one_changed_elsewhere_has_none()
    {
        Vehicle car = Ranged();
        Vehicle set = car.WithRearKnee(Pressure.FromBars(12), 0.3);
        Assert.All(car.Uncertainty!.CarsOf(set), drawn => Assert.Equal(12, drawn.Hydraulics.RearProportioningValve!.Knee.Bars, 1e-9));
        Assert.Equal(car.Uncertainty.CarsOf(car).Count, car.Uncertainty.CarsOf(set).Count);
        Assert.Empty(car.Uncertainty.CarsOf(car.WithFrictionFactors(1.1, 1)));
    }

    [Fact]
    public void A_car_set_otherwise_keeps_the_ranges_of_its_bores_and_of_the_valve_in_what_was_not_set()
    {
        Vehicle tandem = Read("big-cam-saloon", ("masterCylinder.bore", "25 mm .. 27 mm"), ("masterCylinder.rearBore", "24 mm"),
            ("hydraulics.rearValves[0].slope", "0.3 .. 0.4"), ("hydraulics.rearValves[0].knee", "15 bar .. 20 bar"));
        IReadOnlyList<Vehicle> drawn = tandem.Uncertainty!.CarsOf(tandem.WithRearKnee(Pressure.FromBars(12)));
        Assert.All(drawn, car => Assert.Equal(12, car.Hydraulics.RearProportioningValve!.Knee.Bars, 1e-9));
        Assert.All(drawn, car => Assert.Equal(24,
            ((TandemMasterCylinder)car.Control!.MasterCylinderFor(car.Hydraulics.Split)).RearBore!.Value.Millimeters, 1e-9));
        Assert.Equal(drawn.Count, drawn.Select(car => car.Hydraulics.RearProportioningValve!.Slope).Distinct().Count());
        Assert.All(tandem.Uncertainty.CarsOf(tandem.WithRearKnee(Pressure.FromBars(12), 0.5)),
            car => Assert.Equal(0.5, car.Hydraulics.RearProportioningValve!.Slope));

        Vehicle bar = Read("track-coupe", ("hydraulics.split.frontBore", "17 mm .. 18 mm"));
        IReadOnlyList<BalanceBarSplit> splits =
            [.. bar.Uncertainty!.CarsOf(bar.WithFrontForceShare(0.6)).Select(car => (BalanceBarSplit)car.Hydraulics.Split)];
        Assert.All(splits, split => Assert.Equal(0.6, split.FrontForceShare));
        Assert.Equal(splits.Count, splits.Select(split => split.FrontBore).Distinct().Count());
    }

    [Fact]
    public void Cars_of_the_class_differ_in_nothing_that_the_file_says()
    {
        Vehicle car = VehicleFile.Read("""
            { "name": "Mine", "carClass": "1960s coupe", "wheelbase": "2.8 m .. 2.9 m" }
            """, "mine").Vehicle;
        IReadOnlyList<Vehicle> ofClass = car.Uncertainty!.CarsOfClass(car);
        Assert.NotEmpty(ofClass);
        Assert.Single(ofClass.Select(drawn => drawn.Wheelbase.Meters).Distinct());
        Assert.True(ofClass.Select(drawn => drawn.LoadCases[0].Mass.Kilograms).Distinct().Count() > 1);
        Assert.Empty(Ranged().Uncertainty!.CarsOfClass(Ranged()));
    }
}
