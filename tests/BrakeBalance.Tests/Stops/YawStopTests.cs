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
        StopResult straight = StraightStop.Run(Coupe(), Panic(), new PressureBuildUp(), Kmh(100));
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
        YawResult rear = YawStop.Run(YawStop.WithOnlyLocked(Coupe(), Axle.Rear), Firm, new PressureBuildUp(), Kmh(kmh), YawDisturbance.Crown);
        YawResult front = YawStop.Run(YawStop.WithOnlyLocked(Coupe(), Axle.Front), Firm, new PressureBuildUp(), Kmh(kmh), YawDisturbance.Crown);
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
        // pulled against its velocity, so its force per slip angle is μ N₂; the front tyre has its slip stiffness. The unstable eigenvalue
        // of the two linear equations comes from MathNet.
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
        // "Braking Dynamics", sec. 5.1 Braking Stability (thesis chapter, html.pdfcookie.com, read): locked front tyres give drag against the motion and
        // the rolling rear restores; locked at the rear it is the other way round, and any disturbance grows.
        Speed speed = Speed.FromMetersPerSecond(metresPerSecond);
        Assert.True(YawStability.GrowthPerSecond(Coupe(), Axle.Rear, speed) > 1);
        Assert.True(YawStability.GrowthPerSecond(Coupe(), Axle.Front, speed) < 0);
        Assert.True(YawStability.GrowthPerSecond(Coupe(), null, speed) < 0);
    }

    [Fact]
    public void Without_braking_it_turns_unstable_at_the_critical_speed_of_the_single_track_model()
    {
        // Recomputed from the linear single-track model: it diverges when a C₁ > b C₂ and v² > C₁ C₂ L²/(m (a C₁ − b C₂)). A front axle with twice the
        // rear's lateral slip weight makes this coupe oversteer.
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

    [Property(MaxTest = 30)]
    public Property Mirrored_disturbances_give_mirrored_paths() => Prop.ForAll(
        Gen.Choose(1, 30).Zip(Gen.Choose(40, 140)).ToArbitrary(),
        drawn =>
        {
            double slope = drawn.Item1 / 10.0;
            YawResult left = Run(slope);
            YawResult right = Run(-slope);
            return Math.Abs(left.LateralOffset.Meters + right.LateralOffset.Meters) < 1e-6
                && Math.Abs(left.FinalHeading.Degrees + right.FinalHeading.Degrees) < 1e-6;

            YawResult Run(double degrees) => YawStop.Run(
                RearFirst(), Firm, new PressureBuildUp(), Kmh(drawn.Item2), new YawDisturbance { CrossSlope = Angle.FromDegrees(degrees) }, withTrace: false);
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
