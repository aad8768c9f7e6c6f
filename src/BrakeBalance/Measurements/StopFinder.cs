using MathNet.Numerics.Statistics;

namespace BrakeBalance.Measurements;

/// <summary>Finds stops in a logger's or phone's time series as a test engineer would, and measures them.</summary>
/// <remarks>
/// <para>Speed is used where it is logged four times a second or more. Otherwise the longitudinal acceleration is: what the instrument
/// reads with the car at rest after the stop (tilt of its mounting, slope of the road, zero error) is taken off, and the speed is summed
/// up backwards from rest. Three axes in any mounting are turned first: gravity at rest gives the vertical, the strongest readings the
/// car's axis; the sign is the one by which the readings end at a standstill.</para>
/// <para>The coast before the pedal is not the stop: it begins with the pressure, the pedal or the brake switch where one is logged, else
/// where the slope of the speed changes (<see cref="OnsetFit"/>). How late the speed runs behind the pedal is taken out.</para>
/// <para>Assumes that a stop ends at rest when only acceleration is known. Thresholds (braking above 1.5 m/s² for half a second, trust
/// within 5 %) are our choice.</para>
/// </remarks>
public static class StopFinder
{
    private const double Braking = 1.5;
    private const double LeastSeconds = 0.5;
    private const double LeastRate = 4;
    private const double LeastLoss = 2;
    private const double Ninety = 1.645;
    private const double MostTrusted = 0.05;
    // Slip of a wheel that rolls well below lock-up, a deceleration of 1 m/s².
    private const double WheelSlip = 0.02 / Gravity.StandardMetresPerSecondSquared;
    private const double MostPlausible = 1.6 * Gravity.StandardMetresPerSecondSquared;

    /// <summary>Why samples are too few to find a stop in, in a sentence; null when they are not.</summary>
    /// <param name="samples">The samples.</param>
    /// <returns>The sentence, or null.</returns>
    public static string? WhyTooFew(IReadOnlyCollection<MotionSample> samples)
    {
        ArgumentNullException.ThrowIfNull(samples);
        return samples.Count >= 10 ? null : Invariant.Text($"{samples.Count} samples could be read; a stop needs at least ten.");
    }

    /// <summary>Finds the stops.</summary>
    /// <param name="samples">Samples in order of time, 4 to 200 a second.</param>
    /// <param name="divePerG">
    /// Nose-down pitch of the body at 1 g of deceleration, not negative; null leaves it uncorrected. Only an accelerometer needs it.
    /// </param>
    /// <exception cref="ArgumentException">There are fewer than ten samples.</exception>
    public static StopSearch Find(IReadOnlyList<MotionSample> samples, Angle? divePerG = null)
    {
        ArgumentNullException.ThrowIfNull(samples);
        if (WhyTooFew(samples) is { } few)
        {
            throw new ArgumentException(few, nameof(samples));
        }

        List<string> remarks = [];
        MotionSample[] fast = Updates([.. samples.Where(s => s.Speed is not null)]);
        MotionSample[] felt = [.. samples.Where(s => s.Acceleration is not null)];
        felt = felt.Length >= 10 ? felt : [.. samples.Where(s => s.Axes is not null)];
        bool bySpeed = fast.Length >= 10 && (felt.Length < 10 || StepOf(fast) <= 1.05 / LeastRate || StepOf(felt) > StepOf(fast));
        MotionSample[] used = bySpeed ? fast : felt.Length >= 10 ? felt : [.. samples];
        double step = StepOf(used);
        double[] steps = [.. used.Zip(used.Skip(1), (a, b) => b.Time.Seconds - a.Time.Seconds)];
        double uneven = steps.Select(d => Math.Abs(d - step)).Median() / step;
        remarks.Add(Invariant.Text($"{(bySpeed ? "Speed" : "Acceleration")} is logged {1 / step:0.#} times a second"
            + $"{(uneven < 0.005 ? ", evenly." : $"; half of the intervals lie within {100 * uneven:0} % of that.")}"));
        if (step > 1.05 / LeastRate)
        {
            remarks.Add(Invariant.Text(
                $"The log has only {1 / step:0.#} samples a second; four are the least for a stop to be trusted, ten are better."));
        }

        int gaps = steps.Count(d => d > 5 * step);
        if (gaps > 0)
        {
            remarks.Add(Invariant.Text($"The log has {gaps} gap{(gaps > 1 ? "s" : "")} longer than five samples; "
                + $"a stop across a gap is not trustworthy."));
        }

        List<Found> found = !bySpeed && felt.Length < 10 ? [] : bySpeed ? FromSpeed(used, step)
            : FromAcceleration(used, fast, step, divePerG, remarks);
        List<MeasuredStop> stops = Measured(found, new TimedSamples(samples), remarks);
        if (stops.Count == 0)
        {
            remarks.Add("No stop was found: nowhere does the car brake harder than 0.15 g for half a second.");
        }

        return new StopSearch(stops, Frequency.FromHertz(1 / step), remarks);
    }

