using BrakeBalance.Brakes;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// Single block brake, drum of 250 mm, contact over 90 degrees, μ = 0.35, 700 N at 450 mm from the hinge, normal force at 200 mm,
/// friction at 50 mm.
/// Inputs and both printed torques seen in an excerpt of a machine-design tutorial (pdfcoffee.com, dts-113-114); an examination solution
/// (testbook.com, MP Vyapam Sub Engineer, September 2018) prints the friction force of the same brake as 670.954 N.
/// </summary>
[Source("Machine-design tutorial, single block brake; examination solution of 2018", Reading.Read)]
public class BlockBrake
{
    private static readonly Length Radius = Length.FromMillimeters(125);

    private static readonly ShortShoeGeometry Block = new()
    {
        ActuatingArm = Length.FromMillimeters(450),
        NormalArm = Length.FromMillimeters(200),
        FrictionArm = Length.FromMillimeters(50),
        LiningAngle = Angle.FromDegrees(90),
    };

    [Fact]
    public void Equivalent_friction_is_0_385() => Assert.Equal(0.385, Block.EquivalentFriction(0.35), 0.0005);

    // Both solutions go on with the rounded 0.385, so the printed forces are checked with that number and no lining angle.
    [Fact]
    public void Friction_force_is_670_954_newtons() =>
        Assert.Equal(670.954, (Block with { LiningAngle = Angle.Zero }).LeadingShoeFactor(0.385, Radius) * 700, 0.0005);

    [Fact]
    public void Torque_is_83_87_newton_metres_when_friction_helps() =>
        Assert.Equal(83.87, (Block with { LiningAngle = Angle.Zero }).LeadingShoeFactor(0.385, Radius) * 700 * Radius.Meters, 0.005);

    [Fact]
    public void Torque_is_69_14_newton_metres_the_other_way_round() =>
        Assert.Equal(69.14, (Block with { LiningAngle = Angle.Zero }).TrailingShoeFactor(0.385, Radius) * 700 * Radius.Meters, 0.005);

    [Fact]
    public void Whole_calculation_without_rounding_stays_within_the_rounding_of_0_385()
    {
        Assert.Equal(83.87, Block.LeadingShoeFactor(0.35, Radius) * 700 * Radius.Meters, 0.02);
        Assert.Equal(69.14, Block.TrailingShoeFactor(0.35, Radius) * 700 * Radius.Meters, 0.02);
    }
}
