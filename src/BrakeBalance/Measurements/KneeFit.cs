using MathNet.Numerics;
using MathNet.Numerics.Interpolation;

namespace BrakeBalance.Measurements;

/// <summary>
/// Joint fit of a proportioning valve's curves: lines of known slope through the origin, each bending at a knee of its own, all with one
/// slope above it.
/// </summary>
/// <remarks>
/// <para>y = g x for x ≤ k; y = g k + s (x − k) above, g known. Unknown are one knee a curve, the slope s and the standard deviation
/// σ of a reading, the same for both gauges and all curves. Both pressures of a pair carry the error: the true front pressure is
/// integrated out along the bent line, which for two straight pieces is a closed form (a normal density across the line times a normal
/// distribution along it).</para>
/// <para>A reading is honest with probability 1 − ε and anything up to the top of the scale with probability ε (contaminated normal),
/// so far readings lose their say by degrees; only those that are gross errors even at the greatest likely σ are named as left out.</para>
/// <para>Knees, slope and ln σ are taken as evenly likely beforehand over their ranges and integrated on a grid that closes in on the
/// probability; the first rounds look with a σ no finer than their grid, so that no peak slips between nodes. Estimates are medians,
/// bounds hold 90 %. With few readings σ is itself uncertain and the bounds widen as Student's t does.</para>
/// <para>Source: structural errors in variables and the contaminated normal are textbook methods (from memory); ε is our choice; the
/// coverage is proved by simulation in the tests.</para>
/// </remarks>
internal sealed class KneeFit
{
    private const int FineNodes = 200;
    private const double Wild = 0.03;
    private const double LowestSlope = -0.15;
    private const double KneeReach = 1.15;
    private const double Negligible = 3e-4;
    private const int SlopeNodes = 12;
    private const int ScatterNodes = 5;
    private const int KneeNodes = 20;
    private const int LastSlopeNodes = 15;
    private const int LastKneeNodes = 30;
    private const int LastScatterNodes = 8;
    private const double FarAlong = 5;
    private const double LeastExponent = -40;
    private const double KneeLevel = 0.998;
    private const double OutlierLevel = 0.99;

    private readonly Curve[] _curves;
    private readonly double _g;
    private readonly double _wildDensity;
    private readonly double _least;
    private double _peak;

    private KneeFit((double[] X, double[] Y)[] curves, double below, double least)
    {
        (_g, _least) = (below, least);
        _curves = [.. curves.Select(c => new Curve(c.X, c.Y, below))];
        double top = _curves.Max(c => Math.Max(c.X.Max(), c.Y.Max() / below));
        _wildDensity = 1 / Math.Max(1.2 * below * top, 10 * least);
    }

    /// <summary>Slope above the knees: median and bounds.</summary>
    public Interval<double> Slope { get; private set; }

    /// <summary>Standard deviation of the slope's probability.</summary>
    public double SlopeError { get; private set; }

    /// <summary>Standard deviation of one gauge's reading about the fit.</summary>
    public double Scatter { get; private set; }

    public int DegreesOfFreedom { get; private set; }

    /// <summary>What was found for each curve, in their order.</summary>
    public IReadOnlyList<FittedKnee> Knees { get; private set; } = [];

    /// <summary>Fits curves that share slope and scatter.</summary>
    /// <param name="curves">Front and rear line pressures of each curve, in one unit; at least one reading each.</param>
    /// <param name="below">Slope below the knee [–].</param>
    /// <param name="least">Smallest scatter to believe in, such as the resolution of the gauges.</param>
    /// <param name="scatter">The scatter when it is known from elsewhere; null to find it.</param>
    public static KneeFit Fit((double[] X, double[] Y)[] curves, double below, double least, double? scatter = null)
    {
        var fit = new KneeFit(curves, below, least);
        fit.Run(scatter);
        return fit;
    }

    /// <summary>
    /// How much better each curve is fitted by a slope of its own than by one for all: an F ratio, about 1 when only noise differs.
    /// </summary>
    /// <param name="curves">The curves, two or more.</param>
    /// <param name="below">Slope below the knee [–].</param>
    /// <param name="scatter">The scatter of a reading.</param>
    public static double SlopeRatio((double[] X, double[] Y)[] curves, double below, double scatter)
    {
        double apart = curves.Sum(c => Fit([c], below, scatter, scatter)._peak);
        return Math.Max(0, 2 * (apart - Fit(curves, below, scatter, scatter)._peak)) / (curves.Length - 1);
    }

