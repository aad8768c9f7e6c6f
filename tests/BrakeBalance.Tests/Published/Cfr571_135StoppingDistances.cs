using BrakeBalance.Assist;
using BrakeBalance.Hydraulics;
using BrakeBalance.Pedals;
using BrakeBalance.Rules;
using BrakeBalance.Stops;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// 49 CFR 571.135 (read): S6.5.2 puts a slow car to a speed that is a multiple of 5 km/h and to the section's formula; S6.5.3.3 counts S
/// in metres
/// and V in km/h. The distances at reduced speeds are worked by hand; those from 100 km/h are printed in metres and in feet.
/// </summary>
[Source("49 CFR 571.135 S6.5, S7.5 to S7.14", Reading.Read)]
public sealed class Cfr571_135StoppingDistances
{
    private static EffectivenessRule Rule(string id) => EffectivenessRule.All.Single(rule => rule.Id == id);

    [Theory]
    [InlineData("fmvss135-cold", 95, 63.65)]
    [InlineData("fmvss135-cold", 80, 46.40)]
    [InlineData("fmvss135-engine-off", 90, 57.60)]
    [InlineData("fmvss135-antilock-failure", 80, 56.00)]
    [InlineData("fmvss135-proportioning-failure", 80, 72.00)]
    [InlineData("fmvss135-circuit-failure", 95, 152.095)]
    [InlineData("fmvss135-assist-inoperative", 80, 109.12)]
    public void Distance_at_a_reduced_speed(string id, double kilometresPerHour, double metres) =>
        Assert.Equal(metres, Rule(id).LongestDistance(Speed.FromKilometersPerHour(kilometresPerHour))!.Value.Meters, 1e-9);

    // S7.6: 160 km/h for a car of 200 km/h and more, 80 % of the greatest speed for one between 125 and 200 km/h.
    [Theory]
    [InlineData(160, 187.52)]
    [InlineData(120, 108.48)]
    [InlineData(104, 82.8672)]
    public void Distance_of_the_high_speed_stop(double kilometresPerHour, double metres) =>
        Assert.Equal(metres, Rule("fmvss135-high-speed")
            .LongestDistance(Speed.FromKilometersPerHour(kilometresPerHour))!.Value.Meters, 1e-9);

    [Theory]
    [InlineData("fmvss135-cold", 230)]
    [InlineData("fmvss135-engine-off", 230)]
    [InlineData("fmvss135-antilock-failure", 279)]
    [InlineData("fmvss135-proportioning-failure", 361)]
    [InlineData("fmvss135-circuit-failure", 551)]
    [InlineData("fmvss135-assist-inoperative", 551)]
    public void Distance_from_100_kmh_in_the_printed_feet(string id, double feet) =>
        Assert.Equal(feet, Rule(id).LongestDistance(Speed.FromKilometersPerHour(100))!.Value.Feet, 0.5);

    [Fact]
    public void Pedal_forces_are_14_6_and_112_4_pounds() => Assert.All(
        EffectivenessRule.All.Where(rule => rule.Id.StartsWith("fmvss135", StringComparison.Ordinal)),
        rule =>
        {
            Assert.Equal(14.6, rule.LeastPedalForce.PoundsForce, 0.05);
            Assert.Equal(112.4, rule.GreatestPedalForce.PoundsForce, 0.05);
        });

    // S7.14.4(b): one of the two hot stops within 89 m (292 ft), S ≤ 0.10 V + 0.0079 V². The formulas' 0.10 V is 0.36 s, their square
    // term V²/(25.92 d).
    [Theory]
    [InlineData(0.0060, 100, 70, 230)]
    [InlineData(0.0075, 100, 85, 279)]
    [InlineData(0.0079, 100, 89, 292)]
    [InlineData(0.0100, 100, 110, 361)]
    [InlineData(0.0158, 100, 168, 551)]
    public void Formula_is_a_delay_of_0_36_s_and_a_deceleration(double square, double kilometresPerHour, double metres, double feet)
    {
        Length distance = StopDistance.WithDelay(
            Speed.FromKilometersPerHour(kilometresPerHour), Duration.FromSeconds(0.36),
                Acceleration.FromMetersPerSecondSquared(1 / (25.92 * square)));
        Assert.Equal(metres, distance.Meters, 1e-9);
        Assert.Equal(feet, distance.Feet, 0.5);
    }

    // S7.7.2 and S7.11.2: at gross weight only. S7.5.1 and S7.10.2: lightly loaded too.
    [Fact]
    public void Dead_assist_is_judged_at_gross_weight_only()
    {
        Vehicle car = LightInTheRear();
        IReadOnlyList<RuleVerdict> verdicts = EffectivenessRules.Check(car);
        RuleVerdict cold = verdicts.Single(verdict => verdict.Rule == "fmvss135-cold");
        Assert.Equal(RuleOutcome.Fail, cold.Outcome);
        Assert.StartsWith("light", cold.At, StringComparison.Ordinal);
        RuleVerdict dead = verdicts.Single(verdict => verdict.Rule == "fmvss135-assist-inoperative");
        Assert.Equal(RuleOutcome.Pass, dead.Outcome);
        Assert.StartsWith("gross", dead.At, StringComparison.Ordinal);
        Assert.StartsWith("light", verdicts.Single(verdict => verdict.Rule == "fmvss135-circuit-failure").At, StringComparison.Ordinal);
    }

    /// <summary>A car of our own whose rear axle locks at 0.18 g when light and at 0.70 g at gross weight.</summary>
    private static Vehicle LightInTheRear() => new()
    {
        Name = "light in the rear",
        Wheelbase = Length.FromMeters(2.5),
        LoadCases = [TestCars.Load("light", 10_000, 0.5, 0.5), TestCars.Load("gross", 15_700, 1.9, 0.5)],
        Tyres = new(TestCars.Tyre, TestCars.Tyre),
        Brakes = new(TestCars.AxleBrake(47), TestCars.AxleBrake(187)),
        Hydraulics = new BrakeHydraulics { MaximumPressure = Pressure.FromBars(250) },
        Control = new BrakeControl
        {
            Pedal = new Pedal { Lever = new FixedRatioLever { Ratio = 5 } },
            Assist = new VacuumBooster
            {
                Supply = new VacuumSupply { Vacuum = Pressure.FromBars(0.7) },
                DiaphragmDiameter = Length.FromMillimeters(230),
                BoostRatio = 4,
            },
            MasterCylinder = new TandemMasterCylinder { Bore = Length.FromMillimeters(20), Stroke = Length.FromMillimeters(35) },
            Layout = CircuitLayout.FrontRear,
        },
    };
}
