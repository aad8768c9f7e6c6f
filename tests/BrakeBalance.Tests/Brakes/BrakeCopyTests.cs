using BrakeBalance.Brakes;
using UnitsNet;

namespace BrakeBalance.Tests.Brakes;

/// <summary>A changed copy of a brake works out its own torque, whatever the original had already worked out.</summary>
public class BrakeCopyTests
{
    private static readonly DiscBrake Disc = new()
    {
        FrictionCoefficient = 0.4,
        Pistons = PistonSet.OneSideOf(1, Length.FromMillimeters(54)),
        EffectiveRadius = Length.FromMillimeters(120),
    };

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_copy_with_half_the_friction_has_half_the_torque(bool originalAskedFirst)
    {
        DiscBrake original = Disc with { };
        double before = originalAskedFirst ? original.TorqueNewtonMetresPerPascal : 0;
        double copied = original.WithFriction(0.2).TorqueNewtonMetresPerPascal;
        Assert.Equal(0.5, copied / original.TorqueNewtonMetresPerPascal, 1e-12);
        Assert.True(before == 0 || before == original.TorqueNewtonMetresPerPascal);
    }

    [Fact]
    public void A_copy_with_twice_the_radius_has_twice_the_torque()
    {
        double torque = Disc.TorqueNewtonMetresPerPascal;
        Assert.Equal(2, (Disc with { EffectiveRadius = Length.FromMillimeters(240) }).TorqueNewtonMetresPerPascal / torque, 1e-12);
    }
}
