using BrakeBalance.Stops;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;
using static BrakeBalance.Tests.Stops.Cars;

namespace BrakeBalance.Tests.Stops;

public class UnevenStopTests
{
    private static readonly Vehicle Car = VehicleFile.Load(Path.Combine(RepositoryFiles.Root, "data", "vehicles",
        "coupe-1960s.json")).Vehicle;

    private static IReadOnlyList<UnevenStop> On(StopRoad road) => UnevenStop.Of(Car, Car.LoadCases[0], 0.6, road, Kmh(80));

    [Fact]
    public void On_split_adhesion_full_pressure_leaves_the_lane_and_braking_below_lock_does_not()
    {
        IReadOnlyList<UnevenStop> stops = On(new StopRoad { Split = (0.3, 0.9), CrossSlope = Angle.Zero });
        Assert.True(stops[0] is { WheelsLock: true, Stop: { StaysInLane: false, StaysWithinYawLimit: false } });
        Assert.True(stops[1] is { WheelsLock: false, Stop: { StaysInLane: true, StaysWithinYawLimit: true } });
        Assert.True(stops[1].HeldPressure < stops[0].HeldPressure);
        Assert.Equal((0.3, 0.9), (stops[0].LeftAdhesion, stops[0].RightAdhesion));
    }

    [Fact]
    public void A_slope_across_the_road_pulls_downhill_and_a_grade_lengthens_or_shortens_the_stop()
    {
        YawResult Gentle(StopRoad road) => On(road)[1].Stop;
        Angle four = Angle.FromRadians(Math.Atan(0.04));
        Assert.True(Gentle(new StopRoad { CrossSlope = four }).LateralOffset > Gentle(new StopRoad()).LateralOffset);
        Assert.True(Gentle(new StopRoad { CrossSlope = -four }).LateralOffset < Length.Zero);
        Assert.True(Gentle(new StopRoad { Grade = four }).Distance < 0.97 * Gentle(new StopRoad()).Distance);
        Assert.True(Gentle(new StopRoad { Grade = -four }).Distance > 1.03 * Gentle(new StopRoad()).Distance);
    }
}
