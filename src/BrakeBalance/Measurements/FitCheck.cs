using BrakeBalance.Vehicles;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace BrakeBalance.Measurements;

/// <summary>
/// Tells whether logs can be of the car at all, which reading cannot, and what would explain it.
/// </summary>
/// <remarks>
/// <para>Posterior predictive check: each deceleration, lock-up and rear reading against what the fitted car foretells, the fitted
/// quantities against what the file believes, and a drift in the order of the stops. Nothing is wrong while all of them are what chance
/// makes; limits are set so that a clean day fails once in a hundred (proved by simulation in the tests).</para>
/// <para>What fails is explained by trying: each slip is undone and the car fitted again, and the slip that leaves the least unexplained is
/// named, with those that do nearly as well. Each has a price, so that a rare explanation has to explain more.</para>
/// </remarks>
internal static class FitCheck
{
    private const double LowestHardPressBars = 12;
    private const int FewestStops = 3;

    /// <summary>Standard deviations off at which a single reading is not chance [–].</summary>
    private const double Single = 4.7;

    /// <summary>Standard errors at which a drift is not chance [–].</summary>
    private const double Drifting = 4.2;

    /// <summary>Standard errors from which on a drift is tried as an explanation [–].</summary>
    private const double Noticed = 2.5;

    /// <summary>Standard deviations of what is believed of the valve at which it is another one [–].</summary>
    private const double OtherValve = 3.3;

    /// <summary>Standard deviations of what is believed beforehand beyond which a friction is not that of the file's car [–].</summary>
    private const double MostDeviations = 3;

    /// <summary>Share of clean days whose fitted quantities lie nearer to the file's than the limit [–].</summary>
    private const double Ordinary = 0.9995;

    /// <summary>Nats by which an explanation may be worse than the best and still be named.</summary>
    private const double NearlyAsGood = 4;

    /// <summary>Prices in nats: of any slip of a whole column, of another knee, of a drift, of another car, of a reading alone.</summary>
    private const double SlipPrice = 3;
    private const double ValvePrice = 1;
    private const double DriftPrice = 5;
    private const double OtherCarPrice = 1;
    private const double SinglePrice = 5;

    /// <summary>How much less is believed of a valve that may be another one [–].</summary>
    private const double OtherValveWider = 10;

    /// <summary>How far the rear readings of another car scatter about this car's valve, in bar.</summary>
    private const double AnyRearBars = 8;

    private const string LookFor =
        "look for stops of another car, a column in another unit, swapped gauges, a load case or turns noted wrongly, "
            + "or a wrong entry in the vehicle file; # before its line leaves a spoilt stop out";

    /// <summary>Looks at gauge pairs.</summary>
    /// <param name="vehicle">The car as its file describes it.</param>
    /// <param name="pairs">The readings.</param>
    /// <param name="valve">What they say.</param>
    /// <returns>Sentences; empty when the readings fit the car.</returns>
    public static IEnumerable<string> Of(Vehicle vehicle, IReadOnlyList<GaugePair> pairs, GaugeAnalysis valve)
    {
        foreach (GaugeFinding finding in valve.Findings.Where(finding => finding.Kind is GaugeFindingKind.Swapped or GaugeFindingKind.Drift
            or GaugeFindingKind.MixedBranches))
        {
            yield return "Gauges: " + finding.Text;
        }

        double top = pairs.Max(pair => pair.Front.Bars);
        double? off = vehicle.Hydraulics.RearProportioningValve?.Adjustment is { } adjuster && valve.Calibration is { } measured
            && measured.KneePerTurn.Estimate > Pressure.Zero
            ? Math.Log(measured.KneePerTurn.Estimate / adjuster.KneePerTurn)
            : null;
        if (top < LowestHardPressBars || (off is { } log && Math.Abs(Math.Abs(log) - Math.Log(StopSlip.PoundsPerBar)) < 1))
        {
            string turn = off is null ? ""
                : $", and the knee by {InBoth.Text(valve.Calibration!.KneePerTurn.Estimate)} a turn where the file says "
                    + InBoth.Text(vehicle.Hydraulics.RearProportioningValve!.Adjustment!.KneePerTurn);
            yield return $"Gauges: the front pressure rises to {InBoth.Bars(top)} only{turn}: the pressures are probably in another unit "
                + "than the header says (bar under [psi], or psi under [bar]).";
        }
    }

