using MathNet.Numerics.Distributions;
using UnitsNet;

namespace BrakeBalance.Measurements;

/// <summary>Finds knee, slope and faults from gauge pairs.</summary>
public static class ValveFitting
{
    /// <summary>Smallest scatter believed of a dial gauge, in bar; finer agreement is luck (common practice).</summary>
    private const double LeastScatterBars = 0.05;

    /// <summary>Analyses gauge pairs: a fit for each position of the knob and direction, the knee against the turns, and what looks wrong.</summary>
    /// <param name="pairs">The readings, in the order they were taken.</param>
    /// <param name="belowKnee">Rear over front line pressure below the knee [–]; 1 for one master cylinder of one bore, otherwise what bores and balance bar make it. Above 0.</param>
    /// <returns>The analysis.</returns>
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

        List<(double? Turns, Position Apply, Position Release)> fits = [];
        foreach (IGrouping<double?, GaugePair> group in all.Where(p => p.Phase != PressurePhase.Hold).GroupBy(p => p.Turns).OrderBy(g => g.Key))
        {
            PressurePhase[] phases = PhasesOf([.. group]);
            Position apply = Position.Of(group.Where((_, i) => phases[i] == PressurePhase.Apply), belowKnee);
            Position release = Position.Of(group.Where((_, i) => phases[i] == PressurePhase.Release), belowKnee);
            if (apply.Fit is null && release.Fit is null)
            {
                findings.Add(new GaugeFinding(GaugeFindingKind.TooFew, $"{At(group.Key)} there are {group.Count()} readings; at least four with pressure rising, on both sides of the knee, are needed."));
            }

            fits.Add((group.Key, apply, release));
            int[] left = [.. apply.LeftOutLines, .. release.LeftOutLines];
            if (left.Length > 0)
            {
                findings.Add(new GaugeFinding(GaugeFindingKind.Outliers, $"{At(group.Key)} the readings on line{(left.Length > 1 ? "s" : "")} {string.Join(", ", left.Order())} lie far off the rest and were left out; look whether the pedal moved or a digit slipped."));
            }
        }

        (Interval<double>? slope, bool agree) = CommonSlope([.. fits.Select(f => f.Apply.Fit).OfType<KneeFit>().Where(f => f.HasKnee)]);
        if (!agree)
        {
            findings.Add(new GaugeFinding(GaugeFindingKind.SlopeVaries, "The slope above the knee differs between knob positions more than the scatter explains. The screw moves the knee, not the slope: check for air, a sticking valve, or a lever-type valve."));
        }

