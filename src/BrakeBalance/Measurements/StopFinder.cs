using MathNet.Numerics.Statistics;

namespace BrakeBalance.Measurements;

/// <summary>Finds stops in a logger's or phone's time series and works out their mean fully developed deceleration.</summary>
/// <remarks>
/// <para>Speed is used where it is logged. Otherwise the longitudinal acceleration is: what the instrument reads with the car at rest
/// after the
/// stop (tilt of its mounting, slope of the road, zero error) is taken off, and the speed is summed up backwards from rest.
/// Three axes in any mounting are turned first: gravity at rest gives the vertical, the strongest braking the car's axis.</para>
/// <para>Assumes that a stop ends at rest when only acceleration is known. Thresholds (braking above 1.5 m/s² for half a second) are our
/// choice.</para>
/// </remarks>
public static class StopFinder
{
    private const double Braking = 1.5;
    private const double LeastSeconds = 0.5;

    /// <summary>Why samples are too few to find a stop in, in a sentence; null when they are not.</summary>
    /// <param name="samples">The samples.</param>
    /// <returns>The sentence, or null.</returns>
    public static string? WhyTooFew(IReadOnlyCollection<MotionSample> samples)
    {
        ArgumentNullException.ThrowIfNull(samples);
        return samples.Count >= 10 ? null
            : FormattableString.Invariant($"{samples.Count} samples could be read; a stop needs at least ten.");
    }

    /// <summary>Finds the stops.</summary>
    /// <param name="samples">Samples in order of time, 10 to 200 a second.</param>
    /// <param name="divePerG">
    /// Nose-down pitch of the body at 1 g of deceleration, not negative; null leaves it uncorrected. Only an accelerometer needs it.
    /// </param>
    /// <returns>The stops.</returns>
    /// <exception cref="ArgumentException">There are fewer than ten samples.</exception>
    public static StopSearch Find(IReadOnlyList<MotionSample> samples, Angle? divePerG = null)
    {
        ArgumentNullException.ThrowIfNull(samples);
        if (WhyTooFew(samples) is { } few)
        {
            throw new ArgumentException(few, nameof(samples));
        }

        double[] time = [.. samples.Select(s => s.Time.Seconds)];
        double step = time.Zip(time.Skip(1), (a, b) => b - a).Median();
        List<string> remarks = [];
        if (step > 0.105)
        {
            remarks.Add(string.Create(CultureInfo.InvariantCulture, $"The log has only {1 / step:0.#} samples a second; "
                + $"ten or more are needed for a trustworthy mean deceleration."));
        }

        int gaps = time.Zip(time.Skip(1)).Count(z => z.Second - z.First > 5 * step);
        if (gaps > 0)
        {
            remarks.Add(string.Create(CultureInfo.InvariantCulture,
                $"The log has {gaps} gap{(gaps > 1 ? "s" : "")} longer than five samples; "
                    + $"a stop across a gap is not trustworthy."));
        }

        bool hasSpeed = samples.Count(s => s.Speed is not null) > 0.8 * samples.Count;
        List<MeasuredStop> stops = hasSpeed
            ? FromSpeed([.. samples.Where(s => s.Speed is not null)], step)
            : FromAcceleration(samples, step, divePerG, remarks);
        if (stops.Count == 0)
        {
            remarks.Add("No stop was found: nowhere does the car brake harder than 0.15 g for half a second.");
        }

        return new StopSearch { Stops = stops, SampleRate = Frequency.FromHertz(1 / step), Remarks = remarks };
    }

    private static List<MeasuredStop> FromSpeed(MotionSample[] samples, double step)
    {
        double[] time = [.. samples.Select(s => s.Time.Seconds)];
        double[] raw = [.. samples.Select(s => s.Speed!.Value.MetersPerSecond)];
        (double[] speed, double[] rate) = Smooth(time, raw, Math.Max(0.1, step));
        List<MeasuredStop> stops = [];
        foreach ((int start, int end) in Runs(time, [.. rate.Select(r => -r)], Braking, LeastSeconds))
        {
            int first = start;
            while (first > 0 && rate[first - 1] < -0.4)
            {
                first--;
            }

            int last = end;
            while (last < time.Length - 1 && speed[last] > 0.3 && rate[last] < -0.4)
            {
                last++;
            }

            double v0 = Math.Max(speed[first], raw[Math.Max(0, first - 3)..(first + 1)].Median());
            stops.Add(Measure(samples, time, raw, speed, rate, first, last, v0, []));
        }

        return stops;
    }

