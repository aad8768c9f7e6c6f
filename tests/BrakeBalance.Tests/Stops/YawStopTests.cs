using System.Diagnostics;
using BrakeBalance.Stops;
using BrakeBalance.Tyres;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using MathNet.Numerics.LinearAlgebra;
using UnitsNet;
using static BrakeBalance.Tests.Stops.Cars;

namespace BrakeBalance.Tests.Stops;

public class YawStopTests
{
    private static readonly Pressure Firm = Pressure.FromBars(120);

    [Fact]
    public void Without_a_disturbance_it_is_the_straight_stop()
    {
        StopResult straight = StraightStop.Run(Coupe(), Emergency(), new PressureBuildUp(), Kmh(100));
        YawResult free = YawStop.Run(Coupe(), Firm, new PressureBuildUp(), Kmh(100), new YawDisturbance());
        Assert.Equal(straight.Distance.Meters, free.Distance.Meters, 0.05);
        Assert.Equal(straight.Locks.Front!.Time.Seconds, free.LockTimes.Front!.Value.Seconds, 0.003);
        Assert.Equal(straight.Locks.Rear!.Time.Seconds, free.LockTimes.Rear!.Value.Seconds, 0.01);
        Assert.Equal(0, free.FinalHeading.Degrees);
    }

    [Theory]
    [InlineData(60)]
    [InlineData(100)]
    [InlineData(150)]
    public void A_locked_rear_axle_swaps_the_ends_and_a_locked_front_axle_does_not(double kmh)
    {
        YawResult rear = YawStop.Run(YawStop.WithOnlyLocked(Coupe(), Axle.Rear), Firm, new PressureBuildUp(), Kmh(kmh),
            YawDisturbance.Crown);
        YawResult front = YawStop.Run(YawStop.WithOnlyLocked(Coupe(), Axle.Front), Firm, new PressureBuildUp(), Kmh(kmh),
            YawDisturbance.Crown);
        YawResult none = YawStop.Run(Coupe(), Pressure.FromBars(40), new PressureBuildUp(), Kmh(kmh), YawDisturbance.Crown);
        Assert.True(rear.SwapsEnds);
        Assert.False(front.SwapsEnds);
        Assert.False(none.SwapsEnds);
        Assert.True(front.GreatestSideslip < Angle.FromDegrees(10), front.GreatestSideslip.ToString());
    }

    [Fact]
    public void The_spin_grows_at_the_rate_of_the_linear_single_track_car()
    {
        // Sideslip β and yaw rate r of a car rolling in front and sliding behind, at constant speed for small angles: a locked wheel is
        // pulled against its velocity, so its force per slip angle is μ N₂; the front tyre has its slip stiffness. The unstable
        // eigenvalue of the two linear equations comes from MathNet.
        SlipCurve tyre = PublishedSlipCurves.DryAsphalt.ScaledToPeak(0.9, Force.FromKilonewtons(4));
        BrakedCar car = YawStop.WithOnlyLocked(Coupe(tyre), Axle.Rear) with { CentreOfGravityHeight = Length.Zero };
        var gentle = new YawDisturbance { InitialYawRate = RotationalSpeed.FromRadiansPerSecond(1e-5) };
        YawResult spin = YawStop.Run(car, Firm, PressureBuildUp.Instant, Kmh(200), gentle, true, relativeTolerance: 1e-7);
        YawSample early = spin.Trace.First(s => s.TimeSeconds > 0.5);
        YawSample later = spin.Trace.First(s => s.TimeSeconds > 0.7);
        double speed = 0.5 * (early.SpeedMetresPerSecond + later.SpeedMetresPerSecond);
        double growth = Math.Log(later.YawRateRadiansPerSecond / early.YawRateRadiansPerSecond) / (later.TimeSeconds - early.TimeSeconds);

        double weight = 1700 * Gravity.StandardMetresPerSecondSquared;
        double scale = 0.9 / 1.17;
        double front = 0.5 * scale * (1.2801 * 23.99 - 0.52) * 0.56 * weight;
        double rear = scale * 0.7601 * 0.44 * weight;
        double b = 0.56 * 2.9;
        double a = 2.9 - b;
        double deceleration = rear / 1700;
        double inertia = 1700 * a * b;
        // β = v_y/v changes with the falling speed too: β′ = v_y′/v + β a_x/v.
        Matrix<double> matrix = Matrix<double>.Build.DenseOfArray(new[,]
        {
            { -(front + rear) / (1700 * speed) + deceleration / speed, -1 - (a * front - b * rear) / (1700 * speed * speed) },
            { -(a * front - b * rear) / inertia, -(a * a * front + b * b * rear) / (inertia * speed) },
        });
        double expected = matrix.Evd().EigenValues.Max(e => e.Real);
        Assert.True(expected > 0);
        Assert.Equal(expected, growth, 0.05 * expected);
        Assert.Equal(expected, YawStability.GrowthPerSecond(car, Axle.Rear, Speed.FromMetersPerSecond(speed)), 1e-3 * expected);
    }

