using BrakeBalance.Pedals;
using UnitsNet;

namespace BrakeBalance.Tests.Pedals;

public sealed class PedalTests
{
    private static readonly LinkedLever Linked = new()
    {
        PivotToPad = Length.FromMillimeters(320),
        PivotToPin = Length.FromMillimeters(64),
        LinkLength = Length.FromMillimeters(120),
        RodAxisDepth = Length.FromMillimeters(64),
        PinAngleAtRest = Angle.FromDegrees(-15),
    };

    [Fact]
    public void A_lever_keeps_where_it_ends_and_a_changed_copy_works_out_its_own()
    {
        LinkedLever asked = Linked with { PivotToPad = Linked.PivotToPad }, fresh = Linked with { PivotToPad = Linked.PivotToPad };
        Length end = asked.GreatestPadTravel;
        LinkedLever longer = asked with { LinkLength = asked.LinkLength * 1.5 };
        LinkedLever sameLonger = fresh with { LinkLength = fresh.LinkLength * 1.5 };
        Assert.Equal(fresh, asked);
        Assert.Equal(fresh.GetHashCode(), asked.GetHashCode());
        Assert.NotEqual(asked, longer);
        Assert.NotEqual(end.Meters, longer.GreatestPadTravel.Meters);
        Assert.Equal(sameLonger.GreatestPadTravel.Meters, longer.GreatestPadTravel.Meters);
    }

    [Fact]
    public void A_linked_lever_has_the_plain_ratio_where_pin_and_rod_are_square()
    {
        Length padTravel = Length.FromMeters(0.320 * Angle.FromDegrees(15).Radians);
        Assert.Equal(5.0, Linked.RatioAt(padTravel), 9);
    }

    [Fact]
    public void A_linked_lever_does_no_work_of_its_own()
    {
        // The rod's travel must be the integral of pad travel over ratio.
        double sum = 0;
        const int steps = 2000;
        const double padMetres = 0.1;
        for (int i = 0; i < steps; i++)
        {
            sum += padMetres / steps / Linked.RatioAt(Length.FromMeters((i + 0.5) * padMetres / steps));
        }

        Assert.Equal(sum, Linked.RodTravel(Length.FromMeters(padMetres)).Meters, 8);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(7)]
    [InlineData(18)]
    public void Pad_and_rod_travel_are_each_others_inverse(double rodMillimetres)
    {
        Length? pad = Linked.PadTravel(Length.FromMillimeters(rodMillimetres));
        Assert.NotNull(pad);
        Assert.Equal(rodMillimetres, Linked.RodTravel(pad.Value).Millimeters, 6);
    }

    [Fact]
    public void A_rod_travel_beyond_the_lever_has_no_answer() => Assert.Null(Linked.PadTravel(Length.FromMillimeters(200)));

    [Fact]
    public void A_link_that_does_not_reach_is_said_in_words()
    {
        LinkedLever broken = Linked with { LinkLength = Length.FromMillimeters(5), RodAxisDepth = Length.FromMillimeters(200) };
        ArgumentException fault = Assert.Throws<ArgumentException>(() => broken.RatioAt(Length.Zero));
        Assert.Contains("does not reach", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_return_spring_is_overcome_before_the_rod_feels_the_foot()
    {
        var pedal = new Pedal
        {
            Lever = new FixedRatioLever { Ratio = 4 },
            Efficiency = 1,
            ReturnSpringForce = Force.FromNewtons(20),
        };
        Assert.Equal(0, pedal.InputRodForce(Force.FromNewtons(15)).Newtons);
        Assert.Equal(320, pedal.InputRodForce(Force.FromNewtons(100)).Newtons, 9);
        Assert.Equal(100, pedal.PedalForce(Force.FromNewtons(320)).Newtons, 9);
    }

    [Fact]
    public void A_ratio_below_one_is_refused_with_the_range()
    {
        ArgumentOutOfRangeException fault = Assert.Throws<ArgumentOutOfRangeException>(() => new FixedRatioLever { Ratio = 0.4 });
        Assert.Equal("Ratio", fault.ParamName);
        Assert.Contains("between 1 and 12", fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(31, "touchy, too light to be metered")]
    [InlineData(200, "comfortable")]
    [InlineData(500, "a firm push")]
    [InlineData(2000, "more than one leg can push")]
    public void Pedal_force_is_said_in_words(double newtons, string words) =>
        Assert.Equal(words, new FootForce().Describe(Force.FromNewtons(newtons)));
}
