using System.Diagnostics;
using BrakeBalance.Stops;
using BrakeBalance.Tyres;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;
using static BrakeBalance.Tests.Stops.Cars;

namespace BrakeBalance.Tests.Stops;

public class StraightStopTests
{
    [Theory]
    [InlineData(50, 0.8)]
    [InlineData(100, 0.8)]
    [InlineData(200, 1.1)]
    [InlineData(60, 0.1)]
    public void Locked_wheels_on_constant_adhesion_need_half_speed_squared_over_adhesion_and_gravity(double kmh, double adhesion)
    {
        StopResult stop = StraightStop.Run(Coupe(ConstantAdhesion(adhesion)), Emergency(400), PressureBuildUp.Instant, Kmh(kmh));
        double v = kmh / 3.6;
        Assert.Equal(1, v * v / (2 * adhesion * Gravity.StandardMetresPerSecondSquared) / stop.Distance.Meters, 0.004);
        Assert.Equal(1, v / (adhesion * Gravity.StandardMetresPerSecondSquared) / stop.Duration.Seconds, 0.004);
    }

    [Fact]
    public void Below_lock_the_force_is_torque_over_radius_and_the_wheels_add_their_inertia()
    {
        // 30 bar: 1920 N·m over 0.32 m = 6000 N; the wheels' inertia adds 4/0.32² = 39.06 kg to 1700 kg while slip is small.
        StopResult stop = StraightStop.Run(Coupe(), Emergency(30), PressureBuildUp.Instant, Kmh(100));
        double deceleration = 6000 / (1700 + 4 / 0.1024);
        Assert.Equal(deceleration, stop.Trace[stop.Trace.Count / 2].DecelerationMetresPerSecondSquared, 0.01);
        Assert.Equal(27.7778 * 27.7778 / (2 * deceleration), stop.Distance.Meters, 0.3);
        Assert.Null(stop.FirstLock);
    }

    public static TheoryData<string> Setups =>
        ["front first", "rear first", "pitch", "load sensitive", "aero, grade, engine", "anti-lock", "threshold", "ice"];

    private static (BrakedCar Car, Driver Driver) Setup(string name)
    {
        BrakedCar coupe = Coupe();
        return name switch
        {
            "front first" => (coupe, Emergency()),
            "rear first" => (RearFirst(), Emergency()),
            "pitch" => (coupe with { Pitch = new PitchDynamics { NaturalFrequency = Frequency.FromHertz(1.5), DampingRatio = 0.35 } },
                Emergency()),
            "load sensitive" => (Coupe(PublishedSlipCurves.PassengerCarTyre), Emergency()),
            "aero, grade, engine" => (coupe with
            {
                DragArea = Area.FromSquareMeters(0.8),
                LiftArea = new(Area.FromSquareMeters(-0.3), Area.FromSquareMeters(-0.5)),
                RollingResistance = 0.015,
                Grade = Angle.FromDegrees(-3),
                Axles = coupe.Axles with { Rear = coupe.Axles.Rear with { EngineBrakingTorque = Torque.FromNewtonMeters(250) } },
            }, Emergency()),
            "anti-lock" => (coupe, new AntilockBound { HeldPressure = Pressure.FromBars(120), Efficiency = 0.95 }),
            "threshold" => (coupe, new ThresholdDriver()),
            _ => (Coupe(PublishedSlipCurves.Ice), Emergency()),
        };
    }

    [Theory]
    [MemberData(nameof(Setups))]
    public void Work_equals_energy_within_half_a_percent(string name)
    {
        (BrakedCar car, Driver driver) = Setup(name);
        StopResult stop = StraightStop.Run(car, driver, new PressureBuildUp(), Kmh(120));
        Assert.InRange(stop.Energy.Imbalance, -0.005, 0.005);
    }

    [Theory]
    [MemberData(nameof(Setups))]
    public void A_tighter_tolerance_moves_the_distance_by_less_than_a_thousandth(string name)
    {
        (BrakedCar car, Driver driver) = Setup(name);
        StopResult usual = StraightStop.Run(car, driver, new PressureBuildUp(), Kmh(120));
        StopResult tight = StraightStop.Run(car, driver, new PressureBuildUp(), Kmh(120), withTrace: false, relativeTolerance: 2e-7);
        Assert.Equal(tight.Distance.Meters, usual.Distance.Meters, 1e-3 * tight.Distance.Meters);
        Assert.Equal(tight.FirstLock, usual.FirstLock);
        if (tight.FirstLock is { } first)
        {
            Assert.Equal(tight.Locks[first]!.Time.Seconds, usual.Locks[first]!.Time.Seconds, 0.005);
        }
    }

    [Fact]
    public void The_axle_that_the_steady_balance_names_locks_first()
    {
        Assert.Equal(Axle.Front, StraightStop.Run(Coupe(), Emergency(), new PressureBuildUp(), Kmh(100)).FirstLock);
        Assert.Equal(Axle.Rear, StraightStop.Run(RearFirst(), Emergency(), new PressureBuildUp(), Kmh(100)).FirstLock);
        Assert.Equal(Axle.Front, LockPressure.Lowest(Coupe(), Speed.Zero)!.Value.Axle);
        Assert.Equal(Axle.Rear, LockPressure.Lowest(RearFirst(), Speed.Zero)!.Value.Axle);
    }

