namespace BrakeBalance.Measurements;

/// <summary>How much higher the rear line stands as the pressure falls, from readings of both branches.</summary>
/// <remarks>
/// The falling branch is p₂ = min(g p₁, f(p₁) + H), and never above the highest outlet of the application: f is the rising branch
/// that was fitted, H the one unknown. Knees and slope of f are integrated over what their own fit leaves open, and H is taken as evenly
/// likely on a grid that closes in. Readings weigh as in <see cref="KneeFit"/>: honest, or with a small chance anything.
/// </remarks>
internal static class HysteresisFit
{
    private const double Wild = 0.03;
    private const double MostBars = 25;
    private const double LeastBars = -3;
    private const int Nodes = 81;
    private const int Rounds = 3;
    private const double Negligible = 1e-4;

    // Nodes of a normal distribution and their weights: three stand for it to the fifth moment (Gauss and Hermite).
    private static readonly (double At, double Weight)[] Normal3 =
        [(-1.7320508075688772, 1 / 6.0), (0, 2 / 3.0), (1.7320508075688772, 1 / 6.0)];

    /// <summary>Finds H in bar.</summary>
    /// <param name="positions">Falling readings in bar, the knee of the rising ones, and the highest front pressure reached.</param>
    /// <param name="below">Rear over front line pressure below the knee [–].</param>
    /// <param name="slope">The slope above it and its error [–].</param>
    /// <param name="scatter">Standard deviation of a reading in bar.</param>
    /// <returns>Median and 90 % bounds, none below zero; null when no reading lies where the branches part.</returns>
    public static Interval<double>? Find(
        IReadOnlyList<(double[] Front, double[] Rear, FittedKnee Knee, double Top)> positions, double below,
        (double Mean, double Error) slope, double scatter)
    {
        if (!positions.Any(p => p.Front.Any(x => x > p.Knee.Knee.Estimate)))
        {
            return null;
        }

        double low = LeastBars, high = MostBars;
        for (int round = 0; ; round++)
        {
            double[] at = [.. Enumerable.Range(0, Nodes).Select(i => low + (high - low) * i / (Nodes - 1))];
            double[] logs = [.. at.Select(h => LogDensity(positions, below, slope, scatter, h))];
            double most = logs.Max();
            double[] density = [.. logs.Select(l => Math.Exp(l - most))];
            if (round == Rounds)
            {
                return Quantiles(at, density);
            }

            int first = Array.FindIndex(density, d => d > Negligible), last = Array.FindLastIndex(density, d => d > Negligible);
            (low, high) = (at[Math.Max(0, first - 1)], at[Math.Min(Nodes - 1, last + 1)]);
        }
    }

    /// <summary>The rear pressure of the falling branch.</summary>
    public static double Falling(double front, double knee, double slope, double below, double top, double hysteresis)
    {
        double Rising(double x) => x <= knee ? below * x : below * knee + slope * (x - knee);
        return Math.Min(Math.Min(below * front, Rising(front) + Math.Max(0, hysteresis)), Math.Max(Rising(front), Rising(top)))
            + Math.Min(0, hysteresis);
    }

    private static double LogDensity(IReadOnlyList<(double[] Front, double[] Rear, FittedKnee Knee, double Top)> positions, double below,
        (double Mean, double Error) slope, double scatter, double hysteresis)
    {
        double[] slopes = new double[Normal3.Length];
        for (int s = 0; s < Normal3.Length; s++)
        {
            double at = slope.Mean + Normal3[s].At * slope.Error;
            slopes[s] = Math.Log(Normal3[s].Weight);
            foreach ((double[] front, double[] rear, FittedKnee knee, double top) in positions)
            {
                (double mean, double deviation) = knee.GivenSlope(at);
                slopes[s] += Sum([.. Normal3.Select(node => Math.Log(node.Weight) + front.Zip(rear).Sum(reading =>
                    Reading(reading.First, reading.Second, mean + node.At * deviation, at, below, top, hysteresis, scatter)))]);
            }
        }

        return Sum(slopes);
    }

    private static double Reading(
        double x, double y, double knee, double slope, double below, double top, double hysteresis, double scatter)
    {
        double Model(double front) => Falling(front, knee, slope, below, top, hysteresis);
        double step = Math.Max(0.1, scatter), rise = (Model(x + step) - Model(x - step)) / (2 * step);
        double width = scatter * Math.Sqrt(1 + rise * rise), u = (y - Model(x)) / width;
        return Math.Log((1 - Wild) * Math.Exp(-0.5 * u * u) / (2.5066282746310002 * width) + Wild / (1.2 * below * top));
    }

    private static double Sum(double[] logs)
    {
        double most = logs.Max();
        return most + Math.Log(logs.Sum(l => Math.Exp(l - most)));
    }

    private static Interval<double> Quantiles(double[] at, double[] density)
    {
        double[] below = new double[at.Length];
        for (int i = 1; i < at.Length; i++)
        {
            below[i] = below[i - 1] + (density[i] + density[i - 1]) / 2;
        }

        double Of(double share)
        {
            int i = Math.Max(1, Array.FindIndex(below, b => b >= share * below[^1]));
            double part = (share * below[^1] - below[i - 1]) / Math.Max(1e-300, below[i] - below[i - 1]);
            return Math.Max(0, at[i - 1] + part * (at[i] - at[i - 1]));
        }

        return new Interval<double>(Of(0.5), Of(0.05), Of(0.95));
    }
}
