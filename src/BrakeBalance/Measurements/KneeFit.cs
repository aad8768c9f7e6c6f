namespace BrakeBalance.Measurements;

/// <summary>Segmented regression: a line of known slope through the origin up to a knee, a line of another slope above it.</summary>
/// <remarks>
/// <para>y = g x for x ≤ k; y = g k + s (x − k) above, g known. For a given k the model is linear in s; k is found by minimising the profile.
/// Both gauges scatter alike, so a residual is divided by √(1 + slope²) (effective variance).</para>
/// <para>Outliers: a trimmed start (a third of the readings may be anything), then Tukey's bisquare weights; readings further than 3.5
/// robust standard deviations from that fit are left out and named, and the rest are fitted by least squares. The interval of the knee is the
/// profile-likelihood interval, which stays right when few readings lie above the knee.</para>
/// <para>Source: P. J. Huber, Robust Statistics (bisquare, constant 4.685), from memory; the trimmed start and the 3.5 limit are our choice.</para>
/// </remarks>
internal sealed class KneeFit
{
    private const int Grid = 160;
    private const double Bisquare = 4.685;
    private const double OutlierLimit = 3.5;

    private readonly double[] _x;
    private readonly double[] _y;
    private readonly double _g;

    private KneeFit(double[] x, double[] y, double below) => (_x, _y, _g) = (x, y, below);

    public double Knee { get; private set; }

    public double Slope { get; private set; }

    public double KneeLow { get; private set; }

    public double KneeHigh { get; private set; }

    public double SlopeError { get; private set; }

    public double KneeError { get; private set; }

    /// <summary>Standard deviation of one gauge's reading about the fit.</summary>
    public double Scatter { get; private set; }

    public int DegreesOfFreedom { get; private set; }

    /// <summary>Which readings were left out as outliers.</summary>
    public bool[] LeftOut { get; private set; } = [];

    /// <summary>Whether the bend is real: two lines fit clearly better than one.</summary>
    public bool HasKnee { get; private set; }

    /// <summary>Fits knee and slope.</summary>
    /// <param name="x">Front line pressures in one unit.</param>
    /// <param name="y">Rear line pressures in the same unit.</param>
    /// <param name="below">Slope below the knee [–].</param>
    /// <param name="fixedSlope">Slope above the knee when it is known from elsewhere; null to fit it.</param>
    /// <param name="least">Smallest scatter to believe in, such as the resolution of the gauges.</param>
    public static KneeFit Fit(double[] x, double[] y, double below, double least, double? fixedSlope = null)
    {
        var fit = new KneeFit(x, y, below);
        fit.Run(least, fixedSlope);
        return fit;
    }

