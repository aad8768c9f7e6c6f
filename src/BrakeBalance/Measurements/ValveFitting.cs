using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using MathNet.Numerics.Distributions;

namespace BrakeBalance.Measurements;

/// <summary>Finds knee, slope and faults from gauge pairs.</summary>
public static class ValveFitting
{
    /// <summary>Smallest scatter believed of a dial gauge, in bar; finer agreement is luck (common practice).</summary>
    private const double LeastScatterBars = 0.05;
    private const double LeastSpanBars = 5;

    /// <summary>Scatter of a gauge where no fit tells it, in bar (common practice).</summary>
    private const double UsualScatterBars = 0.6;

    /// <summary>Least distance of the bar from where the file has it that is told [–]: half of what a setting is rounded to.</summary>
    private const double LeastShareApart = 0.005;

    /// <summary>Disagreement of the slopes that chance exceeds once in five logs: from there on it widens the bounds.</summary>
    private const double UsualDisagreement = 0.8;

    /// <summary>Confidence at which the slopes are said to differ; a false alarm in one log of two hundred.</summary>
    private const double StrongDisagreement = 0.995;

    /// <summary>
    /// Analyses gauge pairs: a fit for each position of the adjuster and direction, the knee against the turns, and what looks wrong.
    /// </summary>
    /// <param name="pairs">The readings, in the order they were taken.</param>
    /// <param name="belowKnee">
    /// Rear over front line pressure below the knee [–]; 1 for one master cylinder of one bore, otherwise what bores and balance bar
    /// make it. Above 0.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="belowKnee"/> is not above zero.</exception>
    public static GaugeAnalysis Analyse(IEnumerable<GaugePair> pairs, double belowKnee = 1)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(belowKnee);
        GaugePair[] all = [.. pairs];
        List<GaugeFinding> findings = [.. GaugeFaults.Find(all, belowKnee)];
        if (findings.Any(f => f.Kind is GaugeFindingKind.Swapped or GaugeFindingKind.NoRearPressure))
        {
            // A knee fitted to swapped or dead lines would be a number about nothing.
            return new GaugeAnalysis { Positions = [], Findings = findings };
        }

        List<(double? Turns, Curve Apply, Curve Release)> read = [];
        foreach (IGrouping<double?, GaugePair> group in all.Where(p => p.Phase != PressurePhase.Hold).GroupBy(p => p.Turns)
            .OrderBy(g => g.Key))
        {
            PressurePhase[] phases = PhasesOf([.. group]);
            read.Add((group.Key, Curve.Of(group.Where((_, i) => phases[i] == PressurePhase.Apply)),
                Curve.Of(group.Where((_, i) => phases[i] == PressurePhase.Release))));
            if (!read[^1].Apply.IsEnough && !read[^1].Release.IsEnough)
            {
                findings.Add(new GaugeFinding(GaugeFindingKind.TooFew,
                    $"{At(group.Key)} there are {group.Count()} readings; "
                        + "at least four with pressure rising, on both sides of the knee, are needed."));
            }

            (double least, double most) = (group.Min(p => p.Front.Bars), group.Max(p => p.Front.Bars));
            if (most - least < LeastSpanBars)
            {
                findings.Add(new GaugeFinding(GaugeFindingKind.TooFew,
                    $"{At(group.Key)} the front pressure moves only from {InBoth.Bars(least)} to {InBoth.Bars(most)}, "
                        + $"which tells nothing of a valve; press slowly from nothing to hard."));
            }
        }

        Phase apply = Phase.Of([.. read.Select(r => r.Apply)], belowKnee), release = Phase.Of([.. read.Select(r => r.Release)], belowKnee);
        if (GaugeFaults.BelowKnee([.. read.Zip(apply.Fits, (r, f) => (r.Apply.Front, r.Apply.Rear, f?.Knee))], belowKnee) is { } unequal)
        {
            findings.Add(unequal);
        }

        foreach ((int i, (double? turns, _, _)) in read.Index())
        {
            int[] left = [.. apply.LeftOut(i), .. release.LeftOut(i)];
            if (left.Length > 0)
            {
                findings.Add(new GaugeFinding(GaugeFindingKind.Outliers,
                    $"{At(turns)} the reading{(left.Length > 1 ? "s" : "")} "
                        + $"on line{(left.Length > 1 ? "s" : "")} {string.Join(", ", left.Order())} can only be a mistake "
                        + $"and {(left.Length > 1 ? "have" : "has")} no say; look whether the pedal moved or a digit slipped."));
            }
        }

