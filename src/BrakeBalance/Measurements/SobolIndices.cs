using MathNet.Numerics.Statistics;

namespace BrakeBalance.Measurements;

/// <summary>Variance-based sensitivity: which input's not being known makes an answer uncertain.</summary>
/// <remarks>
/// <para>First-order index S_i = V[E(y|x_i)]/V(y): the share of the variance that goes when x_i becomes known. Total index S_Ti: the share
/// that x_i has a hand in, alone or with others. Two matrices A, B of random points and, for each input, A with that column from B.</para>
/// <para>Source: estimators of Saltelli et al., Computer Physics Communications 181 (2010), table 2, both by Jansen (first order c,
/// total f); from memory, checked on the Ishigami function. A single input has exactly 1.</para>
/// </remarks>
internal static class SobolIndices
{
    /// <summary>Estimates the indices.</summary>
    /// <param name="inputs">Number of inputs; each is drawn evenly from 0 to 1.</param>
    /// <param name="samples">Number of rows of A and B; the function is called samples · (inputs + 2) times.</param>
    /// <param name="function">The answer for one point.</param>
    /// <param name="seed">Seed of the random numbers.</param>
    /// <returns>First-order and total indices; all zero when the answer does not vary.</returns>
    public static (double[] First, double[] Total, double[] Values) Estimate(int inputs, int samples, Func<double[], double> function,
        int seed)
    {
        double[][] a = Points(inputs, samples, RandomNumbers.Stream(seed, 0)), b = Points(inputs, samples, RandomNumbers.Stream(seed, 1));
        double[] ya = [.. a.Select(function)], yb = [.. b.Select(function)];
        double mean = ya.Concat(yb).Average();
        double variance = ya.Concat(yb).PopulationVariance();
        double[] first = new double[inputs], total = new double[inputs];
        if (variance <= 1e-14 * Math.Max(1e-12, mean * mean))
        {
            return (first, total, [.. ya, .. yb]);
        }

        double[] mixed = new double[inputs];
        for (int i = 0; i < inputs; i++)
        {
            first[i] = 1;
            for (int j = 0; j < samples; j++)
            {
                Array.Copy(a[j], mixed, inputs);
                mixed[i] = b[j][i];
                double y = function(mixed);
                first[i] -= (yb[j] - y) * (yb[j] - y) / (2.0 * samples) / variance;
                total[i] += (ya[j] - y) * (ya[j] - y) / (2.0 * samples) / variance;
            }
        }

        return (first, total, [.. ya, .. yb]);
    }

    /// <summary>Latin hypercube: every input visits each of its strata once.</summary>
    private static double[][] Points(int inputs, int samples, Random random)
    {
        double[][] points = [.. Enumerable.Range(0, samples).Select(_ => new double[inputs])];
        for (int i = 0; i < inputs; i++)
        {
            int[] order = [.. Enumerable.Range(0, samples)];
            random.Shuffle(order);
            for (int j = 0; j < samples; j++)
            {
                points[j][i] = (order[j] + random.NextDouble()) / samples;
            }
        }

        return points;
    }
}