    [Theory]
    [InlineData(10)]
    [InlineData(30)]
    [InlineData(60)]
    public void A_locked_rear_axle_is_unstable_at_every_speed_and_a_locked_front_axle_at_none(double metresPerSecond)
    {
        // "Braking Dynamics", sec. 5.1 Braking Stability (thesis chapter, html.pdfcookie.com, read): locked front tyres give drag
        // against the motion and
        // the rolling rear restores; locked at the rear it is the other way round, and any disturbance grows.
        Speed speed = Speed.FromMetersPerSecond(metresPerSecond);
        Assert.True(YawStability.GrowthPerSecond(Coupe(), Axle.Rear, speed) > 1);
        Assert.True(YawStability.GrowthPerSecond(Coupe(), Axle.Front, speed) < 0);
        Assert.True(YawStability.GrowthPerSecond(Coupe(), null, speed) < 0);
    }

    [Fact]
    public void Without_braking_it_turns_unstable_at_the_critical_speed_of_the_single_track_model()
    {
        // Recomputed from the linear single-track model: it diverges when a C₁ > b C₂ and v² > C₁ C₂ L²/(m (a C₁ − b C₂)).
        // A front axle with twice the rear's lateral slip weight makes this coupe oversteer.
        BrakedCar coupe = Coupe();
        BrakedCar loose = coupe with
        {
            Axles = new(coupe.Axles.Front with { LateralSlipWeight = 0.5 }, coupe.Axles.Rear with { LateralSlipWeight = 0.25 }),
        };
        double weight = 1700 * Gravity.StandardMetresPerSecondSquared;
        double perNewton = 0.9 / 1.17002 * (1.2801 * 23.99 - 0.52);
        double front = 0.5 * perNewton * 0.56 * weight;
        double rear = 0.25 * perNewton * 0.44 * weight;
        double b = 0.56 * 2.9;
        double a = 2.9 - b;
        double critical = Math.Sqrt(front * rear * 2.9 * 2.9 / (1700 * (a * front - b * rear)));
        Assert.True(YawStability.GrowthPerSecond(loose, null, Speed.FromMetersPerSecond(0.99 * critical)) < 0);
        Assert.True(YawStability.GrowthPerSecond(loose, null, Speed.FromMetersPerSecond(1.01 * critical)) > 0);
    }

    [Fact]
    public void With_all_wheels_locked_the_car_slides_straight_on_whatever_its_heading()
    {
        SlipCurve tyre = ConstantAdhesion(0.7);
        var turning = new YawDisturbance { InitialYawRate = RotationalSpeed.FromRadiansPerSecond(0.2) };
        YawResult slide = YawStop.Run(Coupe(tyre), Pressure.FromBars(400), PressureBuildUp.Instant, Kmh(80), turning);
        double v = 80 / 3.6;
        Assert.Equal(v * v / (2 * 0.7 * Gravity.StandardMetresPerSecondSquared), slide.Distance.Meters, 0.3);
        Assert.True(Math.Abs(slide.LateralOffset.Meters) < 0.5, slide.LateralOffset.ToString());
    }

