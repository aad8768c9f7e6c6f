using BrakeBalance.Brakes;
using FsCheck.Xunit;
using UnitsNet;

namespace BrakeBalance.Tests.Brakes;

public class FrictionCurveTests
{
    // An invented track pad: cold, warm, peak, fading.
    private static readonly FrictionCurve Pad = FrictionCurve.Through(
        (Temperature.FromDegreesCelsius(20), 0.34),
        (Temperature.FromDegreesCelsius(150), 0.44),
        (Temperature.FromDegreesCelsius(350), 0.52),
        (Temperature.FromDegreesCelsius(550), 0.47),
        (Temperature.FromDegreesCelsius(700), 0.30));

    [Fact]
    public void Passes_through_its_points() =>
        Assert.All(Pad.Points, point => Assert.Equal(point.Friction, Pad.At(point.Temperature), 1e-12));

    [Property]
    public bool Never_leaves_the_range_of_the_neighbouring_points(byte a, byte b, byte c, byte d, byte where)
    {
        (Temperature Temperature, double Friction)[] points =
        [
            (Temperature.FromDegreesCelsius(0), 0.1 + (a / 255.0)),
            (Temperature.FromDegreesCelsius(50), 0.1 + (b / 255.0)),
            (Temperature.FromDegreesCelsius(300), 0.1 + (c / 255.0)),
            (Temperature.FromDegreesCelsius(400), 0.1 + (d / 255.0)),
        ];
        FrictionCurve curve = FrictionCurve.Through(points);
        double celsius = where / 255.0 * 400;
        int after = Math.Max(1, Array.FindIndex(points, p => p.Temperature.DegreesCelsius >= celsius));
        double low = Math.Min(points[after - 1].Friction, points[after].Friction);
        double high = Math.Max(points[after - 1].Friction, points[after].Friction);
        double friction = curve.At(Temperature.FromDegreesCelsius(celsius));
        return friction >= low - 1e-12 && friction <= high + 1e-12;
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Points_on_a_straight_line_give_that_line(int count)
    {
        FrictionCurve line = FrictionCurve.Through(Enumerable.Range(0, count)
            .Select(i => (Temperature.FromDegreesCelsius(100 * i), 0.30 + (0.05 * i))));
        Assert.Equal(0.325, line.At(Temperature.FromDegreesCelsius(50)), 1e-9);
        Assert.Equal(0.30 + (0.05 * (count - 1.25)), line.At(Temperature.FromDegreesCelsius(100 * (count - 1.25))), 1e-9);
    }

    [Theory]
    [InlineData(19)]
    [InlineData(701)]
    public void Nothing_is_guessed_outside_the_points(double celsius)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Pad.At(Temperature.FromDegreesCelsius(celsius)));
        Assert.Contains("20 °C to 700 °C", error.Message);
        Assert.Contains(FormattableString.Invariant($"{celsius} °C"), error.Message);
    }

    [Fact]
    public void Fahrenheit_and_celsius_agree() =>
        Assert.Equal(Pad.At(Temperature.FromDegreesCelsius(260)), Pad.At(Temperature.FromDegreesFahrenheit(500)), 1e-9);

    [Fact]
    public void Bad_points_are_refused_by_name()
    {
        Assert.Contains("1 given",
            Assert.Throws<ArgumentException>(() => FrictionCurve.Through((Temperature.FromDegreesCelsius(20), 0.3))).Message);
        var order = Assert.Throws<ArgumentException>(() => FrictionCurve.Through(
            (Temperature.FromDegreesCelsius(20), 0.3), (Temperature.FromDegreesCelsius(20), 0.4)));
        Assert.Contains("point 1 is at 20 °C and point 2 at 20 °C", order.Message);
        var friction = Assert.Throws<ArgumentOutOfRangeException>(() => FrictionCurve.Through(
            (Temperature.FromDegreesCelsius(20), 0.3), (Temperature.FromDegreesCelsius(90), 0)));
        Assert.Contains("friction of point 2", friction.Message);
    }

    [Fact]
    public void Curves_through_the_same_points_are_equal()
    {
        Assert.Equal(Pad, FrictionCurve.Through(Pad.Points));
        Assert.NotEqual(Pad, FrictionCurve.Through(Pad.Points.Take(4)));
    }
}