    /// <summary>The middle value; zero when there is none. The values stay in their order.</summary>
    internal static double Median(double[] values)
    {
        double[] sorted = [.. values];
        Array.Sort(sorted);
        int n = sorted.Length;
        return n == 0 ? 0 : (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
    }

    private void Run(double least, double? fixedSlope)
    {
        int n = _x.Length, parameters = fixedSlope is null ? 2 : 1;
        double top = _x.Max(), bottom = Math.Max(_x.Min() * 0.5, 1e-9);
        (double k, double s) = TrimmedStart(bottom, top, fixedSlope);
        double scale = Math.Max(least, 1.4826 * Median(Residuals(k, s, absolute: true)) * n / Math.Max(1.0, n - parameters));
        double[] weights = new double[n];
        for (int iteration = 0; iteration < 12; iteration++)
        {
            double[] r = Residuals(k, s, absolute: true);
            for (int i = 0; i < n; i++)
            {
                double u = r[i] / (Bisquare * scale);
                weights[i] = u < 1 ? (1 - u * u) * (1 - u * u) : 0;
            }

            double before = k;
            (k, s, _) = Minimise(weights, bottom, top, fixedSlope, s);
            scale = Math.Max(least, 1.4826 * Median(Residuals(k, s, absolute: true)) * n / Math.Max(1.0, n - parameters));
            if (Math.Abs(k - before) < 1e-6 * top)
            {
                break;
            }
        }

        LeftOut = Residuals(k, s, absolute: true).Select(r => r > OutlierLimit * scale).ToArray();
        for (int i = 0; i < n; i++)
        {
            weights[i] = LeftOut[i] ? 0 : 1;
        }

        (k, s, double sum) = Minimise(weights, bottom, top, fixedSlope, s);
        int kept = LeftOut.Count(o => !o);
        DegreesOfFreedom = Math.Max(1, kept - parameters);
        // Cutting off the far readings cuts off some honest scatter as well: with readings left out the scatter is taken a little larger.
        double variance = Math.Max(least * least, sum / DegreesOfFreedom * n / kept);
        (Knee, Slope, Scatter) = (k, s, Math.Sqrt(variance));
        Curvature(weights, variance, fixedSlope is not null);
        double t = LeastSquares.HalfWidth90(DegreesOfFreedom);
        (KneeLow, KneeHigh) = ProfileInterval(weights, bottom, top, fixedSlope, sum + t * t * variance);
        double straight = Sum(weights, top * 1e3, _g);
        double gain = (straight - sum) / variance;
        int above = Enumerable.Range(0, n).Count(i => weights[i] > 0 && _x[i] > k);
        HasKnee = gain > 12 && above >= 2;
    }

    /// <summary>Least trimmed squares over a grid of knees: two thirds of the readings count.</summary>
    private (double Knee, double Slope) TrimmedStart(double bottom, double top, double? fixedSlope)
    {
        int n = _x.Length, keep = Math.Max(2, (2 * n + 2) / 3);
        (double Knee, double Slope, double Sum) best = (top, _g, double.PositiveInfinity);
        for (int j = 0; j <= Grid / 2; j++)
        {
            double k = bottom + (top - bottom) * j / (Grid / 2);
            double s = fixedSlope ?? MedianSlope(k);
            double[] r = Residuals(k, s, absolute: true);
            Array.Sort(r);
            double sum = 0;
            for (int i = 0; i < Math.Min(keep, n); i++)
            {
                sum += r[i] * r[i];
            }

            if (sum < best.Sum)
            {
                best = (k, s, sum);
            }
        }

        return (best.Knee, best.Slope);
    }

    private double MedianSlope(double k)
    {
        double[] ratios = Enumerable.Range(0, _x.Length).Where(i => _x[i] > k * 1.02).Select(i => (_y[i] - _g * k) / (_x[i] - k)).ToArray();
        return ratios.Length == 0 ? _g : Math.Clamp(Median(ratios), -0.5, 2 * _g);
    }

    private double[] Residuals(double k, double s, bool absolute)
    {
        double[] r = new double[_x.Length];
        double above = Math.Sqrt(1 + s * s), below = Math.Sqrt(1 + _g * _g);
        for (int i = 0; i < r.Length; i++)
        {
            double value = _x[i] <= k ? (_y[i] - _g * _x[i]) / below : (_y[i] - _g * k - s * (_x[i] - k)) / above;
            r[i] = absolute ? Math.Abs(value) : value;
        }

        return r;
    }

    private double Sum(double[] weights, double k, double s)
    {
        double[] r = Residuals(k, s, absolute: false);
        double sum = 0;
        for (int i = 0; i < r.Length; i++)
        {
            sum += weights[i] * r[i] * r[i];
        }

        return sum;
    }

    private (double Slope, double Sum) AtKnee(double[] weights, double k, double? fixedSlope)
    {
        double xx = 0, xy = 0;
        for (int i = 0; i < _x.Length; i++)
        {
            if (_x[i] > k)
            {
                double d = _x[i] - k;
                xx += weights[i] * d * d;
                xy += weights[i] * d * (_y[i] - _g * k);
            }
        }

        double s = fixedSlope ?? (xx > 0 ? Math.Clamp(xy / xx, -0.5, 2 * _g) : _g);
        return (s, Sum(weights, k, s));
    }

    private (double Knee, double Slope, double Sum) Minimise(double[] weights, double bottom, double top, double? fixedSlope, double slope)
    {
        (double Knee, double Slope, double Sum) best = (top, slope, double.PositiveInfinity);
        for (int j = 0; j <= Grid; j++)
        {
            double k = bottom + (top - bottom) * j / Grid;
            (double s, double sum) = AtKnee(weights, k, fixedSlope);
            best = sum < best.Sum ? (k, s, sum) : best;
        }

        double step = (top - bottom) / Grid, low = Math.Max(bottom, best.Knee - step), high = Math.Min(top, best.Knee + step);
        for (int i = 0; i < 40; i++)
        {
            double a = low + 0.381966 * (high - low), b = high - 0.381966 * (high - low);
            if (AtKnee(weights, a, fixedSlope).Sum <= AtKnee(weights, b, fixedSlope).Sum)
            {
                high = b;
            }
            else
            {
                low = a;
            }
        }

        double knee = (low + high) / 2;
        (double finalSlope, double finalSum) = AtKnee(weights, knee, fixedSlope);
        return finalSum < best.Sum ? (knee, finalSlope, finalSum) : best;
    }

    private void Curvature(double[] weights, double variance, bool slopeIsFixed)
    {
        double kk = 0, ks = 0, ss = 0, scale = 1 + Slope * Slope;
        for (int i = 0; i < _x.Length; i++)
        {
            if (_x[i] > Knee)
            {
                double dk = _g - Slope, ds = _x[i] - Knee;
                kk += weights[i] * dk * dk / scale;
                ks += weights[i] * dk * ds / scale;
                ss += weights[i] * ds * ds / scale;
            }
        }

        double determinant = kk * ss - ks * ks;
        KneeError = slopeIsFixed ? Math.Sqrt(variance / Math.Max(kk, 1e-300)) : Math.Sqrt(variance * ss / Math.Max(determinant, 1e-300));
        SlopeError = slopeIsFixed ? 0 : Math.Sqrt(variance * kk / Math.Max(determinant, 1e-300));
    }

    private (double Low, double High) ProfileInterval(double[] weights, double bottom, double top, double? fixedSlope, double limit)
    {
        double Edge(double far)
        {
            double inside = Knee, outside = far;
            if (AtKnee(weights, far, fixedSlope).Sum <= limit)
            {
                return far;
            }

            // The profile can dip again further out; walk outwards and keep the first crossing.
            const int steps = 200;
            for (int j = 1; j <= steps; j++)
            {
                double k = Knee + (far - Knee) * j / steps;
                if (AtKnee(weights, k, fixedSlope).Sum > limit)
                {
                    outside = k;
                    break;
                }

                inside = k;
            }

            for (int i = 0; i < 40; i++)
            {
                double middle = (inside + outside) / 2;
                if (AtKnee(weights, middle, fixedSlope).Sum > limit)
                {
                    outside = middle;
                }
                else
                {
                    inside = middle;
                }
            }

            return (inside + outside) / 2;
        }

        return (Edge(bottom), Edge(top));
    }
}