    public static TheoryData<string> Cases => ["crown", "split", "steer", "rear only", "front only"];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Work_equals_energy_within_half_a_percent_and_a_tighter_tolerance_agrees(string name)
    {
        BrakedCar car = name switch
        {
            "rear only" => YawStop.WithOnlyLocked(Coupe(), Axle.Rear),
            "front only" => YawStop.WithOnlyLocked(Coupe(), Axle.Front),
            _ => Coupe(),
        };
        YawDisturbance disturbance = name switch
        {
            "split" => new() { AdhesionImbalance = 0.3 },
            "steer" => new() { Steer = Angle.FromDegrees(2) },
            _ => YawDisturbance.Crown,
        };
        YawResult usual = YawStop.Run(car, Firm, new PressureBuildUp(), Kmh(100), disturbance);
        YawResult tight = YawStop.Run(car, Firm, new PressureBuildUp(), Kmh(100), disturbance, false, relativeTolerance: 1e-6);
        Assert.InRange(usual.EnergyImbalance, -0.005, 0.005);
        Assert.Equal(tight.SwapsEnds, usual.SwapsEnds);
        Assert.Equal(tight.Distance.Meters, usual.Distance.Meters, 0.002 * tight.Distance.Meters);
        Assert.Equal(tight.FinalHeading.Degrees, usual.FinalHeading.Degrees, 3.0);
    }

    [Fact]
    public void Square_to_the_road_is_when_the_heading_passes_ninety_degrees()
    {
        YawResult spin = YawStop.Run(YawStop.WithOnlyLocked(Coupe(), Axle.Rear), Firm, new PressureBuildUp(), Kmh(100),
            YawDisturbance.Crown);
        YawSample after = spin.Trace.First(s => Math.Abs(s.HeadingRadians) >= Math.PI / 2);
        YawSample before = spin.Trace.Last(s => s.TimeSeconds < after.TimeSeconds);
        Assert.InRange(spin.SquareToRoadAt!.Value.Seconds, before.TimeSeconds, after.TimeSeconds);
        Assert.True(spin.SidewaysAt > spin.SquareToRoadAt);
    }

    [Fact]
    public void On_split_adhesion_a_car_braked_below_lock_runs_straight_and_a_locked_one_turns_to_the_side_with_grip()
    {
        SlipCurve tyre = PublishedSlipCurves.DryAsphalt.ScaledToPeak(0.6, Force.FromKilonewtons(4));
        YawDisturbance split = YawDisturbance.Split(0.3, 0.9);
        YawResult below = YawStop.Run(Coupe(tyre), Pressure.FromBars(15), new PressureBuildUp(), Kmh(80), split);
        Assert.True(below.StaysInLane && below.StaysWithinYawLimit && below.LockTimes is { Front: null, Rear: null });
        YawResult locked = YawStop.Run(Coupe(tyre), Firm, new PressureBuildUp(), Kmh(80), split);
        Assert.True(locked.GreatestBrakingMoment.NewtonMeters < -20 * Math.Abs(below.GreatestBrakingMoment.NewtonMeters));
        Assert.True(locked is { StaysInLane: false, StaysWithinYawLimit: false });
        Assert.True(locked.Trace.First(s => Math.Abs(s.HeadingRadians) > 0.1).HeadingRadians < 0);
    }

    [Fact]
    public void The_moment_of_split_adhesion_is_half_a_track_times_the_difference_of_the_forces()
    {
        // Every wheel slides on its side's adhesion: ½ t (0.8 − 0.4) ½ W, to the right.
        YawResult slide = YawStop.Run(Coupe(ConstantAdhesion(0.6)), Pressure.FromBars(400), PressureBuildUp.Instant, Kmh(80),
            YawDisturbance.Split(0.4, 0.8));
        double expected = 0.5 * 1.45 * (0.8 - 0.4) * 0.5 * 1700 * Gravity.StandardMetresPerSecondSquared;
        Assert.Equal(-expected, slide.GreatestBrakingMoment.NewtonMeters, 0.01 * expected);
    }

    [Fact]
    public void A_straight_stop_uses_half_a_track_of_the_lane_and_a_spin_leaves_it()
    {
        YawResult straight = YawStop.Run(Coupe(), Pressure.FromBars(40), new PressureBuildUp(), Kmh(100), new YawDisturbance());
        Assert.Equal(1.45 / 2, straight.WidestWheel.Meters, 1e-9);
        Assert.Equal(0, straight.GreatestHeading.Degrees, 1e-9);
        Assert.True(straight is { StaysInLane: true, StaysWithinYawLimit: true });
        YawResult spin = YawStop.Run(YawStop.WithOnlyLocked(Coupe(), Axle.Rear), Firm, new PressureBuildUp(), Kmh(100),
            YawDisturbance.Crown);
        Assert.True(spin is { StaysInLane: false, StaysWithinYawLimit: false });
    }