    private static double StepOf(MotionSample[] samples) =>
        samples.Length < 2 ? 1 : Math.Max(1e-4, samples.Zip(samples.Skip(1), (a, b) => b.Time.Seconds - a.Time.Seconds).Median());

    // A speed that comes at a slower rate than the log is written in stairs: only the rows where it was renewed count.
    private static MotionSample[] Updates(MotionSample[] samples)
    {
        if (samples.Length < 10)
        {
            return samples;
        }

        double[] v = [.. samples.Select(s => s.Speed!.Value.MetersPerSecond)];
        int[] changes = [.. Enumerable.Range(1, v.Length - 1).Where(i => v[i] != v[i - 1])];
        double step = StepOf(samples);
        double[] held = [.. changes.Zip(changes.Skip(1)).Where(c => v[c.Second] < v[c.First] - 0.05)
            .Select(c => samples[c.Second].Time.Seconds - samples[c.First].Time.Seconds).Where(d => d < 1.5)];
        double renewed = held.Length < 5 ? 0 : held.Quantile(0.3);
        if (renewed < 1.8 * step)
        {
            return samples;
        }

        List<MotionSample> kept = [samples[0]];
        for (int i = 1; i < samples.Length; i++)
        {
            if (v[i] != v[i - 1] || samples[i].Time.Seconds - kept[^1].Time.Seconds > 1.6 * renewed)
            {
                kept.Add(samples[i]);
            }
        }

        return [.. kept];
    }

    private sealed record Found(double[] Time, double[] Speed, double[] Rate, int First, int Last, double Step)
    {
        public double Noise { get; init; }

        public double SpeedNoise => BySpeed ? Noise : 0.03 + Noise * Math.Sqrt(0.3 * Step);

        public double Scale { get; init; }

        public double Bias { get; init; }

        // By how many seconds the taking out of slip blurs when the pedal was pressed.
        public double Blur { get; init; }

        public double OffsetSd { get; init; }

        public double? Offset { get; init; }

        public double[]? Felt { get; init; }

        public bool BySpeed => Felt is null;

        public List<string> Doubts { get; init; } = [];

        public List<string> Notes { get; init; } = [];

        public OnsetFit? Fit { get; init; }

        // The samples that show the beginning.
        public int From { get; init; }

        public int To { get; init; }
    }

