using BrakeBalance.Brakes;
using UnitsNet;

namespace BrakeBalance.Tests.Brakes;

public class DrumBrakeTests
{
    private static readonly ShoeGeometry Shoes = new()
    {
        PivotDistance = Length.FromMillimeters(104),
        ActuatingArm = Length.FromMillimeters(185),
        Lining = LiningArc.FromDegrees(20, 130),
    };

    private static readonly DuoServoGeometry DuoServo = new()
    {
        CylinderDistance = Length.FromMillimeters(83),
        AnchorDistance = Length.FromMillimeters(103),
        LinkDistance = Length.FromMillimeters(98),
        PrimaryLining = LiningArc.FromDegrees(45, 125),
        SecondaryLining = LiningArc.FromDegrees(28, 130),
    };

    public static TheoryData<ShoeArrangement, DrumShoes> LockingBrakes => new()
    {
        { ShoeArrangement.LeadingTrailing, Shoes },
        { ShoeArrangement.TwoLeading, Shoes },
        { ShoeArrangement.TwoLeading,
            Shoes with { Support = ShoeSupport.Sliding, PivotDistance = Length.FromMillimeters(80),
            Lining = LiningArc.FromDegrees(10, 170) } },
        { ShoeArrangement.DuoServo, DuoServo },
        { ShoeArrangement.DuoServo, CatalogueShoes.Typical(ShoeArrangement.DuoServo) },
        { ShoeArrangement.TwoLeading,
            new ShortShoeGeometry { ActuatingArm = Length.FromMillimeters(185), NormalArm = Length.FromMillimeters(90),
            FrictionArm = Length.FromMillimeters(110) } },
    };

    [Fact]
    public void Torque_is_counted_on_the_force_of_one_piston_in_every_arrangement()
    {
        // 7/8 in bore: 3.8795 cm². C* 3.8 × 50e5 Pa × 3.8795e-4 m² × 0.127 m = 936.1 N·m, whichever way the shoes are arranged.
        foreach (ShoeArrangement arrangement in Enum.GetValues<ShoeArrangement>())
        {
            DrumBrake brake = Drum(arrangement,
                new CatalogueShoes { NominalFriction = 0.38, NominalBrakeFactor = 3.8, NominalSensitivity = 2 });
            Assert.Equal(936.1, brake.BrakingTorque(Pressure.FromBars(50)).NewtonMeters, 0.05);
        }
    }

    [Fact]
    public void Arrangements_rank_trailing_leading_trailing_two_leading_duo_servo()
    {
        double[] factors =
        [
            Drum(ShoeArrangement.TwoTrailing, Shoes).BrakeFactor,
            Drum(ShoeArrangement.LeadingTrailing, Shoes).BrakeFactor,
            Drum(ShoeArrangement.TwoLeading, Shoes).BrakeFactor,
            Drum(ShoeArrangement.DuoServo, DuoServo).BrakeFactor,
        ];
        Assert.Equal(factors.Order(), factors);
        Assert.Equal(4, factors.Distinct().Count());
    }

    [Fact]
    public void Secondary_shoe_does_most_of_a_duo_servo_brake() =>
        // Common practice: about three quarters of the work.
        Assert.InRange(DuoServo.SecondaryShoeFactor(0.38, Radius) / Drum(ShoeArrangement.DuoServo, DuoServo).BrakeFactor, 0.65, 0.85);