    /// <summary>Looks at test stops and what was made of them.</summary>
    /// <param name="model">The stops' likelihood.</param>
    /// <param name="stops">The stops.</param>
    /// <param name="middle">The quantities of the best fit, in logarithms.</param>
    /// <returns>Sentences; empty when the stops fit the car.</returns>
    public static IReadOnlyList<string> Of(StopModel model, IReadOnlyList<TestStop> stops, Vector<double> middle)
    {
        List<string> doubts = [.. Signs(model.Vehicle, stops)];
        if (model.StopsUsed < FewestStops)
        {
            return doubts;
        }

        Fit plain = Fit.At(model, middle);
        return plain.IsOrdinary ? doubts : [.. doubts, .. Explained(plain, stops)];
    }

    private static IEnumerable<string> Signs(Vehicle vehicle, IReadOnlyList<TestStop> stops)
    {
        int negative = stops.Count(stop => stop.Deceleration is { MetersPerSecondSquared: <= 0 });
        if (negative > 0)
        {
            yield return Invariant.Text($"Stops: {negative} of {stops.Count} decelerations are not above zero: is the sign wrong? ")
                + "A deceleration counts as positive.";
        }

        if (vehicle.Hydraulics.RearProportioningValve?.Adjustment is { } adjuster
            && stops.Index().Where(stop => stop.Item.Turns is < -0.01).ToArray() is [var (place, first), ..])
        {
            yield return Invariant.Text($"Stops: {Named(place, first)} has {first.Turns:0.##} turns, and the adjuster goes from 0 (fully ")
                + Invariant.Text($"out) to {adjuster.Turns:0.##}: is the sign wrong, or were the turns counted outwards?");
        }
    }

