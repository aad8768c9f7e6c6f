using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts.Tests;

public class RenderingTests
{
    [Fact]
    public void Thinning_keeps_ends_peaks_and_the_limit()
    {
        double[] y = [.. Enumerable.Range(0, 50_000).Select(i => Math.Sin(i * 0.01))];
        y[31_234] = 5;
        IReadOnlyList<int> keep = Thinning.Keep(y, Figure.PointLimit);
        Assert.InRange(keep.Count, Figure.PointLimit / 2, Figure.PointLimit);
        Assert.Equal(0, keep[0]);
        Assert.Equal(y.Length - 1, keep[^1]);
        Assert.Contains(31_234, keep);
        Assert.Equal(keep.Order(), keep);
    }

    [Fact]
    public void A_short_line_keeps_all_points() => Assert.Equal(100, Thinning.Keep(new double[100], Figure.PointLimit).Count);

    [Theory]
    [InlineData(0, 14, 7, 0, 14)]
    [InlineData(0.3, 13.2, 7, 0, 14)]
    [InlineData(0, 0.97, 5, 0, 1)]
    [InlineData(81, 99, 4, 80, 100)]
    [InlineData(-3, 7, 5, -4, 8)]
    public void Axes_end_at_round_numbers(double low, double high, double parts, double expectedLow, double expectedHigh)
    {
        (double fitLow, double fitHigh) = Ticks.Fit(low, high, parts);
        Assert.Equal(expectedLow, fitLow, 1e-9);
        Assert.Equal(expectedHigh, fitHigh, 1e-9);
    }

    [Theory]
    [InlineData(0.2, 0.2, "0.2")]
    [InlineData(1, 0.25, "1.00")]
    [InlineData(-5, 5, "−5")]
    [InlineData(1000, 500, "1000")]
    public void Ticks_show_the_decimals_their_step_needs(double value, double step, string text) =>
        Assert.Equal(text, Ticks.Text(value, step));

    [Theory]
    [InlineData(123456.0, 5, "123460")]
    [InlineData(0.000123456, 3, "0.000123")]
    [InlineData(-2.5, 5, "-2.5")]
    [InlineData(0, 5, "0")]
    public void Numbers_are_rounded_to_significant_digits(double value, int digits, string text) =>
        Assert.Equal(text, Rounding.ToText(value, digits));

    [Fact]
    public void Text_is_measured_wider_when_it_is_longer_and_never_wrapped_inside_a_word()
    {
        Assert.True(TextMetrics.Width("front axle locks", 13) > TextMetrics.Width("front axle", 13));
        Assert.Equal(["front", "axle", "locks"], TextMetrics.Wrap("front axle locks", 13, 10));
        Assert.Equal(["front axle locks"], TextMetrics.Wrap("front axle locks", 13, 500));
    }

    [Fact]
    public void A_line_never_ends_between_a_number_and_its_unit()
    {
        Assert.Equal("at 1.39\u00a0g, 10 gears, 12\u00a0% or (38.5\u00a0bar).",
            TextMetrics.Bound("at 1.39 g, 10 gears, 12 % or (38.5 bar)."));
        Assert.Equal(["up to", "0.80\u00a0g"], TextMetrics.Wrap("up to 0.80 g", 10, 45));
    }

    [Fact]
    public void Running_text_rounds_to_the_step_of_the_trade()
    {
        Assert.Equal("38.5\u00a0bar", Measure.LinePressure.Text(38.4e5, UnitSystem.Si));
        Assert.Equal("38\u00a0bar", Measure.LinePressure.Text(38.1e5, UnitSystem.Si));
        Assert.Equal("550\u00a0psi", Measure.LinePressure.Text(38e5, UnitSystem.Us));
        Assert.Equal("0.80", Measure.Number.Text(0.8, UnitSystem.Si));
        Assert.Equal("73.0\u00a0m", Measure.Distance.Text(73.02, UnitSystem.Si));
        Assert.Equal("0.80\u00a0g", Measure.InG.Text(0.8, UnitSystem.Si));
        Assert.Equal("0.80\u00a0g", Measure.Deceleration.Text(0.8 * 9.80665, UnitSystem.Us));
        Assert.Equal("−40\u00a0°C", Measure.Temperature.Text(233.15, UnitSystem.Si));
        Assert.Equal("−40\u00a0°F", Measure.Temperature.Text(233.15, UnitSystem.Us));
        Assert.Equal("62\u00a0mph", Measure.Speed.Text(100 / 3.6, UnitSystem.Us));
    }

    [Fact]
    public void A_label_without_room_goes_to_the_key()
    {
        var builder = new FigureBuilder("crowd", UnitSystem.Si)
            .Title("Many lines cannot all be named beside themselves")
            .Describe("Forty lines.", "Forty lines from the origin to the right, each with a long name.")
            .X("Time", "t", Measure.Time).Y("Speed", "v", Measure.Speed);
        for (int i = 1; i <= 40; i++)
        {
            builder.Line(FormattableString.Invariant($"a line with a rather long name, number {i}"), [0, 1], [0, i]);
        }

        Figure figure = builder.Build();
        FigureLayout layout = FigureLayout.Of(figure, FigureSize.Page);
        Assert.NotEmpty(layout.Keyed);
        Assert.Equal(40, layout.Labels.Select(label => label.Owner).Concat(layout.Keyed.Select(key => key.Owner)).Distinct().Count());
        Assert.All(layout.Keyed, key => Assert.Contains($">{figure.Layers[key.Owner].Name}<", figure.ToSvg(), StringComparison.Ordinal));
    }

    [Fact]
    public void Stacked_bars_fit_their_sum()
    {
        Figure figure = new FigureBuilder("bars", UnitSystem.Si)
            .Title("The assist does most of the work")
                .Describe("Stacked bars.", "Two bars, each of two parts.")
            .Categories("Deceleration", "0.4", "0.8").Y("Force", "F", Measure.ControlForce)
            .Bars("foot", [100, 200]).Bars("assist", [300, 650], Tone.Other, Hatch.Rising).StackingBars().Build();
        Assert.Equal(1000, FigureLayout.Of(figure, FigureSize.Page).YHigh);
        Assert.Equal(["Deceleration", "Force, foot [N]", "Force, assist [N]"], figure.Table.Columns);
        Assert.Contains("\"barmode\":\"stack\"", figure.ToPlotlyJson(), StringComparison.Ordinal);
    }
}