    private static List<Found> FromSpeed(MotionSample[] samples, double step)
    {
        double[] time = [.. samples.Select(s => s.Time.Seconds)];
        double[] raw = [.. samples.Select(s => s.Speed!.Value.MetersPerSecond)];
        double[] bends = [.. Enumerable.Range(1, raw.Length - 2).Where(i => raw[i] > 1)
            .Select(i => Math.Abs(raw[i + 1] - 2 * raw[i] + raw[i - 1]))];
        double[] differences = [.. raw.Zip(raw.Skip(1), (a, b) => Math.Abs(b - a)).Where(d => d > 1e-6).Order()];

        // The grain of the speeds: what nearly all of their differences are multiples of.
        double grain = differences.Length < 10 ? 0 : differences[differences.Length / 50];
        grain = grain > 0.02 && differences.Count(d => Math.Abs(d / grain - Math.Round(d / grain)) < 0.1) > 0.95 * differences.Length
            ? grain : 0;
        double noise = Math.Max(Math.Max(bends.Length < 5 ? 0.1 : bends.Median() / 0.6745 / Math.Sqrt(6), grain / Math.Sqrt(12)), 0.01);

        // A window so wide that the noise of the slope stays well below the threshold.
        double half = Math.Max(0.1, 1.5 * step);
        while (noise * 1.73 / (half * Math.Sqrt(2 * half / step)) > 0.35 && half < 0.6)
        {
            half *= 1.2;
        }

        (_, double[] rate) = Smooth(time, raw, half);
        bool ofWheels = samples.Count(s => s.SpeedIsOfWheel) > 0.9 * samples.Length;
        double[] speed = !ofWheels ? raw : [.. raw.Zip(rate, (v, r) => v * (1 + WheelSlip * Math.Max(0, -r)))];
        List<Found> found = [];
        foreach ((int start, int end) in Runs(time, [.. rate.Select(r => -r)], Braking, LeastSeconds, step))
        {
            int last = end;
            while (last < time.Length - 1 && raw[last] > 0.3 && rate[last] < -0.4)
            {
                last++;
            }

            if (raw[Math.Max(0, start - 1)] - raw[last] < Math.Max(LeastLoss, 6 * noise))
            {
                continue;
            }

            found.Add(new Found(time, speed, rate, start, last, step)
            {
                Noise = noise,
                Scale = ofWheels ? 0.008 : 0.004,
                Blur = ofWheels ? half / Math.Sqrt(3) : 0,
                Bias = grain > 0.1 ? grain / Math.Sqrt(12) : 0,
                Notes = ofWheels ? ["The speed is that of the fastest wheel; a slip of 2 % at 1 g was taken out (common practice)."] : [],
            });
        }

        return found;
    }

    private static List<Found> FromAcceleration(MotionSample[] samples, MotionSample[] speeds, double step, Angle? divePerG,
        List<string> remarks)
    {
        bool oneAxis = samples.All(s => s.Acceleration is not null);
        double[] reading = oneAxis
            ? [.. samples.Select(s => s.Acceleration!.Value.MetersPerSecondSquared)] : Mounting.Longitudinal(samples, remarks);
        double[] time = [.. samples.Select(s => s.Time.Seconds)];
        double half = Math.Max(0.1, step);
        (double[] smooth, _) = Smooth(time, reading, half);
        if (Sign(time, smooth, speeds) < 0)
        {
            reading = [.. reading.Select(r => -r)];
            smooth = [.. smooth.Select(r => -r)];
            remarks.Add("Readings that end at a standstill are positive, so the instrument points backwards; its sign was turned.");
        }

        remarks.Add(divePerG is null
            ? "The nose-down pitch under braking is not taken out: "
                + "an accelerometer then reads one to three per cent too high (common practice)."
            : Invariant.Text($"A nose-down pitch of {divePerG.Value.Degrees:0.##}° at 1 g was taken out."));
        double level = Level(time, smooth);
        double shake = Enumerable.Range(1, reading.Length - 2).Select(i => Math.Abs(reading[i + 1] - 2 * reading[i] + reading[i - 1]))
            .Median() / 0.6745 / Math.Sqrt(6);
        TimedSamples seen = new(speeds);
        List<Found> found = [];
        foreach ((int start, int end) in Runs(time, [.. smooth.Select(r => level - r)], Braking, LeastSeconds, step))
        {
            List<string> doubts = [], notes = [];
            double? rest = RestAfter(time, smooth, end);
            double before = BeforeBraking(time, smooth, start);
            if (rest is null)
            {
                doubts.Add("The log ends or the car moves on before half a second of rest, "
                    + "so the zero was taken from the second before braking; drag and engine braking then count as zero.");
            }
            else if (Math.Abs(rest.Value - before) > 0.6)
            {
                notes.Add(Invariant.Text($"The zero before braking and at rest differ by {Math.Abs(rest.Value - before):0.0} m/s²: "
                    + $"the road slopes, the car was slowing already, or the instrument moved."));
            }

            // A single axis off the level reads part of gravity at rest, and so much less of the braking.
            double offset = rest ?? before;
            double tilt = oneAxis && Math.Abs(offset) < 0.7 * Gravity.StandardMetresPerSecondSquared
                ? Math.Asin(offset / Gravity.StandardMetresPerSecondSquared) : 0;
            double scale = (1 + (divePerG?.Radians ?? 0)) * Math.Cos(tilt);
            Range around = TimedSamples.FirstFrom(time, time[start] - Math.Max(4, 10 * step))..Math.Min(time.Length, end + 2);
            double[] t = time[around], a = [.. reading[around].Select(r => (r - offset) / scale)];
            double[] slow = [.. smooth[around].Select(r => (r - offset) / scale)];

            // The car stands where the deceleration has collapsed to half of what it was just before.
            int first = start - around.Start.Value, last = end - around.Start.Value;
            double held = -slow[Math.Max(first, last - (int)(0.3 / step))..(last + 1)].Minimum();
            while (last > first && -slow[last] < held / 2)
            {
                last--;
            }

            double[] v = new double[a.Length];
            if (last + 1 < a.Length && slow[last + 1] > slow[last])
            {
                v[last] = Math.Min(1, (slow[last] + held / 2) / (slow[last] - slow[last + 1])) * (t[last + 1] - t[last]) * held;
            }

            for (int i = last - 1; i >= 0; i--)
            {
                v[i] = v[i + 1] - (a[i] + a[i + 1]) / 2 * (t[i + 1] - t[i]);
            }

            if (v[first] < LeastLoss)
            {
                continue;
            }

            if (rest is not null && seen.Between(time[start] - 1.5, time[start]).Select(s => s.Speed!.Value.MetersPerSecond).ToArray()
                is { Length: > 0 } logged && Math.Abs(logged.Median() / v[first] - 1) > 0.12)
            {
                doubts.Add("The speed summed up from the acceleration does not agree with the speed that is logged beside it.");
            }

            found.Add(new(t, v, slow, first, last, step)
            {
                Felt = a,
                Noise = Math.Max(0.02, shake / scale),
                Scale = divePerG is null ? 0.018 : 0.008,
                OffsetSd = rest is null ? 0.3 : 0.06,
                Offset = offset,
                Doubts = doubts,
                Notes = notes,
            });
        }

        return found;
    }

