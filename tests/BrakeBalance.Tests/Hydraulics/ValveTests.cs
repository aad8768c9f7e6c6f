using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Hydraulics;

/// <summary>What each valve lets through, and what it refuses.</summary>
public class ValveTests
{
    private static readonly ProportioningValve Proportioning = new() { Knee = Pressure.FromBars(30), Slope = 0.4 };
    private static readonly LimitingValve Limiting = new() { Limit = Pressure.FromBars(45) };
    private static readonly MeteringValve Metering = new()
    {
        OpeningPressure = Pressure.FromBars(7),
        BlendPressure = Pressure.FromBars(20)
    };

    private static readonly LoadSensingValve LoadSensing = new()
    {
        KneeAtReference = Pressure.FromBars(30),
        ReferenceLoad = Force.FromKilonewtons(6),
        KneePerKilonewton = Pressure.FromBars(8),
        Slope = 0.35,
        LowestKnee = Pressure.FromBars(5),
    };

    [Theory]
    [InlineData(0, 0)]
    [InlineData(29.9, 29.9)]
    [InlineData(30, 30)]
    [InlineData(40, 34)]
    [InlineData(130, 70)]
    public void Proportioning_valve_passes_all_up_to_the_knee_and_two_fifths_of_the_rest(double inlet, double outlet) =>
        Assert.Equal(outlet, Proportioning.OutletPressure(Pressure.FromBars(inlet)).Bars, 1e-9);

    [Theory]
    [InlineData(0, 0)]
    [InlineData(45, 45)]
    [InlineData(200, 45)]
    public void Limiter_holds_its_limit(double inlet, double outlet) =>
        Assert.Equal(outlet, Limiting.OutletPressure(Pressure.FromBars(inlet)).Bars, 1e-9);

    [Theory]
    [InlineData(0, 0)]
    [InlineData(7, 0)]
    [InlineData(13.5, 10)]
    [InlineData(20, 20)]
    [InlineData(80, 80)]
    public void Hold_off_valve_waits_and_then_catches_up(double inlet, double outlet) =>
        Assert.Equal(outlet, Metering.OutletPressure(Pressure.FromBars(inlet)).Bars, 1e-9);

    [Theory]
    [InlineData(6, 30)]
    [InlineData(8, 46)]
    [InlineData(4, 14)]
    [InlineData(1, 5)]
    [InlineData(0, 5)]
    public void Knee_of_the_load_sensing_valve_follows_the_rear_load_down_to_its_lowest(double kilonewtons, double bars)
    {
        var load = Force.FromKilonewtons(kilonewtons);
        Assert.Equal(bars, LoadSensing.KneeAt(load).Bars, 1e-9);
        Assert.Equal(bars, LoadSensing.OutletPressure(Pressure.FromBars(bars), load).Bars, 1e-9);
        Assert.Equal(bars + 3.5, LoadSensing.OutletPressure(Pressure.FromBars(bars + 10), load).Bars, 1e-9);
    }

    [Fact]
    public void Only_the_load_sensing_valve_looks_at_the_load()
    {
        Assert.All(new PressureValve[] { Proportioning, Limiting, Metering }, valve =>
        {
            Assert.False(valve.SensesLoad);
            Assert.Equal(valve.OutletPascals(5e6, 0), valve.OutletPascals(5e6, 9000));
        });
        Assert.True(LoadSensing.SensesLoad);
    }

    [Fact]
    public void Limiter_is_a_proportioning_valve_of_slope_zero()
    {
        var flat = new ProportioningValve { Knee = Limiting.Limit, Slope = 0 };
        Assert.All(Enumerable.Range(0, 200), bar => Assert.Equal(flat.OutletPascals(bar * 1e5, 0), Limiting.OutletPascals(bar * 1e5, 0)));
    }

