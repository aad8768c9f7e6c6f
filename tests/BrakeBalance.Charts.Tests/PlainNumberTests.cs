using System.Globalization;
using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts.Tests;

/// <summary>What a drawing asks thousands of times is worked out in plain numbers, and is the same.</summary>
public class PlainNumberTests
{
    [Fact]
    public void Numbers_of_a_drawing_are_those_that_the_format_of_two_decimals_writes()
    {
        var random = new Random(7);
        double[] all =
        [
            0, -0.001, -0.004999, 0.005, 0.125, 0.995, 1.005, 4.55, 7.245, 12.345, -12.345, 99.995, 1e9, 3e12, -7e20,
            .. Enumerable.Range(0, 20_000).Select(_ => Math.Round(random.NextDouble() * 4000 - 2000, random.Next(0, 9))),
        ];
        Assert.All(all, value =>
        {
            string text = value.ToString("0.##", CultureInfo.InvariantCulture);
            Assert.Equal(text == "-0" ? "0" : text, SvgWriter.Number(value));
        });
    }

    [Fact]
    public void Points_are_inside_an_outline_where_they_are_inside_the_polygon_and_as_far_from_it_as_from_its_nearest_edge()
    {
        var random = new Random(11);
        for (int i = 0; i < 200; i++)
        {
            Dot[] polygon = [.. Enumerable.Range(0, random.Next(3, 40)).Select(_ => Some())];
            var outline = new Outline(polygon);
            for (int k = 0; k < 50; k++)
            {
                Dot dot = Some();
                Assert.Equal(Geometry.Inside(dot, polygon), outline.CrossingsAt(dot.Y).Count(x => dot.X < x) % 2 == 1);
                double nearest = polygon.Zip([.. polygon[1..], polygon[0]], (a, b) => Geometry.Distance(dot, a, b)).Min();
                Assert.Equal(nearest, outline.DistanceToEdge(dot), 1e-9);
            }
        }

        Dot Some() => new(random.Next(0, 900) + 0.5 * random.Next(2), random.Next(0, 500));
    }
}
