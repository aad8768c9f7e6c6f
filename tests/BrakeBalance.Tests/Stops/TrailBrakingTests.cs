using BrakeBalance.Balance;
using BrakeBalance.Stops;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;
using static BrakeBalance.Tests.Stops.Cars;

namespace BrakeBalance.Tests.Stops;

public class TrailBrakingTests
{
    private static readonly Vehicle Coupe = Read("coupe-1960s");

    private static Vehicle Read(string name) =>
        VehicleFile.Load(Path.Combine(RepositoryFiles.Root, "data", "vehicles", name + ".json")).Vehicle;

    private static Acceleration G(double value) => Acceleration.FromStandardGravity(value);

    [Fact]
    public void The_safe_knee_parts_the_knees_whose_front_lets_go_from_those_whose_rear_does()
    {
        BendMap map = TrailBraking.Map(Coupe, Coupe.LoadCases[0], 0.9, Kmh(80), G(0.1));
        var setup = StopSetup.From(Coupe, Coupe.LoadCases[0], 0.9);
        Assert.True(map.Points.Count > 6 && map.Limit > map.Points[^1].Course.LateralAcceleration);
        Assert.Contains(map.Points, point => point.SafeKnee is { } knee && knee < map.MaximumPressure);
        foreach (BendPoint point in map.Points.Where(point => point.SafeKnee < map.MaximumPressure))
        {
            Axle? At(double factor) => TurnBraking.Follow(
                Coupe.WithRearKnee(factor * point.SafeKnee!.Value), setup, point.Course.LateralAcceleration, Kmh(80))!.FirstAxle?.Axle;
            Assert.Equal(Axle.Front, At(0.999));
            Assert.Equal(Axle.Rear, At(1.002));
            Assert.Equal(point.RearLetsGo, map.Valve!.Knee > point.SafeKnee);
        }
    }

    [Fact]
    public void Straight_on_the_safe_knee_is_that_of_the_balance()
    {
        BendMap map = TrailBraking.Map(Coupe, Coupe.LoadCases[0], 0.9, Speed.Zero, G(0.5));
        double low = 0;
        double high = 140e5;
        while (high - low > 100)
        {
            double middle = 0.5 * (low + high);
            bool front = new BalanceModel(Coupe.WithRearKnee(Pressure.FromPascals(middle)),
                Coupe.LoadCases[0]).FirstLockUp(0.9)!.First != Axle.Rear;
            (low, high) = front ? (middle, high) : (low, middle);
        }

        Assert.Equal(low / 1e5, map.Points[0].SafeKnee!.Value.Bars, 0.002 * low / 1e5);
    }

    [Fact]
    public void A_car_without_a_valve_still_says_which_axle_lets_go()
    {
        Vehicle bare = Coupe with { Hydraulics = Coupe.Hydraulics with { RearValves = [] } };
        BendMap map = TrailBraking.Map(bare, bare.LoadCases[0], 0.9, Kmh(80), G(0.1));
        Assert.Null(map.Valve);
        Assert.All(map.Points, point => Assert.Null(point.SafeKnee));
        Assert.All(map.Points, point => Assert.NotNull(point.Course.FirstAxle));
        Assert.True(map.Points[0].RearLetsGo);
    }

    [Fact]
    public void A_rear_brake_too_strong_for_any_knee_is_said()
    {
        Vehicle strong = Coupe.WithFrictionFactors(0.5, 1.3).WithRearKnee(Pressure.FromBars(30), 0.9);
        Assert.Null(TrailBraking.Map(strong, strong.LoadCases[0], 0.9, Kmh(80), G(0.2)).Points[0].SafeKnee);
        Assert.Null(TrailBraking.Map(strong, strong.LoadCases[0], 0.9, Kmh(80), G(0.2)).SafeKneeEverywhere);
    }

    [Property(MaxTest = 40)]
    public Property A_lower_knee_than_a_safe_one_is_safe() => Prop.ForAll(
        Gen.Choose(0, 70).Zip(Gen.Choose(20, 110)).Zip(Gen.Choose(0, 100)).Zip(Gen.Choose(0, 95)).ToArbitrary(),
        drawn =>
        {
            (((int lateral, int adhesion), int share), int part) = drawn;
            var setup = StopSetup.From(Coupe, Coupe.LoadCases[0], adhesion / 100.0) with { FrontRollShare = share / 100.0 };
            Acceleration sideways = G(lateral / 100.0);
            return TurnBraking.Follow(Coupe, setup, sideways, Kmh(60)) is null
                || TrailBraking.SafeKnee(Coupe, setup, sideways, Kmh(60)) is not { } knee
                || TurnBraking.Follow(Coupe.WithRearKnee(part / 100.0 * knee), setup, sideways, Kmh(60))!.FirstAxle?.Axle != Axle.Rear;
        });
}
