using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Stops;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Stops;

public class LoadSensingStopTests
{
    // 12 kN car, 46 % on the rear axle; the knee is 43 bar at the static rear load and 13 bar at 0.8 g. Slope 0.2.
    private static readonly LoadSensingValve Valve = new()
    {
        KneeAtReference = Pressure.FromBars(20),
        ReferenceLoad = Force.FromKilonewtons(4),
        KneePerKilonewton = Pressure.FromBars(15),
        Slope = 0.2,
        LowestKnee = Pressure.FromBars(2),
    };

    private static Vehicle Car(LoadSensingValve? valve = null) =>
        TestCars.With(100, 80, 2.6, 1.2, 0.55, 12_000).WithRearValves(valve ?? Valve) with
        {
            AxleDynamics = new(Light(), Light()),
            Dynamics = new VehicleDynamics { EmergencyRiseTime = Duration.FromSeconds(0.5), AssistLag = Duration.Zero },
        };

    private static AxleDynamics Light() => new() { WheelInertia = MassMomentOfInertia.FromKilogramSquareMeters(0.01) };

    private static StopSetup Setup(Vehicle car, double adhesion = 0.9) => StopSetup.From(car, car.LoadCases[0], adhesion);

    private static StopResult Held(StopSetup setup, double bars, bool atOnce = false) => StraightStop.Run(
        setup.Car, new EmergencyDriver { HeldPressure = Pressure.FromBars(bars) }, atOnce ? PressureBuildUp.Instant : setup.BuildUp,
            Speed.FromKilometersPerHour(100));

    [Fact]
    public void The_rear_brakes_follow_the_knee_of_the_load_of_that_moment()
    {
        StopResult stop = Held(Setup(Car()), 60);
        Assert.True(stop.Trace.Count > 50);
        Assert.All(stop.Trace, s =>
        {
            double inlet = s.LinePressurePascals / 1e5;
            double knee = Math.Max(2, 20 + 15 * (s.NormalReactionNewtons.Rear / 1000 - 4));
            double outlet = Math.Min(inlet, knee + 0.2 * (inlet - knee));
            Assert.Equal(80 * 0.3 * outlet, s.BrakingTorqueNewtonMetres.Rear, 0.01);
        });
    }

    [Fact]
    public void The_axle_that_the_balance_names_locks_first_in_the_stop_where_a_frozen_valve_would_lock_the_other()
    {
        Vehicle car = Car();
        Assert.Equal(Axle.Front, car.Model().FirstLockUp(0.9)!.First);
        Assert.Equal(Axle.Front, Held(Setup(car), 120).FirstLock);
        double frozen = Valve.KneeAt(car.Model().StaticAxleLoads.Rear).Bars;
        Vehicle stuck = car.WithRearValves(new ProportioningValve { Knee = Pressure.FromBars(frozen), Slope = 0.2 });
        Assert.Equal(Axle.Rear, Held(Setup(stuck), 120).FirstLock);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(60)]
    [InlineData(150)]
    public void Steady_lock_is_that_of_the_balance(double kmh)
    {
        Vehicle car = Car() with
        {
            Aerodynamics = new Aerodynamics
            {
                DragArea = Area.FromSquareMeters(0.8),
                FrontLiftArea = Area.FromSquareMeters(0.2),
                RearLiftArea = Area.FromSquareMeters(0.3)
            },
        };
        var speed = Speed.FromKilometersPerHour(kmh);
        foreach (double adhesion in new[] { 0.2, 0.5, 0.9 })
        {
            LockUp balance = car.Model(speed).FirstLockUp(adhesion)!;
            (Pressure pressure, Axle axle) = LockPressure.Lowest(Setup(car, adhesion).Car, speed)!.Value;
            Assert.Equal(balance.First, axle);
            Assert.Equal(balance.At.MasterPressure.Pascals, pressure.Pascals, 1e-3 * pressure.Pascals);
        }
    }

    // Pressure and deceleration all but constant from the start: the sensed load falls to the dynamic one as e^(−t/τ).
    [Fact]
    public void A_valve_with_a_lag_follows_the_load_with_its_time_constant()
    {
        StopResult stop = Held(Setup(Car(Valve with { Lag = Duration.FromSeconds(0.4) })), 60, atOnce: true);
        double fixedLoad = 12_000 * 1.2 / 2.6;
        foreach (double time in new[] { 0.2, 0.4, 0.8, 1.6 })
        {
            StopSample at = stop.Trace.MinBy(s => Math.Abs(s.TimeSeconds - time));
            StopSample[] before = [.. stop.Trace.Where(s => s.TimeSeconds <= at.TimeSeconds)];
            double sensed = fixedLoad;
            for (int i = 1; i < before.Length; i++)
            {
                double mean = 0.5 * (before[i].NormalReactionNewtons.Rear + before[i - 1].NormalReactionNewtons.Rear);
                sensed = mean + (sensed - mean) * Math.Exp(-(before[i].TimeSeconds - before[i - 1].TimeSeconds) / 0.4);
            }

            double knee = 20 + 15 * (sensed / 1000 - 4);
            double outlet = Math.Min(60, knee + 0.2 * (60 - knee));
            Assert.Equal(80 * 0.3 * outlet, at.BrakingTorqueNewtonMetres.Rear, 8.0);
        }

        Assert.True(stop.Trace.First(s => s.TimeSeconds > 0.05).BrakingTorqueNewtonMetres.Rear
            > 1.2 * stop.Trace.Last(s => s.SpeedMetresPerSecond > 5).BrakingTorqueNewtonMetres.Rear);
    }

    [Fact]
    public void In_the_fade_cycle_the_front_share_is_that_of_the_balance_at_the_held_pressure()
    {
        Vehicle car = Car();
        StopSetup setup = Setup(car);
        HeatResult heat = BrakeHeat.Run(
            setup.Car, new(setup.Heat.Front with { Fade = FadeCurve.None }, setup.Heat.Rear with { Fade = FadeCurve.None }),
            HeatCycle.TypeOne(setup.MaximumSpeed), Temperature.FromDegreesCelsius(20), setup.Fluid);
        HeatStop stop = heat.Stops[0];
        PerAxle<Force> forces = car.Model().At(stop.LinePressure).BrakingForces;
        Assert.Equal(forces.Front / (forces.Front + forces.Rear), stop.FrontShare!.Value, 1e-3);
    }

    [Fact]
    public void A_study_without_spread_repeats_the_single_stop()
    {
        Vehicle car = Car();
        var plan = new StopStudyPlan { Stops = 2, LowestAdhesion = 0.8, HighestAdhesion = 0.8, FrictionSpread = 0 };
        StopSetup setup = StopSetup.From(car, car.LoadCases[0], 0.8, BrakeBalance.Tyres.PublishedSlipCurves.DryAsphalt);
        var rate = PressureChangeRate.FromPascalsPerSecond(setup.EmergencyPressure.Pascals / 2);
        StopResult single = StraightStop.Run(
            setup.Car, setup.Emergency, setup.BuildUp with { RampRate = rate }, plan.InitialSpeed);
        Assert.All(StopStudy.Run(car, plan).Stops, s => Assert.Equal((single.FirstLock, single.Distance.Meters),
            (s.FirstLock, s.DistanceMetres)));
        Assert.Equal(Axle.Front, single.FirstLock);
    }
}