    private static List<string> Explained(Fit plain, IReadOnlyList<TestStop> stops)
    {
        StopModel model = plain.Model;
        Fit Refit(IReadOnlyList<TestStop> made, Vector<double>? from = null) =>
            Fit.Of(new StopModel(model.Vehicle, made, model.Options), from);
        List<Explanation> found = [];

        // Slips of a whole column: the two likeliest by the file's own car, then with the car fitted to each.
        IEnumerable<(StopSlip Slip, TestStop[] Undone, double Quick)> slips = StopSlip.Whole
            .Where(slip => slip.Concerns(model.Vehicle, stops))
            .Select(slip => (slip, stops.Select(stop => slip.Undone(stop, model.Vehicle)).ToArray()))
            .Select(tried => (tried.slip, tried.Item2, Quick(model, tried.Item2) - Jacobian(tried.slip, model)))
            .OrderBy(tried => tried.Item3).Take(2);
        foreach ((StopSlip slip, TestStop[] undone, _) in slips)
        {
            Fit fit = Refit(undone);
            found.Add(new(fit.Cost - Jacobian(slip, model) + SlipPrice + slip.Price, () => $"Stops: {slip.Told}: {slip.Words}?"));
        }

        foreach ((string which, double bars, Func<TestStop, double, TestStop> moved) in Drifts(plain))
        {
            TestStop[] undone = [.. stops.Select((stop, place) => moved(stop, bars * place / Math.Max(1, stops.Count - 1)))];
            found.Add(new(Refit(undone, plain.Theta).Cost + DriftPrice,
                () => $"Stops: from first to last the {which} gauge {(bars < 0 ? "loses" : "gains")} {InBoth.Bars(Math.Abs(bars))} "
                    + "on what the others tell: it drifts, or its zero was not read before each stop?"));
        }

        if (Math.Abs(plain.RateDrift.Sure) > Noticed)
        {
            double log = plain.RateDrift.Log;
            TestStop[] undone = [.. stops.Select((stop, place) =>
                stop with { Deceleration = stop.Deceleration * Math.Exp(-log * place / Math.Max(1, stops.Count - 1)) })];
            found.Add(new(Refit(undone, plain.Theta).Cost + DriftPrice,
                () => Invariant.Text($"Stops: from first to last the decelerations change by {100 * (Math.Exp(log) - 1):+0;−0} % ")
                    + "at the same pressures: brakes that fade or bed in, or a drifting instrument?"));
        }

        if (plain.Rear.Places.Length >= FewestStops)
        {
            var wide = RearLineCheck.Of(model, OtherValveWider);
            found.Add(new(plain.Cost - plain.Rear.Cost + wide.Cost + ValvePrice, () => Step(model.Vehicle, wide.StepBars)));
        }

        EstimationOptions any = model.Options with
        {
            Prior = new ParameterSpread { FrontFriction = 0.5, RearFriction = 0.5, CentreOfGravityHeight = 0.2 },
        };
        Fit other = Fit.Of(new StopModel(model.Vehicle, stops, any), plain.Theta, OtherValveWider);
        double volume = Enumerable.Range(0, 3).Sum(i => Math.Log(other.Model.PriorDeviation[i] / model.PriorDeviation[i]));
        // Another car's valve may be of any kind: then its rear readings say nothing.
        double rear = Math.Min(other.Rear.Cost, other.Rear.Places.Length * Math.Log(AnyRearBars));
        found.Add(new(other.Cost - other.Rear.Cost + rear + volume + OtherCarPrice, () => Other(model, other)));

        if (Alone(plain, stops, Refit) is { } single)
        {
            found.Add(single);
        }

        Explanation[] best = [.. found.OrderBy(one => one.Cost)];
        if (best[0].Cost > plain.Cost)
        {
            return [plain.WorstOff(stops)];
        }

        return [string.Join(" Or: ", best.TakeWhile(one => one.Cost < best[0].Cost + NearlyAsGood).Take(3).Select(one => one.Words()))];
    }

    // Readings that stand alone: what is left fits, and each of them is explained by itself.
    private static Explanation? Alone(
        Fit plain, IReadOnlyList<TestStop> stops, Func<IReadOnlyList<TestStop>, Vector<double>?, Fit> refit)
    {
        HashSet<int> alone = [];
        Fit rest = plain;
        for (int round = 0; round < 3; round++)
        {
            int before = alone.Count;
            alone = [.. alone, .. rest.Off.Select(off => off.Place)];
            if (alone.Count == before || 3 * alone.Count > plain.Model.StopsUsed || plain.Model.StopsUsed - alone.Count < FewestStops)
            {
                break;
            }

            // One without a reading keeps its place and has no say.
            rest = refit([.. stops.Select((stop, place) =>
                alone.Contains(place) ? new TestStop { Surface = stop.Surface } : stop)], plain.Theta);
        }

        if (alone.Count == 0 || 3 * alone.Count > plain.Model.StopsUsed || ReferenceEquals(rest, plain))
        {
            return null;
        }

        double price = alone.Sum(place => SinglePrice + (stops[place].Deceleration is null ? 0 : Math.Log(3))
            + (stops[place].RearPressure is null ? 0 : Math.Log(50)) + (stops[place].Locked is null ? 0 : Math.Log(3)));
        return new(rest.Cost + price, () => "Stops: " + string.Join("; ", alone.Order().Take(4)
            .Select(place => StopSlip.Alone(rest.Model, rest.Theta, stops[place], Named(place, stops[place])))) + "?");
    }

