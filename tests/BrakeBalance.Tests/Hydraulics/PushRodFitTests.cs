using BrakeBalance.Hydraulics;
using UnitsNet;

namespace BrakeBalance.Tests.Hydraulics;

public sealed class PushRodFitTests
{
    private static PushRodFit Fit(double depth, double projection, double error = 0.05) => new()
    {
        PistonDepth = Length.FromMillimeters(depth),
        RodProjection = Length.FromMillimeters(projection),
        ReadingError = Length.FromMillimeters(error),
    };

    [Theory]
    [InlineData(24.0, 23.6, PushRodVerdict.Good)]
    [InlineData(24.0, 24.5, PushRodVerdict.Preload)]
    [InlineData(24.0, 23.95, PushRodVerdict.MayBePreload)]
    [InlineData(24.0, 23.2, PushRodVerdict.MayBeTooMuchGap)]
    [InlineData(24.0, 22.4, PushRodVerdict.TooMuchGap)]
    public void The_verdict_takes_the_readings_errors_into_account(double depth, double projection, PushRodVerdict verdict) =>
        Assert.Equal(verdict, Fit(depth, projection).Verdict);

    [Fact]
    public void A_gasket_adds_to_the_gap_and_to_the_error()
    {
        PushRodFit with = Fit(24, 23.6) with { Gasket = Length.FromMillimeters(0.5) };
        Assert.Equal(0.9, with.Gap.Millimeters, 9);
        Assert.Equal(0.15, with.GapError.Millimeters, 9);
    }

    [Fact]
    public void A_rod_longer_than_the_depth_is_said_with_size_danger_and_cure()
    {
        string words = Fit(24, 25).Describe();
        Assert.Contains("Preload of 1.00 ± 0.10 mm (0.039 ± 0.004 in)", words, StringComparison.Ordinal);
        Assert.Contains("rod is longer than the depth", words, StringComparison.Ordinal);
        Assert.Contains("Shorten the rod", words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_good_gap_says_so() => Assert.Equal("Gap of 0.40 ± 0.10 mm (0.016 ± 0.004 in): within its limits.", Fit(24,
        23.6).Describe());

    [Fact]
    public void A_negative_depth_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => Fit(-1, 20));
}