    [Fact]
    public void Steady_lock_pressure_agrees_with_the_closed_form_of_the_locking_limit()
    {
        // T₁ = μ (P₁ + z h/E P) with T₁/T₂ fixed: z = μ b/E / (β − μ h/E), β the front share of force.
        double beta = 5000.0 / 6400;
        double z = 0.9 * 0.56 / (beta - 0.9 * 0.55 / 2.9);
        double pascals = z * 1700 * Gravity.StandardMetresPerSecondSquared * 0.32 / 6400 * 1e7;
        Assert.Equal(pascals, LockPressure.Lowest(Coupe(), Speed.Zero)!.Value.LinePressure.Pascals, pascals * 1e-6);
    }

    [Fact]
    public void A_panic_stop_needs_more_road_than_a_threshold_stop_and_that_more_than_the_bound()
    {
        double emergency = Distance(Emergency());
        double threshold = Distance(new ThresholdDriver { Margin = 0.97 });
        double bound = Distance(new AntilockBound { HeldPressure = Pressure.FromBars(120) });
        Assert.True(bound < threshold && threshold < emergency, $"{bound} {threshold} {emergency}");

        static double Distance(Driver driver) => StraightStop.Run(Coupe(), driver, new PressureBuildUp(), Kmh(100)).Distance.Meters;
    }

    [Property(MaxTest = 60)]
    public Property A_threshold_driver_never_locks_an_axle() => Prop.ForAll(
        Gen.Choose(30, 120).Zip(Gen.Choose(20, 90)).Zip(Gen.Choose(40, 180)).ToArbitrary(),
        drawn =>
        {
            SlipCurve tyre = PublishedSlipCurves.DryAsphalt.ScaledToPeak(drawn.Item1.Item1 / 100.0, Force.FromKilonewtons(4));
            BrakedCar car = Coupe(tyre, 3000, 30 * drawn.Item1.Item2);
            return StraightStop.Run(car, new ThresholdDriver { Margin = 0.9 }, new PressureBuildUp(), Kmh(drawn.Item2),
                withTrace: false).FirstLock is null;
        });

    [Property(MaxTest = 60)]
    public Property No_stop_beats_the_peak_adhesion_and_more_adhesion_never_lengthens_it() => Prop.ForAll(
        Gen.Choose(20, 110).Zip(Gen.Choose(5, 60)).Zip(Gen.Choose(40, 200)).ToArbitrary(),
        drawn =>
        {
            double peak = drawn.Item1.Item1 / 100.0;
            Speed speed = Kmh(drawn.Item2);
            double Distance(double adhesion) => StraightStop.Run(
                Coupe(PublishedSlipCurves.DryAsphalt.ScaledToPeak(adhesion, Force.FromKilonewtons(4)), 4000, 70 * drawn.Item1.Item2),
                Emergency(), new PressureBuildUp(), speed, withTrace: false).Distance.Meters;
            double distance = Distance(peak);
            double v = speed.MetersPerSecond;
            return distance > v * v / (2 * peak * Gravity.StandardMetresPerSecondSquared) && Distance(peak + 0.1) < distance * 1.001;
        });

    [Fact]
    public void Every_normal_reaction_pair_sums_to_the_weight()
    {
        StopResult stop = StraightStop.Run(Coupe(), Emergency(), new PressureBuildUp(), Kmh(100));
        Assert.All(stop.Trace, s => Assert.Equal(
            1700 * Gravity.StandardMetresPerSecondSquared, s.NormalReactionNewtons.Front + s.NormalReactionNewtons.Rear, 1e-6));
    }

    [Fact]
    public void A_lagging_load_transfer_ends_at_the_steady_one()
    {
        BrakedCar soft = Coupe() with { Pitch = new PitchDynamics { NaturalFrequency = Frequency.FromHertz(1.5), DampingRatio = 0.7 } };
        StopResult pitching = StraightStop.Run(soft, Emergency(30), new PressureBuildUp(), Kmh(120));
        StopResult stiff = StraightStop.Run(Coupe(), Emergency(30), new PressureBuildUp(), Kmh(120));
        StopSample late = pitching.Trace.Last(s => s.SpeedMetresPerSecond > 5);
        Assert.Equal(stiff.Trace.Last(s => s.SpeedMetresPerSecond > 5).NormalReactionNewtons.Front, late.NormalReactionNewtons.Front, 20.0);
        Assert.Equal(stiff.Distance.Meters, pitching.Distance.Meters, 0.1);
    }

    [Fact]
    public void Brakes_weaker_than_a_slope_are_said_in_words()
    {
        BrakedCar downhill = Coupe() with { Grade = Angle.FromDegrees(-15) };
        var error = Assert.Throws<InvalidOperationException>(() => StraightStop.Run(downhill, Emergency(5), new PressureBuildUp(),
            Kmh(50)));
        Assert.Contains("still moves", error.Message);
        var weak = Assert.Throws<InvalidOperationException>(() =>
            StraightStop.Run(Coupe(frontTorque: 100, rearTorque: 100), new ThresholdDriver(), new PressureBuildUp(), Kmh(50)));
        Assert.Contains("no threshold", weak.Message);
    }

    [Fact]
    public void A_stop_takes_less_than_ten_milliseconds_even_on_a_loaded_machine()
    {
        BrakedCar car = Coupe();
        Driver driver = Emergency();
        var buildUp = new PressureBuildUp();
        for (int i = 0; i < 20; i++)
        {
            StraightStop.Run(car, driver, buildUp, Kmh(100));
        }

        double best = double.PositiveInfinity;
        for (int i = 0; i < 20; i++)
        {
            var watch = Stopwatch.StartNew();
            StraightStop.Run(car, driver, buildUp, Kmh(100));
            best = Math.Min(best, watch.Elapsed.TotalMilliseconds);
        }

        Assert.InRange(best, 0, 10);
    }
}
