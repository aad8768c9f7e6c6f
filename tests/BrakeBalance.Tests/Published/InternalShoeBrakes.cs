using BrakeBalance.Brakes;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// Internal expanding rim brakes in Shigley's Mechanical Engineering Design (Budynas and Nisbett), chapter 16. Seen in excerpts
/// (djtino.net and poppenprograms.org, both quoting the 10th edition's solutions): the inputs of problem 16-1 and its answer of 734 kPa
/// on the
/// right-hand shoe. All other printed values here are from memory; the brake-factor table is recomputed, not published.
/// </summary>
[Source("Shigley's Mechanical Engineering Design, ch. 16", Reading.FromMemory)]
public class InternalShoeBrakes
{
    private static readonly Length Radius = Length.FromMillimeters(150);

    // Problem 16-1: pins and actuators on a circle of R = 125 mm, linings from the pin to 120 degrees.
    private static readonly ShoeGeometry Problem1 = new()
    {
        PivotDistance = Length.FromMillimeters(125),
        ActuatingArm = Length.FromMillimeters(2 * 125 * Math.Cos(Math.PI / 6)),
        Lining = LiningArc.FromDegrees(0, 120),
    };

    // Example 16-2: pin 112 mm below and 50 mm beside the drum's centre, force 100 mm above it.
    private static readonly ShoeGeometry Example2 = new()
    {
        PivotDistance = Length.FromMillimeters(Math.Sqrt((112 * 112) + (50 * 50))),
        ActuatingArm = Length.FromMillimeters(212),
        Lining = LiningArc.FromDegrees(0, 126),
    };

    [Source("Shigley's Mechanical Engineering Design, problem 16-1, quoted solution", Reading.SecondHand)]
    [Fact]
    public void Problem_16_1_the_leading_shoe_reaches_734_kilopascals()
    {
        double torque = Problem1.LeadingShoeFactor(0.28, Radius) * 2200 * Radius.Meters;
        Assert.Equal(734, HighestPressureKilopascals(torque, 0.28, 0.040, 120), 0.5);
    }

    [Fact]
    public void Problem_16_1_torques_of_both_shoes_from_memory()
    {
        DrumBrake brake = Brake(Problem1, ShoeArrangement.LeadingTrailing, 0.28);
        Assert.Equal(277.6, Problem1.LeadingShoeFactor(0.28, Radius) * 2200 * 0.150, 0.05);
        Assert.Equal(144.4, Problem1.TrailingShoeFactor(0.28, Radius) * 2200 * 0.150, 0.05);
        Assert.Equal(422.0, brake.BrakingTorque(Force.FromNewtons(2200) / brake.PistonArea).NewtonMeters, 0.05);
    }

    [Fact]
    public void Example_16_2_force_that_loads_the_leading_shoe_to_1000_kilopascals()
    {
        double torque = 0.32 * 1e6 * 0.032 * 0.150 * 0.150 * (1 - Math.Cos(126 * Math.PI / 180));
        Assert.Equal(366, torque, 0.5);
        Assert.Equal(2.28, torque / (Example2.LeadingShoeFactor(0.32, Radius) * 0.150) / 1000, 0.005);
    }

    [Fact]
    public void Example_16_2_trailing_shoe_and_total()
    {
        DrumBrake brake = Brake(Example2, ShoeArrangement.LeadingTrailing, 0.32);
        double trailing = Example2.TrailingShoeFactor(0.32, Radius) * 2280 * 0.150;
        Assert.Equal(162, trailing, 0.5);
        Assert.Equal(443, HighestPressureKilopascals(trailing, 0.32, 0.032, 126), 0.5);
        Assert.Equal(528, brake.BrakingTorque(Force.FromNewtons(2280) / brake.PistonArea).NewtonMeters, 0.5);
    }

    [Theory]
    [InlineData(0.20, 0.541, 0.331, 0.872, 1.082, 0.661)]
    [InlineData(0.30, 0.965, 0.452, 1.417, 1.930, 0.904)]
    [InlineData(0.35, 1.244, 0.505, 1.749, 2.488, 1.010)]
    [InlineData(0.38, 1.441, 0.535, 1.975, 2.882, 1.069)]
    [InlineData(0.40, 1.587, 0.554, 2.141, 3.175, 1.107)]
    [InlineData(0.50, 2.589, 0.640, 3.229, 5.178, 1.280)]
    public void Example_16_2_brake_factor_against_friction_recomputed(
        double friction, double leading, double trailing, double leadingTrailing, double twoLeading, double twoTrailing)
    {
        Assert.Equal(leading, Example2.LeadingShoeFactor(friction, Radius), 0.00051);
        Assert.Equal(trailing, Example2.TrailingShoeFactor(friction, Radius), 0.00051);
        Assert.Equal(leadingTrailing, Brake(Example2, ShoeArrangement.LeadingTrailing, friction).BrakeFactor, 0.00051);
        Assert.Equal(twoLeading, Brake(Example2, ShoeArrangement.TwoLeading, friction).BrakeFactor, 0.00051);
        Assert.Equal(twoTrailing, Brake(Example2, ShoeArrangement.TwoTrailing, friction).BrakeFactor, 0.00051);
    }

    [Fact]
    public void Example_16_2_self_locks_at_0_828_recomputed()
    {
        DrumBrake brake = Brake(Example2, ShoeArrangement.LeadingTrailing, 0.32);
        Assert.Equal(0.828, brake.SelfLockingFriction()!.Value, 0.0005);
        Assert.True(brake.BrakeFactorAt(0.827) > 100);
        var past = Assert.Throws<ArgumentOutOfRangeException>(() => brake.BrakeFactorAt(0.829));
        Assert.Contains("self-locks at a friction coefficient of 0.828", past.Message);
        Assert.Equal("friction", past.ParamName);
    }

    private static DrumBrake Brake(ShoeGeometry shoes, ShoeArrangement arrangement, double friction) => new()
    {
        Arrangement = arrangement,
        EffectiveRadius = Radius,
        WheelCylinderDiameter = Length.FromMillimeters(20),
        Shoes = shoes,
        FrictionCoefficient = friction,
    };

    // The book's torque equation, T = f pa b r² (cos θ1 − cos θ2)/sin θa with θ1 = 0 and θa = 90°, solved for pa.
    private static double HighestPressureKilopascals(double torque, double friction, double widthMetres, double liningEndDegrees) =>
        torque / (friction * widthMetres * 0.150 * 0.150 * (1 - Math.Cos(liningEndDegrees * Math.PI / 180))) / 1000;
}
