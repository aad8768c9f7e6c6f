using BrakeBalance.Brakes;

namespace BrakeBalance.Tests.Published;

/// <summary>SAE J866 (2019), friction letters, as summarised on a web page (tnlab.org); the standard itself was not seen.</summary>
[Source("SAE J866 (2019), summarised on a web page", Reading.SecondHand)]
public class FrictionEdgeCodes
{
    [Theory]
    [InlineData('C', 0.10, 0.15)]
    [InlineData('D', 0.16, 0.25)]
    [InlineData('E', 0.26, 0.35)]
    [InlineData('F', 0.36, 0.45)]
    [InlineData('G', 0.46, 0.55)]
    [InlineData('H', 0.56, 0.90)]
    public void Letter_covers_over_its_low_end_up_to_its_high_end(char letter, double inside, double atHighEnd)
    {
        Assert.Equal(letter, FrictionBand.For(inside).Letter);
        Assert.Equal(letter, FrictionBand.For(atHighEnd).Letter);
        Assert.True(FrictionBand.Of(char.ToLowerInvariant(letter))!.Contains(inside));
    }

    [Fact]
    public void An_end_shared_by_two_letters_belongs_to_the_lower_one()
    {
        Assert.True(FrictionBand.Of('E')!.Contains(0.35));
        Assert.False(FrictionBand.Of('F')!.Contains(0.35));
    }

    [Fact]
    public void Code_gives_normal_then_hot()
    {
        EdgeCode code = EdgeCode.Parse(" GF ");
        Assert.Equal((0.45, 0.55), (code.Normal!.Low, code.Normal.High));
        Assert.Equal((0.35, 0.45), (code.Hot!.Low, code.Hot.High));
        Assert.Null(FrictionBand.Of('H')!.High);
        Assert.Null(EdgeCode.Parse("ZE").Normal);
    }

    [Fact]
    public void Unknown_codes_are_refused()
    {
        Assert.Contains("Z for unclassified", Assert.Throws<ArgumentOutOfRangeException>(() => EdgeCode.Parse("FX")).Message);
        Assert.Contains("'FFF'", Assert.Throws<ArgumentException>(() => EdgeCode.Parse("FFF")).Message);
        Assert.Throws<ArgumentOutOfRangeException>(() => FrictionBand.For(0));
    }
}
