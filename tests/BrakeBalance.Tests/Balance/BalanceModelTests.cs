using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Balance;

/// <summary>
/// The balance at its edges: lift-off, no lock-up, engine braking, aerodynamics, load-sensing valves and load-sensitive tyres.
/// </summary>
public class BalanceModelTests
{
    private const double Weight = 10_000;

    private static readonly Vehicle Plain = TestCars.FixedShare(0.65, 2.5, 1.2, 0.5, Weight);

    private static readonly LoadSensingValve LoadSensing = new()
    {
        KneeAtReference = Pressure.FromBars(40),
        ReferenceLoad = Force.FromKilonewtons(4),
        KneePerKilonewton = Pressure.FromBars(15),
        Slope = 0.3,
        LowestKnee = Pressure.FromBars(3),
    };

    [Fact]
    public void Rear_wheels_leave_the_road_when_load_transfer_equals_their_static_load()
    {
        BalanceModel model = Plain.Model();
        Assert.Equal(1.2 / 0.5, model.RearLiftOffRate, 1e-12);
        Assert.Equal(0, model.NormalReactions(2.5).Rear.Newtons);
        Assert.Equal(Weight, model.NormalReactions(2.5).Front.Newtons, 1e-6);
        BalancePoint beyond = model.AtRate(2.45)!;
        Assert.Null(beyond.AdhesionUtilisation.Rear);
        Assert.Equal(0.65 * 2.45, beyond.AdhesionUtilisation.Front!.Value, 1e-9);
    }

    [Fact]
    public void Lift_off_is_one_of_the_bends() =>
        Assert.Contains(Plain.Model().Kinks, kink => Math.Abs(kink.Bars - 240) < 1e-6);

    [Fact]
    public void Front_brakes_alone_lock_the_front_even_where_the_rear_wheels_are_in_the_air()
    {
        // High and short: lift-off at 0.8, adhesion 1.2.
        LockUp lockUp = TestCars.FixedShare(0.65, 2.0, 0.8, 1.0, Weight).WithoutCircuit(Axle.Rear).Model().FirstLockUp(1.2)!;
        Assert.Equal(Axle.Front, lockUp.First);
        Assert.Equal(1.2, lockUp.At.BrakingRate, 1e-9);
        Assert.Equal(0, lockUp.At.NormalReactions.Rear.Newtons);
        Assert.Equal(0, lockUp.At.BrakingForces.Rear.Newtons);
    }

    [Fact]
    public void No_axle_locks_when_the_pressure_does_not_suffice()
    {
        Vehicle weak = Plain with { Hydraulics = Plain.Hydraulics with { MaximumPressure = Pressure.FromBars(60) } };
        Assert.Null(weak.Model().FirstLockUp(0.9));
        Assert.NotNull(weak.Model().FirstLockUp(0.4));
        Assert.Null(weak.Model().AtRate(0.61));
        Assert.NotNull(weak.Model().AtRate(0.59));
    }

    [Fact]
    public void Both_axles_lock_together_on_the_adhesion_where_the_curves_cross()
    {
        double critical = Assert.Single(Plain.Model().IdealCrossings()).BrakingRate;
        LockUp lockUp = Plain.Model().FirstLockUp(critical)!;
        Assert.Null(lockUp.First);
        Assert.True(lockUp.FrontFirstOrTogether);
        Assert.Equal(1, lockUp.Efficiency, 1e-6);
    }

    [Theory]
    [InlineData(Axle.Front)]
    [InlineData(Axle.Rear)]
    public void Engine_braking_locks_the_driven_axle_on_ice_without_a_foot_on_the_pedal(Axle driven)
    {
        Vehicle car = Plain with { EngineBraking = new EngineBraking { DrivenAxle = driven, BrakingForce = Force.FromNewtons(400) } };
        LockUp lockUp = car.Model().FirstLockUp(0.05)!;
        Assert.Equal(driven, lockUp.First);
        Assert.Equal(0, lockUp.At.MasterPressure.Pascals);
        Assert.Equal(0.04, lockUp.At.BrakingRate, 1e-9);
        Assert.InRange(lockUp.Efficiency, 0, 1);
    }

