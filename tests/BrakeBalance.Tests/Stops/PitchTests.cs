using BrakeBalance.Stops;
using UnitsNet;
using static BrakeBalance.Tests.Stops.Cars;

namespace BrakeBalance.Tests.Stops;

/// <summary>Load transfer of a half car on springs and dampers, against equations written out here.</summary>
public class PitchTests
{
    private const double Frequency = 1.3;
    private const double Damping = 0.3;
    private static readonly PressureBuildUp Stamp = new()
    {
        DeadTime = Duration.Zero,
        AssistLag = Duration.Zero,
        RampRate = PressureChangeRate.FromPascalsPerSecond(30e5 / 0.25),
    };

    // Wheels all but without mass, so that the force at the road is that of the brakes.
    private static BrakedCar Car()
    {
        BrakedCar car = Coupe();
        var light = MassMomentOfInertia.FromKilogramSquareMeters(0.01);
        return car with { Axles = new(car.Axles.Front with { WheelInertia = light }, car.Axles.Rear with { WheelInertia = light }) };
    }

    private static StopResult Stop(double instant) => StraightStop.Run(
        Car() with
        {
            Pitch = new PitchDynamics
            {
                NaturalFrequency = UnitsNet.Frequency.FromHertz(Frequency),
                DampingRatio = Damping,
                InstantShare = instant
            }
        },
        Emergency(30), Stamp, Kmh(120));

    private static double StaticFront => 0.56 * 1700 * Gravity.StandardMetresPerSecondSquared;

    // A half car of 1.3 Hz and a damping ratio of 0.3: x″ = ω²(u − x) − 2ζω x′ under a ramp of 0.25 s gives x = 0.25 and x +
    // 2ζ x′/ω = 0.49 after 0.2 s.
    [Fact]
    public void Two_tenths_after_a_stamp_of_a_quarter_second_half_of_the_load_has_moved()
    {
        StopResult stop = Stop(0);
        double full = 0.55 / 2.9 * 30.0 / 100 * 6400 / 0.32;
        StopSample at = stop.Trace.MinBy(s => Math.Abs(s.TimeSeconds - 0.2));
        Assert.Equal(0.49, (at.NormalReactionNewtons.Front - StaticFront) / full, 0.006);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.3)]
    [InlineData(1)]
    public void The_tyres_carry_what_springs_dampers_and_links_of_a_half_car_pass_on(double instant)
    {
        StopResult stop = Stop(instant);
        double omega = 2 * Math.PI * Frequency;
        double x = 0, rate = 0;
        for (int i = 1; i < stop.Trace.Count && stop.Trace[i].SpeedMetresPerSecond > 1; i++)
        {
            StopSample from = stop.Trace[i - 1], to = stop.Trace[i];
            double fromForce = from.BrakingForceNewtons.Front + from.BrakingForceNewtons.Rear, toForce = to.BrakingForceNewtons.Front
                + to.BrakingForceNewtons.Rear;
            const int parts = 200;
            double dt = (to.TimeSeconds - from.TimeSeconds) / parts;
            double asked = 0;
            for (int k = 1; k <= parts; k++)
            {
                asked = 0.55 / 2.9 * (fromForce + (toForce - fromForce) * k / parts);
                rate += (omega * omega * (asked - x) - 2 * Damping * omega * rate) * dt;
                x += rate * dt;
            }

            double expected = instant * asked + (1 - instant) * (x + 2 * Damping / omega * rate);
            Assert.Equal(expected, to.NormalReactionNewtons.Front - StaticFront, 12.0);
        }
    }

    [Fact]
    public void With_all_of_it_through_the_links_the_car_stops_as_one_that_does_not_pitch()
    {
        StopResult stiff = StraightStop.Run(Coupe(), Emergency(), new PressureBuildUp(), Kmh(120));
        StopResult links = StraightStop.Run(
            Coupe() with
            {
                Pitch = new PitchDynamics
                {
                    NaturalFrequency = UnitsNet.Frequency.FromHertz(1.3),
                    DampingRatio = 0.3,
                    InstantShare = 1
                }
            },
            Emergency(), new PressureBuildUp(), Kmh(120));
        Assert.Equal(stiff.Distance.Meters, links.Distance.Meters, 2e-3 * stiff.Distance.Meters);
        Assert.Equal(stiff.Locks.Front!.Time.Seconds, links.Locks.Front!.Time.Seconds, 1e-3);
    }
}
