using BrakeBalance.Measurements;
using BrakeBalance.Stops;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// Stopping distances of 50 cars of the 1920s: M. Ezekiel, Methods of Correlation Analysis (1930), as handed on in the public data set
/// "cars" of R's package
/// datasets (read row by row in the public copy Rdatasets, csv/datasets/cars.csv). The coefficients are those of a least-squares fit of
/// these rows made
/// beforehand, outside this program, by least squares; the book was not read.
/// </summary>
[Source("Ezekiel, Methods of Correlation Analysis (1930), stopping distances, as the public data set cars", Reading.Read)]
public class StoppingDistancesOf1920s
{
    /// <summary>Speed in mph, distance in ft.</summary>
    private static readonly (double Speed, double Distance)[] Cars =
    [
        (4, 2), (4, 10), (7, 4), (7, 22), (8, 16), (9, 10), (10, 18), (10, 26), (10, 34), (11, 17),
        (11, 28), (12, 14), (12, 20), (12, 24), (12, 28), (13, 26), (13, 34), (13, 34), (13, 46), (14, 26),
        (14, 36), (14, 60), (14, 80), (15, 20), (15, 26), (15, 54), (16, 32), (16, 40), (17, 32), (17, 40),
        (17, 50), (18, 42), (18, 56), (18, 76), (18, 84), (19, 36), (19, 46), (19, 68), (20, 32), (20, 48),
        (20, 52), (20, 56), (20, 64), (22, 66), (23, 54), (24, 70), (24, 92), (24, 93), (24, 120), (25, 85),
    ];

    private static readonly double[] Distances = [.. Cars.Select(c => c.Distance)];

    [Fact]
    public void The_straight_line_has_the_coefficients_of_least_squares()
    {
        LeastSquares fit = LeastSquares.Fit([.. Cars.Select(c => new[] { 1, c.Speed })], Distances);
        Assert.Equal(-17.5791, fit.Coefficients[0], 4);
        Assert.Equal(3.9324, fit.Coefficients[1], 4);
        Assert.Equal(15.38, fit.ResidualDeviation, 2);
        Assert.Equal(48, fit.DegreesOfFreedom);
        double mean = Distances.Average(), left = Math.Pow(fit.ResidualDeviation, 2) * 48 / Distances.Sum(d => (d - mean) * (d - mean));
        Assert.Equal(0.6511, 1 - left, 4);
    }

    [Fact]
    [Source("Standard errors of the straight line through the public data set cars", Reading.FromMemory)]
    public void The_straight_line_has_the_standard_errors_remembered_of_it()
    {
        LeastSquares fit = LeastSquares.Fit([.. Cars.Select(c => new[] { 1, c.Speed })], Distances);
        Assert.Equal(6.7584, fit.StandardError(0), 4);
        Assert.Equal(0.4155, fit.StandardError(1), 4);
    }

    [Fact]
    public void The_parabola_has_the_coefficients_of_least_squares()
    {
        LeastSquares fit = LeastSquares.Fit([.. Cars.Select(c => new[] { 1, c.Speed, c.Speed * c.Speed })], Distances);
        Assert.Equal(2.470, fit.Coefficients[0], 3);
        Assert.Equal(0.9133, fit.Coefficients[1], 4);
        Assert.Equal(0.09996, fit.Coefficients[2], 5);
    }

    [Fact]
    public void Reaction_and_deceleration_of_the_fit_give_the_distances_back_through_the_stop()
    {
        LeastSquares fit = LeastSquares.Fit([.. Cars.Select(c => new[] { c.Speed, c.Speed * c.Speed })], Distances);
        Assert.Equal(1.239, fit.Coefficients[0], 3);
        Assert.Equal(0.09014, fit.Coefficients[1], 5);
        // Distance = v t + v² / (2 a) with v in ft/s.
        double feetPerSecond = 5280.0 / 3600, seconds = fit.Coefficients[0] / feetPerSecond,
            rate = feetPerSecond * feetPerSecond / (2 * fit.Coefficients[1]);
        Assert.Equal(0.845, seconds, 3);
        Assert.Equal(11.93, rate, 2);
        foreach (double speed in (ReadOnlySpan<double>)[4, 15, 25])
        {
            Length distance = StopDistance.WithDelay(Speed.FromMilesPerHour(speed), Duration.FromSeconds(seconds),
                Acceleration.FromFeetPerSecondSquared(rate));
            Assert.Equal(fit.Coefficients[0] * speed + fit.Coefficients[1] * speed * speed, distance.Feet, 1e-6);
        }
    }
}
