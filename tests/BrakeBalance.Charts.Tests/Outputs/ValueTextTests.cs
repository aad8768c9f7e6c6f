using System.Globalization;
using BrakeBalance.Charts.Outputs;
using UnitsNet;

namespace BrakeBalance.Charts.Tests.Outputs;

public class ValueTextTests
{
    [Theory]
    [InlineData(0.1 + 0.2, "0.3")]
    [InlineData(1234567.0, "1234570")]
    [InlineData(38.0, "38")]
    [InlineData(-0.00001234, "−1.234E-05")]
    [InlineData(-0.575, "−0.575")]
    [InlineData(double.PositiveInfinity, "Infinity")]
    public void A_number_has_six_significant_digits(double number, string text) => Assert.Equal(text, ValueText.Of(number));

    [Fact]
    public void A_quantity_carries_its_unit_in_every_culture()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal("38.5 bar", ValueText.Of(Pressure.FromBars(38.5)));
            Assert.Equal("0.5, 1.5", ValueText.Of(new[] { 0.5, 1.5 }));
            Assert.Equal("0.5", ValueText.Of(0.5m));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void A_long_list_is_cut_and_says_so()
    {
        string text = ValueText.Of(Enumerable.Range(1, 500));
        Assert.EndsWith("99, 100, … (the first 100 are shown)", text);
    }

    [Fact]
    public void A_dictionary_shows_keys_and_values() =>
        Assert.Equal("front: 0.6, rear: 0.4", ValueText.Of(new Dictionary<string, double> { ["front"] = 0.6, ["rear"] = 0.4 }));

    [Fact]
    public void Figures_in_a_list_come_one_after_the_other_as_HTML()
    {
        var list = new IHtmlOutput[] { new Note("one"), new Note("two") };
        Assert.True(ValueHtml.Suits(list));
        Assert.Equal("<p>one</p>\n<p>two</p>", ValueHtml.Of(list));
        Assert.Equal("one, two", ValueText.Of(list));
    }

    [Theory]
    [InlineData("text")]
    [InlineData(3.5)]
    [InlineData(null)]
    public void Text_and_numbers_do_not_need_HTML(object? value) => Assert.False(ValueHtml.Suits(value));

    private sealed record Note(string Text) : IHtmlOutput
    {
        public string ToHtml() => $"<p>{Text}</p>";

        public string ToPlainText() => Text;
    }
}