    // Braking ends abruptly, at a standstill; speeding up fades. Where speed is logged, that decides.
    private static int Sign(double[] time, double[] smooth, MotionSample[] speeds)
    {
        if (speeds.Length >= 10)
        {
            double[] t = [.. speeds.Select(s => s.Time.Seconds)], v = [.. speeds.Select(s => s.Speed!.Value.MetersPerSecond)];
            double level = Level(time, smooth), best = 0;
            for (double late = 0; late <= 1.2; late += 0.1)
            {
                double sum = 0;
                for (int i = 1, k = 0; i < t.Length; i++)
                {
                    while (k < time.Length - 1 && time[k] < (t[i] + t[i - 1]) / 2 - late)
                    {
                        k++;
                    }

                    sum += (v[i] - v[i - 1]) * (smooth[k] - level);
                }

                best = Math.Abs(sum) > Math.Abs(best) ? sum : best;
            }

            return best < 0 ? -1 : 1;
        }

        double Abruptness(double sign)
        {
            double[] y = [.. smooth.Select(r => sign * r)];
            double level = Level(time, y), step = (time[^1] - time[0]) / (time.Length - 1), sum = 0;
            int edge = Math.Max(1, (int)Math.Round(0.15 / step));
            foreach ((int start, int end) in Runs(time, [.. y.Select(r => level - r)], Braking, LeastSeconds, step))
            {
                double Steepest(int at, int side) => Enumerable.Range(at - 3 * edge, 6 * edge).Where(i => i >= 0 && i + edge < y.Length)
                    .Select(i => side * (y[i + edge] - y[i])).DefaultIfEmpty(0).Max();
                sum += start >= 2 * edge && end + 2 * edge < y.Length ? Steepest(end, 1) - Steepest(start, -1) : 0;
            }

            return sum;
        }

        return Abruptness(-1) > Abruptness(1) ? -1 : 1;
    }