    private static List<MeasuredStop> FromAcceleration(IReadOnlyList<MotionSample> all, double step, Angle? divePerG, List<string> remarks)
    {
        MotionSample[] samples = [.. all.Where(s => s.Acceleration is not null)];
        double[] reading;
        if (samples.Length > 0.8 * all.Count)
        {
            reading = [.. samples.Select(s => s.Acceleration!.Value.MetersPerSecondSquared)];
        }
        else
        {
            samples = [.. all.Where(s => s.Axes is not null)];
            reading = Mounting.Longitudinal(samples, remarks);
        }

        remarks.Add(divePerG is null
            ? "The nose-down pitch under braking is not taken out: "
                + "an accelerometer then reads one to three per cent too high (common practice)."
            : Text($"A nose-down pitch of {divePerG.Value.Degrees:0.##}° at 1 g was taken out."));
        double[] time = [.. samples.Select(s => s.Time.Seconds)];
        (double[] smooth, _) = Smooth(time, reading, Math.Max(0.1, step));
        double level = Level(time, smooth);
        List<MeasuredStop> stops = [];
        foreach ((int start, int end) in Runs(time, [.. smooth.Select(r => level - r)], Braking, LeastSeconds))
        {
            List<string> cautions = [];
            double? rest = RestAfter(time, smooth, end);
            double before = BeforeBraking(time, smooth, start);
            if (rest is null)
            {
                cautions.Add("The log ends or the car moves on before half a second of rest, "
                    + "so the zero was taken from the second before braking; drag and engine braking then count as zero.");
            }
            else if (Math.Abs(rest.Value - before) > 0.6)
            {
                cautions.Add(string.Create(CultureInfo.InvariantCulture,
                    $"The zero before braking and at rest differ by {Math.Abs(rest.Value - before):0.0} m/s²: "
                        + $"the road slopes, the car was slowing already, or the instrument moved."));
            }

            double offset = rest ?? before;
            double dive = 1 + (divePerG?.Radians ?? 0);
            double[] a = [.. reading.Select(r => (r - offset) / dive)];
            double[] slow = [.. smooth.Select(r => (r - offset) / dive)];
            int first = start;
            while (first > 0 && slow[first - 1] < -0.4)
            {
                first--;
            }

            // The car stands where the deceleration has collapsed to half of what it was just before.
            int last = end;
            double held = -slow[Math.Max(first, end - (int)(0.3 / step))..(end + 1)].Minimum();
            while (last > first && -slow[last] < held / 2)
            {
                last--;
            }

            double[] v = new double[a.Length];
            for (int i = last - 1; i >= 0; i--)
            {
                v[i] = Math.Max(0, v[i + 1] - (a[i] + a[i + 1]) / 2 * (time[i + 1] - time[i]));
            }

            MeasuredStop stop = Measure(samples, time, v, v, slow, first, last, v[first], cautions);
            stops.Add(stop with { Offset = Acceleration.FromMetersPerSecondSquared(offset) });
        }

        return stops;
    }

    private static MeasuredStop Measure(MotionSample[] samples, double[] time, double[] raw, double[] speed, double[] rate, int first,
        int last, double v0, List<string> cautions)
    {
        double[] distance = new double[last + 1];
        for (int i = first + 1; i <= last; i++)
        {
            distance[i] = distance[i - 1] + (raw[i] + raw[i - 1]) / 2 * (time[i] - time[i - 1]);
        }

        double? sb = Crossing(speed, distance, first, last, 0.8 * v0), se = Crossing(speed, distance, first, last, 0.1 * v0);
        Acceleration? mean = null;
        if (sb is null || se is null || se <= sb)
        {
            cautions.Add("Braking ended above a tenth of the initial speed, so the stop has no mean fully developed deceleration.");
        }
        else
        {
            mean = FullyDevelopedDeceleration.Between(Speed.FromMetersPerSecond(0.8 * v0), Speed.FromMetersPerSecond(0.1 * v0),
                Length.FromMeters(se.Value - sb.Value));
        }

        if (time.Zip(time.Skip(1)).Skip(first).Take(last - first).Any(z => z.Second - z.First > 0.3))
        {
            cautions.Add("Samples are missing within the stop.");
        }

        return new MeasuredStop
        {
            Start = Duration.FromSeconds(time[first]),
            End = Duration.FromSeconds(time[last]),
            InitialSpeed = Speed.FromMetersPerSecond(v0),
            Deceleration = mean,
            Peak = Acceleration.FromMetersPerSecondSquared(PeakOver(time, rate, first, last, 0.3)),
            Distance = Length.FromMeters(distance[last]),
            FrontPressure = Highest(samples, first, last, s => s.FrontPressure),
            RearPressure = Highest(samples, first, last, s => s.RearPressure),
            Cautions = cautions,
        };
    }

    /// <summary>Third highest reading, so that a single spike does not count.</summary>
    private static Pressure? Highest(MotionSample[] samples, int first, int last, Func<MotionSample, Pressure?> of)
    {
        double[] bars = [.. samples[first..(last + 1)].Select(of).OfType<Pressure>().Select(p => p.Bars).OrderDescending()];
        return bars.Length == 0 ? null : Pressure.FromBars(bars[Math.Min(2, bars.Length - 1)]);
    }