    private static IEnumerable<(string Which, double Bars, Func<TestStop, double, TestStop> Moved)> Drifts(Fit plain)
    {
        static Pressure? Less(Pressure? read, double bars) =>
            read is { } pressure ? Pressure.FromBars(Math.Max(0.1, pressure.Bars - bars)) : null;
        return plain.Rear.Drifting < Noticed ? [] :
        [
            ("front", plain.Rear.DriftBars.Front, (stop, bars) =>
                stop with { FrontPressure = Less(stop.FrontPressure, bars), LockPressure = Less(stop.LockPressure, bars) }),
            ("rear", plain.Rear.DriftBars.Rear, (stop, bars) => stop with { RearPressure = Less(stop.RearPressure, bars) }),
        ];
    }

    private static string Step(Vehicle vehicle, double bars)
    {
        double below = vehicle.Hydraulics.Split.RearToFrontPressureRatio, slope = vehicle.Hydraulics.RearProportioningValve?.Slope ?? 0;
        double knee = bars / Math.Max(0.2, below - slope);
        string off = $"Stops: above the knee the rear gauge stands {InBoth.Bars(Math.Abs(bars))} "
            + (bars > 0 ? "higher than the file's valve makes it: " : "lower than the file's valve makes it: ");
        return off + (bars > 0
            ? $"read while the pedal came up (hysteresis of {InBoth.Bars(bars)}), or is the knee {InBoth.Bars(knee)} higher?"
            : $"is the knee {InBoth.Bars(-knee)} lower, or were the turns noted wrongly?");
    }

    private static string Other(StopModel model, Fit other)
    {
        int axle = Math.Abs(other.Theta[0]) >= Math.Abs(other.Theta[1]) ? 0 : 1;
        const string may = "stops of another car, or a wrong entry in the vehicle file (pistons, radii, mass)?";
        if (Math.Abs(other.Theta[axle] - model.PriorMean[axle]) < 2 * model.PriorDeviation[axle])
        {
            return "Stops: the rear gauge or the lock-ups do not follow this car's valve and axle loads: " + may;
        }

        double off = Math.Abs(other.Theta[axle] - model.PriorMean[axle]) / model.PriorDeviation[axle];
        return $"Stops: they ask for a {(axle == 0 ? "front" : "rear")} friction "
            + Invariant.Text($"{Math.Exp(other.Theta[axle]):0.00} of the file's, {off:0.0} standard deviations off what ")
            + "it allows: " + may;
    }

    private static string Named(int place, TestStop stop) =>
        stop.Line > 0 ? Invariant.Text($"stop {place + 1} (line {stop.Line})") : Invariant.Text($"stop {place + 1}");

    // How well the stops as they are suit the file's own car, every scatter widened: enough to tell which slips are worth a fit.
    private static double Quick(StopModel like, TestStop[] stops)
    {
        var model = new StopModel(like.Vehicle, stops, like.Options);
        return model.NegativeLog(like.PriorMean, 2.5) + RearLineCheck.Of(model, 2, 2).Cost;
    }

    // A density in the rear reading is one in the reading undone, times what it was stretched by.
    private static double Jacobian(StopSlip slip, StopModel model) =>
        Math.Log(slip.Rear) * model.Used.Count(used => used.Stop.RearByFront is not null);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private sealed record Explanation(double Cost, Func<string> Words);

    /// <summary>The car fitted to stops, and what the stops look like from there.</summary>
    private sealed record Fit(StopModel Model, Vector<double> Theta, RearLineCheck Rear)
    {
        public double Cost => Model.NegativeLog(Theta) + Rear.Cost;

        public static Fit At(StopModel model, Vector<double> theta) => new(model, theta, RearLineCheck.Of(model));