    private static List<MeasuredStop> Measured(IEnumerable<Found> found, TimedSamples log, List<string> remarks)
    {
        Found[] stops = [.. found.Select(Fitted)];
        PedalSignal? pedal = PedalSignal.Of(log);
        (double At, double Sd)?[] pressed = [.. stops.Select(s => s.Fit is { } fit ? pedal?.Pressed(fit.Start.At) : null)];
        (double Late, double Sd)[] late = [.. stops.Zip(pressed).Where(f => f.Second is not null)
            .Select(f => Behind(pedal!, f.First, f.Second!.Value.At))];
        (double lag, double lagSd) = late.Length == 0 ? (0, 0)
            : (late.Select(l => l.Late).Median(), late.Select(l => l.Sd).Median() / Math.Sqrt(late.Length));
        double? pedalLate = late.Length == 0 ? null : lag;
        (lag, lagSd) = Math.Abs(lag) > 0.04 + 2 * lagSd ? (lag, lagSd) : (0, 0);
        if (lag != 0)
        {
            remarks.Add(Invariant.Text($"The {(stops[0].BySpeed ? "speed" : "acceleration")} runs "
                + $"{Math.Abs(lag):0.00} s {(lag > 0 ? "behind" : "ahead of")} the {pedal!.Name}; that was taken out."));
        }

        return [.. stops.Zip(pressed).Select(pair => Measure(pair.First, log, Start(pair.First.Fit, pair.Second), lag, pedalLate))];

        // Both the signal and the slope tell the beginning; each counts as far as it is sharp.
        (double, double, string)? Start(OnsetFit? fit, (double At, double Sd)? at)
        {
            if (fit is null || at is not { } signal)
            {
                return null;
            }

            double sd = Norm(lagSd, signal.Sd, 0.015), own = 1 / (fit.Start.Sd * fit.Start.Sd);
            double sharp = 1 / (sd * sd);
            return ((sharp * (signal.At + lag) + own * fit.Start.At) / (sharp + own), 1 / Math.Sqrt(sharp + own), pedal!.Name);
        }
    }

    private static Found Fitted(Found stop)
    {
        double wait = Math.Max(0.5, Math.Min(3 * stop.Step, 1.2)), top = stop.Speed[stop.First];
        int from = stop.First, to = stop.First;
        while (from > 0 && stop.Time[stop.First] - stop.Time[from - 1] < wait)
        {
            from--;
        }

        while (to < stop.Last && (stop.Speed[to] > 0.55 * top && stop.Time[to] - stop.Time[stop.First] < 1.5 || to < stop.First + 4))
        {
            to++;
        }

        OnsetFit? fit = OnsetFit.Of(stop.Time, stop.Speed, stop.Felt, from, to, stop.Time[stop.First], stop.Noise);
        return stop with { From = from, To = to, Fit = fit };
    }

    // How late a stop's speed runs behind the pedal.
    private static (double Late, double Sd) Behind(PedalSignal pedal, Found stop, double pressed)
    {
        (double[] time, double[] level) = pedal.Between(stop.Time[stop.From] - 5, stop.Time[stop.To] + 5);
        return pedal.IsPressure
            && OnsetFit.Behind(stop.Time, stop.Speed, stop.From, stop.To, time, level, stop.SpeedNoise) is { } behind
            ? behind : (stop.Fit!.Start.At - pressed, stop.Fit.Start.Sd);
    }

