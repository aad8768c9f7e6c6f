using BrakeBalance.Rules;
using BrakeBalance.Stops;
using BrakeBalance.Vehicles;
using UnitsNet;
using static BrakeBalance.Tests.Stops.Cars;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// 49 CFR 571.135 S7.2 and S7.4.5 (read): the lock sequence is a screening test; a car whose rear axle locks first is judged by the rear
/// curve,
/// which must lie below z = 0.9 k for braking ratios 0.15 to 0.80. The front curve has no bound. The cars are our own.
/// </summary>
[Source("49 CFR 571.135 S7.2, S7.4.5", Reading.Read)]
public sealed class Cfr571_135WheelLockSequence
{
    private static RuleVerdict Verdict(Vehicle car, string rule) => DistributionRules.Check(car).Single(verdict => verdict.Rule == rule);

    // a/L = 0.48, h/L = 0.20: the rear curve meets the line where 0.9 (1 − β) = 0.48 − 0.20 z, so at 0.85 for β = 0.655556 and at
    // 0.78 for β = 0.64.
    [Theory]
    [InlineData(0.655556, 0.85, RuleOutcome.Pass)]
    [InlineData(0.640000, 0.78, RuleOutcome.Fail)]
    public void Rear_curve_is_bounded_up_to_0_80_only(double share, double meets, RuleOutcome outcome)
    {
        Vehicle car = TestCars.FixedShare(share, 2.5, 1.2, 0.5);
        UtilisationPoint at = UtilisationCurve.Of(car)[0].Points.Single(point => Math.Abs(point.BrakingRate - meets) < 1e-9);
        Assert.Equal(DistributionRules.Fmvss135RearLimit(meets), at.Rear, 1e-5);
        Assert.Equal(outcome, Verdict(car, "fmvss135-rear-line").Outcome);
    }

    [Fact]
    public void Front_curve_is_not_bounded()
    {
        Vehicle car = TestCars.FixedShare(0.97, 2.5, 1.0, 0.5);
        Assert.All(
            UtilisationCurve.Of(car)[0].Points.Where(point => point.BrakingRate is >= 0.15 and <= 0.80),
            point => Assert.True(point.Front > DistributionRules.Fmvss135RearLimit(point.BrakingRate)));
        Assert.Equal(RuleOutcome.Pass, Verdict(car, "fmvss135-rear-line").Outcome);
        Assert.Equal(RuleOutcome.Pass, Verdict(car, "fmvss135-sequence").Outcome);
    }

    // β = 0.655556 crosses the ideal distribution at 0.52 + 0.20 z = β, z = 0.678: above it the rear leads, inside the line.
    [Fact]
    public void Car_whose_rear_leads_inside_the_line_fails_the_screening_only()
    {
        Vehicle car = TestCars.FixedShare(0.655556, 2.5, 1.2, 0.5);
        RuleVerdict sequence = Verdict(car, "fmvss135-sequence");
        Assert.Equal(RuleOutcome.Fail, sequence.Outcome);
        Assert.Contains("the rear line decides", sequence.Explanation, StringComparison.Ordinal);
        Assert.Contains("S7.2.1(h)", sequence.Explanation, StringComparison.Ordinal);
        Assert.Equal(RuleOutcome.Pass, Verdict(car, "fmvss135-rear-line").Outcome);
    }

    // S7.2.3(c)(2): a linear rise with the first axle lock 0.5 to 1.5 s after the first touch. The study's rise of 2 s to 120 bar is
    // such a one.
    [Fact]
    public void Ramp_of_a_study_of_stops_locks_the_first_axle_between_0_5_and_1_5_s()
    {
        double seconds = new StopStudyPlan().RiseTime.Seconds;
        var ramp = new PressureBuildUp { DeadTime = Duration.Zero, RampRate = PressureChangeRate.FromMegapascalsPerSecond(12 / seconds) };
        StopResult stop = StraightStop.Run(Coupe(), Emergency(), ramp, Kmh(100));
        Assert.InRange(stop.Locks.Front!.Time.Seconds, 0.5, 1.5);
        // S7.2.3(b), (d): 100 km/h above a braking ratio of 0.50; only locks above 15 km/h count.
        Assert.True(stop.Locks.Front.BrakingRate > 0.5);
        Assert.True(stop.Locks.Front.Speed.KilometersPerHour > 15);
        Assert.True(StraightStop.SlowestLock.KilometersPerHour <= 15);
    }
}
