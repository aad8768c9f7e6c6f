using MathNet.Numerics.LinearAlgebra;

namespace BrakeBalance.Measurements;

/// <summary>Random-walk Metropolis sampling of a posterior, as a check of the Laplace approximation.</summary>
/// <remarks>
/// Proposals are normal with 2.38²/d times the Laplace covariance. Source: Metropolis et al. (1953); step size by Gelman, Roberts and
/// Gilks (1996), from memory.
/// </remarks>
internal static class MetropolisChain
{
    /// <summary>Samples from several starts.</summary>
    /// <param name="negativeLog">Negative log posterior up to a constant.</param>
    /// <param name="laplace">Where to start, and the shape of the steps.</param>
    /// <param name="steps">Steps a chain, of which the first fifth is dropped.</param>
    /// <param name="chains">Number of chains; at least two.</param>
    /// <param name="seed">Seed of the random numbers.</param>
    /// <returns>The samples kept, and the largest potential scale reduction over the parameters (near 1 when the chains agree).</returns>
    public static (Vector<double>[] Samples, double ScaleReduction) Run(Func<Vector<double>, double> negativeLog, LaplacePosterior laplace,
        int steps, int chains, int seed)
    {
        int n = laplace.Mode.Count;
        Matrix<double> root = laplace.Covariance.Cholesky().Factor * (2.38 / Math.Sqrt(n));
        Vector<double>[][] kept = new Vector<double>[chains][];
        Parallel.For(0, chains, c =>
        {
            var random = RandomNumbers.Stream(seed, c);
            Vector<double> at = laplace.Draw(random);
            double value = negativeLog(at);
            List<Vector<double>> samples = [];
            for (int i = 0; i < steps; i++)
            {
                Vector<double> next = at + root * Vector<double>.Build.Dense(n, _ => RandomNumbers.Normal(random));
                double there = negativeLog(next);
                if (Math.Log(1 - random.NextDouble()) < value - there)
                {
                    (at, value) = (next, there);
                }

                if (i >= steps / 5)
                {
                    samples.Add(at);
                }
            }

            kept[c] = [.. samples];
        });
        return ([.. kept.SelectMany(k => k)], Enumerable.Range(0, n)
            .Max(p => Reduction([.. kept.Select(k => k.Select(v => v[p]).ToArray())])));
    }

    private static double Reduction(double[][] chains)
    {
        double length = chains[0].Length;
        double[] means = [.. chains.Select(c => c.Average())];
        double within = chains.Zip(means, (c, m) => c.Sum(v => (v - m) * (v - m)) / (length - 1)).Average();
        double grand = means.Average();
        double between = length * means.Sum(m => (m - grand) * (m - grand)) / (chains.Length - 1);
        return Math.Sqrt(((length - 1) / length * within + between / length) / within);
    }
}