        return new GaugeAnalysis
        {
            Positions = [.. fits.Select(f => new KnobPosition
            {
                Turns = f.Turns,
                Apply = f.Apply.Public(PressurePhase.Apply),
                Release = f.Release.Public(PressurePhase.Release),
                Hysteresis = Hysteresis(f.Apply, f.Release, belowKnee),
            })],
            Slope = slope,
            Calibration = Calibrate([.. fits.Where(f => f is { Turns: not null, Apply.Fit.HasKnee: true }).Select(f => (f.Turns!.Value, f.Apply))], belowKnee, agree ? slope : null),
            Findings = findings,
        };
    }

    private static string At(double? turns) => turns is null ? "With the knob as it is," : FormattableString.Invariant($"At {turns:0.##} turns");

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

    private static Pressure? Hysteresis(Position apply, Position release, double belowKnee)
    {
        if (apply.Fit is not { HasKnee: true } up || release.Fit is not { } down)
        {
            return null;
        }

        double top = Math.Min(apply.Front.Max(), release.Front.Max()), low = Math.Min(up.Knee, top);
        double Rear(KneeFit fit, double x) => x <= fit.Knee ? belowKnee * x : belowKnee * fit.Knee + fit.Slope * (x - fit.Knee);
        double[] gaps = [.. Enumerable.Range(0, 21).Select(i => low + (top - low) * i / 20).Select(x => Rear(down, x) - Rear(up, x))];
        return Pressure.FromBars(gaps.Average());
    }

    private static (Interval<double>? Slope, bool Agree) CommonSlope(KneeFit[] fits)
    {
        if (fits.Length == 0)
        {
            return (null, true);
        }

        double weight = fits.Sum(f => 1 / Math.Pow(f.SlopeError, 2));
        double mean = fits.Sum(f => f.Slope / Math.Pow(f.SlopeError, 2)) / weight;
        int dof = fits.Sum(f => f.DegreesOfFreedom);
        double half = LeastSquares.HalfWidth90(dof) / Math.Sqrt(weight);
        double chi = fits.Sum(f => Math.Pow((f.Slope - mean) / f.SlopeError, 2));
        bool agree = fits.Length < 2 || FisherSnedecor.CDF(fits.Length - 1, dof, chi / (fits.Length - 1)) < 0.99;
        return (new Interval<double>(mean, mean - half, mean + half), agree);
    }

    private static KnobCalibration? Calibrate((double Turns, Position Position)[] points, double belowKnee, Interval<double>? slope)
    {
        double[] turns = [.. points.Select(p => p.Turns)];
        if (turns.Distinct().Count() < 2)
        {
            return null;
        }

        // The slope is the valve's and the same at every position: using it sharpens the single knees.
        KneeFit[] fits = Knees(points, belowKnee, slope?.Estimate);
        double[] weights = [.. fits.Select(f => 1 / (f.KneeError * f.KneeError))];
        double mean = turns.Zip(weights, (t, w) => t * w).Sum() / weights.Sum();
        double[][] rows = [.. turns.Select(t => new[] { 1, t - mean })];
        LeastSquares line = LeastSquares.Fit(rows, [.. fits.Select(f => f.Knee)], weights);
        // Residuals of one mean the scatter within the positions; never believe less because a few points happen to lie on a line.
        bool scattered = line.DegreesOfFreedom > 0 && line.ResidualDeviation > 1;
        double variance = scattered ? line.ResidualDeviation * line.ResidualDeviation : 1;
        int freedom = scattered ? line.DegreesOfFreedom : fits.Sum(f => f.DegreesOfFreedom);
        double sum = weights.Sum(), spread = turns.Zip(weights, (t, w) => w * (t - mean) * (t - mean)).Sum();
        double[] covariance = [variance / sum, 0, variance / spread];
        if (slope is { } s && s.High > s.Low)
        {
            // An error of the shared slope moves all knees together.
            double error = (s.High - s.Low) / 2 / LeastSquares.HalfWidth90(fits.Sum(f => f.DegreesOfFreedom));
            var moved = LeastSquares.Fit(rows, [.. Knees(points, belowKnee, s.Estimate + error).Select(f => f.Knee)], weights).Coefficients;
            (double d0, double d1) = (moved[0] - line.Coefficients[0], moved[1] - line.Coefficients[1]);
            covariance = [covariance[0] + d0 * d0, d0 * d1, covariance[2] + d1 * d1];
        }

        return new KnobCalibration(line.Coefficients[0], line.Coefficients[1], covariance, mean, LeastSquares.HalfWidth90(freedom))
        {
            LowestTurns = turns.Min(),
            HighestTurns = turns.Max(),
            Positions = points.Length,
        };
    }

    private static KneeFit[] Knees((double Turns, Position Position)[] points, double belowKnee, double? slope) =>
        [.. points.Select(p => slope is null ? p.Position.Fit! : KneeFit.Fit(p.Position.Front, p.Position.Rear, belowKnee, LeastScatterBars, slope))];

    /// <summary>The readings of one position in one direction.</summary>
    private sealed record Position(double[] Front, double[] Rear, int[] Lines, KneeFit? Fit)
    {
        public IEnumerable<int> LeftOutLines => Fit is null ? [] : Lines.Where((_, i) => Fit.LeftOut[i]);

        public static Position Of(IEnumerable<GaugePair> pairs, double belowKnee)
        {
            GaugePair[] rows = [.. pairs];
            double[] x = [.. rows.Select(r => r.Front.Bars)];
            double[] y = [.. rows.Select(r => r.Rear.Bars)];
            return new Position(x, y, [.. rows.Select(r => r.Line)], rows.Length < 4 ? null : KneeFit.Fit(x, y, belowKnee, LeastScatterBars));
        }

        public ValveFit? Public(PressurePhase phase)
        {
            if (Fit is null)
            {
                return null;
            }

            double half = LeastSquares.HalfWidth90(Fit.DegreesOfFreedom) * Fit.SlopeError;
            return new ValveFit
            {
                Phase = phase,
                Knee = Fit.HasKnee ? new Interval<double>(Fit.Knee, Fit.KneeLow, Fit.KneeHigh).Select(b => Pressure.FromBars(b)) : null,
                Slope = Fit.HasKnee ? new Interval<double>(Fit.Slope, Fit.Slope - half, Fit.Slope + half) : null,
                HighestFront = Pressure.FromBars(Front.Max()),
                Scatter = Pressure.FromBars(Fit.Scatter),
                Readings = Fit.LeftOut.Count(o => !o),
                LeftOut = [.. LeftOutLines],
            };
        }
    }
}
