using BrakeBalance.Measurements;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// The Ishigami function sin x₁ + a sin² x₂ + b x₃⁴ sin x₁ on (−π, π)³ (Ishigami and Homma 1990), a = 7, b = 0.1 as used by
/// Marrel et al. (2009).
/// Variances in closed form, as printed in the documentation of the library OpenTURNS, use case "The Ishigami function".
/// </summary>
[Source("Documentation of OpenTURNS, the Ishigami function", Reading.Read)]
public class IshigamiFunction
{
    [Fact]
    public void Sobol_indices_agree_with_the_closed_form()
    {
        const double a = 7, b = 0.1;
        double pi4 = Math.Pow(Math.PI, 4), pi8 = pi4 * pi4;
        double variance = 0.5 + a * a / 8 + b * b * pi8 / 18 + b * pi4 / 5;
        double v1 = 0.5 * Math.Pow(1 + b * pi4 / 5, 2), v2 = a * a / 8, v13 = b * b * pi8 * 8 / 225;
        (double[] first, double[] total, double[] values) = SobolIndices.Estimate(3, 16384, u =>
        {
            double x1 = Math.PI * (2 * u[0] - 1), x2 = Math.PI * (2 * u[1] - 1), x3 = Math.PI * (2 * u[2] - 1);
            return Math.Sin(x1) + a * Math.Sin(x2) * Math.Sin(x2) + b * Math.Pow(x3, 4) * Math.Sin(x1);
        }, seed: 1);
        // The sampling error of 16384 rows is about 0.01.
        Assert.Equal(v1 / variance, first[0], 0.02);
        Assert.Equal(v2 / variance, first[1], 0.02);
        Assert.Equal(0, first[2], 0.02);
        Assert.Equal((v1 + v13) / variance, total[0], 0.02);
        Assert.Equal(v2 / variance, total[1], 0.02);
        Assert.Equal(v13 / variance, total[2], 0.02);
        Assert.Equal(a / 2, values.Average(), 0.05);
    }
}
