using BrakeBalance.Hydraulics;
using BrakeBalance.Stops;
using UnitsNet;
using static BrakeBalance.Tests.Stops.Cars;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// Heating schedules (read). 49 CFR 571.135 S7.13.3: 15 snubs from 120 km/h, or 80 % of the greatest speed if that is slower, to half of
/// it, at a
/// constant 3.0 m/s², 45 s from start to start. 49 CFR 571.105 S7.11.2.2: 10 snubs (20 in the second test) from 40 to 20 mph at 10 ft/s²
/// every 30 s.
/// The durations and energies are worked by hand; the car is our own.
/// </summary>
[Source("49 CFR 571.135 S7.13.3; 49 CFR 571.105 S7.11.2.2", Reading.Read)]
public sealed class Cfr571_135HeatingSnubs
{
    private static HeatResult Run(HeatCycle cycle)
    {
        var disc = new ThermalBrake
        {
            RingMass = Mass.FromKilograms(7),
            HatMass = Mass.FromKilograms(2.5),
            CoolingArea = Area.FromSquareMeters(0.14),
            Fade = FadeCurve.Through([(Temperature.FromDegreesCelsius(20), 1), (Temperature.FromDegreesCelsius(450), 0.6)]),
        };
        return BrakeHeat.Run(Coupe(), new(disc, disc), cycle, Temperature.FromDegreesCelsius(60), BrakeFluidGrade.Dot4);
    }

    [Theory]
    [InlineData(200, 120)]
    [InlineData(150, 120)]
    [InlineData(140, 112)]
    [InlineData(125, 100)]
    public void Snubs_begin_at_80_percent_of_the_greatest_speed_or_120_kmh(double greatest, double kilometresPerHour)
    {
        HeatCycle cycle = HeatCycle.TypeOne(Kmh(greatest));
        Assert.Equal(kilometresPerHour, cycle.InitialSpeed.KilometersPerHour, 1e-9);
        Assert.Equal(15, cycle.Stops);
    }

    // (33.333² − 16.667²)/2 · 1700 kg = 708 kJ a snub, and 39 kg of wheels' inertia, 4 kg·m²/(0.32 m)², 2.3 % more.
    [Fact]
    public void Fifteen_snubs_hold_3_metres_per_second_squared_though_the_brakes_fade()
    {
        HeatResult result = Run(HeatCycle.Repeated(
            15, Kmh(120), Kmh(60), Acceleration.FromMetersPerSecondSquared(3.0), Duration.FromSeconds(45), samePressure: false));
        Assert.Equal(15, result.Stops.Count);
        Assert.All(result.Stops, stop =>
        {
            Assert.Equal(45.0 * (stop.Number - 1), stop.Start.Seconds, 1e-6);
            Assert.Equal(3.0, stop.MeanDeceleration.MetersPerSecondSquared, 0.005);
            Assert.Equal(708.3 * (1 + (4 / (0.32 * 0.32) / 1700)), (stop.Heat.Front + stop.Heat.Rear).Kilojoules, 2.0);
        });
        Assert.True(result.Stops[^1].LinePressure > result.Stops[0].LinePressure);
    }

    // (58.667² − 29.333²)/2 ft²/s² in SI · 1739 kg = 208 kJ.
    [Theory]
    [InlineData(10)]
    [InlineData(20)]
    public void Snubs_of_heavier_vehicles_from_40_to_20_mph_every_30_seconds(int snubs)
    {
        HeatResult result = Run(HeatCycle.Repeated(
            snubs, Speed.FromMilesPerHour(40), Speed.FromMilesPerHour(20), Acceleration.FromFeetPerSecondSquared(10),
                Duration.FromSeconds(30), samePressure: false));
        Assert.Equal(snubs, result.Stops.Count);
        Assert.All(result.Stops, stop =>
        {
            Assert.Equal(30.0 * (stop.Number - 1), stop.Start.Seconds, 1e-6);
            Assert.Equal(10.0, stop.MeanDeceleration.FeetPerSecondSquared, 0.05);
            Assert.Equal(208.5, (stop.Heat.Front + stop.Heat.Rear).Kilojoules, 1.0);
        });
    }
}
