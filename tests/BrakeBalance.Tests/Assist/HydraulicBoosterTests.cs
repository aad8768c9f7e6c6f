using BrakeBalance.Assist;
using UnitsNet;

namespace BrakeBalance.Tests.Assist;

public sealed class HydraulicBoosterTests
{
    private static readonly HydraulicBooster Booster = new()
    {
        ReliefPressure = Pressure.FromBars(95),
        PumpFlow = VolumeFlow.FromLitersPerMinute(6),
        PowerPistonDiameter = Length.FromMillimeters(35),
        BoostRatio = 6,
        ReturnSpringForce = Force.FromNewtons(150),
        Accumulator = new Accumulator { GasVolume = Volume.FromCubicCentimeters(80), Precharge = Pressure.FromBars(45) },
    };

    [Fact]
    public void The_power_piston_sees_the_relief_pressure_at_run_out()
    {
        RunOut knee = Booster.RunOut!.Value;
        Assert.Equal(95, PowerBars(knee.InputForce), 6);
        Assert.Equal(95, PowerBars(knee.InputForce * 2), 6);
        Assert.True(PowerBars(knee.InputForce * 0.5) < 95);

        static double PowerBars(Force input) =>
            ((Booster.OutputForce(input) - input + Booster.ReturnSpringForce) / Booster.PowerPistonArea).Bars;
    }

    [Fact]
    public void The_pumps_flow_limits_how_fast_the_rod_can_follow()
    {
        // 6 L/min = 100 cm3/s through 9.621 cm2: 10.39 cm/s; 12 mm take 0.1155 s.
        Assert.Equal(0.1155, Booster.ShortestApplication(Length.FromMillimeters(12))!.Value.Seconds, 4);
    }

    [Fact]
    public void Steering_at_the_same_time_slows_the_brakes_and_can_stop_them_altogether()
    {
        HydraulicBooster turning = Booster with { SteeringFlow = VolumeFlow.FromLitersPerMinute(3) };
        Assert.Equal(2, turning.ShortestApplication(Length.FromMillimeters(12))!.Value / Booster.ShortestApplication(
            Length.FromMillimeters(12))!.Value, 9);
        Assert.Null((Booster with { SteeringFlow = VolumeFlow.FromLitersPerMinute(7) }).ShortestApplication(Length.FromMillimeters(12)));
    }

    [Fact]
    public void Back_pressure_in_the_return_makes_the_brakes_drag_once_it_beats_the_spring()
    {
        Assert.Equal(0, (Booster with { ReturnBackPressure = Pressure.FromBars(1) }).ReleasedOutputForce.Newtons);
        // 3 bar on 9.621 cm2 is 288.6 N; the spring takes 150 N of it.
        Assert.Equal(138.6, (Booster with { ReturnBackPressure = Pressure.FromBars(3) }).ReleasedOutputForce.Newtons, 1);
    }

    [Fact]
    public void The_accumulator_gives_a_few_weakening_applications_and_then_none()
    {
        var reserve = Booster.Reserve(Length.FromMillimeters(12), 20);
        Assert.InRange(reserve.Length, 2, 5);
        for (int i = 1; i < reserve.Length; i++)
        {
            Assert.True(reserve[i].WorkingPressure < reserve[i - 1].WorkingPressure);
        }

        Assert.True(reserve[^1].Assist.RunOut!.Value.OutputForce < Booster.RunOut!.Value.OutputForce);
    }

    [Fact]
    public void Without_an_accumulator_there_is_no_reserve() =>
        Assert.Empty((Booster with { Accumulator = null }).Reserve(Length.FromMillimeters(12), 3));

    [Fact]
    public void A_precharge_above_the_pumps_pressure_is_said_with_both_values()
    {
        HydraulicBooster wrong = Booster with { Accumulator = Booster.Accumulator! with { Precharge = Pressure.FromBars(120) } };
        ArgumentException fault = Assert.Throws<ArgumentException>(() => wrong.Reserve(Length.FromMillimeters(12), 3));
        Assert.Contains("120 bar", fault.Message, StringComparison.Ordinal);
        Assert.Contains("95 bar", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_dead_pump_without_accumulator_leaves_the_leg_alone()
    {
        HydraulicBooster dead = Booster with { ReliefPressure = Pressure.Zero };
        Assert.Null(dead.RunOut);
        Assert.Equal(850, dead.OutputForce(Force.FromNewtons(1000)).Newtons, 9);
        Assert.Equal(850, Booster.WithoutEnergy().OutputForce(Force.FromNewtons(1000)).Newtons, 9);
    }
}
