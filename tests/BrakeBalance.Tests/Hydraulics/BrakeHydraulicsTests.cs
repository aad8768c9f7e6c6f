using BrakeBalance.Hydraulics;
using UnitsNet;

namespace BrakeBalance.Tests.Hydraulics;

/// <summary>Circuit split, valves in series, and changes of the rear knee.</summary>
public class BrakeHydraulicsTests
{
    private static readonly ProportioningValve Valve = new() { Knee = Pressure.FromBars(30), Slope = 0.5 };

    [Fact]
    public void Without_valves_both_lines_carry_the_master_pressure()
    {
        PerAxle<Pressure> lines = new BrakeHydraulics().LinePressures(Pressure.FromBars(80));
        Assert.Equal(80, lines.Front.Bars, 1e-9);
        Assert.Equal(80, lines.Rear.Bars, 1e-9);
    }

    [Fact]
    public void Valves_in_series_act_one_after_the_other()
    {
        var second = new ProportioningValve { Knee = Pressure.FromBars(40), Slope = 0.5 };
        var hydraulics = new BrakeHydraulics { RearValves = [Valve, second] };

        // 30 + 0.5·(90 − 30) = 60 reaches the second, which gives 40 + 0.5·(60 − 40).
        Assert.Equal(50, hydraulics.LinePressures(Pressure.FromBars(90)).Rear.Bars, 1e-9);
        Assert.Equal(90, hydraulics.LinePressures(Pressure.FromBars(90)).Front.Bars, 1e-9);
    }

    [Fact]
    public void Order_of_two_unlike_valves_matters()
    {
        var limiter = new LimitingValve { Limit = Pressure.FromBars(40) };
        double ValveFirst() => new BrakeHydraulics { RearValves = [Valve, limiter] }.LinePressures(Pressure.FromBars(100)).Rear.Bars;
        double LimiterFirst() => new BrakeHydraulics { RearValves = [limiter, Valve] }.LinePressures(Pressure.FromBars(100)).Rear.Bars;
        Assert.Equal(40, ValveFirst(), 1e-9);
        Assert.Equal(35, LimiterFirst(), 1e-9);
    }

    // Statics: with equal force on both rods the pressures are as the areas, inversely.
    [Theory]
    [InlineData(0.5, 20, 20, 1.0)]
    [InlineData(0.5, 20, 40, 0.25)]
    [InlineData(0.6, 20, 20, 0.66667)]
    [InlineData(0.8, 20, 20, 0.25)]
    public void Balance_bar_shares_the_force_and_the_bores_make_it_pressure(double frontShare, double frontBore, double rearBore,
        double ratio)
    {
        var bar = new BalanceBarSplit
        {
            FrontForceShare = frontShare,
            FrontBore = Length.FromMillimeters(frontBore),
            RearBore = Length.FromMillimeters(rearBore),
        };
        Assert.Equal(ratio, bar.RearToFrontPressureRatio, 0.000005);
        Assert.Equal(100 * ratio, new BrakeHydraulics { Split = bar }.LinePressures(Pressure.FromBars(100)).Rear.Bars, 0.0005);
    }

    [Theory]
    [InlineData(0.19)]
    [InlineData(0.81)]
    [InlineData(double.NaN)]
    public void A_bar_cannot_share_beyond_its_travel(double share) =>
        Assert.Equal("FrontForceShare", Assert.Throws<ArgumentOutOfRangeException>(() => new BalanceBarSplit
        {
            FrontForceShare = share,
            FrontBore = Length.FromMillimeters(20),
            RearBore = Length.FromMillimeters(20),
        }).ParamName);

    [Fact]
    public void Knee_of_a_rear_line_is_an_inlet_pressure_even_with_a_balance_bar()
    {
        var hydraulics = new BrakeHydraulics
        {
            Split = new BalanceBarSplit
            {
                FrontForceShare = 0.5,
                FrontBore = Length.FromMillimeters(20),
                RearBore = Length.FromMillimeters(20 * Math.Sqrt(2)),
            },
            RearValves = [Valve],
        };
        Assert.Equal(30, hydraulics.LinePressures(Pressure.FromBars(60)).Rear.Bars, 1e-9);
        Assert.Equal(35, hydraulics.LinePressures(Pressure.FromBars(80)).Rear.Bars, 1e-9);
    }

    [Fact]
    public void New_knee_replaces_the_present_one_and_keeps_its_slope_and_neighbours()
    {
        var limiter = new LimitingValve { Limit = Pressure.FromBars(60) };
        BrakeHydraulics changed = new BrakeHydraulics { RearValves = [Valve, limiter] }.WithRearKnee(Pressure.FromBars(50));
        Assert.Equal(2, changed.RearValves.Length);
        Assert.Equal(50, changed.RearProportioningValve!.Knee.Bars, 1e-9);
        Assert.Equal(0.5, changed.RearProportioningValve.Slope);
        Assert.Same(limiter, changed.RearValves[1]);
        Assert.Equal(0.3, changed.WithRearKnee(Pressure.FromBars(50), 0.3).RearProportioningValve!.Slope);
    }

    [Fact]
    public void New_knee_without_a_valve_needs_a_slope_and_puts_one_in()
    {
        Assert.Equal("slope", Assert.Throws<ArgumentException>(() => new BrakeHydraulics().WithRearKnee(Pressure.FromBars(40))).ParamName);
        Assert.Equal(55, new BrakeHydraulics().WithRearKnee(Pressure.FromBars(40), 0.25)
            .LinePressures(Pressure.FromBars(100)).Rear.Bars, 1e-9);
    }

    [Fact]
    public void Without_proportioning_only_hold_off_valves_are_left()
    {
        var metering = new MeteringValve { OpeningPressure = Pressure.FromBars(5), BlendPressure = Pressure.FromBars(15) };
        BrakeHydraulics bare = new BrakeHydraulics
        {
            RearValves = [metering, Valve,
            new LimitingValve { Limit = Pressure.FromBars(60) }]
        }.WithoutRearProportioning();
        Assert.Same(metering, Assert.Single(bare.RearValves));
    }

    [Fact]
    public void Negative_pressure_is_refused() =>
        Assert.Equal("master", Assert.Throws<ArgumentOutOfRangeException>(() =>
            new BrakeHydraulics().LinePressures(Pressure.FromBars(-1))).ParamName);
}
