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

    /// <summary>
    /// Service data of a coupé, 1991 (read): gas at 84 bar with no oil, pump cut off at 180 bar. By Boyle's law 53 % of the vessel is
    /// oil (recomputed).
    /// </summary>
    [Fact]
    public void A_vessel_from_84_to_180_bar_holds_53_percent_oil()
    {
        var vessel = new Accumulator { GasVolume = Volume.FromLiters(1), Precharge = Pressure.FromBars(84) };
        Assert.Equal(0.53, vessel.StoredOil(Pressure.FromBars(180)).Liters, 0.002);
    }

    /// <summary>
    /// Service data of an off-road car, 2000 (read): 80 bar when new, to be renewed below 50, at about 170 bar of system pressure.
    /// Losing gas stores more
    /// oil but gives it at less pressure: after the same draw of 0.2 vessels the worn one has less left.
    /// </summary>
    [Fact]
    public void A_vessel_that_has_lost_gas_stores_more_oil_and_gives_it_at_less_pressure()
    {
        var good = new Accumulator { GasVolume = Volume.FromLiters(1), Precharge = Pressure.FromBars(80) };
        Accumulator worn = good with { Precharge = Pressure.FromBars(50) };
        Pressure charge = Pressure.FromBars(170);
        Assert.True(worn.StoredOil(charge) > good.StoredOil(charge));
        Assert.True(worn.PressureAfter(charge, Volume.FromLiters(0.2)) < good.PressureAfter(charge, Volume.FromLiters(0.2)));
    }

    /// <summary>
    /// Service text of a light truck's hydraulic booster, 1998 (read): at least two assisted applications must remain, and 30 empty the
    /// store. The
    /// booster is invented, of the size that the pump data of a saloon, 1997 (read: relief at 90 to 102 bar) go with.
    /// </summary>
    [Fact]
    public void Two_applications_remain_and_thirty_empty_the_store()
    {
        var booster = new HydraulicBooster
        {
            ReliefPressure = Pressure.FromBars(95),
            PumpFlow = VolumeFlow.FromLitersPerMinute(3.4),
            PowerPistonDiameter = Length.FromMillimeters(35),
            BoostRatio = 6,
            Accumulator = new Accumulator { GasVolume = Volume.FromCubicCentimeters(80), Precharge = Pressure.FromBars(45) },
        };
        Assert.InRange(booster.Reserve(Length.FromMillimeters(12), 30).Length, 2, 29);
    }

    private static Pressure Gauge(double absolutePsi) => Pressure.FromPascals((absolutePsi * 6894.757293168) - 101_325);
}
