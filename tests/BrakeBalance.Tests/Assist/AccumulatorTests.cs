using BrakeBalance.Assist;
using MathNet.Numerics.OdeSolvers;
using UnitsNet;

namespace BrakeBalance.Tests.Assist;

public sealed class AccumulatorTests
{
    private const double AirPascals = 101_325;

    private static readonly Accumulator Vessel = new()
    {
        GasVolume = Volume.FromCubicCentimeters(100),
        Precharge = Pressure.FromBars(50),
        PolytropicExponent = 1.4,
    };

    [Theory]
    [InlineData(1.0)]
    [InlineData(1.2)]
    [InlineData(1.4)]
    public void A_discharge_follows_the_gas_law_integrated_step_by_step(double exponent)
    {
        // The differential form dp/dV = -n p/V, integrated numerically, against the closed form in the code.
        Accumulator vessel = Vessel with { PolytropicExponent = exponent };
        Pressure charge = Pressure.FromBars(100);
        double gas = 100e-6 - vessel.StoredOil(charge).CubicMeters;
        double drawn = 30e-6;
        double[] pressures = RungeKutta.FourthOrder(charge.Pascals + AirPascals, gas, gas + drawn, 400, (v, p) => -exponent * p / v);
        Assert.Equal(pressures[^1] - AirPascals, vessel.PressureAfter(charge, Volume.FromCubicMeters(drawn)).Pascals, 1.0);
    }

    [Fact]
    public void At_constant_temperature_the_last_drop_leaves_the_precharge()
    {
        Accumulator slow = Vessel with { PolytropicExponent = 1 };
        Pressure charge = Pressure.FromBars(100);
        Assert.Equal(50, slow.PressureAfter(charge, slow.StoredOil(charge)).Bars, 6);
    }

    [Fact]
    public void Asking_for_more_than_is_stored_leaves_nothing()
    {
        Pressure charge = Pressure.FromBars(100);
        Assert.Equal(0, Vessel.PressureAfter(charge, Vessel.StoredOil(charge) * 1.01).Pascals);
    }

    [Fact]
    public void An_exponent_beyond_that_of_any_gas_is_refused()
    {
        ArgumentOutOfRangeException fault = Assert.Throws<ArgumentOutOfRangeException>(() => Vessel with { PolytropicExponent = 2 });
        Assert.Equal("PolytropicExponent", fault.ParamName);
    }
}
