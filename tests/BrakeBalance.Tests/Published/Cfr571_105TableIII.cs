using BrakeBalance.Balance;
using BrakeBalance.Stops;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// 49 CFR 571.105, table III (read): average decelerations in ft/s² of stops from 60 mph out of the reserve, and the "equivalent
/// stopping distances"
/// in feet printed beside them. The table rounds up to whole feet, so a printed value lies 0 to 1 ft above v²/(2 a); two lie further above
/// (9.5 ft/s²: 407.6 against 409; 6.7 ft/s²: 577.9 against 580, 0.4 %), for no reason that the text gives.
/// </summary>
[Source("49 CFR 571.105, table III", Reading.Read)]
public sealed class Cfr571_105TableIII
{
    [Theory]
    [InlineData(16.0, 242)]
    [InlineData(12.0, 323)]
    [InlineData(10.0, 388)]
    [InlineData(9.0, 431)]
    [InlineData(8.0, 484)]
    [InlineData(7.5, 517)]
    [InlineData(7.0, 554)]
    public void Cars_with_a_power_assist_unit(double feetPerSecondSquared, double feet) => Equivalent(feetPerSecondSquared, feet);

    [Theory]
    [InlineData(14.0, 277)]
    [InlineData(12.0, 323)]
    [InlineData(10.0, 388)]
    [InlineData(8.5, 456)]
    [InlineData(7.5, 517)]
    [InlineData(6.7, 580, 2.1)]
    [InlineData(6.0, 646)]
    public void Other_vehicles_with_a_power_assist_unit(double feetPerSecondSquared, double feet, double above = 1) =>
        Equivalent(feetPerSecondSquared, feet, above);

    [Theory]
    [InlineData(16.0, 242)]
    [InlineData(13.0, 298)]
    [InlineData(12.0, 323)]
    [InlineData(11.0, 352)]
    [InlineData(10.0, 388)]
    [InlineData(9.5, 409, 1.5)]
    [InlineData(9.0, 431)]
    [InlineData(8.5, 456)]
    [InlineData(8.0, 484)]
    [InlineData(7.5, 517)]
    [InlineData(7.0, 554)]
    public void Cars_with_a_power_unit(double feetPerSecondSquared, double feet, double above = 1) =>
        Equivalent(feetPerSecondSquared, feet, above);

    [Theory]
    [InlineData(13.0, 298)]
    [InlineData(11.0, 352)]
    [InlineData(10.0, 388)]
    [InlineData(9.5, 409, 1.5)]
    [InlineData(9.0, 431)]
    [InlineData(8.5, 456)]
    [InlineData(8.0, 484)]
    [InlineData(7.5, 517)]
    [InlineData(7.0, 554)]
    [InlineData(6.5, 596)]
    [InlineData(6.0, 646)]
    public void Other_vehicles_with_a_power_unit(double feetPerSecondSquared, double feet, double above = 1) =>
        Equivalent(feetPerSecondSquared, feet, above);

    private static void Equivalent(double feetPerSecondSquared, double feet, double above = 1)
    {
        Speed sixty = Speed.FromMilesPerHour(60);
        Acceleration deceleration = Acceleration.FromFeetPerSecondSquared(feetPerSecondSquared);
        StoppingDistance stop = StoppingDistance.From(
            sixty, deceleration.MetersPerSecondSquared / Gravity.StandardMetresPerSecondSquared, Duration.Zero, Duration.Zero);
        Assert.InRange(feet - stop.FromFirstTouch.Feet, -0.005, above);
        Assert.Equal(stop.Whole.Feet, StopDistance.WithDelay(sixty, Duration.Zero, deceleration).Feet, 1e-6);
    }
}