    [Theory]
    [MemberData(nameof(LockingBrakes))]
    public void Past_self_locking_there_is_an_error_that_names_the_limit_and_never_a_negative_factor(ShoeArrangement arrangement,
        DrumShoes shoes)
    {
        DrumBrake brake = Drum(arrangement, shoes);
        double limit = brake.SelfLockingFriction()!.Value;
        Assert.InRange(limit, 0.3, 1.19);
        Assert.True(brake.BrakeFactorAt(limit * 0.999) > 20);
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => brake.BrakeFactorAt(limit * 1.001));
        Assert.Contains(FormattableString.Invariant($"{limit:0.###}"), error.Message);
        Assert.Contains("self-locks", error.Message);
        Assert.Throws<ArgumentOutOfRangeException>(() => brake.BrakeFactorAt(1.2));
        Assert.Throws<ArgumentOutOfRangeException>(() => brake.WithFriction(1.2).TorqueNewtonMetresPerPascal);
        Assert.Throws<ArgumentOutOfRangeException>(() => brake.WithFriction(1.2).BrakingTorque(Pressure.FromBars(10)));
    }

    [Fact]
    public void A_brake_past_self_locking_can_still_be_described() =>
        Assert.Contains("friction 1.1", Drum(ShoeArrangement.TwoLeading, Shoes).WithFriction(1.1).ToString());

    [Fact]
    public void Trailing_shoes_never_lock()
    {
        DrumBrake brake = Drum(ShoeArrangement.TwoTrailing, Shoes);
        Assert.Null(brake.SelfLockingFriction());
        Assert.True(brake.BrakeFactorAt(1.2) > brake.BrakeFactorAt(1.1));
    }

    [Theory]
    [InlineData(ShoeArrangement.DuoServo)]
    [InlineData((ShoeArrangement)9)]
    public void Geometry_that_does_not_fit_the_arrangement_is_refused_in_words(ShoeArrangement arrangement)
    {
        var error = Assert.Throws<ArgumentException>(() => Drum(arrangement, Shoes).BrakeFactor);
        Assert.Contains(arrangement.ToString(), error.Message);
        Assert.Contains(nameof(DuoServoGeometry), error.Message);
    }

    [Fact]
    public void Duo_servo_geometry_is_refused_for_other_arrangements() =>
        Assert.Contains("TwoLeading",
            Assert.Throws<ArgumentException>(() => Drum(ShoeArrangement.TwoLeading, DuoServo).BrakeFactor).Message);

    [Fact]
    public void A_lining_that_ends_before_it_starts_is_refused()
    {
        var error = Assert.Throws<ArgumentException>(() =>
            Drum(ShoeArrangement.TwoLeading, Shoes with { Lining = LiningArc.FromDegrees(130, 20) }).BrakeFactor);
        Assert.Contains("start 130°, end 20°", error.Message);
    }

    [Theory]
    [InlineData(1.7)]
    [InlineData(1.0)]
    [InlineData(0.6)]
    public void Catalogue_shoes_have_the_stated_value_and_sensitivity_at_nominal_friction(double sensitivity)
    {
        DrumBrake brake = Drum(ShoeArrangement.LeadingTrailing,
            new CatalogueShoes { NominalFriction = 0.38, NominalBrakeFactor = 2.2, NominalSensitivity = sensitivity });
        Assert.Equal(2.2, brake.BrakeFactor, 1e-12);
        Assert.Equal(sensitivity, brake.FrictionSensitivity, 1e-6);
    }

    [Fact]
    public void Catalogue_form_follows_a_single_self_energising_shoe_exactly()
    {
        // A two-leading brake of short shoes is of the form the catalogue curve assumes, so one point and one slope give all of it.
        var block = new ShortShoeGeometry
        {
            ActuatingArm = Length.FromMillimeters(185),
            NormalArm = Length.FromMillimeters(100),
            FrictionArm = Length.FromMillimeters(110),
        };
        DrumBrake real = Drum(ShoeArrangement.TwoLeading, block);
        DrumBrake fitted = real with
        {
            Shoes = new CatalogueShoes
            {
                NominalFriction = 0.38,
                NominalBrakeFactor = real.BrakeFactor,
                NominalSensitivity = real.FrictionSensitivity,
            },
        };
        foreach (double friction in new[] { 0.1, 0.25, 0.5, 0.7 })
        {
            Assert.Equal(1, fitted.BrakeFactorAt(friction) / real.BrakeFactorAt(friction), 1e-5);
        }

        Assert.Equal(100.0 / 110, fitted.SelfLockingFriction()!.Value, 1e-5);
    }

    [Fact]
    public void Wider_reach_of_a_ten_percent_stickier_lining()
    {
        // Common practice: lining friction up by 10 to 12 % lifts a duo-servo brake factor of 3.8 to about 4.8.
        DrumBrake brake = Drum(ShoeArrangement.DuoServo,
            new CatalogueShoes { NominalFriction = 0.38, NominalBrakeFactor = 3.8, NominalSensitivity = 2.2 });
        Assert.InRange(brake.BrakeFactorAt(0.38 * 1.11), 4.7, 5.0);
    }

    private static readonly Length Radius = Length.FromMillimeters(127);

    private static DrumBrake Drum(ShoeArrangement arrangement, DrumShoes shoes) => new()
    {
        Arrangement = arrangement,
        EffectiveRadius = Length.FromMillimeters(127),
        WheelCylinderDiameter = Length.FromInches(0.875),
        Shoes = shoes,
        FrictionCoefficient = 0.38,
    };
}
