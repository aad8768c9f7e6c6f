using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace BrakeBalance.Measurements;

/// <summary>A posterior taken as normal about its highest point, with the curvature there.</summary>
/// <remarks>
/// Highest point by Newton's method with central differences and, where a kink stops it, by the Nelder–Mead simplex (MathNet.Numerics);
/// the covariance is the inverse of the Hessian of the negative log posterior. Source: Laplace's approximation, any text on Bayesian
/// statistics.
/// </remarks>
internal sealed class LaplacePosterior(Vector<double> mode, Matrix<double> covariance)
{
    private const double Nearest = 1e-12;

    private readonly Matrix<double> _root = covariance.Cholesky().Factor;

    public Vector<double> Mode { get; } = mode;

    public Matrix<double> Covariance { get; } = covariance;

    /// <summary>Finds mode and curvature.</summary>
    /// <param name="negativeLog">Negative log posterior up to a constant.</param>
    /// <param name="start">Where to begin.</param>
    /// <param name="steps">
    /// A step of each parameter over which the posterior changes little, such as a tenth of its prior's deviation.
    /// </param>
    public static LaplacePosterior Find(Func<Vector<double>, double> negativeLog, Vector<double> start, Vector<double> steps)
    {
        // In units of the steps all parameters are of one size.
        Vector<double> At(Vector<double> u) => start + u.PointwiseMultiply(steps);
        double Scaled(Vector<double> u) => negativeLog(At(u));
        Vector<double> zero = Vector<double>.Build.Dense(start.Count);
        Vector<double> mode = Descend(Scaled, Vector<double>.Build.Dense(start.Count), out bool settled);
        if (!settled)
        {
            // A kink stopped the descent: the simplex needs no slopes, and the descent finishes from where it ends.
            try
            {
                mode = new NelderMeadSimplex(1e-4, 4000).FindMinimum(ObjectiveFunction.Value(Scaled), mode).MinimizingPoint;
            }
            catch (MaximumIterationsException)
            {
                // The simplex may creep; the descent below starts from where it was.
            }

            mode = Descend(Scaled, mode, out _);
        }

        Matrix<double> inverse = PositiveInverse(Curvature(Scaled, mode));
        Matrix<double> covariance = Matrix<double>.Build.Dense(start.Count, start.Count, (i, j) => inverse[i, j] * steps[i] * steps[j]);
        return new LaplacePosterior(At(mode), (covariance + covariance.Transpose()) / 2);
    }

    /// <summary>The lowest point found from a start, without the curvature.</summary>
    /// <param name="negativeLog">Function to make small.</param>
    /// <param name="start">Where to begin.</param>
    /// <param name="steps">As for <see cref="Find"/>.</param>
    /// <param name="near">How much lower the lowest point may lie than the one found.</param>
    public static Vector<double> Descend(
        Func<Vector<double>, double> negativeLog, Vector<double> start, Vector<double> steps, double near = Nearest) =>
        start + Descend(u => negativeLog(start + u.PointwiseMultiply(steps)), Vector<double>.Build.Dense(start.Count), out _, near)
            .PointwiseMultiply(steps);

    /// <summary>Newton's method with a positive curvature and step halving.</summary>
    private static Vector<double> Descend(Func<Vector<double>, double> f, Vector<double> start, out bool settled, double near = Nearest)
    {
        Vector<double> at = start;
        double value = f(at);
        settled = false;
        for (int i = 0; i < 60 && !settled; i++)
        {
            Vector<double> slope = Slope(f, at);
            Vector<double> step = -(PositiveInverse(Curvature(f, at)) * slope);
            double expected = -0.5 * step.DotProduct(slope);
            if (expected < near)
            {
                settled = true;
                break;
            }

            // No further than one and a half prior deviations at a time: far out the curvature says nothing.
            double scale = Math.Min(1, 15 / step.AbsoluteMaximum());
            while (scale > 1e-4 && !(f(at + scale * step) < value))
            {
                scale /= 2;
            }

            if (scale <= 1e-4)
            {
                settled = expected < 1e-3;
                break;
            }

            at += scale * step;
            value = f(at);
        }

        return at;
    }

    public double Deviation(int index) => Math.Sqrt(Covariance[index, index]);

    public Vector<double> Draw(Random random) => Mode + _root * Vector<double>.Build.Dense(Mode.Count, _ => RandomNumbers.Normal(random));

    private static Vector<double> Slope(Func<Vector<double>, double> f, Vector<double> at)
    {
        const double step = 1e-3;
        return Vector<double>.Build.Dense(at.Count, i =>
        {
            Vector<double> d = Vector<double>.Build.Dense(at.Count, j => j == i ? step : 0);
            return (f(at + d) - f(at - d)) / (2 * step);
        });
    }

    private static Matrix<double> Curvature(Func<Vector<double>, double> f, Vector<double> at)
    {
        const double step = 0.05;
        int n = at.Count;
        double centre = f(at);
        Matrix<double> h = Matrix<double>.Build.Dense(n, n);
        double Moved(double by, params ReadOnlySpan<int> along)
        {
            Vector<double> moved = at.Clone();
            foreach (int i in along)
            {
                moved[i] += by;
            }

            return f(moved);
        }

        double[] up = new double[n], down = new double[n];
        Parallel.For(0, n, i => (up[i], down[i]) = (Moved(step, i), Moved(-step, i)));
        Parallel.For(0, n, i =>
        {
            h[i, i] = (up[i] - 2 * centre + down[i]) / (step * step);
            for (int j = 0; j < i; j++)
            {
                double both = Moved(step, i, j) + Moved(-step, i, j) + 2 * centre;
                h[i, j] = h[j, i] = (both - up[i] - up[j] - down[i] - down[j]) / (2 * step * step);
            }
        });

        return h;
    }

    private static Matrix<double> PositiveInverse(Matrix<double> hessian)
    {
        var evd = hessian.Evd(Symmetricity.Symmetric);
        double largest = evd.EigenValues.Select(v => Math.Abs(v.Real)).Max();
        Vector<double> inverse =
            Vector<double>.Build.Dense(hessian.RowCount, i => 1 / Math.Max(Math.Abs(evd.EigenValues[i].Real), 1e-8 * largest));
        return evd.EigenVectors * Matrix<double>.Build.DenseOfDiagonalVector(inverse) * evd.EigenVectors.Transpose();
    }
}
