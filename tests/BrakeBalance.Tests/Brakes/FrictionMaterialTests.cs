using BrakeBalance.Brakes;
using UnitsNet;

namespace BrakeBalance.Tests.Brakes;

/// <summary>The invented materials keep the shape that is common practice, so that lessons drawn from them are fair.</summary>
public class FrictionMaterialTests
{
    [Fact]
    public void Every_material_covers_cold_to_glowing() =>
        Assert.All(FrictionMaterial.Invented, material =>
        {
            Assert.Equal(-40, material.Friction.Coldest.DegreesCelsius, 1e-9);
            Assert.Equal(900, material.Friction.Hottest.DegreesCelsius, 1e-9);
        });

    [Fact]
    public void Road_pad_has_lost_a_tenth_somewhere_between_350_and_450_degrees()
    {
        FrictionCurve pad = FrictionMaterial.Named("road pad").Friction;
        double highest = pad.Points.Max(point => point.Friction);
        Assert.True(pad.At(Temperature.FromDegreesCelsius(350)) > 0.9 * highest);
        Assert.True(pad.At(Temperature.FromDegreesCelsius(450)) < 0.9 * highest);
    }

    [Fact]
    public void Track_pad_is_weaker_than_the_road_pad_cold_and_stronger_hot()
    {
        FrictionCurve road = FrictionMaterial.Named("road pad").Friction;
        FrictionCurve track = FrictionMaterial.Named("track pad").Friction;
        Assert.True(track.At(Temperature.FromDegreesCelsius(50)) < road.At(Temperature.FromDegreesCelsius(50)));
        Assert.True(track.At(Temperature.FromDegreesCelsius(500)) > 1.5 * road.At(Temperature.FromDegreesCelsius(500)));
    }

    [Fact]
    public void A_hot_drum_lining_costs_a_duo_servo_brake_more_than_its_friction()
    {
        var brake = new DrumBrake
        {
            Arrangement = ShoeArrangement.DuoServo,
            EffectiveRadius = Length.FromMillimeters(127),
            WheelCylinderDiameter = Length.FromInches(0.875),
            Shoes = CatalogueShoes.Typical(ShoeArrangement.DuoServo),
            FrictionCoefficient = 0.38,
        };
        FrictionCurve lining = FrictionMaterial.Named("drum lining").Friction;
        double cold = lining.At(Temperature.FromDegreesCelsius(100));
        double hot = lining.At(Temperature.FromDegreesCelsius(300));
        double torqueLeft = brake.WithFriction(hot).TorqueNewtonMetresPerPascal / brake.WithFriction(cold).TorqueNewtonMetresPerPascal;
        Assert.True(torqueLeft < Math.Pow(hot / cold, 1.5), $"{torqueLeft}");
    }

    [Fact]
    public void Unknown_material_is_answered_with_the_known_names() =>
        Assert.Contains("road pad, fast-road pad, track pad, drum lining",
            Assert.Throws<ArgumentException>(() => FrictionMaterial.Named("chalk")).Message);
}
