using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Stops;
using BrakeBalance.Tests.Hydraulics;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Stops;

public class EasingStopTests
{
    private const double Adhesion = 0.7;

    private static Pressure Bar(double bars) => Pressure.FromBars(bars);

    private static PressureChangeRate BarPerSecond(double bars) => PressureChangeRate.FromPascalsPerSecond(bars * 1e5);

    private static Vehicle Car(double hysteresis, double knee = 25, double slope = 0.35) =>
        TestCars.With(120, 80, 2.6, 1.2, 0.55, 12_000).WithRearValves(new ProportioningValve
        {
            Knee = Bar(knee),
            Slope = slope,
            Hysteresis = Bar(hysteresis)
        }) with
        {
            AxleDynamics = new(Light(), Light()),
        };

    private static AxleDynamics Light() => new() { WheelInertia = MassMomentOfInertia.FromKilogramSquareMeters(1e-3) };

    private static StopResult Eased(Vehicle car, double rate = 10, double bars = 110)
    {
        StopSetup setup = StopSetup.From(car, car.LoadCases[0], Adhesion, PublishedSlipCurves.DryAsphalt);
        var driver = new EasingDriver { HeldPressure = Bar(bars), ReleaseRate = BarPerSecond(rate) };
        return StraightStop.Run(setup.Car, driver, new PressureBuildUp { AssistLag = Duration.Zero }, Speed.FromKilometersPerHour(500));
    }

    private static double SlidingShare =>
        PublishedSlipCurves.DryAsphalt.LockedAdhesion(Force.FromKilonewtons(4))
        / PublishedSlipCurves.DryAsphalt.PeakAdhesion(Force.FromKilonewtons(4));

    [Fact]
    public void Hysteresis_keeps_the_rear_axle_locked_as_the_foot_eases()
    {
        StopResult plain = Eased(Car(0, knee: 15)), late = Eased(Car(12, knee: 15));
        Assert.NotNull(plain.Locks.Rear);
        Assert.NotNull(late.Locks.Rear);
        Assert.True(late.Releases.Rear!.MasterPressure < plain.Releases.Rear!.MasterPressure - Bar(8),
            $"{late.Releases.Rear.MasterPressure.Bars:0.0} {plain.Releases.Rear.MasterPressure.Bars:0.0}");
        Assert.True(late.Releases.Rear.Time > plain.Releases.Rear.Time);
        Assert.True(late.Releases.Rear.Time > late.Releases.Front!.Time);
    }

    // The line's pressure when the rear frees is the same with and without hysteresis: the brake's torque frees it, not the foot.
    [Fact]
    public void Slow_easing_frees_both_axles_where_statics_say()
    {
        foreach (double hysteresis in new[] { 0.0, 4, 12 })
        {
            Vehicle car = Car(hysteresis);
            StopResult stop = Eased(car);
            var expected = ReleaseBehaviour.Of(car.Model(), Bar(110), Adhesion, SlidingShare);
            Assert.Equal(expected.FreeAt.Front!.Value.Bars, stop.Releases.Front!.MasterPressure.Bars, 2e-3 * 50);
            Assert.Equal(expected.FreeAt.Rear!.Value.Bars, stop.Releases.Rear!.MasterPressure.Bars, 2e-3 * 50);
            Assert.Equal(
                car.Hydraulics.LinePressuresOnRelease(stop.Releases.Rear.MasterPressure, Bar(110)).Rear.Bars,
                    stop.Releases.Rear.LinePressure.Bars, 1e-6);
        }
    }