    [Fact]
    public void Engine_braking_adds_to_its_axle_only()
    {
        Vehicle car = Plain with { EngineBraking = new EngineBraking { DrivenAxle = Axle.Rear, BrakingForce = Force.FromNewtons(350) } };
        PerAxle<Force> forces = car.Model().At(Pressure.FromBars(40)).BrakingForces;
        Assert.Equal(2600, forces.Front.Newtons, 1e-6);
        Assert.Equal(1750, forces.Rear.Newtons, 1e-6);
        Assert.Null(car.Model().AtRate(0.03));
    }

    [Fact]
    public void Threshold_pressure_is_taken_off_before_any_force()
    {
        Vehicle car = Plain with
        {
            Brakes = Plain.Brakes.Select<BrakeBalance.Brakes.Brake>(brake =>
            brake with { ThresholdPressure = Pressure.FromBars(4) })
        };
        Assert.Equal(0, car.Model().At(Pressure.FromBars(3.9)).BrakingRate);
        Assert.Equal(0.36, car.Model().At(Pressure.FromBars(40)).BrakingRate, 1e-9);
        Assert.Equal(40, car.Model().AtRate(0.36)!.MasterPressure.Bars, 1e-6);
    }

    [Fact]
    public void Rolling_resistance_and_drag_brake_without_the_brakes()
    {
        Vehicle car = Plain with
        {
            RollingResistanceCoefficient = 0.015,
            Aerodynamics = new Aerodynamics { DragArea = Area.FromSquareMeters(0.8) }
        };
        Speed speed = Speed.FromMetersPerSecond(40);

        // 0.015·10 000 N + ½·1.225·40²·0.8 N.
        Assert.Equal((150 + 784) / Weight, car.Model(speed).At(Pressure.Zero).BrakingRate, 1e-9);
        Assert.Equal(0.015, car.Model().At(Pressure.Zero).BrakingRate, 1e-12);
        Assert.Equal(0.8 + 0.0934, car.Model(speed).GreatestRate(0.8), 1e-9);
        PerAxle<Force> ideal = car.Model(speed).IdealForces(0.05);
        Assert.Equal(0, (ideal.Front + ideal.Rear).Newtons, 1e-9);
    }

    [Fact]
    public void Lift_takes_load_and_downforce_gives_it()
    {
        Vehicle lift = Plain with
        {
            Aerodynamics = new Aerodynamics
            {
                DragArea = Area.Zero,
                FrontLiftArea = Area.FromSquareMeters(0.5),
                RearLiftArea = Area.FromSquareMeters(-0.4)
            }
        };
        BalanceModel model = lift.Model(Speed.FromMetersPerSecond(40));

        // ½·1.225·40² = 980 Pa.
        Assert.Equal(5200 - 490, model.StaticAxleLoads.Front.Newtons, 1e-6);
        Assert.Equal(4800 + 392, model.StaticAxleLoads.Rear.Newtons, 1e-6);
        Assert.Equal(0.8 * (Weight - 98) / Weight, model.GreatestRate(0.8), 1e-9);
    }

    [Fact]
    public void Lift_that_takes_an_axle_off_the_road_is_said_in_words()
    {
        Vehicle kite = Plain with { Aerodynamics = new Aerodynamics { DragArea = Area.Zero, FrontLiftArea = Area.FromSquareMeters(2) } };
        string message = Assert.Throws<ArgumentException>(() => kite.Model(Speed.FromKilometersPerHour(300))).Message;
        Assert.Contains("300 km/h", message);
        Assert.Contains("front axle off the road", message);
    }

