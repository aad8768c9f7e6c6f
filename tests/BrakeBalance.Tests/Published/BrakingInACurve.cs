using BrakeBalance.Stops;
using BrakeBalance.Tests.Stops;
using BrakeBalance.Tyres;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>Braking in a curve: 49 CFR 571.105 S5.1.7 and S6.9.2 (read).</summary>
[Source("49 CFR 571.105 S5.1.7, S6.9.2", Reading.Read)]
public class BrakingInACurve
{
    [Fact]
    public void At_30_mph_on_a_500_ft_radius_a_wet_road_of_0_5_leaves_0_485_g()
    {
        // S5.1.7, S6.9.2 (read): 30 mph, radius 500 ft, wet, peak friction coefficient 0.5. Recomputed: (13.41 m/s)²/152.4 m = 1.18 m/s²
        // = 0.120 g; √(0.5² − 0.120²) = 0.485 g.
        // With the mass on the road (h = 0) and brakes in proportion to the loads all wheels reach the circle together.
        SlipCurve wet = PublishedSlipCurves.WetAsphalt.ScaledToPeak(0.5, Force.FromKilonewtons(4));
        BrakedCar car = Cars.Coupe(wet, 5600, 4400) with { CentreOfGravityHeight = Length.Zero };
        Speed speed = Speed.FromMilesPerHour(30);
        var lateral = Acceleration.FromMetersPerSecondSquared(Math.Pow(speed.MetersPerSecond, 2) / Length.FromFeet(500).Meters);
        Assert.Equal(0.120, lateral.StandardGravity, 5e-4);
        TurnCourse course = TurnBraking.Follow(car, lateral, 0.55, speed)!;
        Assert.Equal(0.485, course.FirstWheel!.BrakingRate, 5e-4);
        Assert.Equal(course.FirstWheel.LinePressure.Bars, course.FirstAxle!.LinePressure.Bars, 1e-6);
    }
}
