using System.Globalization;
using BrakeBalance.Brakes;
using UnitsNet;

namespace BrakeBalance.Tests.Brakes;

public class BrakeTests
{
    private static readonly DiscBrake Disc = new()
    {
        Pistons = PistonSet.OneSideOf(2, Length.FromInches(1.75)),
        EffectiveRadius = Length.FromMillimeters(138),
        FrictionCoefficient = 0.45,
        ThresholdPressure = Pressure.FromBars(0.5),
    };

    private static readonly MeasuredBrake Measured = new()
    {
        Pistons = PistonSet.OneSide(Length.FromMillimeters(22.2)),
        EffectiveRadius = Length.FromMillimeters(127),
        FrictionCoefficient = 0.38,
        FrictionWhenMeasured = 0.38,
        MeasuredNewtonMetresPerBar = 18.7,
        Sensitivity = 2.75,
    };

    [Fact]
    public void Disc_torque_worked_by_hand()
    {
        // 2 × 1.75 in on one side: 2 × 15.518 cm² = 31.036 cm². 50 bar less 0.5: 49.5e5 Pa × 31.036e-4 m² = 15 362.7 N.
        // Two pads at 0.45: 13 826.5 N, at 138 mm: 1908.05 N·m.
        Assert.Equal(31.036, Disc.PistonArea.SquareCentimeters, 0.0005);
        Assert.Equal(1908.05, Disc.BrakingTorque(Pressure.FromBars(50)).NewtonMeters, 0.02);
    }

    [Fact]
    public void Fixed_and_sliding_calipers_with_the_same_pistons_on_one_side_brake_alike()
    {
        PistonSet sliding = PistonSet.OneSide(Length.FromInches(1.75), Length.FromInches(1.75));
        Assert.Equal(PistonSet.OneSideOf(2, Length.FromInches(1.75)), sliding);
        Assert.Equal(Disc, Disc with { Pistons = sliding });
    }

    [Fact]
    public void No_torque_up_to_the_threshold()
    {
        Assert.Equal(0, Disc.BrakingTorque(Pressure.Zero).NewtonMeters);
        Assert.Equal(0, Disc.BrakingTorque(Pressure.FromBars(0.5)).NewtonMeters);
        Assert.True(Disc.BrakingTorque(Pressure.FromBars(0.51)).NewtonMeters > 0);
    }

    [Fact]
    public void Efficiency_scales_torque_and_leaves_the_brake_factor()
    {
        Brake lossy = Disc with { Efficiency = 0.9 };
        Assert.Equal(0.9, lossy.TorqueNewtonMetresPerPascal / Disc.TorqueNewtonMetresPerPascal, 1e-12);
        Assert.Equal(Disc.BrakeFactor, lossy.BrakeFactor);
    }

    [Fact]
    public void A_changed_copy_works_out_its_own_slope()
    {
        double before = Disc.TorqueNewtonMetresPerPascal;
        Brake stickier = Disc.WithFriction(0.54);
        Assert.Equal(1.2, stickier.TorqueNewtonMetresPerPascal / before, 1e-12);
        Assert.Equal(before, Disc.TorqueNewtonMetresPerPascal);
        Assert.Equal(0.45, Disc.FrictionCoefficient);
    }

    [Fact]
    public void Working_out_the_slope_does_not_change_equality()
    {
        DiscBrake one = Disc with { Efficiency = 0.95 };
        DiscBrake other = Disc with { Efficiency = 0.95 };
        _ = one.TorqueNewtonMetresPerPascal;
        Assert.Equal(one, other);
        Assert.Equal(one.GetHashCode(), other.GetHashCode());
        Assert.NotEqual(one, other with { FrictionCoefficient = 0.46 });
    }

    [Fact]
    public void Measured_slope_is_a_torque_per_pressure_and_not_the_brake_factor()
    {
        Assert.Equal(187, Measured.BrakingTorque(Pressure.FromBars(10)).NewtonMeters, 1e-9);

        // By hand: 18.7e-5 m³ / (π/4 · 0.0222² m² · 0.127 m) = 3.804: a force per force, forty thousand times the slope in SI units.
        Assert.Equal(3.804, Measured.BrakeFactor, 0.0005);
        Assert.Equal(18.7e-5, Measured.TorqueNewtonMetresPerPascal, 1e-12);
    }

    [Fact]
    public void Measured_brake_does_not_count_its_efficiency_twice()
    {
        // Whatever part of the loss is called efficiency, the torque that was measured stays.
        Assert.Equal(187, (Measured with { Efficiency = 0.9 }).BrakingTorque(Pressure.FromBars(10)).NewtonMeters, 1e-9);
    }

    [Fact]
    public void Measured_brake_follows_friction_by_its_stated_sensitivity() =>
        // 1.1 to the power 2.75 is 1.2997.
        Assert.Equal(1.2997, Measured.WithFriction(0.418).TorqueNewtonMetresPerPascal / Measured.TorqueNewtonMetresPerPascal, 0.00005);

    [Theory]
    [InlineData(0)]
    [InlineData(-0.1)]
    [InlineData(1.21)]
    [InlineData(double.NaN)]
    public void Friction_outside_its_range_is_refused_with_the_range(double friction)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Disc.WithFriction(friction));
        Assert.Contains("greater than zero and not above 1.2", error.Message);
        Assert.Throws<ArgumentOutOfRangeException>(() => Disc with { FrictionCoefficient = friction });
        Assert.Throws<ArgumentOutOfRangeException>(() => Disc.BrakeFactorAt(friction));
    }

    [Fact]
    public void Negative_pressure_and_impossible_parts_are_refused()
    {
        Assert.Equal("line", Assert.Throws<ArgumentOutOfRangeException>(() => Disc.BrakingTorque(Pressure.FromBars(-1))).ParamName);
        Assert.Throws<ArgumentOutOfRangeException>(() => Disc with { ThresholdPressure = Pressure.FromBars(-1) });
        Assert.Throws<ArgumentOutOfRangeException>(() => Disc with { Efficiency = 1.01 });
        Assert.Throws<ArgumentOutOfRangeException>(() => Disc with { EffectiveRadius = Length.Zero });
        Assert.Throws<ArgumentException>(() => PistonSet.OneSide());
        Assert.Throws<ArgumentOutOfRangeException>(() => PistonSet.OneSide(Length.Zero));
    }

    [Fact]
    public void Pad_edges_the_wrong_way_round_are_refused_with_both_radii()
    {
        var ring = new PadRing { InnerRadius = Length.FromMillimeters(140), OuterRadius = Length.FromMillimeters(100) };
        var error = Assert.Throws<ArgumentException>(() => ring.EffectiveRadiusUniformWear());
        Assert.Contains("100 mm", error.Message);
        Assert.Contains("140 mm", error.Message);
    }

    [Fact]
    public void Description_is_the_same_in_every_culture()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal("DiscBrake { friction 0.45, piston area 31.036 cm², effective radius 138 mm, threshold 0.5 bar, efficiency 1 }",
                Disc.ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
