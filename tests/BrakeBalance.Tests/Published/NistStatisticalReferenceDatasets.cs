using BrakeBalance.Measurements;
using MathNet.Numerics.LinearAlgebra;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// NIST/ITL Statistical Reference Datasets (StRD): Pontius (load cell calibration, linear least squares) and DanWood (nonlinear).
/// Data and certified values as in the files Pontius.dat and DanWood.dat, read in a public copy.
/// </summary>
[Source("NIST StRD, Pontius and DanWood", Reading.Read)]
public class NistStatisticalReferenceDatasets
{
    private static readonly double[] PontiusY =
    [
        .11019, .21956, .32949, .43899, .54803, .65694, .76562, .87487, .98292, 1.09146, 1.20001, 1.30822, 1.41599, 1.52399, 1.63194,
            1.73947, 1.84646, 1.95392, 2.06128, 2.16844,
        .11052, .22018, .32939, .43886, .54798, .65739, .76596, .87474, .98300, 1.09150, 1.20004, 1.30818, 1.41613, 1.52408, 1.63159,
            1.73965, 1.84696, 1.95445, 2.06177, 2.16829,
    ];

    [Fact]
    public void Pontius_load_cell_calibration_to_nine_digits()
    {
        double[][] rows = [.. Enumerable.Range(0, 40).Select(i => 150000.0 * (i % 20 + 1)).Select(x => new[] { 1, x, x * x })];
        LeastSquares fit = LeastSquares.Fit(rows, PontiusY);
        Close(0.673565789473684E-03, fit.Coefficients[0]);
        Close(0.732059160401003E-06, fit.Coefficients[1]);
        Close(-0.316081871345029E-14, fit.Coefficients[2]);
        Close(0.107938612033077E-03, fit.StandardError(0));
        Close(0.157817399981659E-09, fit.StandardError(1));
        Close(0.486652849992036E-16, fit.StandardError(2));
        Close(0.205177424076185E-03, fit.ResidualDeviation);
        Assert.Equal(37, fit.DegreesOfFreedom);
    }

    [Theory]
    [InlineData(1, 5)]
    [InlineData(0.7, 4)]
    public void DanWood_mode_and_curvature_agree_with_the_certified_values(double start1, double start2)
    {
        // y = b1 x^b2; with a known variance the negative log likelihood is the sum of squares over twice that variance.
        double[] x = [1.309, 1.471, 1.490, 1.565, 1.611, 1.680], y = [2.138, 3.421, 3.597, 4.340, 4.882, 5.660];
        const double variance = 4.3173084083E-03 / 4;
        double Negative(Vector<double> b) => x.Zip(y, (xi, yi) => Math.Pow(yi - b[0] * Math.Pow(xi, b[1]), 2)).Sum() / (2 * variance);
        LaplacePosterior fit = LaplacePosterior.Find(Negative, Vector<double>.Build.Dense([start1, start2]),
            Vector<double>.Build.Dense([0.01, 0.03]));
        Assert.Equal(7.6886226176E-01, fit.Mode[0], 1e-7);
        Assert.Equal(3.8604055871E+00, fit.Mode[1], 4e-7);
        // The certified deviations leave out the second derivatives of the model; the Hessian holds them: 2 %.
        Assert.Equal(1.8281973860E-02, fit.Deviation(0), 0.02 * 1.83E-02);
        Assert.Equal(5.1726610913E-02, fit.Deviation(1), 0.02 * 5.17E-02);
    }

    [Fact]
    public void A_straight_line_agrees_with_MathNet()
    {
        double[] x = [.. Enumerable.Range(0, 20).Select(i => 150000.0 * (i + 1))];
        (double intercept, double slope) = MathNet.Numerics.Fit.Line(x, PontiusY[..20]);
        LeastSquares fit = LeastSquares.Fit([.. x.Select(v => new[] { 1, v })], PontiusY[..20]);
        Assert.Equal(intercept, fit.Coefficients[0], 1e-12);
        Assert.Equal(slope, fit.Coefficients[1], 1e-17);
    }

    private static void Close(double certified, double value) => Assert.Equal(certified, value, 1e-9 * Math.Abs(certified));
}
