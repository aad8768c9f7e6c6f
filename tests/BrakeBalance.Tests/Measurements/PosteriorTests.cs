using BrakeBalance.Measurements;
using MathNet.Numerics.LinearAlgebra;

namespace BrakeBalance.Tests.Measurements;

public class PosteriorTests
{
    [Fact]
    public void A_normal_posterior_comes_back_from_Laplace_and_from_the_chain()
    {
        Matrix<double> covariance = Matrix<double>.Build.DenseOfArray(new[,] { { 0.04, 0.018, 0 }, { 0.018, 0.01, 0 }, { 0, 0, 4 } });
        Matrix<double> precision = covariance.Inverse();
        Vector<double> centre = Vector<double>.Build.Dense([0.3, -1.2, 5]);
        double Negative(Vector<double> x) => 0.5 * (x - centre) * precision * (x - centre);
        LaplacePosterior laplace =
            LaplacePosterior.Find(Negative, Vector<double>.Build.Dense(3), Vector<double>.Build.Dense([0.1, 0.1, 1]));
        Assert.True((laplace.Mode - centre).AbsoluteMaximum() < 1e-4);
        Assert.True((laplace.Covariance - covariance).Enumerate().Max(Math.Abs) < 1e-3);
        (Vector<double>[] samples, double reduction) = MetropolisChain.Run(Negative, laplace, 8000, 4, 1);
        Assert.InRange(reduction, 0.99, 1.03);
        Assert.Equal(5, samples.Average(s => s[2]), 0.25);
        Assert.Equal(2, Math.Sqrt(samples.Average(s => Math.Pow(s[2] - 5, 2))), 0.25);
    }

    [Fact]
    public void An_input_that_does_nothing_has_no_share_and_a_constant_answer_has_none_at_all()
    {
        (double[] first, double[] total, _) = SobolIndices.Estimate(2, 512, u => u[0], 1);
        Assert.Equal(1, first[0], 0.1);
        Assert.Equal(0, total[1], 12);
        Assert.Equal([0.0, 0.0], SobolIndices.Estimate(2, 64, _ => 3, 1).Total);
        Assert.NotNull(first);
    }
}