    private static MeasuredStop Measure(Found stop, TimedSamples log, (double At, double Sd, string By)? pressed,
        double lag, double? pedalLate)
    {
        (double[] time, double[] speed, OnsetFit? fit) = (stop.Time, stop.Speed, stop.Fit);
        List<string> doubts = stop.Doubts, notes = stop.Notes;
        (double start, double startSd) = pressed is { } p ? (p.At, p.Sd) : fit?.Start ?? (time[stop.First], stop.Step);
        if (fit is null)
        {
            doubts.Add("Too few samples show where braking began.");
        }

        double v0 = fit?.SpeedAt(start) ?? speed[stop.First];
        double rise = fit?.Rise.Seconds ?? 0;

        // The stop as a line of points: the fitted beginning, the smoothed samples, and the run-out to rest.
        int first = TimedSamples.FirstFrom(time, Math.Max(start, fit?.Start.At ?? start) + 0.7 * rise);
        int last = stop.Last;
        double quiet = Math.Max(Math.Max(0.06 * v0, 0.7), 2 * stop.SpeedNoise);
        bool stands = speed[last] < Math.Max(0.12 * v0, 1.2 * Braking * stop.Step + 0.5)
            || last + 1 < speed.Length && speed[last + 1] < quiet || !stop.BySpeed;
        while (stands && last > first && speed[last] < quiet)
        {
            last--;
        }

        double window = Math.Max(0.1, Math.Max(1.3 * stop.Step, Math.Min(2 * stop.Step, 0.5)));
        List<(double T, double V)> line = [(start, v0)];
        double until = first <= last ? time[first] : start;
        for (int i = 1; i < 20 && fit is not null; i++)
        {
            double t = start + (until - start) * i / 20;
            line.Add((t, fit.SpeedAt(t)));
        }

        if (first <= last)
        {
            (double[] v, double[] rate) = Smooth(time[first..(last + 1)], speed[first..(last + 1)], window);
            line.AddRange(time[first..(last + 1)].Zip(v).Select(pair => (pair.First, pair.Second)));
            if (stands && rate[^1] < -0.5)
            {
                line.Add((time[last] - v[^1] / rate[^1], 0));
            }
        }

        double[] distance = new double[line.Count];
        for (int i = 1; i < line.Count; i++)
        {
            distance[i] = distance[i - 1] + (line[i].V + line[i - 1].V) / 2 * (line[i].T - line[i - 1].T);
        }

        // Counted from the change of slope, which a log shows sharply; the way from the pedal to there rests on a rise that it may hide.
        (double changed, double changedSd) = fit?.Change ?? (start, startSd);
        changed = Math.Clamp(changed, start, Math.Max(start, line[^1].T));
        double toChange = Passed(line, distance, changed), d = distance[^1] - toChange, length = line[^1].T - changed;
        Acceleration? mean = null;
        double meanSd = 0;
        (double T, double S)? sb = Crossing(line, distance, 0.8 * v0), se = Crossing(line, distance, 0.1 * v0);
        if (sb is { } b && se is { } e && e.S > b.S && v0 > 0.5)
        {
            mean = FullyDevelopedDeceleration.Between(Speed.FromMetersPerSecond(0.8 * v0), Speed.FromMetersPerSecond(0.1 * v0),
                Length.FromMeters(e.S - b.S));
            double a = mean.Value.MetersPerSecondSquared, points = Math.Max(1, 2 * window / stop.Step);
            double few = stop.BySpeed ? 0.8 * a * Math.Pow(stop.Step * a / v0, 1.5) : 0;
            meanSd = Norm(a * 2.56 / v0 * stop.SpeedNoise / Math.Sqrt(points), few, a * stop.Scale, stop.OffsetSd);
        }
        else
        {
            notes.Add("Braking ended above a tenth of the initial speed, so the stop has no mean fully developed deceleration.");
        }

        double gap = Enumerable.Range(stop.First, stop.Last - stop.First).Select(i => time[i + 1] - time[i]).DefaultIfEmpty(0).Max();
        double missing = Math.Max(0, gap - 1.5 * stop.Step);
        if (gap > Math.Max(0.3, 2.5 * stop.Step))
        {
            doubts.Add("Samples are missing within the stop.");
        }

        double edge = stop.BySpeed ? 0 : 0.02 + 0.3 * stop.Step, pull = mean?.MetersPerSecondSquared ?? 5;
        double vSd = Norm(fit?.Initial.Sd ?? stop.SpeedNoise, stop.Scale * v0, stop.Bias, stop.OffsetSd * length, edge * pull,
            stop.Step > 0.3 ? 0.1 * stop.Step * pull : 0);
        double DistanceSd(double beginSd, double way, double lasting) => Norm(v0 * beginSd, stop.Scale * way, stop.Bias * lasting,
            stop.SpeedNoise * Math.Sqrt(stop.Step * lasting), stop.OffsetSd * lasting * lasting / 3, edge * v0,
            pull * missing * missing / 4);
        double dSd = DistanceSd(changedSd, d, length);
        double peak = PeakOver(time, stop.Rate, stop.First, stop.Last, Math.Max(0.3, 1.3 * stop.Step));
        double peakSd = Norm(stop.BySpeed ? 3.5 * stop.SpeedNoise / (Math.Max(0.3, stop.Step) * Math.Sqrt(Math.Max(1, 0.3 / stop.Step)))
            : 0.1,
            stop.Scale * peak, stop.Step > 0.2 ? 0.15 * peak : 0);
        WhyNotTrusted(doubts, stop.Step, v0, d, Ninety * dSd, mean?.MetersPerSecondSquared, Ninety * meanSd, peak);

        if (d > 0 && Ninety * dSd > MeasuredStop.SharpDistance * d)
        {
            notes.Add(Invariant.Text($"The distance is known to {100 * Ninety * dSd / d:0.#} % only."));
        }

        double wheelsLate = pedalLate ?? BehindWheels(log, line, stop.BySpeed);
        WheelLocks? wheels = WheelLocks.Of(log.Between(start - wheelsLate - 0.3, line[^1].T - wheelsLate),
            !log.KnowsSpeed && stop.BySpeed ? null : t => At(line, t + wheelsLate));
        (double From, double To) even = (sb?.T ?? start, se?.T ?? line[^1].T);
        double? lockedAt = wheels is null ? null : new[] { wheels.FrontAt, wheels.RearAt }.Min();
        if (lockedAt is not null && !log.KnowsSpeed)
        {
            doubts.Add("Wheels lock and the speed is known from the wheels alone.");
        }

        Pressure? Even(Func<MotionSample, Pressure?> of)
        {
            double[] bars = [.. log.Between(even.From - lag, even.To - lag).Select(of).OfType<Pressure>().Select(x => x.Bars)];
            return bars.Length == 0 ? null : Pressure.FromBars(bars.Mean());
        }

        return new MeasuredStop(
            Start: Duration.FromSeconds(start),
            End: Duration.FromSeconds(line[^1].T),
            InitialSpeed: Speed.FromMetersPerSecond(v0),
            InitialSpeedWithin: Speed.FromMetersPerSecond(Ninety * vSd),
            Deceleration: mean,
            DecelerationWithin: mean is null ? null : Acceleration.FromMetersPerSecondSquared(Ninety * meanSd),
            Peak: Acceleration.FromMetersPerSecondSquared(peak),
            PeakWithin: Acceleration.FromMetersPerSecondSquared(Ninety * peakSd),
            Distance: Length.FromMeters(d),
            DistanceWithin: Length.FromMeters(Ninety * dSd),
            DistanceFromPedal: Length.FromMeters(d + toChange),
            DistanceFromPedalWithin: Length.FromMeters(Ninety * DistanceSd(Norm(startSd, stop.Blur), d + toChange, line[^1].T - start)),
            RiseTime: Duration.FromSeconds(rise),
            RiseTimeWithin: Duration.FromSeconds(Ninety * (fit?.Rise.Sd ?? stop.Step)),
            FoundBy: pressed?.By ?? "change of slope",
            FrontPressure: Even(s => s.FrontPressure),
            RearPressure: Even(s => s.RearPressure),
            Locked: wheels?.First,
            FrontLockedAt: wheels?.FrontAt is { } f ? Duration.FromSeconds(f) : null,
            RearLockedAt: wheels?.RearAt is { } r ? Duration.FromSeconds(r) : null,
            FrontSlip: wheels?.FrontSlip,
            RearSlip: wheels?.RearSlip,
            LockPressure: lockedAt is { } at ? log.Between(at - 0.15, at + 0.15).Where(s => s.FrontPressure is not null)
                .MinBy(s => Math.Abs(s.Time.Seconds - at))?.FrontPressure : null,
            Offset: stop.Offset is { } offset ? Acceleration.FromMetersPerSecondSquared(offset) : null,
            IsTrusted: doubts.Count == 0 && mean is not null,
            Cautions: [.. doubts, .. notes]);
    }