    private static double? Crossing(double[] speed, double[] distance, int first, int last, double level)
    {
        for (int i = last; i > first; i--)
        {
            if (speed[i - 1] >= level && speed[i] < level)
            {
                double part = (speed[i - 1] - level) / (speed[i - 1] - speed[i]);
                return distance[i - 1] + part * (distance[i] - distance[i - 1]);
            }
        }

        return null;
    }

    private static double PeakOver(double[] time, double[] rate, int first, int last, double window)
    {
        double peak = 0;
        for (int i = first; i <= last; i++)
        {
            int j = i;
            double sum = 0;
            while (j <= last && time[j] - time[i] <= window)
            {
                sum -= rate[j];
                j++;
            }

            peak = j > i && (time[j - 1] - time[i] > 0.6 * window || j > last) && j - i > 1 ? Math.Max(peak, sum / (j - i)) : peak;
        }

        return peak;
    }

    /// <summary>
    /// The reading while nothing happens: of the narrow bands that hold a fifth of the samples, the highest (rest and cruise, not steady
    /// braking) that does not make the whole log a loss of more than 200 km/h (not steady pulling away).
    /// </summary>
    private static double Level(double[] time, double[] smooth)
    {
        const double greatestLoss = 55;
        double mean = smooth.Average(), whole = time[^1] - time[0];
        double[] sorted = [.. smooth.Order()];
        int fifth = Math.Max(2, sorted.Length / 5);
        int[] bands = [.. Enumerable.Range(0, sorted.Length - fifth)];
        double narrowest = bands.Min(i => sorted[i + fifth] - sorted[i]) + 0.1;
        int best = bands.LastOrDefault(i =>
            sorted[i + fifth] - sorted[i] <= 1.5 * narrowest
            && ((sorted[i] + sorted[i + fifth]) / 2 - mean) * whole < greatestLoss, bands[bands.Length / 2]);
        return (sorted[best] + sorted[best + fifth]) / 2;
    }

    private static double? RestAfter(double[] time, double[] smooth, int end)
    {
        // The body rocks back for a moment after the car stands.
        int from = Array.FindIndex(time, t => t >= time[end] + 0.7);
        if (from < 0)
        {
            return null;
        }

        double zero = smooth[from..Math.Min(smooth.Length, from + 20)].Median();
        int to = from;
        while (to < time.Length && time[to] < time[from] + 2 && Math.Abs(smooth[to] - zero) < 0.4)
        {
            to++;
        }

        return to > from + 3 && time[to - 1] - time[from] >= 0.5 ? smooth[from..to].Average() : null;
    }

    private static double BeforeBraking(double[] time, double[] smooth, int start)
    {
        int to = Math.Max(1, Array.FindIndex(time, t => t >= time[start] - 0.3));
        int from = Math.Max(0, Array.FindIndex(time, t => t >= time[start] - 1.3));
        return smooth[from..Math.Max(from + 1, to)].Average();
    }

    private static IEnumerable<(int Start, int End)> Runs(double[] time, double[] deceleration, double threshold, double seconds)
    {
        for (int i = 0; i < time.Length;)
        {
            if (deceleration[i] < threshold)
            {
                i++;
                continue;
            }

            int end = i;
            for (int j = i; j < time.Length && time[j] - time[end] <= 0.25; j++)
            {
                end = deceleration[j] >= threshold ? j : end;
            }

            if (time[end] - time[i] >= seconds)
            {
                yield return (i, end);
            }

            i = end + 1;
        }
    }

    /// <summary>Value and gradient of a straight line fitted to the samples within half a window on either side.</summary>
    private static (double[] Value, double[] Gradient) Smooth(double[] time, double[] values, double half)
    {
        double[] value = new double[time.Length], gradient = new double[time.Length];
        int low = 0, high = 0;
        for (int i = 0; i < time.Length; i++)
        {
            while (time[low] < time[i] - half * 1.01)
            {
                low++;
            }

            while (high < time.Length && time[high] <= time[i] + half * 1.01)
            {
                high++;
            }

            double n = high - low, mt = 0, mv = 0, tt = 0, tv = 0;
            for (int j = low; j < high; j++)
            {
                mt += time[j] / n;
                mv += values[j] / n;
            }

            for (int j = low; j < high; j++)
            {
                tt += (time[j] - mt) * (time[j] - mt);
                tv += (time[j] - mt) * (values[j] - mv);
            }

            gradient[i] = tt > 0 ? tv / tt : 0;
            value[i] = mv + gradient[i] * (time[i] - mt);
        }

        return (value, gradient);
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