    /// <summary>Chance that a reading so far off a known line is an honest one.</summary>
    /// <param name="off">How far off it lies.</param>
    /// <param name="scatter">Standard deviation of a reading; both gauges scatter.</param>
    /// <param name="range">Range in which a mistaken one may lie anywhere.</param>
    internal static double Honest(double off, double scatter, double range)
    {
        double width = 1.2 * scatter, honest = (1 - Wild) * Math.Exp(-0.5 * off * off / (width * width)) / (2.5066282746310002 * width);
        return honest / (honest + Wild / (1.2 * range));
    }

    /// <summary>The middle value; zero when there is none. The values stay in their order.</summary>
    internal static double Median(double[] values)
    {
        double[] sorted = [.. values];
        Array.Sort(sorted);
        int n = sorted.Length;
        return n == 0 ? 0 : (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
    }

    private void Run(double? scatter)
    {
        (double Low, double High)[] knees = [.. _curves.Select(c => (0.0, KneeReach * c.Top))];
        (double Low, double High) slope = (LowestSlope * _g, _g);
        double top = _curves.Max(c => c.Top), least = Math.Log(scatter ?? _least),
            most = Math.Log(scatter ?? Math.Max(2 * _least, 0.2 * _g * top));
        (double Low, double High) sigma = (least, most);
        double floor = most + 3;
        Grid grid;
        for (int round = 0; ; round++)
        {
            bool last = round == 9;
            double cell = Math.Max(knees.Max(k => k.High - k.Low) / (KneeNodes - 1) * 0.7 * _g,
                (slope.High - slope.Low) / (SlopeNodes - 1) * top);
            // A peak wider than half a cell cannot hide between two nodes; where the probability itself keeps cells wide, they resolve it.
            floor = Math.Min(Math.Log(0.6 * cell), floor - 1.1);
            bool fine = floor <= sigma.Low;
            (double Low, double High) looked = fine ? sigma : (Math.Max(sigma.Low, floor), Math.Max(sigma.High, floor + 0.7));
            looked = scatter is null ? looked : (looked.Low, looked.Low);

            double[] logSigmas = Nodes(looked, looked.High > looked.Low ? ScatterNodes : 1);
            grid = new Grid(this, Nodes(slope, SlopeNodes), logSigmas, [.. knees.Select(k => Nodes(k, KneeNodes))]);
            double before = slope.High - slope.Low;
            slope = Closer(grid.Slopes, grid.SlopeWeights, slope);
            double shrink = (slope.High - slope.Low) / before;
            for (int j = 0; j < knees.Length; j++)
            {
                (double Low, double High) closer = Closer(grid.Knees[j], grid.KneeWeights[j], knees[j]);
                shrink = Math.Min(shrink, (closer.High - closer.Low) / (knees[j].High - knees[j].Low));
                knees[j] = closer;
            }

            if (scatter is null)
            {
                (double Low, double High) closer = Closer(grid.LogSigmas, grid.SigmaWeights, looked);
                // A floor of the looking is none of the scatter.
                sigma = (fine || closer.Low > looked.Low ? closer.Low : sigma.Low, Math.Min(closer.High, most));
                sigma = (Math.Min(sigma.Low, sigma.High - 0.1), sigma.High);
            }

            if (last || (fine && shrink > 0.6))
            {
                break;
            }
        }

        double[] lastSigmas = scatter is null ? Nodes(sigma, LastScatterNodes) : [least];
        grid = new Grid(this, Nodes(slope, LastSlopeNodes), lastSigmas, [.. knees.Select(k => Nodes(k, LastKneeNodes))]);
        _peak = grid.Peak;
        Slope = Quantiles(grid.Slopes, grid.SlopeWeights);
        double mean = Mean(grid.Slopes, grid.SlopeWeights);
        SlopeError = Math.Sqrt(Mean([.. grid.Slopes.Select(s => (s - mean) * (s - mean))], grid.SlopeWeights));
        Interval<double> logScatter = grid.LogSigmas.Length > 1 ? Quantiles(grid.LogSigmas, grid.SigmaWeights) : new(least, least, least);
        Scatter = Math.Exp(logScatter.Estimate);
        DegreesOfFreedom = Math.Max(1, _curves.Sum(c => c.X.Length) - _curves.Length - 1);
        Knees = [.. _curves.Select((c, j) => Fitted(c, grid, j, Math.Exp(logScatter.High)))];
    }

    private FittedKnee Fitted(Curve curve, Grid grid, int j, double largeScatter)
    {
        Interval<double> knee = Quantiles(grid.Knees[j], grid.KneeWeights[j]);
        double slope = Slope.Estimate;
        bool[] left = [.. curve.X.Select((_, i) => curve.IsWild(i, knee.Estimate, slope, largeScatter, _wildDensity))];
        int above = curve.X.Where((x, i) => !left[i] && x > knee.Estimate).Count();
        return new FittedKnee
        {
            Knee = knee,
            LeftOut = left,
            Weights = [.. curve.X.Select((_, i) => curve.Honest(i, knee.Estimate, slope, Scatter, _wildDensity))],
            HasKnee = above >= 2 && IsBent(curve, knee.Estimate, slope),
            Slopes = grid.Slopes,
            Given = grid.KneeGivenSlope(j),
        };
    }

    /// <summary>
    /// Whether a bend explains a curve better than chance would: likelihood ratio, each side with the scatter that suits it best, by the
    /// limit of the F test that it equals for normal errors.
    /// </summary>
    private bool IsBent(Curve curve, double knee, double slope)
    {
        int n = curve.X.Length, freedom = Math.Max(1, n - 2);
        double[] scatters = [.. Nodes((Math.Log(_least), Math.Log(Math.Max(2 * _least, 0.5 * _g * curve.Top))), 40).Select(Math.Exp)];
        double bent = scatters.Max(s => curve.LogLikelihood(knee, slope, s, _wildDensity));
        double straight = scatters.Max(s => curve.LogLikelihood(1e3 * curve.Top, slope, s, _wildDensity));
        // Of two against n − 2 degrees of freedom F has a closed distribution.
        return bent - straight > -n / (double)freedom * Math.Log(1 - KneeLevel);
    }

    private static double[] Nodes((double Low, double High) range, int count) =>
        count == 1 ? [range.Low] : [.. Enumerable.Range(0, count).Select(i => range.Low + (range.High - range.Low) * i / (count - 1))];

    /// <summary>The part of a range that holds the probability, one node wider on either side.</summary>
    private static (double Low, double High) Closer(double[] nodes, double[] weights, (double Low, double High) range)
    {
        double least = Negligible * weights.Max();
        int first = Array.FindIndex(weights, w => w > least), last = Array.FindLastIndex(weights, w => w > least);
        return nodes.Length == 1 ? range : (nodes[Math.Max(0, first - 1)], nodes[Math.Min(nodes.Length - 1, last + 1)]);
    }

    private static double Mean(double[] values, double[] weights)
    {
        double sum = 0, total = 0;
        for (int i = 0; i < values.Length; i++)
        {
            sum += weights[i] * values[i];
            total += weights[i];
        }

        return sum / total;
    }

    /// <summary>Median and 90 % bounds of a density given at even nodes.</summary>
    /// <remarks>In between its logarithm is a smooth curve, as that of a normal density is a parabola.</remarks>
    private static Interval<double> Quantiles(double[] nodes, double[] density)
    {
        var smooth = CubicSpline.InterpolateAkimaSorted(nodes, [.. density.Select(d => Math.Log(Math.Max(d, 1e-30 * density.Max())))]);
        double[] fine = Nodes((nodes[0], nodes[^1]), FineNodes), below = new double[FineNodes];
        double last = smooth.Interpolate(fine[0]);
        for (int i = 1; i < fine.Length; i++)
        {
            double next = smooth.Interpolate(fine[i]);
            below[i] = below[i - 1] + Math.Exp(last) + Math.Exp(next);
            last = next;
        }

        double At(double share)
        {
            double wanted = share * below[^1];
            int i = Math.Max(1, Array.FindIndex(below, b => b >= wanted));
            return fine[i - 1] + (wanted - below[i - 1]) / (below[i] - below[i - 1]) * (fine[i] - fine[i - 1]);
        }

        return new Interval<double>(At(0.5), At(0.05), At(0.95));
    }

    /// <summary>Readings of one curve and their likelihood.</summary>
    private sealed class Curve
    {
        private readonly double _g;
        private readonly double _lowNorm;
        private readonly double[] _across;
        private readonly double[] _foot;

        public Curve(double[] x, double[] y, double below)
        {
            (X, Y, _g, _lowNorm) = (x, y, below, Math.Sqrt(1 + below * below));
            _across = [.. x.Select((v, i) => (y[i] - below * v) / _lowNorm)];
            _foot = [.. x.Select((v, i) => (v + below * y[i]) / (1 + below * below))];
            Top = Math.Max(x.Max(), 1e-6);
        }

        public double[] X { get; }

        public double[] Y { get; }

        public double Top { get; }

        public double LogLikelihood(double knee, double slope, double sigma, double wild)
        {
            double[] result = new double[1];
            LogLikelihoods([knee], [slope], sigma, wild, result);
            return result[0];
        }

        /// <summary>Whether a reading is far likelier a gross error than an honest one.</summary>
        public bool IsWild(int i, double knee, double slope, double sigma, double wild) =>
            Wild * wild > OutlierLevel * Math.Exp(new Curve([X[i]], [Y[i]], _g).LogLikelihood(knee, slope, sigma, wild));

        /// <summary>Chance that a reading is an honest one.</summary>
        public double Honest(int i, double knee, double slope, double sigma, double wild) =>
            Math.Max(0, 1 - Wild * wild / Math.Exp(new Curve([X[i]], [Y[i]], _g).LogLikelihood(knee, slope, sigma, wild)));

        /// <summary>Log likelihoods at each slope and knee, the knees running first.</summary>
        public void LogLikelihoods(double[] knees, double[] slopes, double sigma, double wild, double[] results)
        {
            int n = X.Length;
            double rest = Wild * wild, lowSpread = _lowNorm / sigma;
            // Density along the lower line and wild readings; the slope above does not change it.
            double[] low = new double[knees.Length * n], along = new double[n];
            bool[] isLow = new bool[low.Length];
            for (int i = 0; i < n; i++)
            {
                double density = (1 - Wild) * Normal(_across[i] / sigma) / (sigma * _lowNorm);
                for (int k = 0, at = i; k < knees.Length; k++, at += n)
                {
                    double t = (knees[k] - _foot[i]) * lowSpread;
                    isLow[at] = t > FarAlong && X[i] < knees[k];
                    low[at] = density * Distribution(t) + rest;
                }
            }

            for (int s = 0, cell = 0; s < slopes.Length; s++)
            {
                double slope = slopes[s], norm2 = 1 + slope * slope, norm = Math.Sqrt(norm2), spread = norm / sigma;
                double density = (1 - Wild) * 0.3989422804014327 / (sigma * norm), across = -0.5 / (norm2 * sigma * sigma);
                for (int i = 0; i < n; i++)
                {
                    along[i] = (X[i] + slope * Y[i]) / norm2;
                }

                for (int k = 0, at = 0; k < knees.Length; k++)
                {
                    double knee = knees[k], offset = (_g - slope) * knee, start = knee + slope * offset / norm2, product = 1, log = 0;
                    for (int i = 0; i < n; i++, at++)
                    {
                        double term = low[at];
                        if (!isLow[at])
                        {
                            double r = Y[i] - offset - slope * X[i], exponent = across * r * r, u = (along[i] - start) * spread;
                            if (exponent > LeastExponent && u > -FarAlong)
                            {
                                term += density * Math.Exp(exponent) * (u > FarAlong ? 1 : Distribution(u));
                            }
                        }

                        product *= term;
                        if (product is < 1e-200 or > 1e200)
                        {
                            log += Math.Log(product);
                            product = 1;
                        }
                    }

                    results[cell++] = log + Math.Log(product);
                }
            }
        }

        private static double Normal(double z) => 0.3989422804014327 * Math.Exp(-0.5 * z * z);

        private static double Distribution(double z) =>
            z > FarAlong ? 1 : z < -FarAlong ? 0 : 0.5 * SpecialFunctions.Erfc(-z * 0.7071067811865476);
    }

    /// <summary>
    /// Probability over slope, scatter and knees at the nodes of a grid; given slope and scatter the knees are independent of each other.
    /// </summary>
    private sealed class Grid
    {
        // [curve][sigma, slope, knee], scaled by the greatest of each sigma and slope.
        private readonly double[][] _density;
        private readonly double[] _cell;
        private readonly double[][] _sums;

        public Grid(KneeFit fit, double[] slopes, double[] logSigmas, double[][] knees)
        {
            (Slopes, LogSigmas, Knees) = (slopes, logSigmas, knees);
            int cells = slopes.Length * logSigmas.Length;
            _density = new double[knees.Length][];
            _sums = new double[knees.Length][];
            double[] logCell = new double[cells], peaks = new double[cells];
            for (int j = 0; j < knees.Length; j++)
            {
                int count = knees[j].Length;
                double[] density = _density[j] = new double[cells * count], sums = _sums[j] = new double[cells],
                    rows = new double[slopes.Length * count];
                for (int b = 0, cell = 0, at = 0; b < logSigmas.Length; b++)
                {
                    fit._curves[j].LogLikelihoods(knees[j], slopes, Math.Exp(logSigmas[b]), fit._wildDensity, rows);
                    for (int first = 0; first < rows.Length; first += count, cell++)
                    {
                        double most = double.NegativeInfinity, sum = 0;
                        for (int i = first; i < first + count; i++)
                        {
                            most = Math.Max(most, rows[i]);
                        }

                        for (int i = first; i < first + count; i++)
                        {
                            double value = rows[i] - most;
                            sum += density[at++] = value < LeastExponent ? 0 : Math.Exp(value);
                        }

                        sums[cell] = sum;
                        logCell[cell] += most + Math.Log(sum);
                        peaks[cell] += most;
                    }
                }
            }

            Peak = peaks.Max();
            double greatest = logCell.Max();
            _cell = [.. logCell.Select(l => Math.Exp(l - greatest))];
            (SlopeWeights, SigmaWeights) = (new double[slopes.Length], new double[logSigmas.Length]);
            for (int b = 0, cell = 0; b < logSigmas.Length; b++)
            {
                for (int a = 0; a < slopes.Length; a++, cell++)
                {
                    SlopeWeights[a] += _cell[cell];
                    SigmaWeights[b] += _cell[cell];
                }
            }

            KneeWeights = [.. knees.Select((_, j) => KneeDensity(j, 0, 1))];
        }

        public double[] Slopes { get; }

        public double[] LogSigmas { get; }

        public double[][] Knees { get; }

        public double[] SlopeWeights { get; }

        public double[] SigmaWeights { get; }

        public double[][] KneeWeights { get; }

        /// <summary>Greatest log likelihood over the grid.</summary>
        public double Peak { get; }

        /// <summary>Mean and standard deviation of a knee at each slope of the grid.</summary>
        public (double Mean, double Deviation)[] KneeGivenSlope(int j) => [.. Slopes.Select((_, a) =>
        {
            double[] density = KneeDensity(j, a, Slopes.Length);
            double mean = Mean(Knees[j], density);
            return (mean, Math.Sqrt(Mean([.. Knees[j].Select(k => (k - mean) * (k - mean))], density)));
        })];

        /// <summary>Density of a knee over every cell from the first on in even steps.</summary>
        private double[] KneeDensity(int j, int firstCell, int step)
        {
            double[] density = new double[Knees[j].Length];
            double greatest = 0;
            for (int cell = firstCell; cell < _cell.Length; cell += step)
            {
                greatest = Math.Max(greatest, _cell[cell]);
            }

            for (int cell = firstCell; cell < _cell.Length; cell += step)
            {
                double share = greatest > 0 ? _cell[cell] / greatest / _sums[j][cell] : 1;
                for (int i = 0; i < density.Length && share > 0; i++)
                {
                    density[i] += share * _density[j][cell * density.Length + i];
                }
            }

            return density;
        }
    }
}
