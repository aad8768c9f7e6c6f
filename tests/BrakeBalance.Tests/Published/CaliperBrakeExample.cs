using BrakeBalance.Brakes;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// Shigley's Mechanical Engineering Design (Budynas and Nisbett), section 16-6 disk brakes, example 16-3: two annular pads, 3.875 in to
/// 5.50 in,
/// 108 degrees, friction 0.37, cylinders of 1.5 in, 13 000 lbf·in. Inputs and answers from memory; recomputed by hand.
/// </summary>
[Source("Shigley's Mechanical Engineering Design, example 16-3", Reading.FromMemory)]
public class CaliperBrakeExample
{
    private static readonly PadRing Pad = new()
    {
        InnerRadius = Length.FromInches(3.875),
        OuterRadius = Length.FromInches(5.5),
        Arc = Angle.FromDegrees(108),
    };

    [Fact]
    public void Uniform_wear()
    {
        Assert.Equal(4.6875, Pad.EffectiveRadiusUniformWear().Inches, 0.00005);
        Assert.Equal(2121, PressureForTorque(Pad.EffectiveRadiusUniformWear()).PoundsForcePerSquareInch, 0.5);
        Assert.Equal(3748, ClampingForce(Pad.EffectiveRadiusUniformWear()).PoundsForce, 0.5);
        Assert.Equal(315.8, Pad.HighestPressureUniformWear(Force.FromPoundsForce(3748)).PoundsForcePerSquareInch, 0.05);
    }

    [Fact]
    public void Uniform_pressure()
    {
        Assert.Equal(4.7344, Pad.EffectiveRadiusUniformPressure().Inches, 0.00005);
        Assert.Equal(2100, PressureForTorque(Pad.EffectiveRadiusUniformPressure()).PoundsForcePerSquareInch, 0.5);
        Assert.Equal(3711, ClampingForce(Pad.EffectiveRadiusUniformPressure()).PoundsForce, 0.5);
        // The recalled print is 258.4; the exact value is 258.46, so one unit of the last digit.
        Assert.Equal(258.4, Pad.PressureUniform(Force.FromPoundsForce(3711)).PoundsForcePerSquareInch, 0.1);
    }

    private static DiscBrake Brake(Length effectiveRadius) => new()
    {
        Pistons = PistonSet.OneSide(Length.FromInches(1.5)),
        EffectiveRadius = effectiveRadius,
        FrictionCoefficient = 0.37,
    };

    private static Pressure PressureForTorque(Length effectiveRadius) =>
        Pressure.FromPascals(Torque.FromPoundForceInches(13000).NewtonMeters / Brake(effectiveRadius).TorqueNewtonMetresPerPascal);

    private static Force ClampingForce(Length effectiveRadius) => PressureForTorque(effectiveRadius) * Brake(effectiveRadius).PistonArea;
}
