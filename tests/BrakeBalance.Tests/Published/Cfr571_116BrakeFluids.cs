using BrakeBalance.Hydraulics;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// 49 CFR 571.116 S5.1.1 to S5.1.3 (read): least boiling points in degrees Fahrenheit, dry and wet, and greatest viscosity at −40 °C.
/// </summary>
[Source("49 CFR 571.116 S5.1.1 to S5.1.3", Reading.Read)]
public sealed class Cfr571_116BrakeFluids
{
    [Theory]
    [InlineData("DOT 3", 401, 284)]
    [InlineData("DOT 4", 446, 311)]
    [InlineData("DOT 5", 500, 356)]
    [InlineData("DOT 5.1", 500, 356)]
    public void Boiling_points_in_fahrenheit(string grade, double dry, double wet)
    {
        BrakeFluidGrade fluid = BrakeFluidGrade.Named(grade)!;
        Assert.Equal(dry, fluid.DryBoilingPoint.DegreesFahrenheit, 0.5);
        Assert.Equal(wet, fluid.WetBoilingPoint.DegreesFahrenheit, 0.5);
    }

    [Theory]
    [InlineData("DOT 3", 1500)]
    [InlineData("DOT 4", 1800)]
    [InlineData("DOT 5", 900)]
    [InlineData("DOT 5.1", 900)]
    public void Greatest_viscosity_at_minus_40(string grade, double squareMillimetresPerSecond) =>
        Assert.Equal(squareMillimetresPerSecond, BrakeFluidGrade.Named(grade)!.GreatestColdViscosity.Centistokes, 1e-9);
}