    private static void WhyNotTrusted(
        List<string> doubts, double step, double v0, double d, double dWithin, double? mean, double meanWithin, double peak)
    {
        if (step > 1.05 / LeastRate)
        {
            doubts.Add(Invariant.Text($"{1 / step:0.#} samples a second are too few to tell when braking began; four are the least."));
        }

        if (dWithin > 0.08 * d || mean is { } a && meanWithin > MostTrusted * a)
        {
            doubts.Add((d > 0 ? Invariant.Text($"The uncertainty is too wide: {100 * dWithin / d:0} % of the distance")
                : "The uncertainty is too wide: no distance is left") + Invariant.Text(
                $"{(mean is > 0 and var m ? $", {100 * meanWithin / m:0} % of the mean deceleration" : "")}."));
        }

        if (v0 < 5)
        {
            doubts.Add("The stop begins below 18 km/h, where every error counts double.");
        }

        if (mean > MostPlausible || peak > 1.4 * MostPlausible)
        {
            doubts.Add("No tyre of a car brakes so hard: the unit of the column may be another (--column sets it).");
        }
    }

    // How late the speed runs behind the wheels, by the best match.
    private static double BehindWheels(TimedSamples log, List<(double T, double V)> line, bool bySpeed)
    {
        (double T, double V)[] rims = [.. log.Between(line[0].T - 2, line[^1].T)
            .Select(s => (s.Time.Seconds, s.AllWheels.Max()?.MetersPerSecond)).Where(r => r.MetersPerSecond is not null)
            .Select(r => (r.Seconds, r.MetersPerSecond!.Value))];
        return rims.Length < 10 || !bySpeed ? 0 : Enumerable.Range(0, 61).Select(i => 0.02 * i).MinBy(late =>
            rims.Where(r => r.T + late >= line[0].T && r.T + late <= line[0].T + 0.7 * (line[^1].T - line[0].T))
                .Select(r => Math.Abs(At(line, r.T + late) - r.V)).DefaultIfEmpty(1e9).Average());
    }