    [Fact]
    public void Changed_copy_uses_its_own_numbers()
    {
        Assert.Equal(60, (Proportioning with { Knee = Pressure.FromBars(50), Slope = 0.2 })
            .OutletPressure(Pressure.FromBars(100)).Bars, 1e-9);
        Assert.Equal(12, (Limiting with { Limit = Pressure.FromBars(12) }).OutletPressure(Pressure.FromBars(100)).Bars, 1e-9);
        Assert.Equal(0, (Metering with { OpeningPressure = Pressure.FromBars(10) }).OutletPressure(Pressure.FromBars(9)).Bars);
        Assert.Equal(38, (LoadSensing with { ReferenceLoad = Force.FromKilonewtons(5) }).KneeAt(Force.FromKilonewtons(6)).Bars, 1e-9);
    }

    [Fact]
    public void Negative_inlet_is_refused_by_every_valve() =>
        Assert.All(new PressureValve[] { Proportioning, Limiting, Metering, LoadSensing }, valve =>
            Assert.Equal("inlet", Assert.Throws<ArgumentOutOfRangeException>(() => valve.OutletPressure(Pressure.FromBars(-1))).ParamName));

    [Theory]
    [InlineData(-0.1)]
    [InlineData(1.1)]
    [InlineData(double.NaN)]
    public void Slope_outside_zero_to_one_is_refused(double slope)
    {
        var fault = Assert.Throws<ArgumentOutOfRangeException>(() => Proportioning with { Slope = slope });
        Assert.Equal("Slope", fault.ParamName);
        Assert.Contains("between 0 and 1", fault.Message);
        Assert.Throws<ArgumentOutOfRangeException>(() => LoadSensing with { Slope = slope });
    }

    [Fact]
    public void Knee_below_zero_is_refused()
    {
        var fault = Assert.Throws<ArgumentOutOfRangeException>(() => Proportioning with { Knee = Pressure.FromBars(-1) });
        Assert.Equal("Knee", fault.ParamName);
        Assert.Contains("negative", fault.Message);
        Assert.Throws<ArgumentOutOfRangeException>(() => Limiting with { Limit = Pressure.FromBars(-1) });
        Assert.Throws<ArgumentOutOfRangeException>(() => LoadSensing with { LowestKnee = Pressure.FromBars(-1) });
        Assert.Throws<ArgumentOutOfRangeException>(() => Metering with { OpeningPressure = Pressure.FromBars(-1) });
    }

    [Fact]
    public void Hold_off_valve_that_closes_before_it_opens_is_refused_when_the_car_is_computed()
    {
        Vehicle car = TestCars.FixedShare(0.7, 2.5, 1.2, 0.5).WithFrontValves(Metering with { BlendPressure = Pressure.FromBars(6) });
        string message = Assert.Throws<ArgumentException>(() => car.Model()).Message;
        Assert.Contains("opening 7 bar", message);
        Assert.Contains("blend 6 bar", message);
    }

    [Fact]
    public void Adjuster_gives_a_knee_for_each_turn_and_back()
    {
        var adjuster = new KneeAdjustment { KneeBackedOff = Pressure.FromBars(7), KneePerTurn = Pressure.FromBars(10), Turns = 6 };
        Assert.Equal(7, adjuster.KneeAt(0).Bars, 1e-9);
        Assert.Equal(32, adjuster.KneeAt(2.5).Bars, 1e-9);
        Assert.Equal(67, adjuster.KneeAt(6).Bars, 1e-9);
        Assert.Equal(2.5, adjuster.TurnsFor(Pressure.FromBars(32))!.Value, 1e-9);
        Assert.Equal(6, adjuster.TurnsFor(Pressure.FromBars(67))!.Value, 1e-9);
        Assert.Null(adjuster.TurnsFor(Pressure.FromBars(68)));
        Assert.Null(adjuster.TurnsFor(Pressure.FromBars(6)));
        Assert.Equal("turns", Assert.Throws<ArgumentOutOfRangeException>(() => adjuster.KneeAt(6.1)).ParamName);
    }
}
