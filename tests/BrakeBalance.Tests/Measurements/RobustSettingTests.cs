using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Measurements;

[Collection(SpeedCollection.Name)]
public class RobustSettingTests
{
    private static readonly Vehicle Coupe = CarEstimationTests.Coupe;

    private static SettingQuestion Ask(Vehicle vehicle) =>
        new()
        {
            Vehicle = vehicle,
            Draws = 20_000,
            Spread = new ParameterSpread { FrontFriction = 0.04, RearFriction = 0.04, CentreOfGravityHeight = 0.03 }
        };

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.08)]
    public void Lock_up_of_a_draw_agrees_with_the_balance_of_the_car_drawn(double loadSensitivity)
    {
        var random = new Random(3);
        Tyre tyre = Coupe.Tyres.Front with { LoadSensitivity = loadSensitivity };
        Vehicle car = Coupe with
        {
            Tyres = new(tyre, tyre),
            RollingResistanceCoefficient = 0.015,
            Hydraulics = Coupe.Hydraulics with
            {
                MaximumPressure = Pressure.FromBars(300),
                FrontValves = [new MeteringValve { OpeningPressure = Pressure.FromBars(6), BlendPressure = Pressure.FromBars(20) }],
            },
        };
        PerAxle<FrictionGain> gains = FrictionGain.Of(car);
        int inBlend = 0;
        for (int i = 0; i < 400; i++)
        {
            LoadCase load = car.LoadCases[i % 2];
            double front = 0.8 + 0.4 * random.NextDouble(), rear = 0.8 + 0.4 * random.NextDouble(), k = 0.15
                + random.NextDouble(), knee = 60e5 * random.NextDouble();
            var kernel = new BalanceKernel(car, load, 0);
            kernel.Laws[kernel.Setting] = ValveLaw.AboveKnee(knee, 0.35);
            (AxleLimit one, AxleLimit two) = kernel.Limits(k, k);
            KernelLock found = kernel.First(
                new(gains.Front.Drawn(front), gains.Rear.Drawn(rear), 1), kernel.Laws, 1, one, two, kernel.LimitNewtons(one, two, 1));
            Vehicle set = car.WithFrictionFactors(front, rear).WithRearKnee(Pressure.FromPascals(knee));
            Assert.True(new BalanceModel(set, load).TryFirstLockUp(k, out BalanceState state, out Axle? first, out double full));
            Assert.Equal(full, found.Efficiency, 1e-5);
            Assert.Equal(1, found.Pascals / state.MasterPascals, 2e-5);
            inBlend += state.MasterPascals < 20e5 ? 1 : 0;
            double Used(Axle axle, double utilisation, double load) =>
                utilisation / car.Tyres[axle].AdhesionOn(k, Force.FromNewtons(load / 2));
            if (Math.Abs(Used(Axle.Front, state.FrontUtilisation, state.FrontNormalNewtons) - Used(Axle.Rear, state.RearUtilisation,
                state.RearNormalNewtons)) > 0.01)
            {
                Assert.Equal(first == Axle.Rear, found.Order == LockOrder.Rear);
            }
        }

        Assert.True(inBlend > 20);
    }

    [Fact]
    public void The_recommended_knee_keeps_the_level_everywhere_and_no_better_one_does()
    {
        SettingAnswer answer = RobustSetting.Find(Ask(Coupe));
        SettingPoint best = answer.Recommended!;
        Assert.Equal(SettingVariable.Knee, answer.Variable);
        Assert.All(answer.Conditions, c => Assert.InRange(c.RearFirst, 0, 0.02));
        Assert.Equal(Coupe.LoadCases.Length * 5 * 4, answer.Conditions.Count);
        Assert.DoesNotContain(answer.TradeOff, p => p.WorstRearFirst <= 0.02 && p.MeanEfficiency > best.MeanEfficiency + 1e-4);
    }

    [Fact]
    public void The_recommended_knee_uses_most_of_the_level_also_between_the_knees_tried()
    {
        foreach (double level in new[] { 0.01, 0.02, 0.05 })
        {
            SettingAnswer answer = RobustSetting.Find(Ask(Coupe) with { Level = level });
            SettingPoint limit = answer.Recommended!, above = answer.TradeOff.First(p => p.WorstRearFirst > level);
            double step = (answer.TradeOff[1].Knee!.Value - answer.TradeOff[0].Knee!.Value).Bars;
            Assert.InRange(limit.WorstRearFirst, 0.7 * level, level);
            Assert.InRange((above.Knee!.Value - limit.Knee!.Value).Bars, 0, step);
            Assert.Equal(limit.WorstRearFirst, answer.Conditions.Max(one => one.RearFirst), 1e-12);
            var near = new SettingLimit(SettingVariable.Knee, limit.Knee * 0.8, null, null, null);
            Assert.Equal(limit, RobustSetting.Best(Ask(Coupe) with { Level = level }, near));
        }
    }

    [Fact]
    public void Where_every_knee_is_within_the_level_the_limit_is_none_of_those_tried()
    {
        Vehicle car = Coupe.WithFrictionFactors(1, 0.6);
        SettingAnswer answer = RobustSetting.Find(Ask(car));
        Assert.True(answer.HoldsAtAnySetting);
        Assert.Equal(car.Hydraulics.MaximumPressure, answer.Recommended!.Knee);
        Assert.False(RobustSetting.Find(Ask(Coupe)).HoldsAtAnySetting);
    }

    [Fact]
    public void A_stricter_level_never_asks_for_a_higher_knee()
    {
        double[] knees = [.. new[] { 0.2, 0.05, 0.01 }.Select(level =>
            RobustSetting.Find(Ask(Coupe) with { Level = level }).Recommended!.Knee!.Value.Bars)];
        Assert.True(knees[0] >= knees[1] && knees[1] >= knees[2]);
    }

    [Fact]
    public void A_car_without_any_uncertainty_gets_the_knee_at_which_the_lock_order_turns()
    {
        var question = new SettingQuestion
        {
            Vehicle = Coupe with { LoadCases = [Coupe.LoadCases[0]] },
            Spread = new ParameterSpread { FrontFriction = 0, RearFriction = 0, CentreOfGravityHeight = 0 },
            Surfaces = [new SurfaceCondition { Name = "dry", Adhesion = 0.9, Spread = 0 }],
            States = [Conditions.UsualStates[0]],
            StopScatter = 0,
            KneeScatter = Pressure.Zero,
            Draws = 1000,
        };
        double knee = RobustSetting.Find(question).Recommended!.Knee!.Value.Bars;
        double step = RobustSetting.Find(question).TradeOff[1].Knee!.Value.Bars;
        bool FrontFirst(double bars) =>
            new BalanceModel(Coupe.WithRearKnee(Pressure.FromBars(bars)), Coupe.LoadCases[0], question.Speeds.Lowest)
            .FirstLockUp(0.9)!.FrontFirstOrTogether;
        Assert.True(FrontFirst(knee - 0.05));
        Assert.False(FrontFirst(knee + step + 0.05));
    }

    [Fact]
    public void A_balance_bar_is_set_by_its_share()
    {
        Vehicle bar = Coupe with
        {
            Hydraulics = new BrakeHydraulics
            {
                Split = new BalanceBarSplit
                {
                    FrontBore = Length.FromMillimeters(19),
                    RearBore = Length.FromMillimeters(22.2),
                    FrontForceShare = 0.5
                }
            },
        };
        SettingAnswer answer = RobustSetting.Find(Ask(bar));
        Assert.Equal(SettingVariable.BalanceBar, answer.Variable);
        Assert.InRange(answer.Recommended!.FrontForceShare!.Value, 0.2, 0.8);
    }

    [Fact]
    public void Test_stops_narrow_the_uncertainty_and_never_lower_the_best_efficiency_by_much()
    {
        var track = new InventedTrack(Coupe, 3);
        CarEstimate estimate = CarEstimation.Estimate(Coupe,
            CarEstimationTests.Day(track, SurfaceCondition.Typical("dry"), SurfaceCondition.Typical("wet")));
        SettingAnswer before = RobustSetting.Find(Ask(Coupe)), after = RobustSetting.Find(Ask(Coupe) with { Estimate = estimate });
        Assert.True(after.Recommended!.MeanEfficiency > before.Recommended!.MeanEfficiency - 0.01);
    }

    // Half a second on two quiet cores; four times as much leaves room for a loaded machine.
    [Theory]
    [InlineData("proportioning")]
    [InlineData("limiter")]
    [InlineData("load sensing")]
    public void A_hundred_thousand_draws_take_less_than_two_seconds_with_every_kind_of_valve(string kind)
    {
        PressureValve? valve = kind switch
        {
            "limiter" => new LimitingValve { Limit = Pressure.FromBars(40) },
            "load sensing" => new LoadSensingValve
            {
                KneeAtReference = Pressure.FromBars(30),
                ReferenceLoad = Force.FromKilonewtons(7),
                KneePerKilonewton = Pressure.FromBars(6),
                Slope = 0.3,
            },
            _ => null,
        };
        Vehicle car = valve is null
            ? Coupe
            : Coupe with { Hydraulics = Coupe.Hydraulics with { RearValves = Coupe.Hydraulics.RearValves.Add(valve) } };
        RobustSetting.Find(Ask(car));
        SettingAnswer? answer = null;
        double seconds = SpeedCollection.ProcessorSeconds(() => answer = RobustSetting.Find(Ask(car) with { Draws = 100_000 }));

        // Two seconds on two cores are four of processor time; with two valves half as much again for the unoptimised build.
        Assert.True(seconds < (kind == "proportioning" ? 4 : 6), $"{seconds:0.00} s of processor time");
        Assert.InRange(answer!.Draws, 95_000, 100_000);
    }

    [Fact]
    public void The_same_question_gets_the_same_answer() =>
        Assert.Equal(RobustSetting.Find(Ask(Coupe)).TradeOff.Select(p => p.RearFirst),
            RobustSetting.Find(Ask(Coupe)).TradeOff.Select(p => p.RearFirst));
}
