using BrakeBalance.Assist;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// Accumulator bottle of 10 gal: engineering notes "Calculate accumulator capacity usable volume per bottle" (petrolengineering.com), text
/// read. The notes put psi into Boyle's law as they stand, so they are taken as absolute here.
/// </summary>
[Source("Engineering notes on accumulator capacity", Reading.Read)]
public sealed class AccumulatorCases
{
    private static readonly Accumulator Bottle = new()
    {
        GasVolume = Volume.FromUsGallons(10),
        Precharge = Gauge(1000),
        PolytropicExponent = 1,
    };

    [Theory]
    [InlineData(1200, 1.67)]
    [InlineData(3000, 6.67)]
    public void Fluid_in_the_bottle(double psi, double gallons) => Assert.Equal(gallons, Bottle.StoredOil(Gauge(psi)).UsGallons, 0.005);

    [Fact]
    public void Five_gallons_are_usable_between_3000_and_1200_psi() =>
        Assert.Equal(1200, Bottle.PressureAfter(Gauge(3000), Volume.FromUsGallons(5)).PoundsForcePerSquareInch + 14.696, 0.5);

    private static Pressure Gauge(double absolutePsi) => Pressure.FromPascals((absolutePsi * 6894.757293168) - 101_325);
}
