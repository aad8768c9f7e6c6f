namespace BrakeBalance.Measurements;

/// <summary>
/// When the brakes begin: the car coasts at a steady slope, the deceleration rises in a straight line, then changes slowly. The two times
/// are weighed on a grid, the rest is linear (least squares); the spread of the weights is the uncertainty.
/// </summary>
/// <param name="Start">When the deceleration begins to rise, in seconds, and its standard deviation.</param>
/// <param name="Change">
/// When the slope of the speed changes, in seconds: where the lines of coasting and of braking meet, in the middle of the rise. A log shows
/// it sharply even where it hides how long the rise took.
/// </param>
/// <param name="Rise">How long it rises, in seconds.</param>
/// <param name="Initial">Speed at the start in m/s.</param>
/// <param name="Coast">Slope of the speed before the start in m/s², negative while coasting.</param>
/// <param name="Reached">Deceleration beyond coasting that is reached, in m/s².</param>
/// <remarks>Our own estimator. Weak beliefs, common practice: a rise of 0.35 ± 0.25 s, coasting at 0.5 ± 0.45 m/s², a drift
/// of 0.7 m/s³.</remarks>
internal sealed record OnsetFit(
    (double At, double Sd) Start, (double At, double Sd) Change, (double Seconds, double Sd) Rise, (double Speed, double Sd) Initial,
    double Coast, double Reached)
{
    private const int MostPoints = 80;

    private const double UsualCoast = -0.5, CoastVariance = 0.2;

    /// <summary>Speed by the fit, up to the end of the rise.</summary>
    public double SpeedAt(double time)
    {
        double t = time - Start.At;
        return Initial.Speed + Coast * t - Reached * Lost(t, Rise.Seconds);
    }

    /// <summary>Fits the beginning of a stop.</summary>
    /// <param name="time">Times in seconds.</param>
    /// <param name="speed">Speeds in m/s.</param>
    /// <param name="slope">Their slope as it was measured, in m/s²; null when the speed itself was.</param>
    /// <param name="from">First sample to use.</param>
    /// <param name="to">Last sample to use.</param>
    /// <param name="rough">About when braking begins.</param>
    /// <param name="noise">Standard deviation of what was measured.</param>
    /// <returns>The fit; null when there are too few samples.</returns>
    public static OnsetFit? Of(double[] time, double[] speed, double[]? slope, int from, int to, double rough, double noise)
    {
        int every = Math.Max(1, (to - from + 1) / MostPoints), n = (to - from + 1) / every;
        if (n < 4)
        {
            return null;
        }

        // Neighbours are taken together, so that a fast log costs no more than a slow one.
        double[] t = new double[n], v = new double[n];
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < every; k++)
            {
                t[i] += time[from + i * every + k] / every;
                v[i] += (slope ?? speed)[from + i * every + k] / every;
            }
        }

        double step = (t[^1] - t[0]) / (n - 1), sigma = Math.Max(0.01, noise / Math.Sqrt(every));
        (OnsetFit Fit, double Cost)[] grid = Grid(t, v, slope is not null, rough - 0.9 - step, rough + 0.3 + step, sigma);
        (double[] weight, double widen) = Weights([.. grid.Select(g => g.Cost)], n);
        (double Mean, double Sd) Of(Func<OnsetFit, double> value) => Weighed([.. grid.Select(g => value(g.Fit))], weight);

        (double at, double atSd) = Of(f => f.Start.At);
        (double v0, double v0Sd) = slope is null ? Of(f => f.Initial.Speed) : (Read(time, speed, at), 0.02);
        double grain = (1.2 + 2 * step) / 60 / Math.Sqrt(12);
        return new OnsetFit(
            Start: (at, Math.Sqrt(atSd * atSd + grain * grain)),
            Change: Of(f => f.Start.At + f.Rise.Seconds / 2),
            Rise: Of(f => f.Rise.Seconds),
            Initial: (v0, Math.Sqrt(v0Sd * v0Sd + widen * sigma * sigma / Math.Max(1, t.Count(x => x < at)))),
            Coast: Of(f => f.Coast).Mean,
            Reached: Of(f => f.Reached).Mean);
    }

    /// <summary>
    /// How late a speed runs behind a line pressure: the deceleration is taken to follow the pressure, with a slow change over the stop.
    /// </summary>
    /// <returns>The delay in seconds with its standard deviation; null when the pressure does not explain the speed.</returns>
    public static (double Late, double Sd)? Behind(
        double[] time, double[] speed, int from, int to, double[] at, double[] pressure, double noise)
    {
        double[] sums = new double[at.Length], twice = new double[at.Length];
        for (int i = 1; i < at.Length; i++)
        {
            double step = at[i] - at[i - 1];
            sums[i] = sums[i - 1] + step * (pressure[i] + pressure[i - 1]) / 2;
            twice[i] = twice[i - 1] + step * (sums[i] + sums[i - 1]) / 2;
        }

        double[] x = time[from..(to + 1)], v = speed[from..(to + 1)];
        double sigma = Math.Max(0.01, noise);
        (double Late, double Cost, double Gain)[] grid = [.. Enumerable.Range(-30, 171).Select(i => 0.01 * i).Select(late =>
        {
            double first = Read(at, sums, x[0] - late), second = Read(at, twice, x[0] - late);
            (double[] fit, double cost) = Solve(x.Length, v, sigma, (k, row) =>
            {
                double t = x[k] - late;
                (row[0], row[1], row[2], row[3]) = (1, x[k] - x[0], first - Read(at, sums, t),
                    second + first * (x[k] - x[0]) - Read(at, twice, t));
            }, 0.01);
            return (late, cost, fit[2]);
        })];
        (double best, _, double gain) = grid.MinBy(g => g.Cost);
        (double[] weight, double widen) = Weights([.. grid.Select(g => g.Cost)], x.Length);
        (double mean, double sd) = Weighed([.. grid.Select(g => g.Late)], weight);
        return gain > 0 && widen < 25 && best is > -0.29 and < 1.39 ? (mean, sd + 0.005) : null;
    }

    // The weights of a grid by the costs of its points. What the model cannot follow counts as noise too.
    private static (double[] Weight, double Widen) Weights(double[] costs, int samples)
    {
        double least = costs.Min(), widen = Math.Max(1, least / Math.Max(1, samples - 4));
        return ([.. costs.Select(cost => Math.Exp(-(cost - least) / (2 * widen)))], widen);
    }

    private static (double Mean, double Sd) Weighed(double[] values, double[] weight)
    {
        double mean = values.Zip(weight, (value, w) => value * w).Sum() / weight.Sum();
        return (mean, Math.Sqrt(values.Zip(weight, (value, w) => (value - mean) * (value - mean) * w).Sum() / weight.Sum()));
    }

    private static double Read(double[] at, double[] of, double t)
    {
        int i = Array.BinarySearch(at, t);
        i = Math.Clamp(i < 0 ? ~i : i, 1, at.Length - 1);
        return of[i - 1] + (of[i] - of[i - 1]) * Math.Clamp((t - at[i - 1]) / (at[i] - at[i - 1]), 0, 1);
    }

    private static (OnsetFit, double)[] Grid(double[] t, double[] v, bool isSlope, double low, double high, double sigma)
    {
        List<(OnsetFit, double)> grid = [];
        for (int i = 0; i <= 60; i++)
        {
            double at = low + (high - low) * i / 60;
            for (double rise = 0.04; rise < 0.9; rise *= 1.25)
            {
                foreach (bool smooth in (bool[])[false, true])
                {
                    (double[] x, double cost) = Solve(t.Length, v, sigma, (k, row) =>
                    {
                        double x = t[k] - at, late = Math.Max(0, x - rise);
                        (row[0], row[1], row[2], row[3]) = isSlope ? (0, 1, -Level(x / rise, smooth), -late)
                            : (1, x, -Lost(x, rise, smooth), -late * late / 2);
                    }, 0.49);
                    double belief = (rise - 0.35) / 0.25;
                    grid.Add((new OnsetFit(
                        Start: (at, 0),
                        Change: (at + rise / 2, 0),
                        Rise: (rise, 0),
                        Initial: (x[0], 0),
                        Coast: x[1],
                        Reached: x[2]), cost + belief * belief - 2 * Math.Log(rise)));
                }
            }
        }

        return [.. grid];
    }

    // Least squares for a speed, its slope, a loss that grows and its drift; the last with the variance given.
    private static (double[] Solution, double Cost) Solve(int count, double[] v, double sigma, Action<int, double[]> rowOf, double drift)
    {
        double[] row = new double[4], x = new double[4];
        double[,] n = new double[4, 5];
        double squares = 0;
        for (int k = 0; k < count; k++)
        {
            rowOf(k, row);
            squares += v[k] * v[k];
            for (int r = 0; r < 4; r++)
            {
                n[r, 4] += row[r] * v[k];
                for (int c = r; c < 4; c++)
                {
                    n[r, c] += row[r] * row[c];
                }
            }
        }

        double square = sigma * sigma, explained = 0;
        (n[0, 0], n[1, 1], n[2, 2], n[3, 3]) =
            (n[0, 0] + 1e-9, n[1, 1] + square / CoastVariance, n[2, 2] + square / 400, n[3, 3] + square / drift);
        n[1, 4] += square / CoastVariance * UsualCoast;
        squares += square / CoastVariance * UsualCoast * UsualCoast;
        for (int r = 0; r < 4; r++)
        {
            double pivot = Math.Max(n[r, r], 1e-12);
            explained += n[r, 4] * n[r, 4] / pivot;
            for (int below = r + 1; below < 4; below++)
            {
                double factor = n[r, below] / pivot;
                for (int c = below; c < 5; c++)
                {
                    n[below, c] -= factor * n[r, c];
                }
            }

            n[r, r] = pivot;
        }

        for (int r = 3; r >= 0; r--)
        {
            x[r] = n[r, 4];
            for (int c = r + 1; c < 4; c++)
            {
                x[r] -= n[r, c] * x[c];
            }

            x[r] /= n[r, r];
        }

        return (x, Math.Max(0, squares - explained) / square);
    }

    private static double Level(double part, bool smooth) => part <= 0 ? 0 : part >= 1 ? 1 : smooth ? part * part * (3 - 2 * part) : part;

    // Speed lost to a deceleration that rises to one within the given time, straight or gently at both ends, and stays there.
    private static double Lost(double t, double rise, bool smooth = false)
    {
        double part = t / rise;
        return t <= 0 ? 0 : t >= rise ? t - rise / 2 : smooth ? rise * part * part * part * (1 - part / 2) : t * part / 2;
    }
}