        if (apply.SlopesDiffer)
        {
            findings.Add(new GaugeFinding(GaugeFindingKind.SlopeVaries,
                "The slope above the knee differs between adjuster positions more than the scatter explains. The screw moves the "
                    + "knee, not the slope: repeat one position, then check for air, a sticking valve, or a lever-type valve."));
        }

        findings.AddRange(GaugeFaults.InOrder(
            all, [.. read.Select((r, i) => (r.Turns, Fit: apply.Public(i, PressurePhase.Apply)))], belowKnee));
        Interval<double>? gap = Hysteresis([.. read.Select((r, i) => (r.Apply, apply.Fits[i], r.Release))], belowKnee, apply);
        return new GaugeAnalysis
        {
            Positions = [.. read.Select((r, i) => new AdjusterPosition(
                Turns: r.Turns,
                Apply: apply.Public(i, PressurePhase.Apply),
                Release: gap is { } h && r.Release.IsEnough && apply.Public(i, PressurePhase.Apply) is { Knee: not null } rising
                    ? Falling(rising, h, r.Release, belowKnee) : release.Public(i, PressurePhase.Release)))],
            Slope = apply.Slope,
            Hysteresis = gap?.Select(bars => Pressure.FromBars(bars)),
            Held = HeldLines.Of(all, apply.Slope?.Estimate ?? belowKnee,
                apply.Fits.FirstOrDefault(fit => fit is not null)?.Fit.Scatter ?? UsualScatterBars),
            Calibration = Calibrate(
                [.. read.Index().Where(r => r.Item.Turns is not null && apply.Fits[r.Index] is { Knee.HasKnee: true })
                .Select(r => (r.Item.Turns!.Value, apply.Fits[r.Index]!))], apply),
            Findings = findings,
        }.AtInlet(belowKnee);
    }

    /// <summary>
    /// Analyses the gauge pairs of a car. In a rear line without a valve a straight line is no knee: its steepness tells where the bar is.
    /// </summary>
    /// <param name="pairs">The readings, in the order they were taken.</param>
    /// <param name="car">The car.</param>
    internal static GaugeAnalysis Analyse(IReadOnlyList<GaugePair> pairs, Vehicle car)
    {
        MasterSplit split = car.Hydraulics.Split;
        GaugeAnalysis read = Analyse(pairs, split.RearToFrontPressureRatio);
        if (!car.Hydraulics.RearValves.IsEmpty || read.Positions.Count == 0)
        {
            return read with { Findings = [.. read.Findings, .. Elsewhere(car.Hydraulics.RearProportioningValve, read.Positions)] };
        }

        Pressure top = pairs.Max(pair => pair.Front);
        double steepness = KneeFit.Median([.. pairs.Where(pair => pair.Front > 0.4 * top).Select(pair => pair.Rear / pair.Front)]);
        GaugeFinding[] elsewhere = split is BalanceBarSplit bar ? Elsewhere(bar, steepness) : [];
        if (elsewhere.Length == 0 && read.Positions.All(position => position.Apply?.Knee is null))
        {
            return read;
        }

        GaugeAnalysis straight = Analyse(pairs, steepness);
        // A valve that the file leaves out bends the line more than gauges scatter.
        return straight.Positions.Zip(read.Positions).Any(at => at.First.Apply?.Knee is not null
            || at.First.Apply?.Scatter > 2 * (at.Second.Apply?.Scatter ?? Pressure.Zero)) ? read
            : straight with { Findings = [.. read.Findings, .. elsewhere] };
    }

    private static GaugeFinding[] Elsewhere(ProportioningValve? valve, IReadOnlyList<AdjusterPosition> positions) =>
        valve is { Adjustment: null } && positions is [{ Apply.Knee: { } knee }]
            && (valve.Knee.Bars < knee.Low.Bars - UsualScatterBars || valve.Knee.Bars > knee.High.Bars + UsualScatterBars)
            ? [new(GaugeFindingKind.UnlikeTheFile, $"The gauges show the knee at {InBoth.Bars(knee.Estimate.Bars)}, where the file has "
                + $"{InBoth.Bars(valve.Knee.Bars)}: enter what they show, for every other answer goes by the file's knee.")]
            : [];

    private static GaugeFinding[] Elsewhere(BalanceBarSplit bar, double steepness)
    {
        double bores = bar.FrontBore / bar.RearBore, share = bores * bores / (bores * bores + steepness);
        return Math.Abs(share - bar.FrontForceShare) < LeastShareApart ? [] :
        [
            new(GaugeFindingKind.UnlikeTheFile, Invariant.Text($"The rear line stands at {steepness:0.000} of the front one all the way: ")
                + Invariant.Text($"with these bores the bar is at {100 * share:0.0} % front, where the file has ")
                + Invariant.Text($"{100 * bar.FrontForceShare:0.0} %. Swap the gauges and read again; if it stays, measure the bar under ")
                + "load and enter what it is."),
        ];
    }

    private static string At(double? turns) =>
        turns is null ? "With the adjuster as it is," : Invariant.Text($"At {turns:0.##} turn{(turns == 1 ? "" : "s")}");

    /// <summary>The phases as logged; where none is, a rise up to the highest reading is application and what follows is release.</summary>
    private static PressurePhase[] PhasesOf(GaugePair[] pairs)
    {
        if (pairs.Any(p => p.Phase is not null))
        {
            return [.. pairs.Select(p => p.Phase ?? PressurePhase.Apply)];
        }

        int top = Array.FindIndex(pairs, p => p.Front.Pascals >= pairs.Max(q => q.Front.Pascals));
        bool upThenDown = pairs.Take(top + 1).Zip(pairs.Take(top + 1).Skip(1)).All(z => z.Second.Front >= z.First.Front)
            && pairs.Skip(top).Zip(pairs.Skip(top + 1)).All(z => z.Second.Front <= z.First.Front);
        return [.. pairs.Select((_, i) => upThenDown && i > top ? PressurePhase.Release : PressurePhase.Apply)];
    }

    /// <summary>Gap between the branches, one for all positions that were read both ways.</summary>
    private static Interval<double>? Hysteresis((Curve Apply, PositionFit? Fit, Curve Release)[] read, double belowKnee, Phase apply)
    {
        (double[], double[], FittedKnee, double)[] both = [.. read
            .Where(position => position is { Fit.Knee.HasKnee: true, Release.Front.Length: > 0 })
            .Select(position => (position.Release.Front, position.Release.Rear, position.Fit!.Knee,
                Math.Max(position.Apply.Front.Max(), position.Release.Front.Max())))];
        return both.Length == 0 || apply.Slope is not { } slope ? null
            : HysteresisFit.Find(both, belowKnee, (slope.Estimate, apply.SlopeError), read.First(p => p.Fit is not null).Fit!.Fit.Scatter);
    }

    // The falling branch leaves the line of equal pressures where it meets the rising one lifted by the hysteresis.
    private static ValveFit Falling(ValveFit rising, Interval<double> gap, Curve readings, double belowKnee)
    {
        double slope = rising.Slope!.Value.Estimate, part = Math.Max(0.05, belowKnee - slope);
        Interval<double> knee = rising.Knee!.Value.Select(pressure => pressure.Bars);
        double Half(double near, double far, double gapNear, double gapFar) =>
            Math.Sqrt(Math.Pow(near - far, 2) + Math.Pow((gapNear - gapFar) / part, 2));
        double middle = knee.Estimate + gap.Estimate / part, scatter = rising.Scatter.Bars, top = readings.Front.Max();
        double highest = Math.Max(top, rising.HighestFront.Bars);
        double Off(double front, double rear) =>
            Math.Abs(rear - HysteresisFit.Falling(front, knee.Estimate, slope, belowKnee, highest, gap.Estimate));
        double[] weights = [.. readings.Front.Zip(readings.Rear, (x, y) => KneeFit.Honest(Off(x, y), scatter, belowKnee * top))];
        int[] left = [.. readings.Lines.Where((_, i) => weights[i] < 0.01)];
        return rising with
        {
            Phase = PressurePhase.Release,
            Knee = new(Pressure.FromBars(middle),
                Pressure.FromBars(Math.Max(0, middle - Half(knee.Estimate, knee.Low, gap.Estimate, gap.Low))),
                Pressure.FromBars(middle + Half(knee.High, knee.Estimate, gap.High, gap.Estimate))),
            HighestFront = Pressure.FromBars(top),
            Readings = readings.Front.Length - left.Length,
            LeftOut = left,
            Weights = [.. readings.Lines.Zip(weights, (line, weight) => new ReadingWeight(line, weight))],
        };
    }

    private static AdjusterCalibration? Calibrate((double Turns, PositionFit Fit)[] points, Phase phase)
    {
        double[] turns = [.. points.Select(p => p.Turns)];
        if (turns.Distinct().Count() < 2)
        {
            return null;
        }

        // Given the slope they share, the knees are independent of each other; without one, each stands by itself.
        double? slope = phase.SlopesDiffer ? null : phase.Slope?.Estimate;
        (double Mean, double Deviation)[] knees = [.. points.Select(p => p.Fit.KneeGiven(slope))];
        double[] weights = [.. knees.Select(k => 1 / (k.Deviation * k.Deviation))];
        double mean = turns.Zip(weights, (t, w) => t * w).Sum() / weights.Sum();
        double[][] rows = [.. turns.Select(t => new[] { 1, t - mean })];
        LeastSquares line = LeastSquares.Fit(rows, [.. knees.Select(k => k.Mean)], weights);
        // Residuals of one mean the scatter within the positions; never believe less because a few points happen to lie on a line.
        bool scattered = line.DegreesOfFreedom > 0 && line.ResidualDeviation > 1;
        double variance = scattered ? line.ResidualDeviation * line.ResidualDeviation : 1;
        double sum = weights.Sum(), spread = turns.Zip(weights, (t, w) => w * (t - mean) * (t - mean)).Sum();
        double[] covariance = [variance / sum, 0, variance / spread];
        if (slope is { } s)
        {
            // An error of the shared slope moves all knees together.
            var moved = LeastSquares.Fit(rows, [.. points.Select(p => p.Fit.KneeGiven(s + phase.SlopeError).Mean)], weights).Coefficients;
            (double d0, double d1) = (moved[0] - line.Coefficients[0], moved[1] - line.Coefficients[1]);
            covariance = [covariance[0] + d0 * d0, d0 * d1, covariance[2] + d1 * d1];
        }

        // Knees that scatter about the line are judged by themselves; otherwise the scatter of a reading is known from all readings.
        int freedom = scattered ? line.DegreesOfFreedom : phase.DegreesOfFreedom;
        return new AdjusterCalibration(line.Coefficients[0], line.Coefficients[1], covariance, mean, LeastSquares.HalfWidth90(freedom))
        {
            LowestTurns = turns.Min(),
            HighestTurns = turns.Max(),
            Positions = points.Length,
        };
    }

    /// <summary>The readings of one position in one direction.</summary>
    private sealed record Curve(double[] Front, double[] Rear, int[] Lines)
    {
        public bool IsEnough => Front.Length >= 4;

        public static Curve Of(IEnumerable<GaugePair> pairs)
        {
            GaugePair[] rows = [.. pairs];
            return new Curve([.. rows.Select(r => r.Front.Bars)], [.. rows.Select(r => r.Rear.Bars)], [.. rows.Select(r => r.Line)]);
        }
    }

    /// <summary>One position within the fit that holds it: the joint one, or its own where the slopes differ.</summary>
    private sealed record PositionFit(KneeFit Fit, FittedKnee Knee)
    {
        public (double Mean, double Deviation) KneeGiven(double? slope) =>
            slope is { } s ? Knee.GivenSlope(s) : (Knee.Knee.Estimate, (Knee.Knee.High - Knee.Knee.Low) / 2 / LeastSquares.HalfWidth90(0));
    }

    /// <summary>All positions in one direction.</summary>
    private sealed record Phase(Curve[] Curves, PositionFit?[] Fits)
    {
        public bool SlopesDiffer { get; private init; }

        /// <summary>
        /// Factor by which the shared bounds are widened, because the positions agree less well than the scatter lets expect [–]; at
        /// least 1.
        /// </summary>
        private double Widening { get; init; } = 1;

        public double SlopeError { get; private init; }

        public int DegreesOfFreedom { get; private init; }

        public Interval<double>? Slope { get; private init; }

        public static Phase Of(Curve[] curves, double belowKnee)
        {
            int[] enough = [.. Enumerable.Range(0, curves.Length).Where(i => curves[i].IsEnough)];
            if (enough.Length == 0)
            {
                return new Phase(curves, new PositionFit?[curves.Length]);
            }

            (double[], double[])[] readings = [.. enough.Select(i => (curves[i].Front, curves[i].Rear))];
            var joint = KneeFit.Fit(readings, belowKnee, LeastScatterBars);
            (double[], double[])[] bent = [.. readings.Where((_, j) => joint.Knees[j].HasKnee)];
            var phase = new Phase(curves, Placed(curves.Length, enough, [.. joint.Knees.Select(k => new PositionFit(joint, k))]))
            {
                SlopeError = joint.SlopeError,
                DegreesOfFreedom = joint.DegreesOfFreedom,
                Slope = bent.Length == 0 ? null : joint.Slope,
            };
            double usual = bent.Length < 2 ? 0 : FisherSnedecor.InvCDF(bent.Length - 1, joint.DegreesOfFreedom, UsualDisagreement);
            // Slopes that differ swell the joint scatter, but seldom so much that they pass for usual.
            if (bent.Length < 2 || KneeFit.SlopeRatio(bent, belowKnee, joint.Scatter) <= usual)
            {
                return phase;
            }

            KneeFit[] apart = [.. readings.Select(r => KneeFit.Fit([r], belowKnee, LeastScatterBars))];
            KneeFit[] own = [.. apart.Where((_, j) => joint.Knees[j].HasKnee)];
            int freedom = own.Sum(f => f.DegreesOfFreedom);
            double scatter = Math.Sqrt(own.Sum(f => f.DegreesOfFreedom * f.Scatter * f.Scatter) / freedom);
            double ratio = KneeFit.SlopeRatio(bent, belowKnee, scatter);
            if (FisherSnedecor.CDF(bent.Length - 1, freedom, ratio) > StrongDisagreement)
            {
                double mean = own.Average(f => f.Slope.Estimate),
                    variance = own.Sum(f => Math.Pow(f.Slope.Estimate - mean, 2)) / (own.Length - 1);
                double half = LeastSquares.HalfWidth90(own.Length - 1) * Math.Sqrt(
                    (variance + own.Average(f => f.SlopeError * f.SlopeError)) / own.Length);
                return new Phase(curves, Placed(curves.Length, enough, [.. apart.Select(f => new PositionFit(f, f.Knees[0]))]))
                {
                    SlopesDiffer = true,
                    DegreesOfFreedom = freedom,
                    Slope = new Interval<double>(mean, mean - half, mean + half),
                };
            }

            double widening = Math.Sqrt(Math.Max(1, ratio / usual));
            return phase with { Widening = widening, SlopeError = joint.SlopeError * widening, Slope = Wider(joint.Slope, widening) };
        }

        public IEnumerable<int> LeftOut(int i) => Fits[i] is { } fit ? Curves[i].Lines.Where((_, r) => fit.Knee.LeftOut[r]) : [];

        public ValveFit? Public(int i, PressurePhase direction) => Fits[i] is not { } fit ? null : new ValveFit(
            Phase: direction,
            Knee: fit.Knee.HasKnee ? Wider(fit.Knee.Knee, Widening).Select(b => Pressure.FromBars(Math.Max(0, b))) : null,
            Slope: fit.Knee.HasKnee ? Wider(fit.Fit.Slope, Widening) : null,
            HighestFront: Pressure.FromBars(Curves[i].Front.Max()),
            Scatter: Pressure.FromBars(fit.Fit.Scatter),
            Readings: fit.Knee.LeftOut.Count(o => !o),
            LeftOut: [.. LeftOut(i)])
        {
            Weights = [.. Curves[i].Lines.Zip(fit.Knee.Weights, (line, weight) => new ReadingWeight(line, weight))],
        };

        private static PositionFit?[] Placed(int count, int[] places, PositionFit[] fits)
        {
            var placed = new PositionFit?[count];
            foreach ((int j, int i) in places.Index())
            {
                placed[i] = fits[j];
            }

            return placed;
        }

        private static Interval<double> Wider(Interval<double> band, double factor) =>
            new(band.Estimate, band.Estimate - factor * (band.Estimate - band.Low), band.Estimate + factor * (band.High - band.Estimate));
    }
}