    [Fact]
    public void The_foot_eases_half_a_second_after_the_lock_until_every_wheel_turns_and_then_stays()
    {
        StopResult stop = Eased(Car(6), rate: 60);
        double begins = Math.Min(stop.Locks.Front!.Time.Seconds, stop.Locks.Rear!.Time.Seconds) + 0.5;
        double ends = Math.Max(stop.Releases.Front!.Time.Seconds, stop.Releases.Rear!.Time.Seconds);
        foreach (StopSample s in stop.Trace)
        {
            double expected = s.TimeSeconds >= ends ? 110 - 60 * (ends - begins)
                : s.TimeSeconds >= begins ? 110 - 60 * (s.TimeSeconds - begins)
                : Math.Clamp((s.TimeSeconds - 0.05) * 400, 0, 110);
            Assert.Equal(expected, s.LinePressurePascals / 1e5, 0.02);
        }

        Assert.Equal((WheelState.Rolling, WheelState.Rolling), (stop.Trace[^2].Wheels.Front, stop.Trace[^2].Wheels.Rear));
        Assert.InRange(stop.Energy.Imbalance, -0.005, 0.005);
    }

    [Fact]
    public void A_foot_can_begin_to_ease_at_a_given_time_and_does_nothing_when_all_wheels_turn()
    {
        StopSetup setup = StopSetup.From(Car(0), Car(0).LoadCases[0], Adhesion);
        StopResult Run(double bars) => StraightStop.Run(
            setup.Car, new EasingDriver { HeldPressure = Bar(bars), ReleaseRate = BarPerSecond(60), EasesAt = Duration.FromSeconds(1.5) },
            new PressureBuildUp { AssistLag = Duration.Zero }, Speed.FromKilometersPerHour(150));
        StopResult locked = Run(110);
        Assert.Equal(110, locked.Trace.Last(s => s.TimeSeconds < 1.5).LinePressurePascals / 1e5, 1e-6);
        Assert.Equal(110 - 60 * (locked.Releases.Front!.Time.Seconds - 1.5), locked.Releases.Front.MasterPressure.Bars, 1e-6);
        StopResult rolling = Run(30);
        Assert.Null(rolling.FirstLock);
        Assert.Equal(30, rolling.Trace[^1].LinePressurePascals / 1e5, 1e-6);
    }

    // The lag of the assist under a foot that eases, by small steps of p′ = (asked − p)/τ.
    [Fact]
    public void The_pressure_of_an_easing_foot_follows_with_the_lag_of_the_assist()
    {
        var buildUp = new PressureBuildUp
        {
            DeadTime = Duration.Zero,
            AssistLag = Duration.FromMilliseconds(80),
            RampRate = BarPerSecond(400)
        };
        PressureCommand eased = new PressureCommand(buildUp, 100e5).Eased(0.3, 150e5);
        double pressure = 0, highest = 0, peak = 0;
        const double dt = 1e-6;
        for (int i = 0; i < 1_100_000; i++)
        {
            double t = i * dt;
            double asked = t < 0.25 ? 400e5 * t : t < 0.3 ? 100e5 : Math.Max(0, 100e5 - 150e5 * (t - 0.3));
            if (i % 50_000 == 0 && t >= 0.3)
            {
                Assert.Equal(pressure, eased.At(t), 500.0);
            }

            if (t >= 0.3 && pressure > highest)
            {
                (highest, peak) = (pressure, t);
            }

            pressure += (asked - pressure) / 0.08 * dt;
        }

        Assert.Equal(peak, eased.NextKink(0.3), 1e-3);
        Assert.Equal(0.3 + 100.0 / 150, eased.NextKink(0.5), 1e-9);
        Assert.Equal(55e5, eased.Held(0.6).At(5), 1.0);
    }

    [Fact]
    public void A_locked_axle_that_only_the_engine_holds_never_turns_again()
    {
        Vehicle car = Car(0) with { EngineBraking = new EngineBraking { DrivenAxle = Axle.Rear, BrakingForce = Force.FromNewtons(4000) } };
        var behaviour = ReleaseBehaviour.Of(car.Model(), Bar(110), Adhesion, SlidingShare);
        Assert.Null(behaviour.FreeAt.Rear);
        Assert.False(behaviour.RearIsFreeWithFront);
    }
}
