using BrakeBalance.Assist;
using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Pedals;
using BrakeBalance.Rules;
using BrakeBalance.Summaries;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Tests.Control;

public sealed class ControlForceTests
{
    public static TheoryData<string> Cars => ["coupe-1960s", "track-coupe", "rear-engined-sports-car", "big-cam-saloon"];

    internal static Vehicle Car(string name, params IEnumerable<ValueOverride> overrides) =>
        VehicleFile.Load(Path.Combine(Root(), "data", "vehicles", name + ".json"), overrides).Vehicle;

    internal static string Root()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "Notebooks.sln")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return folder ?? throw new DirectoryNotFoundException("The repository's root was not found above the tests.");
    }

    private static ControlForce Of(Vehicle car) => new(new BalanceModel(car, car.LoadCases[0]));

    [Theory]
    [MemberData(nameof(Cars))]
    public void There_and_back_again(string name)
    {
        ControlForce control = Of(Car(name));
        foreach (double rate in new[] { 0.2, 0.5, 0.8 })
        {
            ControlForcePoint point = control.AtRate(rate)!;
            Assert.Equal(rate, control.At(point.PedalForce).Balance.BrakingRate, 1e-6);
            Assert.Equal(rate, point.Balance.BrakingRate, 1e-6);
        }
    }

    [Theory]
    [MemberData(nameof(Cars))]
    public void More_foot_never_brakes_less(string name)
    {
        ControlForce control = Of(Car(name));
        double last = -1;
        for (int newtons = 0; newtons <= 800; newtons += 10)
        {
            double rate = control.At(Force.FromNewtons(newtons)).Balance.BrakingRate;
            Assert.True(rate >= last - 1e-12);
            last = rate;
        }
    }

    [Fact]
    public void A_weak_vacuum_and_no_vacuum_cost_effort_in_that_order()
    {
        double stock = Of(Car("coupe-1960s", new ValueOverride("assist.vacuum", "18 inHg"))).AtRate(0.8)!.PedalForce.Newtons;
        ControlForce weak = Of(Car("coupe-1960s"));
        double bare = new ControlForce(weak.Model, weak.Control with { Assist = weak.Control.Assist.WithoutEnergy() })
            .AtRate(0.8)!.PedalForce.Newtons;
        Assert.True(stock < weak.AtRate(0.8)!.PedalForce.Newtons);
        Assert.True(weak.AtRate(0.8)!.PedalForce.Newtons < bare);
    }

    [Fact]
    public void A_balance_bar_moved_in_the_hydraulics_moves_the_cylinders_of_the_control_too()
    {
        Vehicle car = Car("track-coupe");
        var bar = (BalanceBarSplit)car.Hydraulics.Split;
        ControlForce moved = Of(car with { Hydraulics = car.Hydraulics with { Split = bar with { FrontForceShare = 0.6 } } });
        ControlForcePoint point = moved.AtRate(0.5)!;
        Assert.Equal(point.Balance.LinePressures.Front.Pascals, point.OutletPressures.Front.Pascals, 1e-3);
        Assert.Equal(point.Balance.LinePressures.Rear.Pascals, point.OutletPressures.Rear.Pascals, 1e-3);
    }

    [Fact]
    public void A_linked_pedal_is_solved_at_the_travel_that_the_volume_asks_for()
    {
        Vehicle car = Car("coupe-1960s");
        var links = new LinkedLever
        {
            PivotToPad = Length.FromMillimeters(320),
            PivotToPin = Length.FromMillimeters(80),
            LinkLength = Length.FromMillimeters(120),
            RodAxisDepth = Length.FromMillimeters(80),
            PinAngleAtRest = Angle.FromDegrees(-20),
        };
        ControlForce control = Of(car with { Control = car.Control! with { Pedal = car.Control.Pedal with { Lever = links } } });
        ControlForcePoint point = control.AtRate(0.6)!;
        Assert.Equal(0.6, control.At(point.PedalForce).Balance.BrakingRate, 1e-5);
        Length pad = control.TravelAt(point.Balance.MasterPressure)!.Pad!.Value - control.Control.Pedal.FreePlay;
        double spring = 15;
        double expected = (point.InputRodForce.Newtons / (0.95 * links.RatioAt(pad))) + spring;
        Assert.Equal(expected, point.PedalForce.Newtons, 1e-6);
    }

    [Fact]
    public void A_car_without_pedal_data_is_told_what_to_add()
    {
        Vehicle car = Car("coupe-1960s") with { Control = null };
        ArgumentException fault = Assert.Throws<ArgumentException>(() => Of(car));
        Assert.Contains("give pedal, assist and masterCylinder", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_single_circuit_leaves_nothing_after_a_leak()
    {
        Vehicle car = Car("coupe-1960s");
        Vehicle old = car with
        {
            Control = car.Control! with
            {
                MasterCylinder = new SingleMasterCylinder { Bore = Length.FromInches(1), Stroke = Length.FromMillimeters(36) },
                Layout = CircuitLayout.Single,
            },
        };
        FailureOutcome outcome = FailureAnalysis.Of(old, old.LoadCases[0]).Single(failure => failure.Case.Id == "all-lost");
        Assert.Equal(RateBound.Nothing, outcome.Bound);
        Assert.Null(outcome.Distance);
        Assert.Contains("parking brake", outcome.Notices[0], StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Cars))]
    public void Nothing_that_fails_makes_a_car_stop_shorter_at_the_same_foot(string name)
    {
        Vehicle car = Car(name);
        foreach (LoadCase load in car.LoadCases)
        {
            IReadOnlyList<FailureOutcome> outcomes = FailureAnalysis.Of(car, load);
            Assert.All(outcomes, outcome => Assert.True(outcome.RateAtForce <= outcomes[0].RateAtForce + 1e-9));
            Assert.All(outcomes, outcome => Assert.True(outcome.Distance!.Whole >= outcome.Distance.FromFirstTouch));
        }
    }

    [Fact]
    public void Engine_off_applications_weaken_one_after_the_other()
    {
        Vehicle car = Car("coupe-1960s");
        FailureOutcome[] engineOff =
            [.. FailureAnalysis.Of(car, car.LoadCases[0]).Where(outcome => outcome.Case.ReserveApplication is not null)];
        Assert.Equal(3, engineOff.Length);
        Assert.True(engineOff[0].RateAtForce >= engineOff[1].RateAtForce && engineOff[1].RateAtForce >= engineOff[2].RateAtForce);
    }

    [Fact]
    public void Engine_off_the_coupe_has_one_assisted_press_and_its_laden_stop_is_too_long()
    {
        Vehicle car = Car("coupe-1960s");
        var foot = new ControlForce(new BalanceModel(car, car.LoadCases[0]));
        double[] kilopascals = [.. FailureAnalysis.Reserve(foot, applications: 3)
            .Select(application => application.WorkingPressure.Kilopascals)];

        // Rod 11.7 mm at a rate of 0.25: 67.46 kPa absolute, 2.6 l, 34.9 cm2 · 11.7 mm swept; p V_f / (V_f − A x) = 80.0 kPa. Then
        // nothing.
        Assert.Equal(21.3, kilopascals[0], 0.1);
        Assert.Equal([0, 0], kilopascals[1..]);
        EngineOffPresses gentle = EngineOffPresses.Of(foot, brakingRate: 0.25, applications: 3);
        Assert.Equal(108, gentle.PedalForces[0]!.Value.Newtons, 1.0);
        Assert.Equal(304, gentle.PedalForces[1]!.Value.Newtons, 1.0);
        Assert.Equal(304, gentle.PedalForces[2]!.Value.Newtons, 1.0);
        Assert.True(gentle.NeedsNoAssist);
        Assert.Null(gentle.Count);

        // The same presses, firmer: one within 70 lbf, none within 250 N, any number within 500 N. The condition belongs to the count.
        EngineOffPresses firm = EngineOffPresses.Of(foot);
        Assert.Equal(311.4, firm.GreatestPedalForce.Newtons, 0.1);
        Assert.Equal(1, firm.Count);
        Assert.True(firm.PedalForces[0] <= firm.GreatestPedalForce && firm.PedalForces[1] > firm.GreatestPedalForce);
        Assert.Equal(0, EngineOffPresses.Of(foot, greatestPedalForce: Force.FromNewtons(250)).Count);
        Assert.True(EngineOffPresses.Of(foot, greatestPedalForce: Force.FromNewtons(500)).NeedsNoAssist);
        Assert.Equal(firm.Count, ControlSummary.Of(car)!.LoadCases[0].EngineOff.Count);
        RuleVerdict verdict = EffectivenessRules.Check(car).Single(rule => rule.Rule == "fmvss135-engine-off");
        Assert.Equal(RuleOutcome.Fail, verdict.Outcome);
        Assert.StartsWith(car.LoadCases[^1].Name, verdict.At, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void The_stroke_of_a_stop_at_full_force_is_that_of_the_pressure_it_makes(int number)
    {
        Vehicle car = Car("coupe-1960s", new ValueOverride("assist.vacuum", "12 inHg"));
        LoadCase load = car.LoadCases[^1];
        var sound = new ControlForce(new BalanceModel(car, load));
        FailureOutcome outcome = FailureAnalysis.Of(car, load).Single(failure => failure.Case.ReserveApplication == number);
        Length gentle = sound.TravelAt(sound.AtRate(0.25)!.Balance.MasterPressure)!.RodTravel;
        Length last = sound.TravelAt(outcome.MasterPressure)!.RodTravel;
        var reserve = sound.Control.Assist.Reserve([.. Enumerable.Repeat(gentle, number - 1), last]);
        var pressed = new ControlForce(sound.Model, sound.Control with { Assist = reserve[^1].Assist });
        Assert.Equal(RateBound.Foot, outcome.Bound);
        Assert.Equal(pressed.At(Force.FromNewtons(500)).Balance.MasterPressure.Bars, outcome.MasterPressure.Bars, 1e-3);
    }

    [Fact]
    public void Without_a_chamber_volume_no_number_of_presses_is_claimed()
    {
        Vehicle car = Car("coupe-1960s", new ValueOverride("assist.vacuumChamber", "0 l"));
        EngineOffPresses presses = EngineOffPresses.Of(new ControlForce(new BalanceModel(car, car.LoadCases[0])));
        Assert.False(presses.IsDescribed);
        Assert.Null(presses.Count);
    }

    [Fact]
    public void A_lost_circuit_that_eats_the_pedals_travel_bounds_the_rate_by_travel()
    {
        Vehicle car = Car("coupe-1960s", new ValueOverride("pedal.travel", "115 mm"));
        FailureOutcome outcome = FailureAnalysis.Of(car, car.LoadCases[0]).Single(failure => failure.Case.Id == "rear-lost");
        Assert.Equal(RateBound.Travel, outcome.Bound);
        Assert.True(Math.Abs(outcome.Travel!.PadLeft!.Value.Millimeters) < 0.1);
    }

    [Fact]
    public void A_load_sensing_valve_without_its_linkage_costs_the_laden_car_distance_and_meets_its_rule()
    {
        Vehicle car = Car("coupe-1960s");
        var sensing = new LoadSensingValve
        {
            KneeAtReference = Pressure.FromBars(30),
            ReferenceLoad = Force.FromKilonewtons(6),
            KneePerKilonewton = Pressure.FromBars(8),
            Slope = 0.3,
            LowestKnee = Pressure.FromBars(5),
        };
        Vehicle pickup = car with { Hydraulics = car.Hydraulics with { RearValves = [sensing] } };
        IReadOnlyList<FailureOutcome> outcomes = FailureAnalysis.Of(pickup, pickup.LoadCases[^1]);
        FailureOutcome lost = outcomes.Single(outcome => outcome.Case.LoadSensingLost);
        Assert.True(lost.LinePressures.Rear < outcomes[0].LinePressures.Rear);
        Assert.True(lost.RateAtForce < outcomes[0].RateAtForce);
        Assert.All(EffectivenessRules.Check(pickup), each =>
        {
            Assert.DoesNotMatch(@"\d (m|N|km/h)\b", each.In(UnitSystem.Us).Title + each.In(UnitSystem.Us).Explanation);
            Assert.DoesNotMatch(@"\d (ft|lbf|mph)\b", each.In(UnitSystem.Si).Title + each.In(UnitSystem.Si).Explanation);
        });
        RuleVerdict rule = EffectivenessRules.Check(pickup).Single(verdict => verdict.Rule == "fmvss135-proportioning-failure");
        Assert.Equal(RuleOutcome.Pass, rule.Outcome);
        Assert.Equal(RuleOutcome.NotApplicable, EffectivenessRules.Check(car).Single(verdict => verdict.Rule == rule.Rule).Outcome);
    }

    [Fact]
    public void Steering_that_takes_the_whole_flow_is_said()
    {
        Vehicle car = Car("coupe-1960s");
        Vehicle hydraulic = car with
        {
            Control = car.Control! with
            {
                Assist = new HydraulicBooster
                {
                    ReliefPressure = Pressure.FromBars(95),
                    PumpFlow = VolumeFlow.FromLitersPerMinute(5),
                    SteeringFlow = VolumeFlow.FromLitersPerMinute(6),
                    PowerPistonDiameter = Length.FromMillimeters(35),
                    BoostRatio = 5,
                },
            },
        };
        Assert.Contains(FailureAnalysis.Of(hydraulic, hydraulic.LoadCases[0])[0].Notices, notice =>
            notice.Contains("whole flow of the pump", StringComparison.Ordinal));
    }

    [Fact]
    public void Between_too_long_and_too_hard_lies_what_fits()
    {
        Vehicle car = Car("coupe-1960s", new ValueOverride("assist.vacuum", "18 inHg"));
        var model = new BalanceModel(car, car.LoadCases[0]);
        Length[] bores = [.. Enumerable.Range(0, 13).Select(i => Length.FromMillimeters(14 + (i * 2)))];
        var grid = ControlChoice.Sweep(model, bores, [4.0], car.Control!.Assist,
            new ControlTargets { GreatestPedalForce = Force.FromNewtons(150), LeastPedalForce = Force.FromNewtons(80) });
        Assert.True(grid[0].TooLong);
        Assert.True(grid[^1].TooHard);
        Assert.Contains(grid, choice => choice.Fits);
        Assert.Equal("fits", grid.First(choice => choice.Fits).Describe());
        Assert.Contains("bore too small", grid[0].Describe(), StringComparison.Ordinal);
        for (int i = 1; i < grid.Length; i++)
        {
            Assert.True(grid[i].PedalForce >= grid[i - 1].PedalForce);
            Assert.True(grid[i].Travel!.Pad <= grid[i - 1].Travel!.Pad);
        }
    }

    [Fact]
    public void A_balance_bars_bores_are_swept_together()
    {
        Vehicle car = Car("track-coupe");
        var model = new BalanceModel(car, car.LoadCases[0]);
        var grid = ControlChoice.Sweep(model, [Length.FromMillimeters(17.8), Length.FromMillimeters(19.58)], [5.2],
            new NoAssist(), new ControlTargets());
        Assert.Equal(Of(car).AtRate(0.8)!.PedalForce.Newtons, grid[0].PedalForce!.Value.Newtons, 1e-6);
        Assert.True(grid[1].PedalForce > grid[0].PedalForce);
    }

    [Fact]
    public void A_bypass_gives_the_rear_full_pressure_when_the_front_circuit_is_lost_and_only_then()
    {
        Vehicle car = Car("coupe-1960s");
        Vehicle with = car with
        {
            Hydraulics = car.Hydraulics with
            {
                RearValves = [
            .. car.Hydraulics.RearValves.Select(valve => valve with { BypassWhenFrontLost = true })]
            }
        };
        var conditions = new FailureConditions { PedalForce = Force.FromNewtons(400) };
        foreach (LoadCase load in car.LoadCases)
        {
            IReadOnlyList<FailureOutcome> plain = FailureAnalysis.Of(car, load, conditions);
            IReadOnlyList<FailureOutcome> opened = FailureAnalysis.Of(with, load, conditions);
            foreach ((FailureOutcome before, FailureOutcome after) in plain.Zip(opened))
            {
                if (before.Case.LostCircuit == LostCircuit.Front)
                {
                    Assert.Equal(after.MasterPressure.Pascals, after.LinePressures.Rear.Pascals, 1.0);
                    Assert.True(after.RateAtForce >= before.RateAtForce);
                }
                else
                {
                    Assert.Equal(before.RateAtForce, after.RateAtForce, 1e-12);
                }
            }

            FailureOutcome Lost(IReadOnlyList<FailureOutcome> outcomes) => outcomes.Single(outcome => outcome.Case.Id == "front-lost");
            Assert.True(Lost(opened).RateAtForce > Lost(plain).RateAtForce + 0.03);
        }
    }

    [Fact]
    public void The_rule_on_a_lost_circuit_follows_the_bypass()
    {
        Vehicle car = Car("coupe-1960s");
        Vehicle with = car with
        {
            Hydraulics = car.Hydraulics with
            {
                RearValves = [
            .. car.Hydraulics.RearValves.Select(valve => valve with { BypassWhenFrontLost = true })]
            }
        };
        RuleVerdict Verdict(Vehicle vehicle) =>
            EffectivenessRules.Check(vehicle)
            .First(verdict => verdict.Explanation.Contains("front circuit lost", StringComparison.Ordinal));
        Assert.Equal(RuleOutcome.Fail, Verdict(car).Outcome);
        Assert.True(EffectivenessRules.Check(with).Single(verdict => verdict.Rule == Verdict(car).Rule).Margin > Verdict(car).Margin);
    }

    [Fact]
    public void The_coupes_hot_drums_cost_pedal()
    {
        ControlForce control = Of(Car("coupe-1960s"));
        Pressure master = control.AtRate(0.8)!.Balance.MasterPressure;
        PedalTravel cold = control.TravelAt(master)!;
        PedalTravel hot = control.TravelAt(master, drumsHot: true)!;
        // Four pistons of 7/8 in, each 2 · 11e-6 /K · 280 K · 127 mm further, through a 1-1/8 in bore and a 4:1 pedal.
        double expected = 4 * 0.875 * 0.875 / (1.125 * 1.125) * 2 * 11e-6 * 280 * 127 * 4;
        Assert.Equal(expected, (hot.Pad!.Value - cold.Pad!.Value).Millimeters, 1e-6);
        Assert.Contains(hot.Parts, part => part.Name == "growth of the hot drums");
        Assert.DoesNotContain(cold.Parts, part => part.Name == "growth of the hot drums");
        Assert.Null(Of(Car("track-coupe")).TravelAt(master, drumsHot: true));
    }
}