    [Fact]
    public void Centre_of_gravity_outside_the_wheelbase_is_said_in_words()
    {
        string message = Assert.Throws<ArgumentException>(() => TestCars.FixedShare(0.6, 2.5, 2.6, 0.5).Model()).Message;
        Assert.Contains("outside the wheelbase", message);
        Assert.Contains("2.6 m", message);
        Assert.Contains("2.5 m", message);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-0.1)]
    [InlineData(2.1)]
    [InlineData(double.NaN)]
    public void Impossible_adhesion_is_refused(double adhesion) =>
        Assert.Equal("adhesion", Assert.Throws<ArgumentOutOfRangeException>(() => Plain.Model().FirstLockUp(adhesion)).ParamName);

    [Fact]
    public void Negative_pressure_and_speed_are_refused()
    {
        Assert.Equal("master", Assert.Throws<ArgumentOutOfRangeException>(() => Plain.Model().At(Pressure.FromBars(-1))).ParamName);
        Assert.Equal("speed", Assert.Throws<ArgumentOutOfRangeException>(() => Plain.Model(Speed.FromMetersPerSecond(-1))).ParamName);
    }

    [Fact]
    public void Knee_of_the_valve_is_found_in_pressure_force_and_rate()
    {
        Vehicle car = Plain.WithRearValves(new ProportioningValve { Knee = Pressure.FromBars(45), Slope = 0.4 });
        BalancePoint knee = Assert.Single(car.Model().RearKnees());
        Assert.Equal(45, knee.MasterPressure.Bars, 1e-4);
        Assert.Equal(0.45, knee.BrakingRate, 1e-6);
        Assert.Equal(0.65 * 4500, knee.BrakingForces.Front.Newtons, 1e-2);
    }

    [Fact]
    public void Knee_beyond_the_highest_pressure_is_not_a_knee() =>
        Assert.Empty(Plain.WithRearValves(new ProportioningValve { Knee = Pressure.FromBars(260), Slope = 0.4 }).Model().RearKnees());

    [Fact]
    public void Two_valves_in_series_have_two_knees_and_the_metering_valve_none()
    {
        BalanceModel model = Plain
            .WithRearValves(
                new MeteringValve { OpeningPressure = Pressure.FromBars(2), BlendPressure = Pressure.FromBars(8) },
                new ProportioningValve { Knee = Pressure.FromBars(30), Slope = 0.5 },
                new LimitingValve { Limit = Pressure.FromBars(50) })
            .Model();
        Assert.Equal([30.0, 70.0], model.RearKnees().Select(knee => Math.Round(knee.MasterPressure.Bars, 3)));
        Assert.Equal(0.35 * 5000, model.At(Pressure.FromBars(200)).BrakingForces.Rear.Newtons, 1e-6);
    }

    [Fact]
    public void Hold_off_valve_in_the_front_line_lets_the_rear_lead_at_the_start()
    {
        BalanceModel model = Plain.WithFrontValves(
            new MeteringValve { OpeningPressure = Pressure.FromBars(7), BlendPressure = Pressure.FromBars(20) }).Model();
        Assert.Equal(0, model.At(Pressure.FromBars(7)).BrakingForces.Front.Newtons);
        Assert.True(model.At(Pressure.FromBars(7)).BrakingForces.Rear > Force.Zero);
        Assert.Equal(Axle.Rear, model.FirstLockUp(0.04)!.First);
        Assert.Equal(Axle.Front, model.FirstLockUp(0.5)!.First);
        Assert.NotNull(model.FirstRearLedRate(0.02, 0.8));
    }

    [Theory]
    [InlineData(20)]
    [InlineData(60)]
    [InlineData(120)]
    [InlineData(240)]
    public void Load_sensing_valve_and_rear_load_agree_with_each_other(double bars)
    {
        Vehicle car = Plain.WithRearValves(LoadSensing);
        BalancePoint at = car.Model().At(Pressure.FromBars(bars));
        Assert.Equal(LoadSensing.OutletPressure(Pressure.FromBars(bars), at.NormalReactions.Rear).Bars, at.LinePressures.Rear.Bars, 1e-6);
        Assert.Equal(0.35 * 100 * at.LinePressures.Rear.Bars, at.BrakingForces.Rear.Newtons, 1e-3);
        Assert.Equal(Weight, (at.NormalReactions.Front + at.NormalReactions.Rear).Newtons, 1e-6);
    }

    [Fact]
    public void Load_sensing_valve_gives_a_laden_rear_axle_more_pressure()
    {
        Vehicle car = Plain.WithRearValves(LoadSensing);
        var light = new BalanceModel(car, TestCars.Load("light", 10_000, 1.0, 0.5));
        var laden = new BalanceModel(car, TestCars.Load("laden", 14_000, 1.4, 0.5));
        var pressure = Pressure.FromBars(80);
        Assert.True(laden.At(pressure).LinePressures.Rear > light.At(pressure).LinePressures.Rear + Pressure.FromBars(5));
        Assert.True(laden.RearKnees()[0].MasterPressure > light.RearKnees()[0].MasterPressure);
    }

    [Fact]
    public void Lock_up_with_a_load_sensing_valve_meets_the_limit_of_the_axle_that_locks()
    {
        BalanceModel model = Plain.WithRearValves(LoadSensing).Model();
        foreach (double adhesion in new[] { 0.2, 0.5, 0.9, 1.2 })
        {
            LockUp lockUp = model.FirstLockUp(adhesion)!;
            double used = Math.Max(lockUp.At.AdhesionUtilisation.Front!.Value, lockUp.At.AdhesionUtilisation.Rear!.Value);
            Assert.Equal(adhesion, used, 1e-6);
            Assert.Equal(lockUp.At.BrakingRate, model.AtRate(lockUp.At.BrakingRate)!.BrakingRate, 1e-8);
        }
    }

    [Fact]
    public void Load_sensitive_tyres_cost_the_loaded_axle_adhesion()
    {
        Vehicle car = Plain with
        {
            Tyres = Plain.Tyres.Select(tyre =>
            tyre with { LoadSensitivity = 0.1, ReferenceLoad = Force.FromNewtons(2500) })
        };
        BalanceModel model = car.Model();
        LockUp lockUp = model.FirstLockUp(0.5)!;
        Assert.Equal(Axle.Front, lockUp.First);
        double wheel = lockUp.At.NormalReactions.Front.Newtons / 2;
        Assert.Equal(0.5 * (1 - 0.1 * (wheel / 2500 - 1)), lockUp.At.AdhesionUtilisation.Front!.Value, 1e-6);
        Assert.True(lockUp.At.BrakingRate < Plain.Model().FirstLockUp(0.5)!.At.BrakingRate);
        Assert.True(model.GreatestRate(0.8) < 0.8);
        PerAxle<Force> ideal = model.IdealForces(model.GreatestRate(0.8));
        Assert.Equal(model.FrontForceAtLimit(0.8, ideal.Rear)!.Value.Newtons, ideal.Front.Newtons, 1e-3);
        Assert.Equal(model.RearForceAtLimit(0.8, ideal.Front).Newtons, ideal.Rear.Newtons, 1e-3);
    }

    [Fact]
    public void Better_front_tyres_move_the_first_lock_up_to_the_rear()
    {
        Vehicle car = Plain with { Tyres = new(Plain.Tyres.Front with { AdhesionFactor = 1.5 }, Plain.Tyres.Rear) };
        Assert.Equal(Axle.Front, Plain.Model().FirstLockUp(0.5)!.First);
        Assert.Equal(Axle.Rear, car.Model().FirstLockUp(0.5)!.First);
    }

    [Fact]
    public void Front_that_gains_load_faster_than_it_needs_has_no_limit_and_an_unloaded_rear_limits_at_zero()
    {
        BalanceModel model = TestCars.FixedShare(0.65, 2.0, 0.8, 1.2, Weight).Model();
        Assert.Null(model.FrontForceAtLimit(1.8, Force.Zero));
        Assert.Equal(0, model.RearForceAtLimit(0.8, Force.FromNewtons(9000)).Newtons);
    }

    [Fact]
    public void First_rear_led_rate_is_the_crossing()
    {
        double crossing = Assert.Single(Plain.Model().IdealCrossings()).BrakingRate;
        Assert.Null(Plain.Model().FirstRearLedRate(0.05, crossing - 0.01));
        Assert.Equal(crossing, Plain.Model().FirstRearLedRate(0.05, 1.2)!.Value, 0.01);
        Assert.Null(Plain.Model().FirstRearLedRate(2.6, 2.7));
    }

    [Fact]
    public void Rear_led_from_the_engine_alone_is_found_below_the_first_pressure()
    {
        Vehicle car = Plain with { EngineBraking = new EngineBraking { DrivenAxle = Axle.Rear, BrakingForce = Force.FromNewtons(500) } };
        Assert.Equal(0.05, car.Model().FirstRearLedRate(0.02, 0.8)!.Value, 1e-12);
        Assert.Null(car.Model().FirstRearLedRate(0.01, 0.04));
    }
}