    private static double At(List<(double T, double V)> line, double time)
    {
        (int i, int high) = (0, line.Count);
        while (i < high)
        {
            int middle = (i + high) / 2;
            (i, high) = line[middle].T < time ? (middle + 1, high) : (i, middle);
        }

        return i == line.Count ? line[^1].V : i == 0 || line[i].T <= line[i - 1].T ? line[i].V
            : line[i - 1].V + (line[i].V - line[i - 1].V) * (time - line[i - 1].T) / (line[i].T - line[i - 1].T);
    }

    private static double Norm(params ReadOnlySpan<double> parts)
    {
        double sum = 0;
        foreach (double part in parts)
        {
            sum += part * part;
        }

        return Math.Sqrt(sum);
    }

    private static (double T, double S)? Crossing(List<(double T, double V)> line, double[] distance, double level)
    {
        for (int i = line.Count - 1; i > 0; i--)
        {
            if (line[i - 1].V >= level && line[i].V < level)
            {
                double part = (line[i - 1].V - level) / (line[i - 1].V - line[i].V);
                return (line[i - 1].T + part * (line[i].T - line[i - 1].T), distance[i - 1] + part * (distance[i] - distance[i - 1]));
            }
        }

        return null;
    }

    private static double Passed(List<(double T, double V)> line, double[] distance, double time)
    {
        int i = line.FindIndex(p => p.T >= time);
        if (i <= 0)
        {
            return i < 0 ? distance[^1] : 0;
        }

        double part = (time - line[i - 1].T) / (line[i].T - line[i - 1].T);
        return distance[i - 1] + part * (distance[i] - distance[i - 1]);
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

            peak = j - i > 1 && (time[j - 1] - time[i] > 0.6 * window || j > last) ? Math.Max(peak, sum / (j - i)) : peak;
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
        int from = TimedSamples.FirstFrom(time, time[end] + 0.7);
        if (from == time.Length)
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
        int from = TimedSamples.FirstFrom(time, time[start] - 1.3), to = Math.Max(1, TimedSamples.FirstFrom(time, time[start] - 0.3));
        return smooth[from..Math.Max(from + 1, to)].Average();
    }

    private static IEnumerable<(int Start, int End)> Runs(double[] time, double[] deceleration, double threshold, double seconds,
        double step)
    {
        for (int i = 0; i < time.Length;)
        {
            if (deceleration[i] < threshold)
            {
                i++;
                continue;
            }

            int end = i;
            for (int j = i; j < time.Length && time[j] - time[end] <= Math.Max(0.25, 1.5 * step); j++)
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
}
