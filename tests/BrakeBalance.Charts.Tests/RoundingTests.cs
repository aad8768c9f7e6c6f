using System.Globalization;
using FsCheck.Xunit;

namespace BrakeBalance.Charts.Tests;

/// <summary>Significant digits, against the framework's decimal text.</summary>
public class RoundingTests
{
    [Property(MaxTest = 3000)]
    public void A_number_is_rounded_as_its_decimal_text_is(int whole, short power, byte digits)
    {
        int kept = 2 + digits % 7;
        double value = whole * Math.Pow(10, power % 20 - 9);
        string text = value.ToString("E" + (kept - 1), CultureInfo.InvariantCulture);
        double expected = double.Parse(text, CultureInfo.InvariantCulture);
        Assert.Equal(expected, Rounding.Significant(value, kept));
        Assert.Equal(
            expected == 0 ? "0" : expected.ToString("0.##########", CultureInfo.InvariantCulture), Rounding.ToText(value, kept));
    }

    [Theory]
    [InlineData(0.5, 1, "0.5")]
    [InlineData(99.9996, 5, "100")]
    [InlineData(1000, 2, "1000")]
    [InlineData(-12345.678, 3, "-12300")]
    [InlineData(1e-12, 3, "0")]
    [InlineData(1e20, 3, "100000000000000000000")]
    [InlineData(double.NaN, 3, "0")]
    public void No_exponent_is_written(double value, int digits, string text) =>
        Assert.Equal(text, Rounding.ToText(value, digits));
}