    [Fact]
    public void Drag_moves_load_while_the_car_slides()
    {
        // Front axle locked on a constant adhesion: F = μ (N₁₀ + (h/E) m a) and m a = F + D − I a/R², the last from the free rear
        // wheels that run on.
        BrakedCar car = YawStop.WithOnlyLocked(Coupe(ConstantAdhesion(0.7)), Axle.Front) with { DragArea = Area.FromSquareMeters(1.2) };
        YawResult slide = YawStop.Run(car, Firm, PressureBuildUp.Instant, Speed.FromMetersPerSecond(70), new YawDisturbance());
        YawSample at = slide.Trace.First(s => s.TimeSeconds > 0.5);
        double drag = 0.5 * 1.225 * 1.2 * Math.Pow(at.SpeedMetresPerSecond, 2);
        double rest = 0.7 * 0.56 * 1700 * Gravity.StandardMetresPerSecondSquared + drag;
        Assert.Equal(rest / (1700 + 2 / (0.32 * 0.32) - 0.7 * 0.55 / 2.9 * 1700), at.DecelerationMetresPerSecondSquared, 2e-3);
    }

    [Property(MaxTest = 20)]
    public Property Mirrored_sides_give_mirrored_paths() => Prop.ForAll(
        Gen.Choose(20, 90).Zip(Gen.Choose(20, 90)).Zip(Gen.Choose(-60, 60)).ToArbitrary(),
        drawn =>
        {
            ((int left, int right), int imbalance) = drawn;
            YawResult one = Run(left / 100.0, right / 100.0, imbalance / 100.0);
            YawResult other = Run(right / 100.0, left / 100.0, -imbalance / 100.0);
            return Math.Abs(one.LateralOffset.Meters + other.LateralOffset.Meters) < 1e-6
                && Math.Abs(one.FinalHeading.Degrees + other.FinalHeading.Degrees) < 1e-5
                && Math.Abs((one.GreatestBrakingMoment + other.GreatestBrakingMoment).NewtonMeters) < 1e-4;

            YawResult Run(double l, double r, double strongerRight)
            {
                SlipCurve tyre = PublishedSlipCurves.DryAsphalt.ScaledToPeak(0.5 * (l + r), Force.FromKilonewtons(4));
                BrakedCar car = Coupe(tyre);
                car = car with { Axles = new(car.Axles.Front with { BrakeImbalance = strongerRight }, car.Axles.Rear) };
                return YawStop.Run(car, Firm, new PressureBuildUp(), Kmh(70), YawDisturbance.Split(l, r), withTrace: false);
            }
        });

    [Property(MaxTest = 30)]
    public Property Mirrored_disturbances_give_mirrored_paths() => Prop.ForAll(
        Gen.Choose(1, 30).Zip(Gen.Choose(40, 140)).ToArbitrary(),
        drawn =>
        {
            double slope = drawn.Item1 / 10.0;
            YawResult left = Run(slope);
            YawResult right = Run(-slope);
            return Math.Abs(left.LateralOffset.Meters + right.LateralOffset.Meters) < 1e-4
                && Math.Abs(left.FinalHeading.Degrees + right.FinalHeading.Degrees) < 1e-4;

            YawResult Run(double degrees) => YawStop.Run(
                RearFirst(), Firm, new PressureBuildUp(), Kmh(drawn.Item2), new YawDisturbance { CrossSlope = Angle.FromDegrees(degrees) },
                    withTrace: false);
        });

    [Fact]
    public void A_yaw_stop_takes_less_than_thirty_milliseconds_even_on_a_loaded_machine()
    {
        BrakedCar car = Coupe();
        double best = double.PositiveInfinity;
        for (int i = 0; i < 40; i++)
        {
            var watch = Stopwatch.StartNew();
            YawStop.Run(car, Firm, new PressureBuildUp(), Kmh(100), YawDisturbance.Crown);
            best = Math.Min(best, watch.Elapsed.TotalMilliseconds);
        }

        Assert.InRange(best, 0, 30);
    }
}