        // From the file's car on by widened scatters, from a fit like it at once.
        public static Fit Of(StopModel model, Vector<double>? from = null, double valve = 1)
        {
            Vector<double> theta = from ?? model.PriorMean, steps = 0.1 * model.PriorDeviation;
            foreach (double widened in from is null ? [2.5, 1] : (double[])[1])
            {
                theta = LaplacePosterior.Descend(at => model.NegativeLog(at, widened), theta, steps, 0.01);
            }

            return new Fit(model, theta, RearLineCheck.Of(model, valve, valve));
        }

        /// <summary>A drift of the decelerations from the first stop to the last, as a logarithm, and over its standard error.</summary>
        public (double Log, double Sure) RateDrift { get; } = Trend(Model, Theta);

        public bool IsOrdinary => !Off.Any() && Rear.Drifting < Drifting && Math.Abs(RateDrift.Sure) < Drifting
            && Rear.StepDeviations < OtherValve
            && Shift(0) < MostDeviations && Shift(1) < MostDeviations
            && Enumerable.Range(0, Theta.Count).Sum(i => Shift(i) * Shift(i)) < ChiSquared.InvCDF(Theta.Count, Ordinary);

        /// <summary>Readings that chance does not make.</summary>
        public IEnumerable<(int Place, string Column, double Deviations)> Off
        {
            get
            {
                foreach ((int place, StopModel.Stop stop) in Model.Used)
                {
                    (double? rate, double? locked) = Model.Surprise(stop, Theta);
                    if (Math.Abs(rate ?? 0) > Single)
                    {
                        yield return (place, "deceleration", rate!.Value);
                    }

                    if (locked > Single)
                    {
                        yield return (place, "lock-up", locked.Value);
                    }
                }

                foreach ((int place, double off) in Rear.Places.Zip(Rear.Surprises).Where(read => Math.Abs(read.Second) > Single))
                {
                    yield return (place, "rear pressure", off);
                }
            }
        }

        /// <summary>The reading furthest off, or the quantity.</summary>
        public string WorstOff(IReadOnlyList<TestStop> stops)
        {
            if (Off.OrderByDescending(off => Math.Abs(off.Deviations)).FirstOrDefault() is { Column: not null } off)
            {
                return $"Stops: the {off.Column} of {Named(off.Place, stops[off.Place])} lies "
                    + Invariant.Text($"{Math.Abs(off.Deviations):0.0} standard deviations off what the others tell: {LookFor}.");
            }

            int axle = Shift(0) >= Shift(1) ? 0 : 1;
            return $"Stops: the {(axle == 0 ? "front" : "rear")} friction they ask for is "
                + Invariant.Text($"{Math.Exp(Theta[axle]):0.00} of the file's, ")
                + Invariant.Text($"{Shift(axle):0.0} standard deviations off what the file allows: {LookFor}.");
        }

        private double Shift(int i) => Math.Abs(Theta[i] - Model.PriorMean[i]) / Model.PriorDeviation[i];

        private static (double Log, double Sure) Trend(StopModel model, Vector<double> theta)
        {
            (int Place, StopModel.Stop Stop, double Rate)[] rows =
                [.. model.Used.Select(used => (used.Place, used.Stop, Rate: model.Surprise(used.Stop, theta).Rate))
                    .Where(row => row.Rate is not null).Select(row => (row.Place, row.Stop, row.Rate!.Value))];
            if (rows.Length < 5)
            {
                return (0, 0);
            }

            double[] noise = [.. rows.Select(row => Math.Sqrt(model.RateVariance(row.Stop, theta)))];
            double last = Math.Max(1, rows[^1].Place - rows[0].Place);
            double[][] regressors =
                [.. rows.Select(row => new[] { row.Stop.FrontShare, 1 - row.Stop.FrontShare, (row.Place - rows[0].Place) / last })];
            (Vector<double> found, Matrix<double> covariance, _, _) =
                RearLineCheck.Robust(regressors, [.. rows.Select((row, i) => row.Rate * noise[i])], noise, [0.2, 0.2, 2]);
            return (found[2], found[2] / Math.Sqrt(covariance[2, 2]));
        }
    }
}
