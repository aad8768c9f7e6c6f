using BrakeBalance.Balance;
using BrakeBalance.Rules;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>Distances of stops and the rules' formulas; each case names its own source.</summary>
[Source("Texts on stopping distance, each named at its case", Reading.Read)]
public sealed class EffectivenessDistances
{
    private static StoppingDistance Stop(double metresPerSecond, double deceleration, double reactionSeconds) => StoppingDistance.From(
        Speed.FromMetersPerSecond(metresPerSecond), deceleration / 9.80665, Duration.Zero, Duration.FromSeconds(reactionSeconds));

    /// <summary>OpenStax, College Physics, example 2.12: 30.0 m/s; dry concrete 7.00 m/s², wet 5.00 m/s²; reaction 0.500 s.</summary>
    [Theory]
    [InlineData(7.00, 64.3, 79.3, 0.05)]
    [InlineData(5.00, 90.0, 105, 0.5)]
    public void Example_2_12(double deceleration, double braking, double whole, double tolerance)
    {
        StoppingDistance stop = Stop(30.0, deceleration, 0.5);
        Assert.Equal(braking, stop.Braking.Meters, 0.05);
        Assert.Equal(whole, stop.Whole.Meters, tolerance);
    }

    /// <summary>NHTSA interpretation nht70-2.5 of 29 April 1970: a stop from 60 mph at a constant 20 ft/s² takes 194 ft.</summary>
    [Fact]
    public void Sixty_mph_at_20_feet_per_second_squared_take_194_ft() =>
        Assert.Equal(194, Stop(88 * 0.3048, 20 * 0.3048, 0).Braking.Feet, 0.5);

    /// <summary>
    /// AASHTO stopping sight distance as the TxDOT Roadway Design Manual gives it: 2.5 s and 11.2 ft/s²; 60 mph: reaction 220.5 ft,
    /// braking 345.5 ft
    /// (recomputed from the manual's 1.47 V t + 1.075 V²/a). Its factors are rounded from 22/15 and (22/15)²/2, hence the tolerances.
    /// </summary>
    [Fact]
    public void Sixty_mph_of_stopping_sight_distance()
    {
        StoppingDistance stop = Stop(60 * 0.44704, 11.2 * 0.3048, 2.5);
        Assert.Equal(220.5, stop.Reaction.Feet, 0.6);
        Assert.Equal(345.5, stop.Braking.Feet, 0.3);
    }

    /// <summary>49 CFR 571.135 S7.5 to S7.11: longest distances, printed for 100 km/h but for S7.6, with 65 to 500 N (read).</summary>
    [Source("49 CFR 571.135 S7.5 to S7.11", Reading.Read)]
    [Theory]
    [InlineData("fmvss135-cold", 100, 70)]
    [InlineData("fmvss135-high-speed", 160, 187.5)]
    [InlineData("fmvss135-engine-off", 100, 70)]
    [InlineData("fmvss135-antilock-failure", 100, 85)]
    [InlineData("fmvss135-proportioning-failure", 100, 110)]
    [InlineData("fmvss135-circuit-failure", 100, 168)]
    [InlineData("fmvss135-assist-inoperative", 100, 168)]
    public void Longest_distance_of_each_rule(string id, double kilometresPerHour, double metres)
    {
        EffectivenessRule rule = EffectivenessRule.All.Single(entry => entry.Id == id);
        Assert.Equal(metres, rule.LongestDistance(Speed.FromKilometersPerHour(kilometresPerHour))!.Value.Meters, 0.05);
        Assert.Equal(500, rule.GreatestPedalForce.Newtons);
        Assert.Equal(65, rule.LeastPedalForce.Newtons);
    }

    /// <summary>UN R13-H Annex 3: distances of the Type-0 test and of secondary braking (from memory).</summary>
    [Source("UN R13-H Annex 3", Reading.FromMemory)]
    [Theory]
    [InlineData("un-r13h-type-0", 100, 70)]
    [InlineData("un-r13h-secondary", 100, 168)]
    public void Longest_distance_under_R13H(string id, double kilometresPerHour, double metres) =>
        Longest_distance_of_each_rule(id, kilometresPerHour, metres);

    /// <summary>The decelerations that UN R13-H Annex 3 prints beside its distances: 6.43 and 2.44 m/s² (from memory).</summary>
    [Source("UN R13-H Annex 3", Reading.FromMemory)]
    [Theory]
    [InlineData("un-r13h-type-0", 6.43)]
    [InlineData("un-r13h-secondary", 2.44)]
    public void Square_term_stands_for_the_printed_deceleration(string id, double deceleration) =>
        Assert.Equal(deceleration, EffectivenessRule.All.Single(entry => entry.Id == id).ImpliedDeceleration!.Value.MetersPerSecondSquared,
            0.005);

    /// <summary>A build-up of twice 0.36 s costs what the formulas' 0.1 V stands for, but for the small term J t²/24.</summary>
    [Fact]
    public void Build_up_of_0_72_s_is_the_tenth_of_the_speed_in_the_formulas()
    {
        double deceleration = 6.43;
        StoppingDistance stop = StoppingDistance.From(Speed.FromKilometersPerHour(100), deceleration / 9.80665, Duration.FromSeconds(0.72),
            Duration.Zero);
        Assert.Equal(70.0 - (deceleration * 0.72 * 0.72 / 24), stop.FromFirstTouch.Meters, 0.02);
    }
}
