using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace BrakeBalance.Measurements;

/// <summary>Draws from a posterior that need not be normal: drawn about the Laplace approximation, weighed by the true density.</summary>
/// <remarks>
/// Importance sampling from a multivariate Student t of six degrees of freedom, first with the Laplace covariance, then with mean and
/// covariance from the weights; where even that misses the posterior, Metropolis chains take over. Lock events that only say "not before
/// this pressure" make posteriors lopsided, and intervals of the normal approximation alone then hold the truth too rarely.
/// </remarks>
internal sealed class PosteriorSample(Vector<double>[] draws)
{
    private const double Degrees = 6;
    private const int Count = 2000;
    private const double LeastShare = 0.06;
    private const int Rounds = 4;

    /// <summary>Draws of equal weight.</summary>
    public Vector<double>[] Draws { get; } = draws;

    public static PosteriorSample From(Func<Vector<double>, double> negativeLog, LaplacePosterior laplace, int seed)
    {
        int n = laplace.Mode.Count;
        Vector<double> centre = laplace.Mode;
        Matrix<double> root = laplace.Covariance.Cholesky().Factor;
        Random random = RandomNumbers.Stream(seed, 17);
        Vector<double>[] points = [];
        double[] weights = [];
        double total = 0, effective = 0;
        for (int round = 0; round < Rounds && effective < 0.5 * Count; round++)
        {
            Vector<double>[] tried =
                [.. Enumerable.Range(0, Count)
                .Select(_ => Vector<double>.Build.Dense(n, _ =>
                RandomNumbers.Normal(random)) * Math.Sqrt(Degrees / ChiSquared.Sample(random, Degrees)))];
            Vector<double>[] there = [.. tried.Select(u => centre + root * u)];
            double[] logs = new double[Count];
            Parallel.For(0, Count, i =>
                logs[i] = (Degrees + n) / 2 * Math.Log(1 + tried[i].DotProduct(tried[i]) / Degrees) - negativeLog(there[i]));
            double highest = logs.Where(double.IsFinite).DefaultIfEmpty(0).Max();
            double[] w = [.. logs.Select(l => double.IsFinite(l) ? Math.Exp(l - highest) : 0)];
            double sum = w.Sum(), worth = sum * sum / w.Sum(x => x * x);
            if (worth > effective)
            {
                (points, weights, total, effective) = (there, w, sum, worth);
            }

            // The next round is drawn about the mean and covariance that this round's weights give.
            centre = there.Zip(w, (p, x) => p * (x / sum)).Aggregate((a, b) => a + b);
            Matrix<double> covariance = Matrix<double>.Build.Dense(n, n);
            for (int i = 0; i < Count; i++)
            {
                if (w[i] > 1e-6 * sum / Count)
                {
                    Vector<double> d = there[i] - centre;
                    covariance += d.OuterProduct(d) * (w[i] / sum);
                }
            }

            // Few effective points make too narrow a covariance; some of the first one keeps it open.
            double keep = Math.Clamp(20 * n / worth, 0.02, 1);
            root = (((1 - keep) * covariance) + (keep * laplace.Covariance)).Cholesky().Factor;
        }

        if (!(effective > LeastShare * Count))
        {
            (Vector<double>[] chain, _) = MetropolisChain.Run(negativeLog, laplace, 4000, 2, seed);
            return new PosteriorSample(chain);
        }

        // Systematic resampling: each point as often as its weight says.
        Vector<double>[] draws = new Vector<double>[Count];
        double at = random.NextDouble(), reached = 0;
        for (int i = 0, k = 0; i < Count && k < Count; i++)
        {
            reached += weights[i] / total * Count;
            while (k < Count && reached > at + k)
            {
                draws[k++] = points[i];
            }
        }

        return new PosteriorSample([.. draws.Select(d => d ?? points[^1])]);
    }

    /// <summary>Median and central 90 % interval of a function of the draws.</summary>
    public Interval<double> Interval(Func<Vector<double>, double> of)
    {
        double[] sorted = [.. Draws.Select(of).Order()];
        double At(double share) => sorted[(int)Math.Clamp(share * sorted.Length, 0, sorted.Length - 1)];
        return new Interval<double>(At(0.5), At(0.05), At(0.95));
    }

    public double Correlation(int i, int j)
    {
        double mi = Draws.Average(d => d[i]), mj = Draws.Average(d => d[j]);
        double ij = Draws.Average(d => (d[i] - mi) * (d[j] - mj)), ii = Draws.Average(d => (d[i] - mi) * (d[i] - mi)),
            jj = Draws.Average(d => (d[j] - mj) * (d[j] - mj));
        return ij / Math.Sqrt(Math.Max(1e-300, ii * jj));
    }
}
